/** A sealed sheet that is opened by its phrase: the phrase as it is written, whether it is being tried, and what was wrong with it. */
import { useState } from 'preact/hooks';

export interface Unsealing {
  readonly phrase: string;
  readonly write: (phrase: string) => void;
  readonly busy: boolean;
  /** a phrase has been written, and none is being tried */
  readonly ready: boolean;
  readonly problems: readonly string[];
  readonly setProblems: (problems: readonly string[]) => void;
  readonly open: () => void;
}

/** `tryPhrase` gives the problems; none where the sheet was opened. */
export function useUnsealing(tryPhrase: (phrase: string) => Promise<readonly string[]>): Unsealing {
  const [phrase, write] = useState('');
  const [busy, setBusy] = useState(false);
  const [problems, setProblems] = useState<readonly string[]>([]);
  const ready = !busy && phrase.trim() !== '';
  const open = (): void => {
    if (!ready) return;
    setBusy(true);
    setProblems([]);
    void tryPhrase(phrase).then((said) => {
      setBusy(false);
      setProblems(said);
    });
  };
  return { phrase, write, busy, ready, problems, setProblems, open };
}
