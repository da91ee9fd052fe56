/** What a sheet still lacks before it can be handed out. */
import type { EveningDraft } from './eveningPort.ts';

export const LEAST_MINUTES = 5;
export const MOST_MINUTES = 480;
const LEAST_PHRASE = 12;

export type Lack = 'title' | 'scenarios' | 'minutes' | 'minutesEach' | 'passMark' | 'phrase';

/** `ownLimit`: minutes that a scenario itself allows. */
export function lackOf(
  { title, scenarios, minutes, minutesEach, passMark, exam }: EveningDraft,
  phrase: string,
  ownLimit: (id: string) => number,
): readonly Lack[] {
  const times = scenarios.flatMap((id) => (minutesEach[id] === undefined ? [] : [{ id, given: minutesEach[id] }]));
  const timesFit =
    times.every(({ id, given }) => Number.isInteger(given) && given >= 1 && given <= Math.min(240, ownLimit(id))) &&
    (minutes === null || times.reduce((sum, { given }) => sum + given, 0) <= minutes);
  const markFits =
    passMark === null || (Number.isInteger(passMark) && passMark >= 1 && passMark <= Math.max(1, scenarios.length));
  const fits = minutes === null || (Number.isInteger(minutes) && minutes >= LEAST_MINUTES && minutes <= MOST_MINUTES);
  return [
    ...(title.trim() === '' ? (['title'] as const) : []),
    ...(scenarios.length === 0 ? (['scenarios'] as const) : []),
    ...(fits ? [] : (['minutes'] as const)),
    ...(timesFit ? [] : (['minutesEach'] as const)),
    ...(markFits ? [] : (['passMark'] as const)),
    ...(exam === null || phrase.trim().length >= LEAST_PHRASE ? [] : (['phrase'] as const)),
  ];
}
