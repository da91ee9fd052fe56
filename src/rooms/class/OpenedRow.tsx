/** An opened row: what is to be said of the file, what the run lost, where to go from here, and the instructor's note. */

import { useEffect, useState } from 'preact/hooks';
import { ruleLabel } from '../../describe/ruleWords.ts';
import { scoreLineSentence } from '../../describe/scoreLine.ts';
import type { ClassRow } from '../../judge/classList.ts';
import type { MarkedLine } from '../../judge/judged.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Button } from '../../kit/theme/art.tsx';
import type { Words } from '../../words/words.ts';
import type { ClassPort, OpenedRun } from './classPort.ts';
import { VerdictList } from './Glyphs.tsx';
import { NoteField } from './NoteField.tsx';
import { RunLook } from './RunLook.tsx';

const MOST_LINES = 5;
/** Less is lost by rounding. */
const LEAST_LOSS = 0.05;

interface OpenedRowProps {
  readonly row: ClassRow;
  readonly port: ClassPort;
}

export function OpenedRow({ row, port }: OpenedRowProps) {
  const words = useWords();
  const { classroom: say } = words;
  const { marks } = row;
  const [opened, setOpened] = useState<OpenedRun | null>(null);
  useEffect(() => {
    if (marks === null) return;
    const off = new AbortController();
    void port.look(row.no, off.signal).then((found) => {
      if (!off.signal.aborted) setOpened(found);
    });
    return () => off.abort();
  }, [row.no]);
  return (
    <div class={marks === null ? 'opened-strip bare' : 'opened-strip'}>
      {marks === null ? null : opened === null ? <p class="run-look">{say.looking}</p> : <RunLook opened={opened} />}
      <div class="opened-file">
        <p class="m">
          <bdi>{row.file}</bdi>
        </p>
        {row.day === null ? null : (
          <p>
            {say.day} <bdi>{row.day}</bdi>
          </p>
        )}
        {row.reason === '' ? null : <p class="reason">{row.reason}</p>}
        {row.verdict === 'otherScenario' ? <p class="reason">{say.whatToDrop}</p> : null}
        <VerdictList marks={marks} />
        <div class="opened-buttons">
          {row.points === null ? null : <Button onClick={() => port.openReport(row.no)}>{say.report}</Button>}
          <Button onClick={() => port.saveFile(row.no)}>{say.saveFile}</Button>
          <Button onClick={() => port.takeAway(row.no)}>{say.takeAway}</Button>
        </div>
      </div>
      {marks === null ? null : <Lost lines={marks.lines} opened={opened} />}
      <Note row={row} port={port} />
    </div>
  );
}

interface LostProps {
  readonly lines: readonly MarkedLine[];
  /** there are sentences instead of names as soon as the run has been graded */
  readonly opened: OpenedRun | null;
}

function Lost({ lines, opened }: LostProps) {
  const words = useWords();
  const { classroom: say } = words;
  const lost = lines
    .map((line) => ({ line, points: line.max - line.points }))
    .filter(({ points }) => points >= LEAST_LOSS)
    .sort((a, b) => b.points - a.points);
  if (lost.length === 0) return <p class="opened-lost">{say.nothingLost}</p>;
  return (
    <div class="opened-lost">
      <h3 class="l">{say.lost(lost.reduce((sum, { points }) => sum + points, 0))}</h3>
      <ul>
        {lost.slice(0, MOST_LINES).map(({ line, points }) => (
          <li key={line.id}>
            <span class="m">{say.lostLine(points)}</span> <span>{sentenceOf(words, line, opened)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Under today's rules the report may have other lines than the claim was graded by. */
function sentenceOf(words: Words, line: MarkedLine, opened: OpenedRun | null): string {
  const whole = opened?.report.lines.find(({ id }) => id === line.id);
  return opened === null || whole === undefined
    ? lineName(words, line)
    : scoreLineSentence(words, whole, opened.receiver);
}

export function lineName(words: Words, { rule, hz }: Pick<MarkedLine, 'rule' | 'hz'>): string {
  const label = ruleLabel(words, rule);
  return hz === null ? label : words.classroom.lineAt(label, words.format.frequency(hz));
}

function Note({ row, port }: OpenedRowProps) {
  const { classroom: say } = useWords();
  const id = `note-${row.no}`;
  return (
    <div class="opened-note">
      <label class="l" for={id}>
        {say.yourNote(row.learner ?? row.file)}
      </label>
      <NoteField id={id} notes={port.notes} row={row} />
      <p class="class-note">{say.noteKept}</p>
    </div>
  );
}
