/** The class room: run files that learners handed in, graded again and listed. */
import { useMemo, useState } from 'preact/hooks';
import { type Sieve, sifted } from '../../judge/classList.ts';
import { classSummary } from '../../judge/classSummary.ts';
import { useFileDrop } from '../../kit/hooks/useFileDrop.ts';
import { usePrinting } from '../../kit/hooks/usePrinting.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Button, Header, type RoomLink, Rooms } from '../../kit/theme/art.tsx';
import { papersHash } from '../../present/papersAddress.ts';
import type { ClassPort } from './classPort.ts';
import { ExamsPanel } from './ExamsPanel.tsx';
import { FileButton, FilesPanel } from './FilesPanel.tsx';
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
  const { shell, classroom: say, papers } = useWords();
  const [sieve, setSieve] = useState<Sieve>({ learner: null, scenario: null, bestOnly: false });
  const rows = useMemo(() => sifted(port.rows, sieve), [port.rows, sieve]);
  const all = useMemo(() => classSummary(port.rows), [port.rows]);
  const figures = useMemo(() => (rows.length === port.rows.length ? all : classSummary(rows)), [rows, all]);
  const printing = usePrinting();
  // Anywhere on the page, a folder too.
  const over = useFileDrop(port.bringDropped, true);
  const nothing = port.rows.length === 0;
  return (
    <div class="room-class">
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
          <p>
            <a href={papersHash(null)}>{papers.title}</a>
          </p>
        </div>
        <div class="class-left">
          <FilesPanel port={port} figures={all} over={over} />
          <SkillsPanel figures={figures} />
        </div>
        <div class="class-right">
          <ExamsPanel sittings={port.sittings} />
          <RunsTable port={port} rows={rows} sieve={sieve} onSieve={setSieve} />
          <div class="class-bottom">
            <LostPanel figures={figures} />
            <ClassNote notes={port.notes} />
          </div>
        </div>
      </main>
      {printing ? <PaperList rows={rows} sittings={port.sittings} figures={figures} notes={port.notes} /> : null}
    </div>
  );
}
