/** Which phase the run was in, and when: asked of the replay piece by piece while the page has nothing better to do. */
import { useEffect, useState } from 'preact/hooks';
import type { ReportPort } from '../../present/ports.ts';
import { type PhaseSpan, phaseProbes, phaseSpans } from '../../present/runTimeline.ts';
import type { Phase } from '../../session/phase.ts';

const MOST_PROBES = 90;
const PIECE_MS = 8;

export function usePhases(port: ReportPort, lengthSeconds: number): readonly PhaseSpan[] {
  const [spans, setSpans] = useState<readonly PhaseSpan[]>([]);
  useEffect(() => {
    const times = phaseProbes(port.run.events, lengthSeconds, MOST_PROBES);
    const answers: { atSeconds: number; phase: Phase }[] = [];
    let timer = 0;
    const piece = (): void => {
      const from = performance.now();
      while (answers.length < times.length && performance.now() - from < PIECE_MS) {
        const atSeconds = times[answers.length]!;
        answers.push({ atSeconds, phase: port.at(atSeconds).session.current });
      }
      if (answers.length < times.length) timer = window.setTimeout(piece, 16);
      else setSpans(phaseSpans(answers, lengthSeconds));
    };
    piece();
    return () => clearTimeout(timer);
  }, [port, lengthSeconds]);
  return spans;
}
