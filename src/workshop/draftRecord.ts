/** A draft as it comes out of a store: whatever is no part of a draft is left out, and what is missing is as in a new one. */
import { CONTROLS } from '../bench/controls/controls.ts';
import { FAULT_KINDS, type Fault } from '../receiver/faults/fault.ts';
import { FAULT_ROWS } from '../receiver/faults/faultRows.ts';
import { MILD_LIFE } from '../scenario/life.ts';
import { PAR_NOT_KNOWN } from '../scenario/par.ts';
import { type Draft, newDraft } from './draft.ts';
import type { ControlId } from './leftCards.ts';

type Plain = Readonly<Record<string, unknown>>;

/** Keys that a new draft has not, and an example of what each holds. */
const OPTIONAL: Plain = { set: 0, dealsFaults: true, slugsRight: true, language: '', author: '' };

/** null: no draft at all. */
export function draftOfRecord(record: unknown): Draft | null {
  if (!isPlain(record) || record.format !== 'haystack-scenario' || typeof record.receiver !== 'string') return null;
  const fresh = newDraft(record.receiver, 1);
  const kept: Record<string, unknown> = { ...fresh };
  for (const [key, usual] of Object.entries({ ...fresh, ...OPTIONAL })) {
    const value = record[key];
    if (key === 'faults' || key === 'par' || key === 'start') continue;
    if (isPlain(usual)) kept[key] = isPlain(value) ? { ...usual, ...alike(value, usual) } : usual;
    else if (sameKind(value, usual)) kept[key] = value;
  }
  const { bench, life, responses, faults, timeLimitSeconds } = record;
  if (isPlain(bench) && typeof bench.centreErrorHz === 'number')
    kept.bench = { ...(kept.bench as object), centreErrorHz: bench.centreErrorHz };
  if (isPlain(life)) kept.life = alike(life, MILD_LIFE as unknown as Plain);
  if (isTexts(responses)) kept.responses = responses;
  if (typeof timeLimitSeconds === 'number') kept.timeLimitSeconds = timeLimitSeconds;
  const translations = translationsOf(record.translations);
  if (translations !== null) kept.translations = translations;
  kept.start = startOf(record.start, fresh.start as unknown as Plain);
  kept.faults = Array.isArray(faults) ? faults.filter(isFault) : [];
  return { ...(kept as unknown as Draft), version: 2, par: PAR_NOT_KNOWN };
}

/** The same texts in other languages; those that are not whole are left out. */
function translationsOf(value: unknown): Plain | null {
  if (!isPlain(value)) return null;
  const whole = Object.entries(value).filter(([, text]) => {
    if (!isPlain(text) || typeof text.title !== 'string' || !isTexts(text.hints) || !isPlain(text.words)) return false;
    const { words } = text;
    return ['brief', 'story', 'lesson'].every((name) => typeof words[name] === 'string');
  });
  return whole.length === 0 ? null : Object.fromEntries(whole);
}

function startOf(start: unknown, usual: Plain): Plain {
  if (!isPlain(start)) return usual;
  const figures = isPlain(start.slugs) ? Object.entries(start.slugs).filter(([, turns]) => isNumber(turns)) : [];
  const leads = isPlain(start.leads)
    ? Object.entries(start.leads).filter(([, end]) => end === null || typeof end === 'string')
    : [];
  return {
    slugs: Object.fromEntries(figures),
    randomTurns: isNumber(start.randomTurns) ? start.randomTurns : 0,
    controls: isPlain(start.controls) ? knownControls(start.controls) : {},
    prepared: isTexts(start.prepared) ? start.prepared : [],
    ...(leads.length === 0 ? {} : { leads: Object.fromEntries(leads) }),
    ...(typeof start.steelIn === 'string' ? { steelIn: start.steelIn } : {}),
  };
}

/** A value of another kind than its control has would stand on the bench as it is. */
const knownControls = (controls: Plain): Plain =>
  Object.fromEntries(
    Object.entries(controls).filter(([id, value]) => {
      const resting: unknown = Object.hasOwn(CONTROLS.resting, id) ? CONTROLS.resting[id as ControlId] : undefined;
      return typeof resting === 'number' ? isNumber(value) : typeof value === typeof resting;
    }),
  );

function isFault(value: unknown): value is Fault {
  if (!isPlain(value)) return false;
  const kind = FAULT_KINDS.find((one) => one === value.kind);
  if (kind === undefined) return false;
  return Object.entries(FAULT_ROWS[kind].fields).every(([key, { holds }]) =>
    holds === 'number' ? isNumber(value[key]) : typeof value[key] === 'string',
  );
}

/** The members of `value` that are of the same kind as those of `usual`. */
const alike = (value: Plain, usual: Plain): Plain =>
  Object.fromEntries(Object.entries(value).filter(([key, one]) => key in usual && sameKind(one, usual[key])));

function sameKind(value: unknown, usual: unknown): boolean {
  if (Array.isArray(usual)) return isTexts(value);
  return usual === null ? false : typeof usual === 'number' ? isNumber(value) : typeof value === typeof usual;
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
const isTexts = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((one) => typeof one === 'string');
const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
