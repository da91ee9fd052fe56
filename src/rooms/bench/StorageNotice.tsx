/** Said over the bench when a run can not be kept: the run goes on, and the learner knows. Stays until it is put away. */

import { useEffect, useState } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';
import type { CoursePort } from '../../present/ports.ts';

export type StoragePort = Pick<CoursePort, 'storageNote' | 'subscribe'>;

export function StorageNotice({ storage }: { readonly storage: StoragePort }) {
  const { header: headerWords, course: courseWords } = useWords();
  const [note, setNote] = useState(storage.storageNote);
  const [seen, setSeen] = useState<ReturnType<StoragePort['storageNote']>>(null);
  useEffect(() => storage.subscribe(() => setNote(storage.storageNote())), [storage]);
  if (note === null || note === seen) return null;
  return (
    <div class="storage-notice" role="status">
      <p>{courseWords.storage[note]}</p>
      <button type="button" onClick={() => setSeen(note)}>
        {headerWords.noteSeen}
      </button>
    </div>
  );
}
