/** The sheet of run files: where they are dropped or chosen, how far the grading is, and how many there are of each kind. */

import { useRef } from 'preact/hooks';
import type { ClassSummary } from '../../judge/classSummary.ts';
import { OUTCOMES } from '../../judge/outcome.ts';
import { FilesField } from '../../kit/FilesField.tsx';
import { useWords } from '../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../kit/PlateTitle.tsx';
import { Button, Frame, Ink } from '../../kit/theme/art.tsx';
import { DROP_ART } from './classArt.ts';
import type { ClassPort } from './classPort.ts';
import { Bar, SameActs, State } from './Glyphs.tsx';
import { SealedSheets } from './SealedSheets.tsx';

export interface FilesPanelProps {
  readonly port: ClassPort;
  readonly figures: ClassSummary;
  /** files are held over the page */
  readonly over: boolean;
}

export function FilesPanel({ port, figures, over }: FilesPanelProps) {
  const { classroom: say } = useWords();
  const { rows, waiting, isWorking, inHand } = port;
  const all = rows.length + waiting.length;
  return (
    <section class="paper class-files" aria-labelledby="class-files-title">
      <Frame kind="sheet" />
      <PlateTitle id="class-files-title" no={1}>
        {say.files}
      </PlateTitle>
      <DropPlace port={port} over={over} />
      {port.complaints.length === 0 ? null : (
        <ul class="complaints" role="alert">
          {port.complaints.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
      {all === 0 ? null : (
        <div class="class-progress">
          <p aria-live="polite">
            {waiting.length === 0
              ? say.graded(all)
              : isWorking
                ? say.grading(rows.length, all)
                : say.stopped(waiting.length)}
          </p>
          {waiting.length === 0 ? (
            <Button onClick={port.clear}>{say.clear}</Button>
          ) : (
            <Button onClick={isWorking ? port.stop : port.goOn}>{isWorking ? say.stop : say.goOn}</Button>
          )}
          {waiting.length === 0 ? null : (
            <div
              class="progress-bar"
              role="progressbar"
              aria-label={say.grading(rows.length, all)}
              aria-valuemin={0}
              aria-valuemax={all}
              aria-valuenow={rows.length}
            >
              <Bar share={rows.length / all} look="work" />
            </div>
          )}
          {inHand === null ? null : <p class="in-hand">{say.gradingNow(inHand)}</p>}
        </div>
      )}
      <SealedSheets port={port} />
      {port.handedOut.length === 0 ? null : (
        <>
          <h3 class="l">{say.handedOut}</h3>
          <ul class="handed-out">
            {port.handedOut.map(({ title, file }) => (
              <li key={file}>
                <span>
                  <b>
                    <bdi>{title}</bdi>
                  </b>{' '}
                  <bdi class="m">{file}</bdi>
                </span>
                <button
                  type="button"
                  class="link"
                  aria-label={say.takeBackNamed(title)}
                  onClick={() => port.takeBack(file)}
                >
                  {say.takeAway}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <h3 class="l">{say.toldApart}</h3>
      <ul class="told-apart">
        {OUTCOMES.map((outcome) => (
          <li key={outcome}>
            <State outcome={outcome} />
            <span class="m">{figures.outcomes[outcome]}</span>
          </li>
        ))}
        <li>
          <SameActs words={say.sameActs} />
          <span class="m">{figures.copies}</span>
        </li>
      </ul>
      <p class="class-note">{say.note}</p>
    </section>
  );
}

function DropPlace({ port, over }: { readonly port: ClassPort; readonly over: boolean }) {
  const { classroom: say } = useWords();
  return (
    <div class={over ? 'drop-place over' : 'drop-place'}>
      <Ink svg={DROP_ART} width={48} height={44} />
      <p>
        <b>{say.drop}</b> <span>{say.dropMore}</span>
      </p>
      <div class="drop-buttons">
        <FileButton port={port} folder={false} />
        <FileButton port={port} folder />
      </div>
    </div>
  );
}

interface FileButtonProps {
  readonly port: ClassPort;
  readonly folder: boolean;
  /** the one in the header */
  readonly primary?: boolean;
}

export function FileButton({ port, folder, primary = false }: FileButtonProps) {
  const { classroom: say } = useWords();
  const input = useRef<HTMLInputElement>(null);
  const words = primary ? say.add : folder ? say.chooseFolder : say.chooseFiles;
  return (
    <>
      <Button primary={primary} onClick={() => port.pick(folder, () => input.current?.click())}>
        {words}
      </Button>
      <FilesField
        innerRef={input}
        multiple
        folder={folder}
        picks={primary ? 'more' : folder ? 'folder' : 'files'}
        onFiles={port.bringPicked}
      />
    </>
  );
}
