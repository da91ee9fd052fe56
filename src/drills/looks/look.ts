/** What every drill's maker is given and gives; and the sets that more than one drill takes. */
import type { SetParts } from '../../receiver/individualSet.ts';
import type { Chance } from '../chance.ts';
import type { Question } from '../drill.ts';

export interface Asked {
  readonly set: SetParts;
  /** everything of the look but which answer is right */
  readonly chance: Chance;
  /** the place of the right answer among so many: evenly spread over seeds, whatever the look is made of */
  readonly rightOf: (count: number) => number;
}

export interface DrillMaker {
  /** ids of the receivers that it is shown on */
  readonly receivers: readonly string[];
  /** null: this throw of the dice gives no fair question; the next one may */
  make(asked: Asked): Question | null;
}

/** The response that curve drills look at, and slugs that plainly move it one by one. */
export const CURVES: Readonly<Record<string, { readonly response: string; readonly slugs: readonly string[] }>> = {
  'loose-can-10m7': { response: 'can', slugs: ['T1B', 'T1T'] },
  'video-valve-45m': { response: 'if', slugs: ['T1', 'T2', 'T4', 'T5P', 'T5S'] },
  'video-early-25m': { response: 'if', slugs: ['T1', 'T2', 'T3', 'T4', 'T5'] },
  'video-b-38m9': { response: 'if', slugs: ['T1', 'T2', 'T3B', 'T3T', 'T4B', 'T4T'] },
  'fm-10m7': { response: 'if', slugs: ['T1B', 'T1T', 'T3B', 'T3T'] },
  'video-solid-45m': { response: 'if', slugs: ['T1', 'T3B', 'T3T', 'T4', 'T5B', 'T5T'] },
};
