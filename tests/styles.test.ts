/** Rules of the style sheets: each in its layer, each room's inside its own scope, and no class said twice. See docs/decisions/0015-layers-and-scopes.md. */
import { describe, expect, it } from 'vitest';
import { projectFiles, textOf } from './projectFiles.ts';

const SHEETS = projectFiles().filter((file) => file.startsWith('src/') && file.endsWith('.css'));
const FIRST = 'src/kit/theme/theme.css';
const LAYERS = ['tokens', 'kit', 'room'];
const MOST_LINES = 300;

interface Block {
  /** selector or at-rule */
  readonly head: string;
  /** null: a statement that ends with a semicolon */
  readonly body: string | null;
}

/** What stands at the top of a sheet or in a block of it. */
function blocks(css: string): Block[] {
  const text = css.replace(/\/\*[\s\S]*?\*\//g, '');
  const found: Block[] = [];
  let start = 0;
  let open = 0;
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i]!;
    if (sign === '{' && depth++ === 0) open = i;
    if (sign === '}' && --depth === 0) {
      found.push({ head: text.slice(start, open).trim(), body: text.slice(open + 1, i) });
      start = i + 1;
    }
    if (sign === ';' && depth === 0) {
      found.push({ head: text.slice(start, i).trim(), body: null });
      start = i + 1;
    }
  }
  return found;
}

const layerOf = (file: string): string => {
  if (file === 'src/kit/theme/tokens.css' || file === 'src/kit/theme/fonts.css') return 'tokens';
  return file.startsWith('src/rooms/') ? 'room' : 'kit';
};

const roomOf = (file: string): string | null => /^src\/rooms\/([^/]+)\//.exec(file)?.[1] ?? null;

/** What of a sheet stands where it should not. */
function strays(file: string, css: string): string[] {
  const room = roomOf(file);
  return blocks(css).flatMap(({ head, body }) => {
    if (body === null) {
      const allowed = file === FIRST && (head.startsWith('@import') || head === `@layer ${LAYERS.join(', ')}`);
      return allowed ? [] : [head];
    }
    if (head !== `@layer ${layerOf(file)}`) return [head];
    if (room === null) return [];
    return blocks(body).flatMap((inner) => (inner.head === `@scope (.room-${room})` ? [] : [inner.head]));
  });
}

/** Classes that a sheet says by themselves, wherever it says them but under a condition. */
function ownClasses(css: string): string[] {
  return blocks(css).flatMap(({ head, body }) => {
    if (/^@(?:layer|scope)\b/.test(head)) return ownClasses(body ?? '');
    return head.split(',').flatMap((selector) => /^\s*\.([\w-]+)\s*$/.exec(selector)?.[1] ?? []);
  });
}

/** What else the outermost element of a room wears, as far as it is written out. */
function outermostClasses(view: string, room: string): string[] {
  return [...view.matchAll(new RegExp(`class=(?:"|\\{\`)room-${room}([^"\`$]*)`, 'g'))].flatMap((match) =>
    match[1]!.split(' ').filter((name) => name !== ''),
  );
}

describe('style sheets', () => {
  it('stand in their layer, and those of a room in its scope', () => {
    expect(SHEETS.length).toBeGreaterThan(15);
    expect(SHEETS.flatMap((file) => strays(file, textOf(file)!).map((head) => `${file}: ${head}`))).toEqual([]);
  });

  it('take the order of the layers from one place, which the page reads before any other sheet', () => {
    const statements = SHEETS.filter((file) => /@layer [\w-]+(?:, [\w-]+)*;/.test(textOf(file)!));
    expect(statements).toEqual([FIRST]);
    const main = textOf('src/app/main.tsx')!;
    const own = [...main.matchAll(/^import .*'(\.[^']+)';$/gm)].map((match) => match[1]);
    expect(own[0]).toBe('../kit/theme/theme.css');
  });

  it('are scoped to a class that their room wears', () => {
    const rooms = new Set(SHEETS.flatMap((file) => roomOf(file) ?? []));
    expect(rooms.size).toBe(9);
    for (const room of rooms) {
      const worn = projectFiles().filter(
        (file) =>
          file.startsWith(`src/rooms/${room}/`) && file.endsWith('.tsx') && textOf(file)!.includes(`room-${room}`),
      );
      expect(worn, room).toHaveLength(1);
    }
  });

  it('say `:scope` where they mean the outermost element: in a scope other selectors look only inside it', () => {
    for (const file of SHEETS) {
      const room = roomOf(file);
      if (room === null) continue;
      const views = projectFiles().filter((view) => view.startsWith(`src/rooms/${room}/`) && view.endsWith('.tsx'));
      const outermost = views.flatMap((view) => outermostClasses(textOf(view)!, room));
      const css = textOf(file)!.replace(/\/\*[\s\S]*?\*\//g, '');
      const wrong = outermost.filter((name) => new RegExp(`(?<!:scope)\\.${name}(?![\\w-])`).test(css));
      expect(wrong, file).toEqual([]);
    }
  });

  it('say no class twice', () => {
    const places = new Map<string, Set<string>>();
    for (const file of SHEETS) {
      for (const name of ownClasses(textOf(file)!)) places.set(name, (places.get(name) ?? new Set()).add(file));
    }
    expect(places.size).toBeGreaterThan(100);
    expect([...places].filter(([, files]) => files.size > 1)).toEqual([]);
  });

  it(`have at most ${MOST_LINES} lines`, () => {
    expect(SHEETS.filter((file) => textOf(file)!.split('\n').length - 1 > MOST_LINES)).toEqual([]);
  });

  it('would be seen where they break these', () => {
    expect(strays('src/kit/a.css', '.a { color: red; }')).toEqual(['.a']);
    expect(strays('src/kit/a.css', '@layer room { .a { color: red; } }')).toEqual(['@layer room']);
    expect(strays('src/kit/a.css', '@layer kit { .a { color: red; } }')).toEqual([]);
    expect(strays('src/rooms/a/a.css', '@layer room { .a { color: red; } }')).toEqual(['.a']);
    expect(strays('src/rooms/a/a.css', '@layer room { @scope (.room-b) { .a {} } }')).toEqual(['@scope (.room-b)']);
    expect(strays('src/rooms/a/a.css', '@layer room { @scope (.room-a) { .a {} } }')).toEqual([]);
    expect(
      outermostClasses(['<main class={`room-a b $', '{form}`}> <main class="room-a b-narrow">'].join(''), 'a'),
    ).toEqual(['b', 'b-narrow']);
    expect(ownClasses('@layer room { @scope (.room-a) { .a, .b .c, .d { } @media print { .e {} } } }')).toEqual([
      'a',
      'd',
    ]);
  });
});
