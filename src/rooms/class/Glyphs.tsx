/** A small drawing with its word, wherever the list needs one. */
import { VERDICT_IDS, type VerdictId } from '../../grading/report.ts';
import type { Marks } from '../../judge/judged.ts';
import type { Outcome } from '../../judge/outcome.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Fit, Ink } from '../../kit/theme/art.tsx';
import { type BarLook, barArt, copyArt, GLYPH_PX, stateArt, verdictArt } from './classArt.ts';

const glyph = { width: GLYPH_PX, height: GLYPH_PX } as const;

export function State({ outcome }: { readonly outcome: Outcome }) {
  const { classroom: say } = useWords();
  return (
    <span class="pill">
      <Ink svg={stateArt(outcome)} {...glyph} />
      <span>{say.outcomes[outcome]}</span>
    </span>
  );
}

export function SameActs({ words }: { readonly words: string }) {
  return (
    <span class="pill">
      <Ink svg={copyArt} {...glyph} />
      <span>{words}</span>
    </span>
  );
}

export function VerdictDisc({ marks, id }: { readonly marks: Marks | null; readonly id: VerdictId }) {
  const { classroom: say } = useWords();
  const stands = marks === null ? null : marks.stands[id];
  return (
    <Ink
      svg={verdictArt(stands)}
      {...glyph}
      class="verdict-disc"
      label={stands === null ? say.notJudged : stands ? say.yes : say.no}
    />
  );
}

/** All four with their names, where there is no room for columns. */
export function VerdictList({ marks }: { readonly marks: Marks | null }) {
  const { classroom: say } = useWords();
  return (
    <ul class="verdict-list">
      {VERDICT_IDS.map((id) => (
        <li key={id}>
          <VerdictDisc marks={marks} id={id} /> {say.verdicts[id]}
        </li>
      ))}
    </ul>
  );
}

export function Bar({ share, look }: { readonly share: number; readonly look: BarLook }) {
  return <Fit class="class-bar" of={`${share} ${look}`} draw={(w, h) => barArt(w, h, share, look)} />;
}
