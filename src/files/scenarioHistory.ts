/** How a scenario file of an older version becomes one of today. What was always said in the first version and is what holds anyway may stay: a file may say it. */
import { faultToFile } from './faultFile.ts';
import type { FormatHistory } from './migrations.ts';

type Json = Record<string, unknown>;

export const SCENARIO_HISTORY: FormatHistory = {
  format: 'haystack-scenario',
  current: 2,
  migrations: {
    1: (old) => {
      const renamed = rename(old, { after: 'recommendedAfter', work: 'responses' });
      change(renamed, 'start', (start) => rename(start, { scatterTurns: 'randomTurns' }));
      change(renamed, 'aids', ({ exactReadouts: _, ...aids }) => rename(aids, { waxMarks: 'toleranceMarks' }));
      if (Array.isArray(renamed.faults))
        renamed.faults = renamed.faults.map((fault) => (isObject(fault) ? faultToFile(fault) : fault));
      return renamed;
    },
  },
};

/** Keys stay where they stand. */
function rename(object: Readonly<Json>, names: Readonly<Record<string, string>>): Json {
  return Object.fromEntries(Object.entries(object).map(([key, value]) => [names[key] ?? key, value]));
}

function change(object: Json, key: string, by: (inside: Json) => Json): void {
  const inside = object[key];
  if (isObject(inside)) object[key] = by(inside);
}

function isObject(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
