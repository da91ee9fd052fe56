/** Rules of how the work was done: proofs since the last slug moved (G27) and what was seen (G64), what was said to have been wrong (G65, G66), care (G28 to G33, G69), economy against par (G34, G35), breaches of safety (G38, G39). */
import type { IncidentKind } from '../../bench/benchState.ts';
import { parIsKnown } from '../../scenario/par.ts';
import { answer, noneOf } from './readings.ts';
import type { CapRule, LineRule, Reading, Subjects } from './rule.ts';

export const CONDUCT_RULES = [
  {
    number: 'G27',
    block: 'proofs',
    about: 'proof',
    weight: 1,
    reads: ({ proof, done, doneAtSeconds }) => ({ ...answer(done), subject: proof, atSeconds: doneAtSeconds }),
  },
  {
    number: 'G64',
    block: 'proofs',
    about: 'finding',
    weight: 1,
    since: 2,
    reads: ({ proof, fits, atSeconds }) => ({ ...answer(fits), subject: proof, atSeconds }),
  },
  { number: 'G65', block: 'proofs', about: 'diagnosis', weight: 2, since: 3, reads: partsNamed },
  { number: 'G66', block: 'proofs', about: 'diagnosis', weight: 2, since: 3, pointsOnly: true, reads: slugsNamed },
  { number: 'G28', block: 'care', about: 'mishaps', weight: 2, reads: mishaps(2, 'wrongPowerOrder') },
  { number: 'G29', block: 'care', about: 'mishaps', weight: 3, reads: mishaps(1, 'hotChassis', 'hotTouch') },
  { number: 'G30', block: 'care', about: 'mishaps', weight: 2, reads: mishaps(4, 'steelTool', 'wrongHead') },
  { number: 'G31', block: 'care', about: 'mishaps', weight: 1, reads: mishaps(2, 'forcedStop') },
  { number: 'G32', block: 'care', about: 'mishaps', weight: 2, reads: mishaps(1, 'crackedSlug') },
  {
    number: 'G33',
    block: 'care',
    about: 'mishaps',
    weight: 2,
    reads: (all) => (all.partsMayFail ? mishaps(2, 'goodPartReplaced')(all) : null),
  },
  {
    number: 'G69',
    block: 'care',
    about: 'mishaps',
    weight: 1,
    since: 5,
    // A set without mains of its own has no chassis that could be live.
    reads: (all) => (all.onMains ? mishaps(2, 'beforeEarth')(all) : null),
  },
  { number: 'G34', block: 'economy', about: 'effort', weight: 1, reads: against('turns') },
  { number: 'G35', block: 'economy', about: 'effort', weight: 1, reads: against('seconds') },
] as const satisfies readonly LineRule[];

export const CAP_RULES = [
  { number: 'G38', breach: 'hotChassis', limit: 40 },
  { number: 'G39', breach: 'hotTouch', limit: 60 },
] as const satisfies readonly CapRule[];

/** Every failed part and bad contact named, and no good one. Where the set was good, naming a slug that stood right is wrong. */
function partsNamed({ stated, asFound, unnamed, blamed, slugsBlamed, atSeconds }: Subjects['diagnosis']): Reading {
  const leftAlone = !asFound.good || slugsBlamed.length === 0;
  return { ...answer(stated !== null && unnamed.length + blamed.length === 0 && leftAlone), atSeconds };
}

/** Half of the line for each slug left out or named without need. */
function slugsNamed({ stated, slugsUnnamed, slugsBlamed, atSeconds }: Subjects['diagnosis']): Reading {
  const limits = noneOf(2);
  const mistakes = slugsUnnamed.length + slugsBlamed.length;
  return { measured: stated === null ? Math.max(mistakes, 2) : mistakes, unit: 'count', limits, atSeconds };
}

/** `allGoneAt`: this many use up the whole line. The first one is told. */
function mishaps(allGoneAt: number, ...kinds: readonly IncidentKind[]): (all: Subjects['mishaps']) => Reading {
  return ({ incidents }) => {
    const found = incidents.filter((incident) => kinds.includes(incident.kind));
    const { subject = null, atSeconds = null } = found[0] ?? {};
    return { measured: found.length, unit: 'count', limits: noneOf(allGoneAt), subject, atSeconds };
  };
}

/** Full up to par, nothing from three times par. */
function against(unit: 'turns' | 'seconds'): (effort: Subjects['effort']) => Reading {
  return (effort) => {
    const par = effort.par[unit];
    const limits = { low: null, high: par, tolerance: par };
    return { measured: effort[unit], unit, limits, ...(parIsKnown(effort) ? {} : { parUnknown: true }) };
  };
}
