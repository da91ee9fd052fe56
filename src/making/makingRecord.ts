/** A receiver in the making as it comes out of a store: of a shape that can be drawn and worked on, or none at all. What is wrong with its values is told on the page. */
import { MAX_TEXT } from '../physics/deckWords.ts';
import type { Making } from './standing.ts';

export type { Making };

type Plain = Readonly<Record<string, unknown>>;

/** null: no receiver in the making. */
export function makingOfRecord(record: unknown): Making | null {
  if (!isPlain(record) || typeof record.deckText !== 'string' || record.deckText.length > MAX_TEXT) return null;
  const { draft } = record;
  if (!isPlain(draft) || typeof draft.id !== 'string' || typeof draft.deck !== 'string') return null;
  const { adjusters, testPoints, responses, plan } = draft;
  const whole =
    isListOf(adjusters, (one) => typeof one.id === 'string' && typeof one.element === 'string' && isPlace(one.plan)) &&
    isListOf(testPoints, (one) => typeof one.id === 'string' && (one.plan === undefined || isPlace(one.plan))) &&
    isListOf(responses, (one) => isPlain(one.setUp)) &&
    (plan === undefined || isPlan(plan)) &&
    OTHER_LISTS.every((key) => draft[key] === undefined || isListOf(draft[key], () => true));
  return whole ? ({ deckText: record.deckText, draft } as Making) : null;
}

const OTHER_LISTS = ['stages', 'biasLines', 'detectors', 'procedure'] as const;

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function isListOf(value: unknown, is: (one: Plain) => boolean): value is readonly Plain[] {
  return Array.isArray(value) && value.every((one: unknown) => isPlain(one) && is(one));
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

const isPlace = (value: unknown): boolean => isPlain(value) && isNumber(value.x) && isNumber(value.y);

function isPlan(value: unknown): boolean {
  if (!isPlain(value) || !isNumber(value.width) || !isNumber(value.height)) return false;
  const { hot, parts, path } = value;
  const isHot = hot === null || (isPlace(hot) && isPlain(hot) && isNumber(hot.width) && isNumber(hot.height));
  return (
    isHot &&
    isListOf(parts, (part) => typeof part.kind === 'string' && isPlace(part)) &&
    Array.isArray(path) &&
    path.every((line: unknown) => isListOf(line, isPlace))
  );
}
