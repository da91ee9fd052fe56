/** The shape of a fault in a scenario file, one for each kind; what must hold against the receiver is in checkFaults.ts. */
import * as v from 'valibot';
import { elementName, nodeName, number, shortId } from './schemaPieces.ts';

const kind = <const K extends string>(name: K) => v.literal(name);
const ohms = () => number(1e-3, 1e9);
const factor = () => number(0.01, 100);
const farads = () => number(1e-16, 1e-9);

export const faultSchema = v.variant('kind', [
  v.strictObject({ kind: kind('openResistor'), element: elementName() }),
  v.strictObject({ kind: kind('wrongLoad'), element: elementName(), ohms: ohms() }),
  v.strictObject({ kind: kind('leakyBiasLine'), at: shortId(), ohms: ohms() }),
  v.strictObject({ kind: kind('weakStage'), element: elementName(), factor: number(0.01, 1) }),
  v.strictObject({ kind: kind('driftedCapacitor'), element: elementName(), factor: factor() }),
  v.strictObject({ kind: kind('shortedTrap'), slug: shortId() }),
  v.strictObject({ kind: kind('openBypass'), element: elementName(), farads: farads() }),
  v.strictObject({ kind: kind('missingShield'), from: nodeName(), to: nodeName(), farads: farads() }),
  v.strictObject({ kind: kind('reversedDiode'), detector: shortId() }),
  v.strictObject({ kind: kind('leakyDiode'), detector: shortId(), ohms: ohms() }),
  v.strictObject({ kind: kind('crackedSlug'), slug: shortId() }),
  v.strictObject({ kind: kind('openCoupling'), element: elementName() }),
  v.strictObject({ kind: kind('swappedTraps'), first: elementName(), second: elementName() }),
  v.strictObject({ kind: kind('screwedIn') }),
  v.strictObject({ kind: kind('looseEarth') }),
  v.strictObject({ kind: kind('unmatchedLead') }),
]);
