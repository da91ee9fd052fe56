/** The workshop's desk for scenarios: drafts from the shelf, sets from the library, files to and fro. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Problem } from '../../base/result.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import type { HandingPort } from '../../rooms/workshop/scenario/provingPort.ts';
import type { WorkshopPort } from '../../rooms/workshop/scenario/workshopPort.ts';
import { WorkshopPage } from '../../rooms/workshop/WorkshopPage.tsx';
import { PAR_NOT_KNOWN } from '../../scenario/par.ts';
import { LINK_CHARS, linkOf } from '../../services/handing/scenarioLink.ts';
import type { Library } from '../../services/library/library.ts';
import { duplicated, newDraft, onReceiver } from '../../workshop/draft.ts';
import {
  draftFileName,
  draftFromText,
  draftHash,
  draftProblems,
  draftText,
  problemsBeside,
  receiverNamedIn,
} from '../../workshop/draftFile.ts';
import { textOf } from '../classPaper.ts';
import { download } from '../download.ts';
import { ExamShut } from '../ExamGate.tsx';
import type { RoomProps } from '../roomProps.ts';
import { routeHash } from '../routes.ts';
import { useRoomLinks } from '../useRoomLinks.ts';
import { createDraftDesk, type DraftDesk } from './draftDesk.ts';
import { readDraft, writeDraft } from './eveningDraft.ts';
import { useCourseEntries } from './useCourseEntries.ts';
import { deskPlace, useDesk } from './useDesk.ts';
import { useOwnReceivers } from './useOwnReceivers.ts';
import { useProving } from './useProving.ts';
import { useRestedSlugs } from './useRestedSlugs.ts';
import { useStanding } from './useStanding.ts';

/** Scenarios that an evening sheet may name. */
const MOST_ON_A_SHEET = 20;
/** What a first draft is about, where it is there. */
const FIRST_RECEIVER = 'video-valve-45m';

export interface WorkshopRoomProps extends RoomProps {
  /** receiver on which a draft is begun as the desk opens; null: none */
  readonly beginOn: string | null;
}

export default function WorkshopRoom(props: WorkshopRoomProps) {
  const { exam: say } = useWords();
  return (
    <ExamShut {...props} scenarioId={null} title={say.workshopShut}>
      <ScenarioDesk {...props} />
    </ExamShut>
  );
}

/** It shows of any scenario how its slugs stand. */
function ScenarioDesk({ library, own, logbook, go, beginOn }: WorkshopRoomProps) {
  const words = useWords();
  const desk = useMemo(() => openDesk(library), [library]);
  useDesk(desk);
  useEffect(() => {
    if (beginOn !== null) void begin(library, desk, beginOn);
  }, [desk]);
  const ownReceivers = useOwnReceivers();
  const [refused, setRefused] = useState<WorkshopPort['refused']>([]);
  const { key, history } = desk.open();
  const draft = history.now;
  const { standing, design } = useStanding(library, draft);
  const drafts = desk.drafts().map((one) => ({ key: one.key, draft: one.history.now }));
  const entries = useCourseEntries(library);
  // Slugs go no further than their travel, so what a drag could do to the file waits until it is over.
  const checked = useRestedSlugs(draft);
  const problems = useMemo((): readonly Problem[] => {
    if (design === null) return [];
    const others = drafts.filter((one) => one.key !== key).map((one) => one.draft);
    const taken = {
      ids: new Set([...entries, ...others].map(({ id }) => id)),
      codes: new Set([...entries, ...others].map(({ code }) => code)),
    };
    return draftProblems(checked, design, taken, standing.kind === 'stands' ? standing.set : design);
  }, [checked, design, standing, key]);
  const { receivers, shipped } = useMemo(() => {
    const names = new Map(entries.map(({ receiver, receiverName }) => [receiver, receiverName]));
    return {
      receivers: [
        ...[...names].map(([id, name]) => ({ id, name })),
        ...ownReceivers.map(({ id, setName }) => ({ id, name: setName })),
      ],
      shipped: entries.map(({ id, code, title }) => ({ id, name: `${code} ${title}` })),
    };
  }, [entries, ownReceivers]);
  const whole = design !== null && standing.kind === 'stands' && problems.length === 0;
  const proving = useProving(draft, design, {
    canStart: whole,
    take: (next) => desk.change(next),
    saveCertificate: (certificate) =>
      download(`${draft.id}.certificate.json`, `${JSON.stringify(certificate, null, 2)}\n`),
  });
  const toShelf = async () => {
    desk.flush();
    const { takeText } = await import('../takeFiles.ts');
    const outcome = proving.isOfThis ? proving.state.certification : null;
    const proved = outcome === null || design === null ? null : { outcome, design };
    return takeText(library, own, draftText(draft), draftFileName(draft), proved);
  };
  const tryIt = async (): Promise<void> => {
    const taken = await toShelf();
    if (taken.ok) go({ page: 'bench', scenarioId: draft.id });
  };
  const handing: HandingPort = {
    hash: () => draftHash(draft),
    needsReceiver: ownReceivers.some(({ id }) => id === draft.receiver),
    async link() {
      const data = await linkOf({ ...draft, par: PAR_NOT_KNOWN });
      const address = `${location.href.split('#')[0]}${routeHash({ page: 'open', data })}`;
      return { address, long: address.length > LINK_CHARS };
    },
    async toEvening() {
      const evening = readDraft(() => localStorage);
      const there = evening.scenarios.includes(draft.id);
      if (!there && evening.scenarios.length >= MOST_ON_A_SHEET) return 'sheetFull';
      const taken = await toShelf();
      if (!taken.ok) return 'notTaken';
      const next = { ...evening, scenarios: there ? evening.scenarios : [...evening.scenarios, draft.id] };
      return writeDraft(() => localStorage, next) ? 'onSheet' : 'notTaken';
    },
  };
  const port: WorkshopPort = {
    ...{ proving, handing },
    tryIt: whole ? () => void tryIt() : null,
    ...{ receivers, shipped, drafts, draft, standing, problems, refused },
    openKey: key,
    isKept: desk.isKept(),
    undoSteps: history.past.length,
    redoSteps: history.future.length,
    change: desk.change,
    pause: desk.pause,
    undo: desk.undo,
    redo: desk.redo,
    choose: desk.choose,
    addNew: () => desk.add((no) => newDraft(draft.receiver, no)),
    duplicate: (id) => void duplicate(library, desk, id),
    remove: desk.remove,
    toReceiver: (id) => void toReceiver(library, desk, id),
    openFiles: (files) =>
      void Promise.all(files.map((file) => textOf(words, { name: file.name, blob: file })))
        .then((texts) =>
          Promise.all(
            texts.map(async (text, i) => {
              const file = files[i]!.name;
              return { file, problems: text.ok ? await bring(library, desk, file, text.value) : text.problems };
            }),
          ),
        )
        .then((all) => setRefused(all.filter(({ problems }) => problems.length > 0))),
    saveFile: () => download(draftFileName(draft), draftText(draft)),
  };
  const links = useRoomLinks('workshop', { logbook, go });
  return <WorkshopPage port={port} links={links} onPlace={(place) => go({ page: 'workshop', place })} />;
}

function openDesk(library: Library): DraftDesk {
  return createDraftDesk({
    ...deskPlace('draft'),
    receiver: () => {
      const there = library.entries().map((entry) => entry.receiver);
      return there.includes(FIRST_RECEIVER) ? FIRST_RECEIVER : (there[0] ?? FIRST_RECEIVER);
    },
  });
}

/** Once: the address then says no more of it, so that the page may be loaded again. */
async function begin(library: Library, desk: DraftDesk, receiver: string): Promise<void> {
  history.replaceState(null, '', routeHash({ page: 'workshop', place: null }));
  if ((await library.receiver(receiver))?.ok) desk.add((no) => newDraft(receiver, no));
}

async function duplicate(library: Library, desk: DraftDesk, id: string): Promise<void> {
  const setup = await library.setup(id);
  if (setup?.ok) desk.add((no) => duplicated(setup.value.scenario, no));
}

/** By keys a list is gone through letter by letter: each passes one receiver more by, and the last that was asked for is the one that is wanted. */
let asked = 0;
async function toReceiver(library: Library, desk: DraftDesk, id: string): Promise<void> {
  asked += 1;
  const [no, { key }] = [asked, desk.open()];
  const loaded = await library.receiver(id);
  const { key: nowOpen, history } = desk.open();
  if (loaded?.ok && no === asked && nowOpen === key)
    desk.change(onReceiver(history.now, loaded.value.receiver), 'receiver');
}

/** A file that is a scenario lies on the desk then, one more where there is one of that name; of any other, all that is wrong with it, by its receiver too where that is to be had. */
async function bring(library: Library, desk: DraftDesk, file: string, text: string): Promise<readonly Problem[]> {
  const read = draftFromText(text, file);
  if (read.ok) {
    desk.add(() => read.value);
    return [];
  }
  const named = receiverNamedIn(text, file);
  const loaded = named === null ? null : await library.receiver(named);
  return loaded?.ok ? problemsBeside(text, file, loaded.value) : read.problems;
}
