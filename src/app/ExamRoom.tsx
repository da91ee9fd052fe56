/** The room of an exam: opens its seal, tells how far it is, and hands its runs to the browser as one file. */
import { useEffect, useMemo, useReducer, useState } from 'preact/hooks';
import { harmless } from '../base/harmless.ts';
import { runsText } from '../files/runsFile.ts';
import { readSealedEvening } from '../files/sealedEvening.ts';
import { useWords } from '../kit/hooks/useWords.ts';
import { SlipPage } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import { ExamPage } from '../rooms/exam/ExamPage.tsx';
import type { ExamItem, ExamPort } from '../rooms/exam/examPort.ts';
import { gateOf, goingOn, type Opened, runsOf, timeLeft } from '../services/handing/examDesk.ts';
import { cryptoHere, openSheet } from '../services/handing/phraseSeal.ts';
import { learnerName } from '../services/store/learnerMemory.ts';
import type { OwnExam } from '../services/store/ownExam.ts';
import { download } from './download.ts';
import { dayOf } from './openBench.ts';
import type { RoomProps } from './roomProps.ts';
import { openExam } from './takeEvening.ts';
import { reasonsOf, surroundingsOf } from './takeFiles.ts';
import { termsOf, useWhole } from './useWhole.ts';
import { runsFileName } from './workshop/eveningFile.ts';

export type ExamRoomProps = RoomProps & { readonly exam: string };

export default function ExamRoom({ exam: wanted, library, own: shelf, wholeLogbook, learner, go }: ExamRoomProps) {
  // With what is not told to anybody yet.
  const logbook = wholeLogbook;
  const words = useWords();
  const { shell, store, exam: say } = words;
  const [ready, setReady] = useState(false);
  const [changes, redraw] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => {
    void Promise.all([shelf.ready, logbook.ready]).then(() => setReady(true));
    const stops = [shelf.subscribe(() => redraw()), logbook.subscribe(() => redraw())];
    return () => {
      for (const stop of stops) stop();
    };
  }, []);
  const exam = shelf.exams().find(({ hash }) => hash.startsWith(wanted)) ?? null;
  const whole = useWhole(ready ? exam : null, logbook, words);
  const port = useMemo((): ExamPort | null => {
    if (exam === null) return null;
    const save = async (): Promise<void> => {
      if (exam.opened === null) return;
      const { sheet, candidate } = exam.opened;
      const terms = termsOf(exam.opened);
      const kept = runsOf({ ...exam, opened: exam.opened }, logbook.keptRuns());
      const texts = await Promise.all(kept.map(({ runId }) => logbook.readText(runId)));
      const runs = texts.filter((text) => text !== null);
      download(runsFileName(exam.title, candidate), runsText({ title: exam.title, sheet, candidate, terms }, runs));
    };
    const going = goingOn(shelf.exams());
    return {
      title: harmless(exam.title),
      author: exam.author === null ? null : harmless(exam.author),
      minutes: exam.minutes,
      count: exam.count,
      candidates: exam.candidates,
      sitting: exam.opened === null ? null : sittingOf({ ...exam, opened: exam.opened }),
      canOpen: cryptoHere() !== null,
      another: going !== null && going.hash !== exam.hash,
      async open(typed, phrase) {
        const subtle = cryptoHere();
        const candidate = learnerName(typed);
        const sealed = readSealedEvening(exam.text, exam.title);
        if (!sealed.ok) return reasonsOf(words, sealed.problems);
        if (subtle === null || candidate === null) return [say.noCrypto];
        const text = await openSheet(subtle, sealed.value, phrase);
        if (text === null) return [say.wrongPhrase];
        const begun = await openExam(exam, text, candidate, library, shelf, surroundingsOf(library));
        if (!begun.ok) return reasonsOf(words, begun.problems);
        learner.write(candidate);
        await clearBench(begun.value);
        return [];
      },
      whole,
      openReport: (runId) => go({ page: 'report', runId }),
      toBench: (id) => go({ page: 'bench', scenarioId: id }),
      async handIn() {
        if (exam.opened === null) return;
        await save();
        await shelf.putExam({ ...exam, opened: { ...exam.opened, handedIn: true } });
      },
      save,
      toCourse: () => go({ page: 'course' }),
    };
  }, [exam, changes, ready, whole]);

  /** Practice that lies half done on one of these benches is put aside: the exam begins with a clear bench. */
  async function clearBench({ opened }: OwnExam): Promise<void> {
    for (const { runId, scenarioId } of logbook.openRuns()) {
      if (!opened?.scenarios.includes(scenarioId)) continue;
      const open = await logbook.readOpen(scenarioId);
      const text = open?.text ?? JSON.stringify(open?.run ?? null);
      await logbook.setAside({ reason: 'putAside', scenarioId, text }, { runId, run: null });
    }
  }

  function sittingOf(sitting: Opened): NonNullable<ExamPort['sitting']> {
    const kept = logbook.keptRuns();
    const now = Date.now();
    const entries = new Map(library.entries().map((entry) => [entry.id, entry]));
    const codeOf = (id: string): string => entries.get(id)?.code ?? id;
    const onBench = new Set(logbook.openRuns().map(({ scenarioId }) => scenarioId));
    const items = sitting.opened.scenarios.map((id, i): ExamItem => {
      const gate = gateOf(sitting, id, kept, now);
      const lies = onBench.has(id) && (gate.kind === 'open' || gate.kind === 'timeUp');
      return {
        ...{ id, code: codeOf(id), title: harmless(entries.get(id)?.title ?? id) },
        state: lies ? 'onBench' : gate.kind,
        // Those in between have to be signed as well, so it is the one just before that opens it.
        after: gate.kind === 'waits' ? codeOf(sitting.opened.scenarios[i - 1] ?? gate.after) : '',
        minutes: sitting.opened.minutesEach?.[i] ?? null,
      };
    });
    const { candidate, attempts, handedIn, scenarios, results, passMark, openedAtMs } = sitting.opened;
    const done = new Set(runsOf(sitting, kept).map(({ scenarioId }) => scenarioId));
    return {
      ...{ candidate: harmless(candidate), items, several: attempts === 'several', handedIn },
      ...{ heldBack: results === 'atEnd', passMark, day: dayOf(new Date(openedAtMs)) },
      signed: scenarios.filter((id) => done.has(id)).length,
      leftMs: () => timeLeft(sitting, Date.now()),
    };
  }

  if (!ready) return <SlipPage product={shell.product} title={say.eyebrow} busy />;
  if (port === null)
    return (
      <SlipPage
        product={shell.product}
        title={say.gone}
        buttons={<Button onClick={() => go({ page: 'course' })}>{store.toCourse}</Button>}
      />
    );
  return <ExamPage port={port} />;
}
