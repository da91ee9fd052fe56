/** Whether two orders of an attempt are about the same: a scenario or a receiver of one's own may have been edited in between. */
import { scenarioHash } from '../../files/scenarioFile.ts';
import { receiverHash } from '../../run/serialise.ts';
import type { Order } from '../jobs/jobTable.ts';

export const sameDeal = (one: Order<'attempt'>, other: Order<'attempt'>): boolean =>
  one.attempt === other.attempt &&
  scenarioHash(one.scenario) === scenarioHash(other.scenario) &&
  receiverHash(one.design) === receiverHash(other.design);
