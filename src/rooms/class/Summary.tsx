/** What the class as a whole shows: the average of each skill, the lines that most of them lost, and the instructor's note on all of them. */

import type { ClassSummary } from '../../judge/classSummary.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../kit/PlateTitle.tsx';
import { Frame } from '../../kit/theme/art.tsx';
import type { NotesPort } from './classPort.ts';
import { Bar } from './Glyphs.tsx';
import { NoteField } from './NoteField.tsx';
import { lineName } from './OpenedRow.tsx';

/** Below this share of its points a skill is drawn as a loss. */
const WEAK_BELOW = 0.6;

export function SkillsPanel({ figures }: { readonly figures: ClassSummary }) {
  const { classroom: say } = useWords();
  return (
    <section class="plate class-skills" aria-labelledby="class-skills-title">
      <Frame kind="panel" seed={3} />
      <PlateTitle id="class-skills-title" no={3}>
        {say.skills} <span class="l2">{say.average}</span>
      </PlateTitle>
      {figures.skills.length === 0 ? (
        <p>{say.noAverage}</p>
      ) : (
        <>
          <ul class="skills">
            {figures.skills.map(({ skill, share }) => (
              <li key={skill}>
                <span>{say.skillNames[skill]}</span>
                <Bar share={share} look={share < WEAK_BELOW ? 'loss' : 'hay'} />
                <span class="m">{say.share(share)}</span>
              </li>
            ))}
          </ul>
          <p class="class-note">{say.counted(figures.counted)}</p>
        </>
      )}
    </section>
  );
}

export function LostPanel({ figures }: { readonly figures: ClassSummary }) {
  const words = useWords();
  const { classroom: say, blocks } = words;
  return (
    <section class="plate class-lost" aria-labelledby="class-lost-title">
      <Frame kind="card" seed={4} />
      <PlateTitle id="class-lost-title" no={4}>
        {say.commonest}
      </PlateTitle>
      {figures.lost.length === 0 ? (
        <p>{say.noneLost}</p>
      ) : (
        <ul>
          {figures.lost.map((line) => (
            <li key={`${line.rule}:${line.hz}`}>
              <b>{lineName(words, line)}</b>
              <span class="lost-block">{blocks[line.block]}</span>
              <Bar share={line.runs / line.of} look="loss" />
              <span class="m">{say.lostOf(line.runs, line.of)}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

export function ClassNote({ notes }: { readonly notes: NotesPort }) {
  const { classroom: say } = useWords();
  return (
    <section class="plate class-evening" aria-labelledby="class-evening-title">
      <Frame kind="card" seed={5} />
      <PlateTitle id="class-evening-title" no={5}>
        <label for="class-evening">{say.evening}</label>
      </PlateTitle>
      <NoteField id="class-evening" notes={notes} row={null} />
      <p class="class-note">{say.eveningKept}</p>
    </section>
  );
}
