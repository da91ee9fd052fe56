/** Files and folders that a picker gives as handles: what is brought is what a field for files brings, a few at a time. Source: File System Access (WICG), which rejects with an AbortError where nothing was chosen. */
import { describe, expect, it } from 'vitest';
import { picked } from '../../../src/services/classroom/brought.ts';
import { type FileHandle, type FolderHandle, pickedHandles } from '../../../src/services/classroom/handles.ts';

let open = 0;
let most = 0;
const handle = (name: string): FileHandle => ({
  kind: 'file',
  name,
  async getFile() {
    most = Math.max(most, ++open);
    await new Promise((done) => setTimeout(done));
    open--;
    return new File(['{}'], name);
  },
});
const folder = (name: string, ...inside: readonly (FileHandle | FolderHandle)[]): FolderHandle => ({
  kind: 'directory',
  name,
  async *values() {
    yield* inside;
  },
});
const asField = (place: string): File => {
  const file = new File(['{}'], place.split('/').at(-1)!);
  Object.defineProperty(file, 'webkitRelativePath', { value: place.includes('/') ? place : '' });
  return file;
};
const names = (brought: Awaited<ReturnType<typeof pickedHandles>>) => {
  if (brought === null || brought === 'calledOff') return brought;
  return { ...brought, files: brought.files.map(({ name, blob }) => [name, blob.name]) };
};

describe('what a picker gives', () => {
  it('is what the field for files gives, and never more than a few are asked for at once', async () => {
    const places = Array.from({ length: 50 }, (_, i) => `run-${i}.json`);
    const chosen = await pickedHandles(false, { showOpenFilePicker: async () => places.map(handle) });
    expect(names(chosen)).toEqual(names(picked(places.map(asField))));
    expect(most).toBeGreaterThan(1);
    expect(most).toBeLessThanOrEqual(16);
  });

  it('is of a folder every .json file in it and below, in the same order; what is left alone is named', async () => {
    const evening = folder(
      'evening',
      handle('zoe.json'),
      folder('late', handle('bo.json'), handle('notes.txt')),
      handle('anna.json'),
    );
    const chosen = await pickedHandles(true, { showDirectoryPicker: async () => evening });
    const places = ['evening/zoe.json', 'evening/late/bo.json', 'evening/late/notes.txt', 'evening/anna.json'];
    expect(names(chosen)).toEqual(names(picked(places.map(asField))));
    const none = await pickedHandles(true, { showDirectoryPicker: async () => folder('bare', handle('a.txt')) });
    expect(names(none)).toEqual(names(picked([asField('bare/a.txt')])));
  });

  it('is nothing where nobody chose, and left to the field where the browser has no picker or keeps it back', async () => {
    const rejecting = (name: string) => async () => {
      throw new DOMException('', name);
    };
    expect(await pickedHandles(false, { showOpenFilePicker: rejecting('AbortError') })).toBe('calledOff');
    expect(await pickedHandles(true, { showDirectoryPicker: rejecting('SecurityError') })).toBe(null);
    expect(await pickedHandles(false, {})).toBe(null);
    const gone: FileHandle = { ...handle('gone.json'), getFile: rejecting('NotFoundError') };
    await expect(pickedHandles(false, { showOpenFilePicker: async () => [gone] })).rejects.toThrow();
  });
});
