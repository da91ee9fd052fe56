/** Reads the table of rooms, and what a file imports and touches from its syntax tree; `boundaries.test.ts` judges with it. */
import path from 'node:path';
import { parseAst } from 'vite';

export interface Room {
  readonly mayImport: readonly string[];
  readonly mayImportTypes: readonly string[];
  /** package names; one without a slash also stands for its scope */
  readonly libraries: readonly string[];
  /** `no`: pure; `yes`: a page; `node`: a program */
  readonly platform: 'no' | 'yes' | 'node';
  readonly everything: boolean;
}

export interface ImportUse {
  readonly from: string;
  readonly typeOnly: boolean;
}

/** The rows under the heading `| room | holds | may import | outside library | DOM |`, in order. */
export function readRooms(markdown: string): ReadonlyMap<string, Room> {
  const lines = markdown.split(/\r?\n/);
  const head = lines.findIndex((line) =>
    /^\|\s*room\s*\|\s*holds\s*\|\s*may import\s*\|\s*outside library\s*\|\s*DOM\s*\|/.test(line),
  );
  if (head < 0) throw new Error('DEVELOPERS.md has no table of rooms');
  const rooms = new Map<string, Room>();
  for (const line of lines.slice(head + 2)) {
    if (!line.startsWith('|')) break;
    const [name = '', , imports = '', libraries = '', platform = ''] = line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim());
    if (platform !== 'no' && platform !== 'yes' && platform !== 'node')
      throw new Error(`row ${name}: DOM is "${platform}"`);
    const listed = entries(imports);
    rooms.set(name, {
      mayImport: listed.filter((entry) => entry !== 'everything' && !entry.endsWith(' types')),
      mayImportTypes: listed.filter((entry) => entry.endsWith(' types')).map((entry) => entry.replace(/ types$/, '')),
      libraries: entries(libraries),
      platform,
      everything: listed.includes('everything'),
    });
  }
  return rooms;
}

/** The room a file of `src/` lies in: its folder, and under `src/rooms/` the folder below that. */
export function roomOf(file: string): string {
  const [, folder, below] = file.split('/');
  return folder === 'rooms' ? `rooms/${below}` : folder!;
}

/** One sentence for each import that the law forbids. */
export function breaches(file: string, uses: readonly ImportUse[], rooms: ReadonlyMap<string, Room>): string[] {
  const own = roomOf(file);
  const room = rooms.get(own);
  if (room === undefined) return [`${file}: its room has no row`];
  return uses.flatMap((use) => {
    const reason = forbidden(file, own, room, use, rooms);
    return reason === null ? [] : [`${file}: ${use.from}: ${reason}`];
  });
}

/** Files that reach themselves through what they import, each circle sorted. Tarjan's strongly connected components. */
export function circles(imports: ReadonlyMap<string, readonly string[]>): string[][] {
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const found: string[][] = [];
  const visit = (file: string): void => {
    order.set(file, order.size);
    low.set(file, order.get(file)!);
    stack.push(file);
    for (const other of imports.get(file) ?? []) {
      if (!order.has(other)) visit(other);
      if (stack.includes(other)) low.set(file, Math.min(low.get(file)!, low.get(other)!));
    }
    if (low.get(file) !== order.get(file)) return;
    const circle = stack.splice(stack.indexOf(file));
    if (circle.length > 1 || imports.get(file)?.includes(file)) found.push(circle.sort());
  };
  for (const file of imports.keys()) if (!order.has(file)) visit(file);
  return found;
}

function forbidden(
  file: string,
  own: string,
  room: Room,
  use: ImportUse,
  rooms: ReadonlyMap<string, Room>,
): string | null {
  if (!use.from.startsWith('.')) {
    if (use.from.startsWith('node:')) return room.platform === 'node' ? null : 'only a program may use what Node has';
    const parts = use.from.split('/');
    const name = use.from.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0]!;
    return room.libraries.includes(name) || room.libraries.includes(parts[0]!) ? null : `${own} may not use ${name}`;
  }
  const target = path.posix.normalize(path.posix.join(path.posix.dirname(file), use.from));
  if (target.startsWith('assets/') && !/\.[cm]?[jt]sx?$/.test(target))
    return room.platform === 'no' ? 'a pure room has no assets' : null;
  if (/^(scenarios|certificates)\//.test(target) && own === 'services') return null;
  if (!target.startsWith('src/')) return 'outside src';
  const other = roomOf(target);
  if (other === own) return null;
  if (!rooms.has(other)) return `there is no room ${other}`;
  if (other === 'app') return 'nothing imports app';
  if (room.everything || room.mayImport.includes(other)) return null;
  if (room.mayImportTypes.includes(other)) return use.typeOnly ? null : `${own} may import only types of ${other}`;
  return `${own} may not import ${other}`;
}

/** Every import of a file, in whatever form; several of the same module are one, and it is type-only when all of them are. */
export function importsOf(source: string, file: string): readonly ImportUse[] {
  const key = `${file}\n${source}`;
  const uses = known.get(key) ?? importsIn(source, file);
  known.set(key, uses);
  return uses;
}

/** Each check reads every file anew; its text is parsed once. */
const known = new Map<string, readonly ImportUse[]>();

function importsIn(source: string, file: string): readonly ImportUse[] {
  const found = new Map<string, boolean>();
  const add = (from: unknown, typeOnly: boolean): void => {
    if (typeof from === 'string') found.set(from, (found.get(from) ?? true) && typeOnly);
  };
  walk(parse(source, file), (node) => {
    const from = (node.source as Node | null | undefined)?.value;
    switch (node.type) {
      case 'ImportDeclaration': {
        const names = node.specifiers as Node[];
        const onlyTypes = names.length > 0 && names.every((name) => name.importKind === 'type');
        return add(from, node.importKind === 'type' || onlyTypes);
      }
      case 'ExportNamedDeclaration':
      case 'ExportAllDeclaration':
        return add(from, node.exportKind === 'type');
      case 'ImportExpression':
        return add(from, false);
      case 'TSImportType':
        return add(from, true);
      case 'NewExpression':
        return isNamed(node.callee, 'URL') ? add((node.arguments as Node[])[0]?.value, false) : undefined;
      case 'CallExpression':
        if (!isGlob(node.callee as Node)) return;
        // A pattern with an exclamation mark only takes away from the others.
        for (const pattern of literals((node.arguments as Node[])[0]))
          if (!String(pattern).startsWith('!')) add(pattern, false);
    }
  });
  return [...found].map(([from, typeOnly]) => ({ from, typeOnly }));
}

const WILD = new Set([
  'Date',
  'performance',
  'setTimeout',
  'setInterval',
  'requestAnimationFrame',
  'queueMicrotask',
  'crypto',
  'globalThis',
]);

const TYPE_PLACES = new Set(['TSTypeReference', 'TSQualifiedName', 'TSPropertySignature', 'TSMethodSignature']);

/** Names of time, chance and timers that the code (not its types, strings or comments) refers to. */
export function wildGlobals(source: string, file: string): string[] {
  const found: string[] = [];
  walk(parse(source, file), (node, parent, key) => {
    if (node.type === 'MemberExpression' && isNamed(node.object, 'Math')) {
      const property = node.property as Node;
      if (property.name === 'random' || property.value === 'random') found.push('Math.random');
    }
    if (node.type !== 'Identifier' || !WILD.has(node.name as string)) return;
    const isMember = parent?.type === 'MemberExpression' && key === 'property' && parent.computed !== true;
    const isKey = parent?.type === 'Property' && key === 'key' && parent.computed !== true && parent.shorthand !== true;
    if (!isMember && !isKey && !TYPE_PLACES.has(parent?.type ?? '')) found.push(node.name as string);
  });
  return found;
}

interface Node {
  readonly type: string;
  readonly [key: string]: unknown;
}

function parse(source: string, file: string): Node {
  return parseAst(source, { lang: file.endsWith('x') ? 'tsx' : 'ts' }) as unknown as Node;
}

function walk(
  node: Node,
  visit: (node: Node, parent: Node | null, key: string) => void,
  parent: Node | null = null,
  at = '',
): void {
  visit(node, parent, at);
  for (const [key, value] of Object.entries(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (typeof child === 'object' && child !== null && typeof (child as Node).type === 'string')
        walk(child as Node, visit, node, key);
    }
  }
}

function isNamed(node: unknown, name: string): boolean {
  return (node as Node | undefined)?.type === 'Identifier' && (node as Node).name === name;
}

function isGlob(callee: Node): boolean {
  return (
    callee.type === 'MemberExpression' &&
    (callee.object as Node).type === 'MetaProperty' &&
    isNamed(callee.property, 'glob')
  );
}

function literals(node: Node | undefined): unknown[] {
  if (node === undefined) return [];
  return node.type === 'ArrayExpression' ? (node.elements as Node[]).map((element) => element.value) : [node.value];
}

function entries(cell: string): string[] {
  return cell === '-' ? [] : cell.split(',').map((entry) => entry.trim().replaceAll('`', ''));
}
