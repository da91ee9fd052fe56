/** How the work was done: proofs since the last slug moved (G27), care from incidents (G28 to G33), economy against par (G34, G35). */
import type { BenchState, Incident, IncidentKind } from '../bench/benchState.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { DraftLine } from './draft.ts';
import { roundFigure, shareOf } from './falling.ts';

export function proofLines(state: BenchState, scenario: Scenario): readonly DraftLine[] {
  return scenario.proofs.map((proof) => {
    const { done, doneAtSeconds } = state.proofs[proof];
    const measured = done ? 1 : 0;
    return {
      ...{ id: `G27:${proof}`, rule: 'G27', block: 'proofs', weight: 1, earned: measured },
      ...{ measured, low: 1, high: null, unit: 'yes', subject: proof, atSeconds: doneAtSeconds },
    };
  });
}

interface CareRule {
  readonly rule: string;
  readonly kinds: readonly IncidentKind[];
  readonly weight: number;
  /** incidents that use up the whole line */
  readonly allGoneAt: number;
}

const CARE_RULES: readonly CareRule[] = [
  { rule: 'G28', kinds: ['wrongPowerOrder'], weight: 2, allGoneAt: 2 },
  { rule: 'G29', kinds: ['hotChassis', 'hotTouch'], weight: 3, allGoneAt: 1 },
  { rule: 'G30', kinds: ['steelTool', 'wrongHead'], weight: 2, allGoneAt: 4 },
  { rule: 'G31', kinds: ['forcedStop'], weight: 1, allGoneAt: 2 },
  { rule: 'G32', kinds: ['crackedSlug'], weight: 2, allGoneAt: 1 },
];
const PARTS_RULE: CareRule = { rule: 'G33', kinds: ['goodPartReplaced'], weight: 2, allGoneAt: 2 };

export function careLines(incidents: readonly Incident[], scenario: Scenario): readonly DraftLine[] {
  const rules = scenario.faults.length === 0 ? CARE_RULES : [...CARE_RULES, PARTS_RULE];
  return rules.map(({ rule, kinds, weight, allGoneAt }) => {
    const found = incidents.filter((incident) => kinds.includes(incident.kind));
    const first = found[0];
    return {
      ...{ id: rule, rule, block: 'care', weight, earned: Math.max(1 - found.length / allGoneAt, 0) },
      ...{ measured: found.length, low: null, high: 0, unit: 'count' },
      ...{ subject: first?.subject ?? null, atSeconds: first?.atSeconds ?? null },
    };
  });
}

/** Full up to par, nothing from three times par. */
export function economyLines(state: BenchState, seconds: number, par: Scenario['par']): readonly DraftLine[] {
  const line = (rule: string, value: number, limit: number, unit: 'turns' | 'seconds'): DraftLine => {
    const measured = roundFigure(value, unit);
    const earned = shareOf(measured, { low: null, high: limit, tolerance: limit });
    return { id: rule, rule, block: 'economy', weight: 1, earned, measured, low: null, high: limit, unit };
  };
  return [line('G34', state.turnsMade, par.turns, 'turns'), line('G35', seconds, par.seconds, 'seconds')];
}
