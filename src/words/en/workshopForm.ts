/** Words of the workshop's form: texts, aids, proofs, weights, time. */
import type { ProofId } from '../../scenario/proofId.ts';
import type { ScenarioWeights } from '../../scenario/scenario.ts';

const proofNames: Readonly<Record<ProofId, string>> = {
  halveLevel: 'Halve the level',
  markersOffOn: 'Pips off and on',
  touchEarth: 'Lift the earth strap',
  swingPhase: 'Swing the phasing',
  skirts: 'Look at the skirts',
  bias: 'Meter the bias',
  liftCrystal: 'Pull a crystal and plug it again',
  pipDown: 'Look at the low pips with more gain',
};

const weightNames: Readonly<Record<keyof ScenarioWeights, string>> = {
  response: 'Response',
  truth: 'Set-up',
  proofs: 'Proofs',
  care: 'Care',
  economy: 'Turns and time',
};

export const workshopFormWords = {
  title: 'Words and rules',
  texts: 'What the learner reads',
  name: 'Title',
  brief: 'Brief: a sentence or two on the card',
  story: 'Story: whose set it is, and what was noticed',
  lesson: 'Lesson: what will have been learnt',
  hints: 'Hints, from a nudge to the answer',
  hint: (no: number): string => `Hint ${no}`,
  addHint: 'Add a hint',
  dropHint: (no: number): string => `Take off hint ${no}`,
  left: (characters: number): string => `${characters} left`,
  file: 'File and card',
  id: 'Name of the file',
  code: 'Card code',
  track: 'Track',
  order: 'Place in the track',
  difficulty: 'Difficulty',
  difficulties: ['1: for a start', '2: with some practice', '3: hard'],
  rules: 'How it is done',
  sealed: 'Sealed: no aids, and dealt afresh for each attempt where the set is dealt',
  hintsOn: 'Hints may be asked for',
  marksOn: 'Tolerances in wax on the tube',
  safe: 'Made safe already',
  connect: 'Connected already',
  dealsFaults: 'Each attempt is dealt other faults than these, or none',
  slugsRight: 'The slugs are right: leaving them alone is the answer',
  mains: 'Mains',
  hertz: (hz: number): string => `${hz} Hz`,
  tolerance: 'Tolerances',
  asPrinted: 'as printed',
  times: (factor: string): string => `\u00d7 ${factor}`,
  limit: 'Time limit, minutes',
  limitNone: 'none',
  responses: 'Curves that are judged',
  proofs: 'Proofs that are asked for',
  proofNames,
  weights: 'Points',
  weightNames,
  sum: (points: number): string => `${points} of 100`,
} as const;
