/** The room of papers: one job, one of its papers as it will be printed, and the button that prints it. */
import { useMemo } from 'preact/hooks';
import type { BenchSetup } from '../../bench/setup.ts';
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Button, Header, type RoomLink, Rooms } from '../../kit/theme/art.tsx';
import { PAPERS, type PaperId } from '../../present/papersAddress.ts';
import type { ScenarioEntry } from '../../present/scenarioEntry.ts';
import { sheetFigures } from '../../present/sheetFigures.ts';
import { workResponses } from '../../receiver/responses.ts';
import { RecordCards } from './RecordCard.tsx';
import { ServicePaper } from './ServicePaper.tsx';
import { TransferSheet } from './TransferSheet.tsx';
import '../../kit/tabs/tabs.css';
import './papers.css';

export interface PapersPageProps {
  readonly setup: BenchSetup;
  readonly entries: readonly ScenarioEntry[];
  readonly paper: PaperId;
  readonly links: readonly RoomLink[];
  readonly show: (scenarioId: string, paper: PaperId) => void;
}

export function PapersPage({ setup, entries, paper, links, show }: PapersPageProps) {
  const { shell, papers: say } = useWords();
  usePageTitle(say.title);
  const figures = useMemo(
    () => workResponses(setup.receiver, setup.scenario).map((response) => sheetFigures(setup, response)),
    [setup],
  );
  const { id } = setup.scenario;
  return (
    <div class="room-papers">
      <Header
        product={shell.product}
        right={
          <Button primary onClick={() => print()}>
            {say.print}
          </Button>
        }
      >
        <Rooms name={shell.rooms} links={links} />
      </Header>
      <main class="papers-main">
        <div class="papers-choice">
          <h1>{say.title}</h1>
          <p>{say.what}</p>
          <label>
            <span>{say.of}</span>
            <select class="mb" value={id} onChange={(event) => show(event.currentTarget.value, paper)}>
              {entries.map((entry) => (
                <option key={entry.id} value={entry.id}>
                  {`${entry.code} ${entry.title}`}
                </option>
              ))}
            </select>
          </label>
          <fieldset class="tabs" aria-label={say.paper}>
            {PAPERS.map((one) => (
              <button key={one} type="button" aria-pressed={one === paper} onClick={() => show(id, one)}>
                {say.names[one]}
              </button>
            ))}
          </fieldset>
        </div>
        <div class="papers-sheets">
          {paper === 'sheet' ? <ServicePaper setup={setup} figures={figures} /> : null}
          {paper === 'card' ? <RecordCards setup={setup} figures={figures} /> : null}
          {paper === 'transfer' ? <TransferSheet setup={setup} figures={figures} /> : null}
        </div>
      </main>
    </div>
  );
}
