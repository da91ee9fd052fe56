/** Sealed sheets that were brought beside the runs: each is opened by its phrase, and what is in it then counts as handed out. */
import { useUnsealing } from '../../kit/hooks/useUnsealing.ts';
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
  const sealed = useUnsealing((phrase) => port.openSealed(file, phrase));
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
          sealed.open();
        }}
      >
        <PhraseField label={exam.phrase} value={sealed.phrase} onWrite={sealed.write} />
        <Button disabled={!sealed.ready} onClick={sealed.open}>
          {sealed.busy ? exam.opening : exam.open}
        </Button>
      </form>
      {sealed.problems.length === 0 ? null : (
        <ul class="complaints" role="alert">
          {sealed.problems.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
    </li>
  );
}
