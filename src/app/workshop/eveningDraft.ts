/** The evening sheet that is being made, kept in this browser from visit to visit. */
import type { EveningDraft } from '../../rooms/workshop/evening/eveningPort.ts';

const PLACE = 'haystack.evening';
const EMPTY: EveningDraft = {
  ...{ title: '', author: '', minutes: null, order: 'listed', scenarios: [] },
  ...{ minutesEach: {}, passMark: null, exam: null },
};

export function readDraft(storage: () => Pick<Storage, 'getItem'>): EveningDraft {
  try {
    const found: unknown = JSON.parse(storage().getItem(PLACE) ?? 'null');
    if (typeof found !== 'object' || found === null) return EMPTY;
    const { title, author, minutes, order, scenarios, minutesEach, passMark, exam } = found as Record<string, unknown>;
    const ids = Array.isArray(scenarios) ? scenarios.filter((id): id is string => typeof id === 'string') : [];
    return {
      title: typeof title === 'string' ? title : '',
      author: typeof author === 'string' ? author : '',
      minutes: typeof minutes === 'number' && Number.isFinite(minutes) ? minutes : null,
      order: order === 'any' ? 'any' : 'listed',
      scenarios: [...new Set(ids)].slice(0, 20),
      minutesEach: timesIn(minutesEach, ids),
      passMark: typeof passMark === 'number' && Number.isFinite(passMark) ? passMark : null,
      exam: termsIn(exam),
    };
  } catch {
    return EMPTY;
  }
}

function timesIn(times: unknown, ids: readonly string[]): EveningDraft['minutesEach'] {
  if (typeof times !== 'object' || times === null) return {};
  const held = Object.entries(times).filter(
    (one): one is [string, number] => ids.includes(one[0]) && typeof one[1] === 'number' && Number.isFinite(one[1]),
  );
  return Object.fromEntries(held);
}

function termsIn(exam: unknown): EveningDraft['exam'] {
  if (typeof exam !== 'object' || exam === null) return null;
  const { candidates, attempts, ownDeal, results } = exam as Record<string, unknown>;
  return {
    candidates: candidates === 'names' ? 'names' : 'numbers',
    attempts: attempts === 'several' ? 'several' : 'one',
    ownDeal: ownDeal !== false,
    results: results === 'each' ? 'each' : 'atEnd',
  };
}

/** false: this browser keeps nothing. */
export function writeDraft(storage: () => Pick<Storage, 'setItem'>, draft: EveningDraft): boolean {
  try {
    storage().setItem(PLACE, JSON.stringify(draft));
    return true;
  } catch {
    return false;
  }
}
