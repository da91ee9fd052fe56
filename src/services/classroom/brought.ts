/** What somebody dropped on the page or picked: files as they are, of folders every .json file in them and below, in order, as `regrade` takes them. */
import type { Problem, Result } from '../../base/result.ts';
import { isRunsText, type RunsHead, readRuns } from '../../files/runsFile.ts';

export interface BroughtFile {
  /** with the folders that it was brought in: `evening/anna.json` */
  readonly name: string;
  readonly blob: File;
  /** the same for the same file; left out: it has to be asked for */
  readonly mark?: string;
  /** what spoke against it before it was judged; left out: nothing */
  readonly problems?: readonly Problem[];
}

export interface Brought {
  readonly files: readonly BroughtFile[];
  /** in folders, and not called .json */
  readonly leftAlone: readonly string[];
  /** folders without any run file */
  readonly empty: readonly string[];
  /** brought by themselves, and no runs: what was handed out */
  readonly handedOut?: readonly BroughtFile[];
  /** of that kind, but in a folder, which others may have filled */
  readonly strangers?: readonly string[];
  /** files that were the runs of an exam: whose, and what its sheet asks */
  readonly sittings?: readonly BroughtSitting[];
}

export interface BroughtSitting extends RunsHead {
  /** each of its runs is called by this and its place: `seven/1.json` */
  readonly folder: string;
}

const IS_RUN = /\.json$/i;

/** Signs of a file's beginning that tell which kind it is. */
const HEAD_BYTES = 2000;
/** A run has its scenario inside: the first that a file says of itself is what it is. */
const SAYS = /"format"\s*:\s*"haystack-([a-z-]{1,20})"/;
const HANDED_OUT = ['scenario', 'evening', 'sealed-evening', 'receiver'];
const IS_DECK = /\.cir$/i;
/** Files that are asked for at a time: to ask for those of a whole class at once holds the page up. */
const AT_ONCE = 16;

/** A file that the browser has named, and hands over when it is asked. */
export interface Named {
  readonly name: string;
  readonly file: () => Promise<File>;
}

/** All of one portion are waited for before the next is asked for. */
export async function handedOver(named: readonly Named[]): Promise<readonly BroughtFile[]> {
  const files: BroughtFile[] = [];
  for (let at = 0; at < named.length; at += AT_ONCE) {
    const portion = named.slice(at, at + AT_ONCE);
    files.push(...(await Promise.all(portion.map(async ({ name, file }) => ({ name, blob: await file() })))));
  }
  return files;
}

/** A folder with all that is named in it and below. */
export async function folderOf(name: string, found: readonly Named[]): Promise<Brought> {
  const named = [...found].sort(byPlace);
  const runs = named.filter((one) => IS_RUN.test(one.name));
  return {
    files: await handedOver(runs),
    leftAlone: named.flatMap((one) => (IS_RUN.test(one.name) ? [] : [one.name])),
    empty: runs.length === 0 ? [name] : [],
  };
}

/** The text of a file, or why it has none: too large, no text, not to be read. */
export type ReadText = (file: BroughtFile) => Promise<Result<string>>;

/** Name, size and date. A browser looks at the disk for these, each time and while the page waits: of hundreds of files they are asked for in small portions, and once. */
export const markOf = ({ name, blob, mark }: BroughtFile): string =>
  mark ?? JSON.stringify([name, blob.size, blob.lastModified]);

/**
 * With the runs of an exam's file one by one, each under the name of the file and its place in it, and with what was handed out apart. What lies in a folder among the runs is not
 * taken for what was handed out: a learner may have put it there. What is neither stays as it is.
 */
export async function unfolded(brought: Brought, text: ReadText): Promise<Brought> {
  const handedOut: BroughtFile[] = [];
  const strangers: string[] = [];
  const sittings: BroughtSitting[] = [];
  const sorted = async (file: BroughtFile): Promise<readonly BroughtFile[]> => {
    const head = await file.blob
      .slice(0, HEAD_BYTES)
      .text()
      .catch(() => '');
    if (IS_DECK.test(file.name) || HANDED_OUT.includes(SAYS.exec(head)?.[1] ?? '')) {
      if (file.name.includes('/')) strangers.push(file.name);
      else handedOut.push(file);
      return [];
    }
    if (!isRunsText(head)) return [{ ...file, mark: markOf(file) }];
    const whole = await text(file);
    const read = whole.ok ? readRuns(whole.value, file.name) : whole;
    if (!read.ok) return [{ ...file, problems: read.problems }];
    const folder = file.name.replace(/\.json$/i, '');
    sittings.push({ ...read.value.head, folder });
    return read.value.runs.map((run, i) => {
      const name = `${folder}/${i + 1}.json`;
      const { lastModified } = file.blob;
      if (!run.ok) return { name, blob: file.blob, problems: run.problems };
      return { name, blob: new File([run.value], `${i + 1}.json`, { type: 'application/json', lastModified }) };
    });
  };
  const files: BroughtFile[] = [];
  for (let at = 0; at < brought.files.length; at += AT_ONCE)
    files.push(...(await Promise.all(brought.files.slice(at, at + AT_ONCE).map(sorted))).flat());
  return { ...brought, files, handedOut, strangers, sittings };
}

/** Picked by a button. Of a folder the browser gives every file below it, in whatever order. */
export function picked(list: readonly File[]): Brought {
  const inFolders = list.filter((file) => file.webkitRelativePath !== '');
  const single = list.filter((file) => file.webkitRelativePath === '');
  const named = inFolders.map((blob) => ({ name: blob.webkitRelativePath, blob })).sort(byPlace);
  const runs = named.filter(({ name }) => IS_RUN.test(name));
  const folders = new Set(named.map(({ name }) => name.split('/')[0]!));
  return {
    files: [...single.map((blob) => ({ name: blob.name, blob })), ...runs],
    leftAlone: named.flatMap(({ name }) => (IS_RUN.test(name) ? [] : [name])),
    empty: [...folders].filter((folder) => !runs.some(({ name }) => name.startsWith(`${folder}/`))),
  };
}

/**
 * Dropped. Must be called while the drop is being told of: the browser forgets its items right after. `later`: a file is asked for in its turn, which browsers keep back from a page
 * that is itself a file.
 */
export async function dropped(data: DataTransfer, later = location.protocol !== 'file:'): Promise<Brought> {
  const held = [...data.items]
    .filter(({ kind }) => kind === 'file')
    .map((item) => {
      const entry = item.webkitGetAsEntry();
      return { entry, file: entry === null || (entry.isFile && !later) ? item.getAsFile() : null };
    });
  const named = held.flatMap(({ entry, file }): readonly Named[] => {
    if (file !== null) return [{ name: file.name, file: async () => file }];
    return entry?.isFile === true ? [{ name: entry.name, file: () => fileOf(entry as FileSystemFileEntry) }] : [];
  });
  const folders = held.flatMap(({ entry }) => (entry?.isDirectory === true ? [entry as FileSystemDirectoryEntry] : []));
  const all: Brought[] = [{ files: await handedOver(named), leftAlone: [], empty: [] }];
  for (const one of folders) all.push(await folder(one));
  return {
    files: all.flatMap(({ files }) => files),
    leftAlone: all.flatMap(({ leftAlone }) => leftAlone),
    empty: all.flatMap(({ empty }) => empty),
  };
}

async function folder(entry: FileSystemDirectoryEntry): Promise<Brought> {
  return folderOf(entry.name, await filesBelow(entry, entry.name));
}

async function filesBelow(at: FileSystemDirectoryEntry, place: string): Promise<Named[]> {
  const found: Named[] = [];
  const reader = at.createReader();
  for (;;) {
    // A hundred at a time, until there are none.
    const some = await new Promise<FileSystemEntry[]>((done, failed) => reader.readEntries(done, failed));
    if (some.length === 0) return found;
    for (const one of some) {
      const name = `${place}/${one.name}`;
      if (one.isDirectory) found.push(...(await filesBelow(one as FileSystemDirectoryEntry, name)));
      else found.push({ name, file: () => fileOf(one as FileSystemFileEntry) });
    }
  }
}

const fileOf = (entry: FileSystemFileEntry): Promise<File> => new Promise((done, failed) => entry.file(done, failed));

/** Folder by folder, as the command line goes through them. */
function byPlace(a: { readonly name: string }, b: { readonly name: string }): number {
  const p = a.name.split('/');
  const q = b.name.split('/');
  const at = p.findIndex((part, i) => part !== q[i]);
  const [x, y] = [p[at] ?? '', q[at] ?? ''];
  return x === y ? 0 : x < y ? -1 : 1;
}
