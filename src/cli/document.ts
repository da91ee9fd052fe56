/** What a file is, by what it says of itself; receivers and scenarios are read as far as their format, runs whole. */
import path from 'node:path';
import { bad, good, type Result } from '../base/result.ts';
import { withPar } from '../certify/certifiedPar.ts';
import { parseJson } from '../files/parseJson.ts';
import type { RunFile } from '../files/runFile.ts';
import { parseRunFile, readRunFile } from '../files/runFileSchema.ts';
import { parseScenario } from '../files/scenarioSchema.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { readText } from './files.ts';
import { shelvedPar } from './shelf.ts';
import { type Terminal, worded } from './terminal.ts';

export type Document =
  | { readonly kind: 'deck'; readonly text: string }
  | { readonly kind: 'receiver' | 'scenario'; readonly json: unknown }
  | { readonly kind: 'run'; readonly run: RunFile };

const DECK_ENDINGS = new Set(['.cir', '.ckt', '.sp', '.net']);
const KINDS = { 'haystack-receiver': 'receiver', 'haystack-scenario': 'scenario' } as const;

export function readDocument(terminal: Terminal, name: string): Result<Document> {
  const text = readText(terminal, name);
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
  if (document.value.kind === 'scenario') return scenarioOf(document.value.json, name);
  const { kind } = document.value;
  const { files } = terminal.words.cli;
  const found = kind === 'deck' ? files.noFormat : files.format(`haystack-${kind}`);
  return bad(worded({ file: name, place: '/format', found, wanted: files.scenarioOnly }));
}

/** With the par of its certificate, where the project has one. */
export function scenarioOf(json: unknown, name: string): Result<Scenario> {
  const scenario = parseScenario(json, name);
  return scenario.ok ? good(withPar(scenario.value, shelvedPar(scenario.value.id))) : scenario;
}

function jsonDocument(terminal: Terminal, text: string, name: string): Result<Document> {
  // Only a run file may be large; the others keep the smaller bound of the reader.
  if (/"format"\s*:\s*"haystack-run"/.test(text.slice(0, 2000))) return runDocument(readRunFile(text, name));
  const json = parseJson(text, name);
  if (!json.ok) return json;
  const format = formatOf(json.value);
  if (format === 'haystack-run') return runDocument(parseRunFile(json.value, name));
  if (typeof format === 'string' && Object.hasOwn(KINDS, format)) {
    return good({ kind: KINDS[format as keyof typeof KINDS], json: json.value });
  }
  const fileWords = terminal.words.cli.files;
  const found =
    format === undefined ? fileWords.noFormat : fileWords.format((JSON.stringify(format) ?? '').slice(0, 60));
  return bad(worded({ file: name, place: '/format', found, wanted: fileWords.formats }));
}

function runDocument(run: Result<RunFile>): Result<Document> {
  return run.ok ? good({ kind: 'run', run: run.value }) : run;
}

function formatOf(json: unknown): unknown {
  return typeof json === 'object' && json !== null ? (json as { readonly format?: unknown }).format : undefined;
}
