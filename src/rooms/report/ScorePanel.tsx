/** The score: total, word of the ladder, turns and time against par, and a bar for each block, filled with its own hatching. */

import { capWords } from '../../describe/ruleWords.ts';
import { HELPER_SECONDS } from '../../grading/limits.ts';
import { BLOCKS, type Block, parTold, type Report } from '../../grading/report.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../kit/PlateTitle.tsx';
import { Short } from '../../kit/Short.tsx';
import { Fit, Frac, Frame, thumb } from '../../kit/theme/art.tsx';
import { C, hatch, r1 } from '../../kit/theme/ink.ts';
import { bandOf } from '../../present/curves.ts';
import './score.css';

const LOOKS: Readonly<Record<Block, { readonly angle: number; readonly ink: string; readonly tint: string }>> = {
  response: { angle: 45, ink: C.petrol, tint: '#cfe0d6' },
  truth: { angle: -45, ink: C.rust, tint: '#ecd0bf' },
  proofs: { angle: 90, ink: C.brassInk, tint: '#ead9ae' },
  care: { angle: 0, ink: C.ink, tint: '#d5d8d6' },
  economy: { angle: 64, ink: C.ink2, tint: '#e6e0d0' },
};

export interface ScorePanelProps {
  readonly report: Report;
  readonly previousBest: number | null;
  /** opens the list of all lines */
  readonly showLines: () => void;
}

export function ScorePanel({ report, previousBest, showLines }: ScorePanelProps) {
  const words = useWords();
  const { blocks, report: say } = words;
  const par = parTold(report);
  const against = say.against(report.total, previousBest);
  return (
    <section class="plate score" aria-labelledby="score-title">
      <Frame kind="panel" />
      <PlateTitle id="score-title" no={1}>
        {say.score}
      </PlateTitle>
      <button type="button" class="link all-lines" onClick={showLines}>
        {say.allLines(report.lines.length)}
      </button>
      <div class="score-row">
        <p class="score-total">
          <span class="score-figure">{report.total}</span> <span class="score-of">{say.of100}</span>
        </p>
        <p class={`score-verdict${report.passed ? ' passed' : ''}`}>
          <strong>{say.verdict(report)}</strong>
          {against === null ? null : <span>{against}</span>}
        </p>
        <Fit class="score-stack" of={report} label={say.stack(report.word)} draw={(w, h) => stackArt(w, h, report)} />
        <p class="score-par">
          <strong>
            <Frac>{say.turns(report.turns, par?.turns ?? null)}</Frac>
          </strong>
          <span>{say.time(report.seconds, par?.seconds ?? null)}</span>
        </p>
      </div>
      {report.helped === true ? <p class="score-helped">{say.helped(HELPER_SECONDS / 60)}</p> : null}
      {report.caps.map((cap) => (
        <p class="score-cap" key={cap.rule + cap.subject}>
          {say.capped(cap.limit, capWords(words, cap.rule).name, say.clock(cap.atSeconds))}
        </p>
      ))}
      {report.wanting.map((what) => (
        <p class="score-cap" key={what}>
          {say.wanting[what]}
        </p>
      ))}
      <ul
        class="score-blocks"
        style={{ '--blocks': BLOCKS.map((b) => `minmax(50px, ${Math.max(1, report.blocks[b].max)}fr)`).join(' ') }}
      >
        {BLOCKS.map((block) => {
          const { points, max } = report.blocks[block];
          return (
            <li key={block}>
              <Fit
                class="score-bar"
                of={points / max}
                draw={(w, h) => barArt(w, h, max > 0 ? points / max : 0, block)}
              />
              <Short class="score-name">{blocks[block]}</Short>
              <span class="m">{say.blockPoints(points, max)}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function barArt(w: number, h: number, share: number, block: Block): string {
  const filled = r1(Math.max(0, Math.min(1, share)) * w);
  const { angle, ink, tint } = LOOKS[block];
  const d = `M0 0H${filled}V${h}H0Z`;
  const full =
    filled > 0
      ? `<path d="${d}" fill="${tint}"/>${hatch(d, [0, 0, filled, h], { a: angle, gap: 4.5, sw: 0.9, op: 0.75, col: ink })}`
      : '';
  const edge = filled > 0 && filled < w - 1 ? `<path d="M${filled} 0V${h}" stroke="${C.ink}"/>` : '';
  return `<rect width="${w}" height="${h}" fill="${C.sheet}"/><g class="filling sideways">${full}</g>${edge}<rect x=".75" y=".75" width="${w - 1.5}" height="${h - 1.5}" fill="none" stroke="${C.ink}" stroke-width="1.5"/>`;
}

/** The curve as left, stacked with as much hay as it has earned; the hay rises once. */
function stackArt(w: number, h: number, report: Report): string {
  const place = { x: 0, y: 0, w, h, curve: report.curves[0]!.after, band: bandOf([report.curves[0]!.after]) };
  const bare = thumb({ ...place, score: 0 });
  const full = thumb({ ...place, score: Math.max(1, report.total) });
  return `${bare}<g class="filling upwards">${full}</g>`;
}
