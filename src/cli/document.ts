/** What a file is, by what it says of itself; receivers and scenarios are read as far as their format, runs whole. */
import path from 'node:path';
import { bad, good, type Result } from '../base/result.ts';
import { withPar } from '../certify/certifiedPar.ts';
import { scenarioFrom } from '../files/library.ts';
import { readJson } from '../files/parseJson.ts';
import type { RunFile } from '../files/runFile.ts';
import { readRunFile } from '../files/runFileSchema.ts';
import { isRunsText } from '../files/runsFile.ts';
import { saysFormat } from '../files/saysFormat.ts';
import { withTextPlaces } from '../files/textPlaces.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { readText as fileText } from './files.ts';
import { shelvedPar } from './shelf.ts';
import { type Terminal, worded } from './terminal.ts';

export type Document =
  | { readonly kind: 'deck'; readonly text: string }
  | {
      readonly kind: 'receiver' | 'scenario' | 'certificate' | 'evening' | 'sealed-evening' | 'runs';
      readonly json: unknown;
      readonly text: string;
    }
  | { readonly kind: 'run'; readonly run: RunFile };

const DECK_ENDINGS = new Set(['.cir', '.ckt', '.sp', '.net']);
const KINDS = {
  'haystack-receiver': 'receiver',
  'haystack-scenario': 'scenario',
  'haystack-certificate': 'certificate',
  'haystack-evening': 'evening',
  'haystack-sealed-evening': 'sealed-evening',
} as const;

export function readDocument(terminal: Terminal, name: string): Result<Document> {
  const text = fileText(terminal, name);
  if (!text.ok) return text;
  const ending = path.extname(name).toLowerCase();
  if (DECK_ENDINGS.has(ending)) return good({ kind: 'deck', text: text.value });
  if (ending === '.json' || /^\uFEFF?\s*[{[]/.test(text.value)) return jsonDocument(terminal, text.value, name);
  // A deck under another name still has one of these lines.
  if (/^\s*\.(?:ac|end|print)\b/im.test(text.value)) return good({ kind: 'deck', text: text.value });
  const { neither, known } = terminal.words.cli.files;
  return bad(worded({ file: name, place: '', found: neither, wanted: known }));
}

/** For commands that take nothing but a scenario. */
export function readScenario(terminal: Terminal, name: string): Result<Scenario> {
  const document = readDocument(terminal, name);
  if (!document.ok) return document;
  if (document.value.kind === 'scenario') return scenarioOf(document.value, name);
  const { kind } = document.value;
  const { files } = terminal.words.cli;
  const found = kind === 'deck' ? files.noFormat : files.format(`haystack-${kind}`);
  return bad(worded({ file: name, place: '/format', found, wanted: files.scenarioOnly }));
}

/** With the par of its certificate, where the project has one. */
export function scenarioOf({ text }: { readonly text: string }, name: string): Result<Scenario> {
  const scenario = scenarioFrom(text, name);
  return scenario.ok ? good(withPar(scenario.value, shelvedPar(scenario.value.id))) : scenario;
}

function jsonDocument(terminal: Terminal, text: string, name: string): Result<Document> {
  // The runs of a whole exam are read one by one by whoever wants them.
  if (isRunsText(text)) return good({ kind: 'runs', json: null, text });
  // Only a run file may be large; the others keep the smaller bound of the reader.
  if (saysFormat(text, 'run')) return runDocument(readRunFile(text, name));
  const json = readJson(text, name);
  const format = formatOf(json.value);
  const known = typeof format === 'string' && (format === 'haystack-run' || Object.hasOwn(KINDS, format));
  if (!known && json.problems.length > 0) return bad(...json.problems);
  if (format === 'haystack-run') return runDocument(readRunFile(text, name));
  if (typeof format === 'string' && Object.hasOwn(KINDS, format)) {
    return good({ kind: KINDS[format as keyof typeof KINDS], json: json.value, text });
  }
  const fileWords = terminal.words.cli.files;
  const found =
    format === undefined ? fileWords.noFormat : fileWords.format((JSON.stringify(format) ?? '').slice(0, 60));
  const problem = worded({ file: name, place: '/format', found, wanted: fileWords.formats });
  return bad(...withTextPlaces([problem], name, text));
}

function runDocument(run: Result<RunFile>): Result<Document> {
  return run.ok ? good({ kind: 'run', run: run.value }) : run;
}

function formatOf(json: unknown): unknown {
  return typeof json === 'object' && json !== null ? (json as { readonly format?: unknown }).format : undefined;
}
