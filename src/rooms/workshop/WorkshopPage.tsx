/** The workshop's desk for scenarios: receiver and slugs, what is wrong, what the learner will see, what the file lacks. */

import { useMemo } from 'preact/hooks';
import { useFileDrop } from '../../kit/hooks/useFileDrop.ts';
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Disc } from '../../kit/PlateTitle.tsx';
import type { RoomLink } from '../../kit/theme/art.tsx';
import type { PlaceTabsProps } from './PlaceTabs.tsx';
import { StepsTold } from './StepsTold.tsx';
import { CardsPanel } from './scenario/CardsPanel.tsx';
import { CertifyPanel } from './scenario/CertifyPanel.tsx';
import { DraftBar } from './scenario/DraftBar.tsx';
import { FormPanel } from './scenario/FormPanel.tsx';
import { HeaderTools } from './scenario/HeaderTools.tsx';
import { ProblemsPanel } from './scenario/ProblemsPanel.tsx';
import { SeenPanel } from './scenario/SeenPanel.tsx';
import { SetPanel } from './scenario/SetPanel.tsx';
import { type Shown, useRestedPort } from './scenario/useRestedPort.ts';
import { useUndoKeys } from './scenario/useUndoKeys.ts';
import type { WorkshopPort } from './scenario/workshopPort.ts';
import { WorkshopFrame } from './WorkshopFrame.tsx';
import '../../kit/links/link.css';
import './scenario/desk.css';
import './scenario/cards.css';
import './scenario/form.css';

export interface WorkshopPageProps extends Pick<PlaceTabsProps, 'onPlace'> {
  readonly links: readonly RoomLink[];
  readonly port: WorkshopPort;
}

/** Two frames and more apart. */
const REST_MS = { tools: 110, choices: 130, bar: 150, certify: 170, cards: 190, problems: 210, form: 230 } as const;
const TOOLS: Shown = ({ undoSteps, redoSteps, tryIt }) => [undoSteps, redoSteps, tryIt === null];
const CERTIFY: Shown = ({ proving: { state, isOfThis, canStart } }) => [state, isOfThis, canStart];
const PROBLEMS: Shown = ({ problems }) => [problems];

export function WorkshopPage({ port, links, onPlace }: WorkshopPageProps) {
  const { shell, workshop: say } = useWords();
  usePageTitle(say.scenario.tab, shell.workshop);
  useUndoKeys(port);
  useFileDrop(({ files }) => port.openFiles([...files]));
  const { standing, openKey, draft, undoSteps, redoSteps } = port;
  const forTools = useRestedPort(port, REST_MS.tools, TOOLS);
  const forChoices = useRestedPort(port, REST_MS.choices);
  const forBar = useRestedPort(port, REST_MS.bar);
  const forCertify = useRestedPort(port, REST_MS.certify, CERTIFY);
  const forCards = useRestedPort(port, REST_MS.cards);
  const forProblems = useRestedPort(port, REST_MS.problems, PROBLEMS);
  const forForm = useRestedPort(port, REST_MS.form);
  const tools = useMemo(() => <HeaderTools port={forTools} />, [forTools]);
  const certify = useMemo(() => <CertifyPanel port={forCertify} proving={forCertify.proving} />, [forCertify]);
  const problems = useMemo(() => <ProblemsPanel port={forProblems} />, [forProblems]);
  const bar = useMemo(() => <DraftBar key={`bar ${openKey}`} port={forBar} />, [forBar]);
  const cards = useMemo(() => <CardsPanel key={`cards ${openKey}`} port={forCards} />, [forCards]);
  const form = useMemo(() => <FormPanel key={`form ${openKey}`} port={forForm} />, [forForm]);
  return (
    <WorkshopFrame current={null} onPlace={onPlace} links={links} title={say.scenario.title} right={tools}>
      <StepsTold key={`told ${openKey}`} now={draft} {...{ undoSteps, redoSteps }} />
      {bar}
      <div class="desk">
        <SetPanel key={`set ${openKey}`} port={port} resting={forChoices} />
        {cards}
        {standing.kind === 'stands' ? (
          <SeenPanel key={`seen ${openKey}`} port={port} set={standing.set} />
        ) : (
          <section class="seen" aria-busy={standing.kind === 'fetching'}>
            <h2 class="plate-title">
              <Disc>3</Disc>
              {say.seenTitle}
            </h2>
            <p class="desk-note">{standing.kind === 'fetching' ? say.reading : say.cannotRead}</p>
          </section>
        )}
        {certify}
      </div>
      {problems}
      {form}
    </WorkshopFrame>
  );
}
