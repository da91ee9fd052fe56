/** Every line of the score with its reason, folded away until asked for. */

import type { Ref } from 'preact';
import { adviceFor } from '../../describe/advice.ts';
import { ruleLabel } from '../../describe/ruleWords.ts';
import { BLOCKS, lineIsMet, type Report, type ScoreLine } from '../../grading/report.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Marked, useMarked } from '../../kit/terms/Marked.tsx';
import { Frame } from '../../kit/theme/art.tsx';
import { handbookHash } from '../../present/handbook/address.ts';
import { pageOfRule } from '../../present/handbook/rulePages.ts';
import { MomentLink } from './FindingsPanel.tsx';
import './lines.css';

export interface LinesTableProps {
  readonly report: Report;
  readonly sentence: (line: ScoreLine) => string;
  readonly goTo: (seconds: number) => void;
  readonly innerRef?: Ref<HTMLDetailsElement>;
}

export function LinesTable({ report, sentence, goTo, innerRef }: LinesTableProps) {
  const words = useWords();
  const { blocks, report: say } = words;
  const order = BLOCKS.flatMap((block) => report.lines.filter((l) => l.block === block));
  const marked = useMarked(order.map(sentence));
  const lost = (l: ScoreLine): boolean => l.points < l.max - 0.005;
  return (
    <details class="plate lines" {...(innerRef === undefined ? {} : { ref: innerRef })}>
      <summary>
        <Frame kind="button" />
        <span>{say.lines(report.lines.length)}</span>
      </summary>
      <div class="lines-scroll">
        <table>
          <thead>
            <tr>
              <th scope="col">{say.rule}</th>
              <th scope="col">{say.reason}</th>
              <th scope="col">{say.points}</th>
            </tr>
          </thead>
          {BLOCKS.map((block) => {
            const lines = report.lines.filter((l) => l.block === block);
            return lines.length === 0 ? null : (
              <tbody key={block}>
                <tr class="lines-block">
                  <th scope="rowgroup" colSpan={2}>
                    {blocks[block]}
                  </th>
                  <td>{say.blockPoints(report.blocks[block].points, report.blocks[block].max)}</td>
                </tr>
                {lines.map((line) => (
                  <tr key={line.id} class={lost(line) ? 'lost' : ''}>
                    <td class="lines-rule" title={ruleLabel(words, line.rule)}>
                      {line.rule}
                    </td>
                    <td>
                      <Marked>{marked[order.indexOf(line)]!}</Marked>
                      {lost(line) && !lineIsMet(line) ? (
                        <>
                          {' '}
                          <span class="lines-try">{adviceFor(words, line)}</span> <RulePage line={line} />
                        </>
                      ) : null}
                      {line.atSeconds === null ? null : (
                        <>
                          {' '}
                          <MomentLink seconds={line.atSeconds} goTo={goTo} />
                        </>
                      )}
                    </td>
                    <td class="lines-points">{say.linePoints(line.points, line.max)}</td>
                  </tr>
                ))}
              </tbody>
            );
          })}
        </table>
      </div>
    </details>
  );
}

/** To the page of the handbook that says why the line is asked for. */
function RulePage({ line }: { readonly line: ScoreLine }) {
  const words = useWords();
  const page = pageOfRule(line.rule);
  if (page === null) return null;
  const { handbook } = words.shell;
  return (
    <a href={handbookHash(page)} aria-label={`${handbook}: ${ruleLabel(words, line.rule)}`}>
      {handbook}
    </a>
  );
}
