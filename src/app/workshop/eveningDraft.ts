/** The evening sheet that is being made, kept in this browser from visit to visit. */
import type { EveningDraft } from '../../rooms/workshop/evening/eveningPort.ts';

const PLACE = 'haystack.evening';
const EMPTY: EveningDraft = { title: '', author: '', minutes: null, order: 'listed', scenarios: [], exam: null };

export function readDraft(storage: () => Pick<Storage, 'getItem'>): EveningDraft {
  try {
    const found: unknown = JSON.parse(storage().getItem(PLACE) ?? 'null');
    if (typeof found !== 'object' || found === null) return EMPTY;
    const { title, author, minutes, order, scenarios, exam } = found as Record<string, unknown>;
    const ids = Array.isArray(scenarios) ? scenarios.filter((id): id is string => typeof id === 'string') : [];
    return {
      title: typeof title === 'string' ? title : '',
      author: typeof author === 'string' ? author : '',
      minutes: typeof minutes === 'number' && Number.isFinite(minutes) ? minutes : null,
      order: order === 'any' ? 'any' : 'listed',
      scenarios: [...new Set(ids)].slice(0, 20),
      exam: termsIn(exam),
    };
  } catch {
    return EMPTY;
  }
}

function termsIn(exam: unknown): EveningDraft['exam'] {
  if (typeof exam !== 'object' || exam === null) return null;
  const { candidates, attempts, ownDeal } = exam as Record<string, unknown>;
  return {
    candidates: candidates === 'names' ? 'names' : 'numbers',
    attempts: attempts === 'several' ? 'several' : 'one',
    ownDeal: ownDeal !== false,
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
