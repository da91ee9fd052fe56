/**
 * Which format and version a file says it has, before its shape is looked at, and how an older file becomes one of today. A newer file, or another kind of file,
 * is told in words instead of a hundred missing keys.
 */
import type { Phrase } from '../base/phrases.ts';
import { bad, good, type Result } from '../base/result.ts';

/** Turns a file of version `n` into one of version `n + 1`; the table is indexed by n. */
export type Migrations = Readonly<Record<number, (old: Readonly<Record<string, unknown>>) => Record<string, unknown>>>;

export interface FormatHistory {
  readonly format: string;
  readonly current: number;
  readonly migrations: Migrations;
}

/** Version 1 is the first, so there is nothing to bring forward yet. */
export const RECEIVER_HISTORY: FormatHistory = { format: 'haystack-receiver', current: 1, migrations: {} };

/** The value as a file of the current version. */
export function bringForward(json: unknown, history: FormatHistory, file: string): Result<unknown> {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return bad({
      file,
      place: '',
      found: Array.isArray(json) ? ['aList'] : json === null ? ['written', 'null'] : ['kindOfValue', typeof json],
      wanted: ['anObject'],
    });
  }
  let value = json as Record<string, unknown>;
  if (value.format !== history.format) {
    const found: Phrase = typeof value.format === 'string' ? ['ofFormat', value.format.slice(0, 40)] : ['noFormat'];
    return bad({ file, place: '/format', found, wanted: ['named', history.format] });
  }
  const version = value.version;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return bad({
      file,
      place: '/version',
      found: ['noVersion'],
      wanted: ['wholeFrom', 1, history.current, ''],
    });
  }
  if (version > history.current) {
    const wanted: Phrase = ['versionAtMost', history.current];
    return bad({ file, place: '/version', found: ['version', version], wanted });
  }
  for (let from = version; from < history.current; from++) {
    const step = history.migrations[from];
    if (step === undefined) {
      return bad({
        file,
        place: '/version',
        found: ['version', version],
        wanted: ['versionAtLeast', from + 1],
      });
    }
    value = { ...step(value), version: from + 1 };
  }
  return good(value);
}
