/** Sealed sheets that were brought beside the runs: each is opened by its phrase, and what is in it then counts as handed out. */
import { useState } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';
import { PhraseField } from '../../kit/PhraseField.tsx';
import { Button } from '../../kit/theme/art.tsx';
import type { ClassPort, SealedSheet } from './classPort.ts';
import './sealed.css';

export function SealedSheets({ port }: { readonly port: ClassPort }) {
  const { classroom: say } = useWords();
  if (port.sealed.length === 0) return null;
  return (
    <>
      <h3 class="l">{say.sealed.title}</h3>
      <p class="class-note">{say.sealed.why}</p>
      <ul class="handed-out">
        {port.sealed.map((sheet) => (
          <Sheet key={sheet.file} port={port} sheet={sheet} />
        ))}
      </ul>
    </>
  );
}

function Sheet({ port, sheet }: { readonly port: ClassPort; readonly sheet: SealedSheet }) {
  const { classroom: say, exam } = useWords();
  const { title, file } = sheet;
  const [phrase, setPhrase] = useState('');
  const [busy, setBusy] = useState(false);
  const [problems, setProblems] = useState<readonly string[]>([]);
  const open = (): void => {
    if (busy || phrase.trim() === '') return;
    setBusy(true);
    setProblems([]);
    void port.openSealed(file, phrase).then((said) => {
      setBusy(false);
      setProblems(said);
    });
  };
  return (
    <li>
      <span>
        <b>
          <bdi>{title}</bdi>
        </b>{' '}
        <bdi class="m">{file}</bdi>
      </span>
      <button type="button" class="link" aria-label={say.takeBackNamed(title)} onClick={() => port.takeBack(file)}>
        {say.takeAway}
      </button>
      <form
        class="sealed-phrase"
        onSubmit={(event) => {
          event.preventDefault();
          open();
        }}
      >
        <PhraseField label={exam.phrase} value={phrase} onWrite={setPhrase} />
        <Button disabled={busy || phrase.trim() === ''} onClick={open}>
          {busy ? exam.opening : exam.open}
        </Button>
      </form>
      {problems.length === 0 ? null : (
        <ul class="complaints" role="alert">
          {problems.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
    </li>
  );
}
