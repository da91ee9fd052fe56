/**
 * Files and folders chosen by the picker that gives handles (File System Access, where the browser has it): each file is handed over when it is asked for, where a field for files
 * hands over all at once and holds the page up while it does.
 */
import { type Brought, folderOf, handedOver, type Named } from './brought.ts';

export interface FileHandle {
  readonly kind: 'file';
  readonly name: string;
  getFile(): Promise<File>;
}

export interface FolderHandle {
  readonly kind: 'directory';
  readonly name: string;
  values(): AsyncIterable<FileHandle | FolderHandle>;
}

/** What a browser with that picker has. */
export interface Pickers {
  showOpenFilePicker?(options: { readonly multiple: true }): Promise<readonly FileHandle[]>;
  showDirectoryPicker?(): Promise<FolderHandle>;
}

/**
 * Must be called while a press is being told of. null: this browser has no such picker, or does not let this page use it; 'calledOff': nothing was chosen. Rejects where a file
 * that was chosen cannot be had any more.
 */
export async function pickedHandles(folder: boolean, pickers: Pickers): Promise<Brought | 'calledOff' | null> {
  const chosen = await choose(folder, pickers).catch((error: unknown) =>
    (error as Partial<Error>).name === 'AbortError' ? 'calledOff' : null,
  );
  if (chosen === null || chosen === 'calledOff') return chosen;
  if (!('length' in chosen)) return folderOf(chosen.name, await filesBelow(chosen, chosen.name));
  const files = await handedOver(chosen.map((one) => ({ name: one.name, file: () => one.getFile() })));
  return { files, leftAlone: [], empty: [] };
}

async function choose(folder: boolean, pickers: Pickers): Promise<FolderHandle | readonly FileHandle[] | null> {
  // The browser asks that they are called as its own.
  if (folder) return pickers.showDirectoryPicker?.() ?? null;
  return pickers.showOpenFilePicker?.({ multiple: true }) ?? null;
}

async function filesBelow(folder: FolderHandle, place: string): Promise<readonly Named[]> {
  const found: Named[] = [];
  for await (const one of folder.values()) {
    const name = `${place}/${one.name}`;
    if (one.kind === 'directory') found.push(...(await filesBelow(one, name)));
    else found.push({ name, file: () => one.getFile() });
  }
  return found;
}
