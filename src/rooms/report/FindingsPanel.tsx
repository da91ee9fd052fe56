/** Findings in whole sentences, each with the moment to look at. */

import type { Finding } from '../../describe/findings.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import { Button, Frac, Frame } from '../../kit/theme/art.tsx';
import type { Approach } from '../../present/ports.ts';
import './findings.css';
import '../../kit/links/link.css';

/** A scenario that the report leads on to. */
export interface NextJob {
  readonly code: string;
  readonly title: string;
  /** of the title, where it is not that of the page */
  readonly language?: string;
  open(): void;
  readonly approach: Approach;
}

export interface FindingsPanelProps {
  readonly findings: readonly Finding[];
  /** what was said at each proof, and whether it was so */
  readonly proofs: readonly { readonly text: string; readonly met: boolean }[];
  readonly goTo: (seconds: number) => void;
  readonly next: NextJob | null;
  /** the run passed, so going on is what comes first */
  readonly leads: boolean;
}

export function FindingsPanel({ findings, proofs, goTo, next, leads }: FindingsPanelProps) {
  const { report: say, grading } = useWords();
  return (
    <section class="paper findings" aria-labelledby="findings-title">
      <Frame kind="sheet" />
      <h2 id="findings-title">{proofs.length === 0 ? say.findings : say.proofsAndFindings}</h2>
      <div class="findings-body">
        {findings.map((finding) => (
          <p key={finding.text} class={finding.tone}>
            <b>{grading.findings.tones[finding.tone]} </b>
            <FindingText finding={finding} goTo={goTo} />
          </p>
        ))}
      </div>
      {proofs.length === 0 ? null : (
        <ul class="proofs-said">
          {proofs.map(({ text, met }) => (
            <li key={text}>
              <span aria-hidden="true">{met ? '\u2713' : '\u2717'}</span>{' '}
              <span class="unseen">{met ? say.met : say.missed}: </span>
              <Frac>{text}</Frac>
            </li>
          ))}
        </ul>
      )}
      {next === null ? null : (
        <div class="findings-next">
          <span class="l">{say.nextJob}</span>
          <Button primary={leads} onClick={() => next.open()} approach={next.approach}>
            {next.code} <Told of={next}>{next.title}</Told>
          </Button>
        </div>
      )}
    </section>
  );
}

/** The sentence, with its time made into a link; the link stands after it where the sentence does not name the time. */
function FindingText({
  finding: { text, atSeconds },
  goTo,
}: {
  readonly finding: Finding;
  readonly goTo: (seconds: number) => void;
}) {
  const { report: say } = useWords();
  if (atSeconds === null) return <Frac>{text}</Frac>;
  const clock = say.clock(atSeconds);
  const at = text.indexOf(clock);
  const link = <MomentLink seconds={atSeconds} goTo={goTo} />;
  if (at < 0)
    return (
      <>
        <Frac>{text}</Frac> {link}
      </>
    );
  return (
    <>
      <Frac>{text.slice(0, at)}</Frac>
      {link}
      <Frac>{text.slice(at + clock.length)}</Frac>
    </>
  );
}

/** A time that takes the replay there. */
export function MomentLink({ seconds, goTo }: { readonly seconds: number; readonly goTo: (seconds: number) => void }) {
  const { report: say } = useWords();
  return (
    <button type="button" class="link moment" aria-label={say.goTo(seconds)} onClick={() => goTo(seconds)}>
      {say.clock(seconds)}
    </button>
  );
}
