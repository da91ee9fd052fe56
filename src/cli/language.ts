/** Which language the command line speaks: the terminal's own where there is a folder for it, else English. */
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { firstSpoken, USUAL_LANGUAGE } from '../base/languages.ts';
import { terminal } from '../words/en/terminal.ts';
import type { TerminalWords } from '../words/words.ts';

const WORDS = path.resolve(fileURLToPath(import.meta.url), '../../words');

/** By the variables of POSIX (`LC_ALL`, then `LC_MESSAGES`, then `LANG`). */
export async function terminalWords(env: Readonly<Record<string, string | undefined>>): Promise<TerminalWords> {
  const named = env.LC_ALL || env.LC_MESSAGES || env.LANG || USUAL_LANGUAGE;
  const folders = readdirSync(WORDS, { withFileTypes: true }).flatMap((one) => (one.isDirectory() ? [one.name] : []));
  const tag = firstSpoken([tagOf(named)], folders);
  if (tag === USUAL_LANGUAGE) return terminal;
  const folder = pathToFileURL(path.join(WORDS, tag, 'terminal.ts'));
  return ((await import(folder.href)) as { readonly default: TerminalWords }).default;
}

/** `pt_BR.UTF-8@latin` is `pt-BR`. */
const tagOf = (named: string): string => named.replace(/[.@].*$/, '').replaceAll('_', '-');
