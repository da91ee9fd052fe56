/** A draft: a scenario as it is being made, with everything that its file may say. It may well be unfinished; `check.ts` says what it lacks. */
import type { Receiver } from '../receiver/receiver.ts';
import { PAR_NOT_KNOWN } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';

export type Draft = Scenario;

/** The track of one's own: its folder. */
const OWN_TRACK = 'own';

const MOST_CODE = 99;

/** `no`: how many drafts have been begun, for its name and its card. The texts are for the instructor to write. */
export function newDraft(receiver: string, no: number): Draft {
  const code = `W-${String(Math.min(no, MOST_CODE)).padStart(2, '0')}`;
  return {
    format: 'haystack-scenario',
    version: 2,
    id: `own-scenario-${no}`,
    code,
    title: '',
    track: OWN_TRACK,
    order: Math.min(Math.max(no, 1), 999),
    difficulty: 1,
    recommendedAfter: [],
    receiver,
    words: { brief: '', story: '', lesson: '' },
    seed: 1,
    start: { slugs: {}, randomTurns: 0, controls: {}, prepared: [] },
    bench: { phaseLagDegrees: 0, xSwapped: false, mainsHz: 60, dialErrorHz: 0 },
    faults: [],
    aids: { hints: false, toleranceMarks: false },
    sealed: false,
    timeLimitSeconds: null,
    toleranceFactor: 1,
    weights: { response: 50, truth: 20, proofs: 10, care: 10, economy: 10 },
    proofs: ['halveLevel', 'markersOffOn', 'touchEarth'],
    par: PAR_NOT_KNOWN,
    hints: [],
  };
}

/** Another one's scenario as a start: under a name and a card of its own, with nothing that belongs to the old place in the course. */
export function duplicated({ attempt: _, translations: __, ...scenario }: Scenario, no: number): Draft {
  const { id, code, track, order } = newDraft(scenario.receiver, no);
  return { ...scenario, id, code, track, order, recommendedAfter: [], par: PAR_NOT_KNOWN };
}

/** Another set: what names a slug, a part or a response of the old one goes; the words stay. */
export function onReceiver(draft: Draft, receiver: Receiver): Draft {
  if (draft.receiver === receiver.id) return draft;
  const { responses: _, start, ...rest } = draft;
  const { steelIn: __, leads: ___, ...kept } = start;
  return {
    ...rest,
    receiver: receiver.id,
    start: { ...kept, slugs: {}, controls: {} },
    bench: { ...draft.bench, mainsHz: receiver.responses[0]?.setUp.mainsHz ?? draft.bench.mainsHz },
    faults: [],
  };
}

/** `turns` from where the slug is right; null: as the scatter has it. */
export function withSlug(draft: Draft, slug: string, turns: number | null): Draft {
  const { [slug]: stood, ...others } = draft.start.slugs;
  // Without a scatter a slug that is right need not be named.
  const none = turns === null || (turns === 0 && draft.start.randomTurns === 0);
  if (none ? stood === undefined : stood === turns) return draft;
  return { ...draft, start: { ...draft.start, slugs: none ? others : { ...others, [slug]: turns } } };
}

export function withScatter(draft: Draft, randomTurns: number): Draft {
  return randomTurns === draft.start.randomTurns ? draft : { ...draft, start: { ...draft.start, randomTurns } };
}

/** Which set of the design; null: the design itself. */
export function withSet(draft: Draft, set: number | null): Draft {
  if ((draft.set ?? null) === set) return draft;
  const { set: _, ...rest } = draft;
  return set === null ? rest : { ...rest, set };
}

/** `fault` in the place of the one at `at`; null: that one goes. At the end of the list: one more. */
export function withFault(draft: Draft, at: number, fault: Draft['faults'][number] | null): Draft {
  const faults = [...draft.faults];
  if (fault === null) faults.splice(at, 1);
  else faults[at] = fault;
  return { ...draft, faults };
}
