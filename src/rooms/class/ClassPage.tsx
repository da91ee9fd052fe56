/** The class room: run files that learners handed in, graded again and listed. */
import { flushSync } from 'preact/compat';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { classFigures } from '../../judge/classFigures.ts';
import { type Sieve, sifted } from '../../judge/classList.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Button, Header, type RoomLink, Rooms } from '../../kit/theme/art.tsx';
import type { ClassPort } from './classPort.ts';
import { FileButton, FilesSheet } from './FilesSheet.tsx';
import { PaperList } from './PaperList.tsx';
import { RunsTable } from './RunsTable.tsx';
import { ClassNote, LostPanel, SkillsPanel } from './Summary.tsx';
import './class.css';
import './runs.css';
import './print.css';

export interface ClassPageProps {
  readonly port: ClassPort;
  readonly links: readonly RoomLink[];
}

export function ClassPage({ port, links }: ClassPageProps) {
  const { shell, classroom: say } = useWords();
  const [sieve, setSieve] = useState<Sieve>({ learner: null, scenario: null, bestOnly: false });
  const rows = useMemo(() => sifted(port.rows, sieve), [port.rows, sieve]);
  const all = useMemo(() => classFigures(port.rows), [port.rows]);
  const figures = useMemo(() => (rows.length === port.rows.length ? all : classFigures(rows)), [rows, all]);
  const printing = usePrinting();
  const nothing = port.rows.length === 0;
  return (
    // Dropped anywhere on the page: a near miss would have the browser show the file instead.
    // biome-ignore lint/a11y/noStaticElementInteractions: what can be dropped can be chosen by buttons
    <div
      class="room-class"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        if (event.dataTransfer !== null) port.bringDropped(event.dataTransfer);
      }}
    >
      <Header
        product={shell.product}
        right={
          nothing ? undefined : (
            <>
              <span class="class-count">{say.handedIn(port.rows.length, all.learners)}</span>
              <Button label={say.csvLong} disabled={port.isWorking} onClick={port.saveCsv}>
                {say.csv}
              </Button>
              <Button disabled={port.isWorking} onClick={() => print()}>
                {say.print}
              </Button>
              <FileButton port={port} folder={false} primary />
            </>
          )
        }
      >
        <Rooms name={shell.rooms} links={links} />
      </Header>
      <main class="class-main">
        <div class="class-words">
          <h1>{say.title}</h1>
          <p>{say.what}</p>
          <p>{say.how}</p>
        </div>
        <div class="class-left">
          <FilesSheet port={port} figures={all} />
          <SkillsPanel figures={figures} />
        </div>
        <div class="class-right">
          <RunsTable port={port} rows={rows} sieve={sieve} onSieve={setSieve} />
          <div class="class-bottom">
            <LostPanel figures={figures} />
            <ClassNote notes={port.notes} />
          </div>
        </div>
      </main>
      {printing ? <PaperList rows={rows} figures={figures} notes={port.notes} /> : null}
    </div>
  );
}

/** True from when the browser is about to print until it has. */
function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The browser takes the page as it stands when the event is over.
    const before = (): void => flushSync(() => setPrinting(true));
    const after = (): void => setPrinting(false);
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, []);
  return printing;
}
