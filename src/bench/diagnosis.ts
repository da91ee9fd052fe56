/** The diagnosis: what the learner says was wrong. The bench records names that exist, and does not know whether they are right. */
import { asksDiagnosis, type Diagnosis, offersParts, SET_UP_MATTERS } from '../scenario/diagnosis.ts';
import type { Applied } from './benchEvent.ts';
import type { BenchState } from './benchState.ts';
import { done, refused } from './outcome.ts';
import { printedTray } from './parts.ts';
import type { BenchSetup } from './setup.ts';

/** May be said again until the run is signed; the last one counts. */
export function stateDiagnosis(setup: BenchSetup, state: BenchState, { slugs, parts, setUp }: Diagnosis): Applied {
  const { receiver, scenario } = setup;
  if (!asksDiagnosis(scenario)) return refused('notInThisScenario');
  if (slugs.some((id) => !receiver.adjusters.some((adjuster) => adjuster.id === id))) return refused('noSuchSlug');
  const tray = partsAsked(setup);
  if (parts.some((name) => !tray.some((part) => part.name === name))) return refused('noSuchPart');
  if (setUp.some((matter) => !SET_UP_MATTERS.includes(matter))) return refused('valueOutOfRange');
  if ([slugs, parts, setUp].some((named) => new Set<string>(named).size < named.length)) return refused('alreadySo');
  return done({ ...state, diagnosis: { slugs, parts, setUp, atSeconds: state.seconds } });
}

/** The parts that may be named: those of the tray, where there is one. */
export function partsAsked(setup: BenchSetup): ReturnType<typeof printedTray> {
  return offersParts(setup.scenario) ? printedTray(setup) : [];
}
