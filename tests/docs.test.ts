/**
 * The documents say only what is true: every path they name is there, every command can be given, every name from the code stands in the code.
 * What is set in `backticks`, linked or put into a fenced block is taken at its word.
 */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { buildProgram } from '../src/cli/program.ts';
import { DRILLS } from '../src/drills/drill.ts';
import { terminal } from '../src/words/en/terminal.ts';
import { shippedLibrary } from './files/shipped.ts';
import { projectFiles, textOf } from './projectFiles.ts';
import { NOT_YET } from './technician/notYet.ts';

const FILES = projectFiles();
const DOCUMENTS = FILES.filter((file) => file.endsWith('.md') && !file.startsWith('tests/'));
const SCRIPTS = Object.keys(
  (JSON.parse(readFileSync('package.json', 'utf8')) as { scripts?: Record<string, string> }).scripts ?? {},
);
const CODE = FILES.filter(
  (file) => /^(src|tests|scripts|perf|scenarios|\.ci)\//.test(file) || /^[\w.]+\.(ts|json|html)$/.test(file),
)
  .filter((file) => /\.(tsx?|mjs|json|cir|css|html)$/.test(file) && file !== 'package-lock.json')
  .map((file) => textOf(file) ?? '')
  .join('\n');
const WORDS = new Set(CODE.match(/[A-Za-z_$][\w$]*/g));

/** What is wrong with one thing that a document says, or null. */
function lie(said: string, document: string): string | null {
  const command = /^(?:npm|npx|node|\.\/?\.ci\/run|\.ci\/run)\b.*$/.exec(said);
  if (command !== null) return wrongCommand(said);
  if (/^(?:https?|mailto):/.test(said)) return null;
  if (FILES.some((file) => file === said || file.endsWith(`/${said}`))) return null;
  if (looksLikePath(said)) return pathExists(said, document) ? null : 'no such file or folder';
  const symbol = /^([A-Za-z_$][\w$]*)(?:\.([A-Za-z_$][\w$]*))*(?:\(.*\))?$/.exec(said);
  if (symbol === null) return null;
  const lost = said
    .replace(/\(.*$/, '')
    .split('.')
    .filter((word) => !WORDS.has(word));
  return lost.length === 0 ? null : `no such name in the code: ${lost.join(', ')}`;
}

function wrongCommand(said: string): string | null {
  const words = said.split(/\s+/);
  if (words[0] === '.ci/run') return existsSync('.ci/run') ? null : 'no such file';
  if (words[0] === 'node') return existsSync(words[1] ?? '') ? null : `no such file: ${words[1]}`;
  if (words[0] === 'npx')
    return existsSync(path.join('node_modules', '.bin', words[1] ?? '')) ? null : `no such program: ${words[1]}`;
  const rest = words.slice(1).filter((word) => word !== '--silent' && word !== '-s');
  if (rest[0] === 'ci' || rest[0] === 'install') return null;
  const script = rest[0] === 'run' ? rest[1] : rest[0];
  if (script === undefined || !SCRIPTS.includes(script)) return `no such script: ${script}`;
  if (script !== 'haystack') return null;
  const given = rest.slice(rest.indexOf('--') + 1);
  if (rest.indexOf('--') < 0 || given[0] === undefined || /^[<[-]/.test(given[0])) return null;
  const wanted = buildProgram({ words: terminal, out() {}, err() {}, exit() {} }).commands.find(
    (one) => one.name() === given[0],
  );
  if (wanted === undefined) return `the command line has no command ${given[0]}`;
  const known = new Set(wanted.options.flatMap((option) => [option.long, option.short]));
  const unknown = given
    .map((word) => word.replace(/^\[|[\]=].*$/g, ''))
    .filter((word) => /^--?[a-z]/.test(word) && word !== '--help' && !known.has(word));
  return unknown.length === 0 ? null : `${given[0]} has no option ${unknown.join(', ')}`;
}

function looksLikePath(said: string): boolean {
  if (/\s/.test(said) || said.startsWith('/') || said.startsWith('@') || /^[A-Z]+(\.\w+)?$/.test(said)) return false;
  return (
    /^\.{0,2}[\w@<>*.-]+\/[\w@<>*./-]*$/.test(said) ||
    /^[\w<>*.-]+\.(?:tsx?|mjs|json|md|cir|css|html|wav|svg)$/.test(said)
  );
}

/** `<id>`, `*` and a trailing ... stand for any name; a bare file name may lie in any folder. */
function pathExists(said: string, document: string): boolean {
  const plain = said.replace(/[/.]+$/, '').replace(/#.*$/, '');
  const base = path.posix.dirname(document);
  const candidates = [plain, path.posix.normalize(path.posix.join(base, plain))];
  if (candidates.some((candidate) => !candidate.startsWith('..') && existsSync(candidate))) return true;
  const pattern = (text: string): string =>
    text.replace(/[.+^$(){}|[\]\\]/g, '\\$&').replace(/<[\w-]+>|\*+|\bN+\b/g, '[^/]+');
  const anywhere = plain.includes('/') ? '^' : '(?:^|/)';
  const built = /^(dist|node_modules|\.cache|test-results)\b/.test(plain);
  return (
    built ||
    candidates.some((candidate) =>
      FILES.some((file) => new RegExp(`${anywhere}${pattern(candidate)}(?:$|/)`).test(file)),
    )
  );
}

/** Everything a document says about the project: backticks, links, fenced command lines. */
function sayings(markdown: string): string[] {
  const said: string[] = [];
  const prose = markdown.replace(/```(\w*)\n([\s\S]*?)```/g, (_, language: string, block: string) => {
    for (const line of block.split('\n')) {
      const given = line
        .replace(/^\s*\$\s*/, '')
        .replace(/\s+#.*$/, '')
        .trim();
      if (/^(?:sh|bash|)$/.test(language) && /^(?:npm|npx|node|\.ci\/run)\b/.test(given)) said.push(given);
    }
    return '';
  });
  for (const match of prose.matchAll(/`([^`\n]+)`/g)) said.push(match[1]!);
  for (const match of prose.matchAll(/\]\(([^)\s]+)\)/g))
    if (!/^(?:https?:|#|mailto:)/.test(match[1]!)) said.push(match[1]!.replace(/#.*$/, ''));
  return said;
}

describe('the documents', () => {
  it('are there', () => {
    expect(DOCUMENTS).toEqual(expect.arrayContaining(['README.md', 'DEVELOPERS.md', 'scenarios/README.md']));
    expect(DOCUMENTS.filter((file) => file.startsWith('docs/')).length).toBeGreaterThan(0);
  });

  it('name only paths, commands and code that exist', () => {
    const lies = DOCUMENTS.flatMap((document) =>
      sayings(readFileSync(document, 'utf8')).flatMap((said) => {
        const wrong = lie(said, document);
        return wrong === null ? [] : [`${document}: \`${said}\`: ${wrong}`];
      }),
    );
    expect(lies).toEqual([]);
  });

  it('tell of every command that the command line has', () => {
    const all = DOCUMENTS.map((document) => readFileSync(document, 'utf8')).join('\n');
    const commands = buildProgram({ words: terminal, out() {}, err() {}, exit() {} }).commands.map((command) =>
      command.name(),
    );
    expect(commands.filter((name) => !new RegExp(`haystack -- ${name}\\b`).test(all))).toEqual([]);
  });
});

describe('this net itself', () => {
  it('catches what is not there', () => {
    const caught = [
      'src/physics/nowhere.ts',
      'nowhere.ts',
      'docs/nowhere.md',
      'npm run nowhere',
      'node scripts/nowhere.mjs',
      'npx nowhere',
    ];
    caught.push(
      'noSuchFunctionAnywhere',
      'readDeck.noSuchMember',
      'noSuchCall(a, b)',
      'scenarios/<id>/<id>/<id>/nowhere.json',
      '../outside/of.ts',
    );
    caught.push('npm run --silent haystack -- nowhere', 'npm run --silent haystack -- response DECK.cir --nowhere');
    // Written apart, because a name that stands here would be found here.
    const glued = caught.map((said) => said.replace(/[nN]owhere|noSuch\w+/g, (word) => `${word}X${'q'.repeat(3)}`));
    for (const said of glued) expect(lie(said, 'README.md'), said).not.toBeNull();
  });

  it('lets through what is there, and what names nothing', () => {
    const free = [
      'src/physics/readDeck.ts',
      'readDeck.ts',
      'scenarios/receivers/<id>/receiver.json',
      'npm start',
      'npm test',
      'readDeck',
      'readDeck(text, file)',
    ];
    free.push(
      'R L C K G I',
      '.ac',
      '45.75 MHz',
      'https://example.org/a/b',
      'npm run --silent haystack -- response DECK.cir --node NODE',
    );
    for (const said of free) expect(lie(said, 'README.md'), said).toBeNull();
  });

  it('reads backticks, links and fenced commands', () => {
    const markdown = 'See `a/b.ts` and [c](../d.md#e).\n```sh\n$ npm run x -- y # note\noutput\n```\n';
    expect(sayings(markdown)).toEqual(['npm run x -- y', 'a/b.ts', '../d.md']);
  });
});

describe('figures of the read-me', () => {
  const { scenarios, receivers } = shippedLibrary();
  it.each([
    ['scenarios', /^- (\d+) scenarios in \d+ tracks/m, scenarios.length],
    ['tracks', /^- \d+ scenarios in (\d+) tracks/m, new Set(scenarios.map(({ track }) => track)).size],
    ['receivers', /^- (\d+) receivers:/m, receivers.size],
    ['drills', /^- (\d+) drills of one skill each/m, DRILLS.length],
    [
      'what the technician passes',
      /passes (every one|all but \d+) of them/,
      NOT_YET.size === 0 ? 'every one' : `all but ${NOT_YET.size}`,
    ],
  ])('are counted: %s', (_, said, counted) => {
    expect(said.exec(textOf('README.md') ?? '')?.[1]).toBe(`${counted}`);
  });
});

describe('the list of scenarios for instructors', () => {
  const list = textOf('scenarios/README.md') ?? '';
  const { scenarios } = shippedLibrary();

  it('has a row for each of them, under its title and receiver, and none else', () => {
    const rows = [...list.matchAll(/^\| ([A-Z]+-\d+) \| (.*?) \| `(.*?)` \|/gm)].map((row) =>
      row.slice(1, 4).join(' | '),
    );
    expect(rows.toSorted()).toEqual(
      scenarios.map(({ code, title, receiver }) => [code, title, receiver].join(' | ')).toSorted(),
    );
    expect(/^(\d+) scenarios on /m.exec(list)?.[1]).toBe(`${scenarios.length}`);
  });
});
