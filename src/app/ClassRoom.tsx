/** The class room: hands what was brought to the desk, and the desk's rows to the page; and the report of any run of the class. */
import { useEffect, useMemo, useReducer, useState } from 'preact/hooks';
import { harmless } from '../base/harmless.ts';
import { type ClassRow, createClassRows } from '../judge/classList.ts';
import { csvOf } from '../judge/csv.ts';
import type { Material } from '../judge/handedOut.ts';
import { sittingRows } from '../judge/sittings.ts';
import { useWords } from '../kit/hooks/useWords.ts';
import { toldReport } from '../present/told.ts';
import { ClassPage } from '../rooms/class/ClassPage.tsx';
import type { ClassPort } from '../rooms/class/classPort.ts';
import { type Brought, type BroughtSitting, dropped, picked, unfolded } from '../services/classroom/brought.ts';
import { CLASS_NOTE } from '../services/classroom/classNotes.ts';
import { type Pickers, pickedHandles } from '../services/classroom/handles.ts';
import type { Words } from '../words/words.ts';
import { ClassReport } from './ClassReport.tsx';
import { classPaper, textOf } from './classPaper.ts';
import { readClassRun } from './classRun.ts';
import { download } from './download.ts';
import { createReportPort } from './reportPort.ts';
import type { RoomProps } from './roomProps.ts';
import { useRoomLinks } from './useRoomLinks.ts';

/** More at once would hold the page up while they are listed. */
const MOST_AT_ONCE = 2000;
const NAMES_TOLD = 5;

export type ClassRoomProps = RoomProps & {
  /** number of the file whose report is wanted; null: the list */
  readonly fileNo: number | null;
};

export default function ClassRoom({ fileNo, ...room }: ClassRoomProps) {
  const { desk } = classPaper(useWords());
  if (fileNo === null) return <ClassList {...room} />;
  return <ClassReport {...room} file={desk.files().find(({ no }) => no === fileNo) ?? null} />;
}

function ClassList({ library, logbook, go }: RoomProps) {
  const words = useWords();
  const paper = classPaper(words);
  const { desk, notes } = paper;
  const [changes, redraw] = useReducer<number, void>((n) => n + 1, 0);
  const [complaints, setComplaints] = useState<readonly string[]>([]);
  useEffect(() => desk.subscribe(() => redraw()), [desk]);
  const files = desk.files();
  const listed = useMemo(() => createClassRows(words), [words]);
  const rows = useMemo(
    () => listed(files.flatMap(({ no, name, judged }) => (judged === null ? [] : [{ no, file: name, judged }]))),
    [listed, files],
  );
  const waiting = useMemo(
    () => files.flatMap(({ no, name, judged }) => (judged === null ? [{ no, file: name }] : [])),
    [files],
  );
  const takeApart = (brought: Brought): Promise<Brought> => unfolded(brought, (file) => textOf(words, file));
  const lay = (materials: readonly Material[]): void => {
    const fresh = new Set(materials.map(({ file }) => file));
    paper.lay([...paper.materials().filter(({ file }) => !fresh.has(file)), ...materials]);
  };
  const openSealed = async (file: string, phrase: string): Promise<readonly string[]> => {
    const sealed = paper.sealed().find((one) => one.file === file);
    if (sealed === undefined) return [];
    const { openMaterial } = await import('./classMaterial.ts');
    const opened = await openMaterial(words, library, sealed, phrase, paper.materials());
    if ('reasons' in opened) return opened.reasons;
    paper.laySealed(paper.sealed().filter((one) => one !== sealed));
    lay([opened.material]);
    redraw();
    return [];
  };
  const bring = (brought: Brought): void => {
    const tooMany = brought.files.length > MOST_AT_ONCE;
    if (!tooMany) paper.seat(brought.sittings ?? []);
    const here = tooMany ? 0 : desk.take(brought.files);
    const complained = complaintsOf(words, brought, tooMany, here);
    setComplaints(complained);
    const handedOut = tooMany ? [] : (brought.handedOut ?? []);
    if (handedOut.length === 0) return;
    // What reads them is fetched when there are any.
    void import('./classMaterial.ts').then(async ({ readMaterial }) => {
      const { materials, sealed, refused } = await readMaterial(words, library, handedOut, paper.materials());
      if (materials.length > 0) lay(materials);
      const fresh = new Set(sealed.map(({ file }) => file));
      paper.laySealed([...paper.sealed().filter(({ file }) => !fresh.has(file)), ...sealed]);
      setComplaints([...complained, ...refused]);
      redraw();
    });
  };
  /** It was moved or taken away since it was chosen. */
  const notHad = (error: unknown): void =>
    setComplaints([words.classroom.notHad((error as Partial<Error>).name ?? '')]);
  const sittings = useMemo(() => {
    const sheets = paper.materials().flatMap(({ title, terms }) => (terms === undefined ? [] : [{ title, terms }]));
    return sittingRows(paper.sittings().map(harmlessly), rows, sheets);
  }, [changes, rows]);
  const port = useMemo(
    (): ClassPort => ({
      ...{ rows, waiting, sittings, complaints },
      isWorking: desk.isWorking(),
      inHand: desk.inHand(),
      bringDropped: (data) => void dropped(data).then(takeApart).then(bring, notHad),
      pick(folder, otherwise) {
        void pickedHandles(folder, window as Pickers).then((chosen) => {
          if (chosen === null) otherwise();
          else if (chosen !== 'calledOff') void takeApart(chosen).then(bring);
        }, notHad);
      },
      bringPicked: (list) => void takeApart(picked(list)).then(bring),
      stop: desk.stop,
      goOn: desk.goOn,
      clear: paper.clear,
      takeAway: desk.takeAway,
      handedOut: paper.materials().map(({ title, file }) => ({ title, file })),
      sealed: paper.sealed().map(({ file, sheet }) => ({ file, title: harmless(sheet.title) })),
      openSealed,
      takeBack(file) {
        paper.laySealed(paper.sealed().filter((one) => one.file !== file));
        paper.lay(paper.materials().filter((one) => one.file !== file));
        redraw();
      },
      saveFile(no) {
        const file = files.find((one) => one.no === no);
        if (file !== undefined) download(file.name.split('/').at(-1)!, file.blob);
      },
      async look(no, signal) {
        const file = files.find((one) => one.no === no);
        if (file === undefined) return null;
        const read = await readClassRun(words, library, file, signal).catch((error: unknown) => {
          if (signal.aborted) return null;
          throw error;
        });
        if (read === null || typeof read === 'string') return null;
        const { run, setup, graded } = read;
        const port = toldReport(words, createReportPort(setup, run, graded, null, NO_ACTS));
        const end = port.at(Math.max(graded.report.seconds, (run.events.at(-1)?.atMs ?? 0) / 1000));
        return { ...end, report: graded.report, receiver: port.receiver, scenario: port.run.scenario };
      },
      openReport: (no) => go({ page: 'class', fileNo: no }),
      saveCsv: () => download(words.classroom.csvName, new Blob([csvOf(rows)], { type: 'text/csv' })),
      notes: {
        of: (row) => notes.of(noteKey(row)),
        write(row, text) {
          notes.write(noteKey(row), text);
          redraw();
        },
      },
    }),
    [changes, rows, waiting, complaints],
  );
  const links = useRoomLinks('class', { logbook, go });
  return <ClassPage port={port} links={links} />;
}

const harmlessly = (one: BroughtSitting): BroughtSitting => ({ ...one, title: harmless(one.title) });

/** The row has no buttons of a report. */
const NO_ACTS = { exportRun: () => {}, save: () => {}, again: () => {}, toCourse: () => {} };

/** A run keeps its note wherever its file is moved to. */
function noteKey(row: ClassRow | null): string {
  if (row === null) return CLASS_NOTE;
  return row.acts === null ? `file ${row.file}` : JSON.stringify([row.learner, row.acts]);
}

function complaintsOf({ classroom: say }: Words, brought: Brought, tooMany: boolean, here: number): readonly string[] {
  const { files, leftAlone, empty, handedOut = [], strangers = [] } = brought;
  if (tooMany) return [say.tooMany(files.length, MOST_AT_ONCE)];
  return [
    ...(strangers.length === 0 ? [] : [say.strangers(strangers.length, strangers.slice(0, NAMES_TOLD))]),
    ...(files.length + leftAlone.length + empty.length + handedOut.length + strangers.length === 0
      ? [say.notFiles]
      : []),
    ...empty.map(say.noRuns),
    ...(leftAlone.length === 0 ? [] : [say.leftAlone(leftAlone.length, leftAlone.slice(0, NAMES_TOLD))]),
    ...(here === 0 ? [] : [say.hereAlready(here)]),
  ];
}
