/** Makes a run's entry in the index: from its report when it is signed off, or from its file alone where the entry is lost. */
import type { RunFile } from '../../files/runFile.ts';
import type { Report, ScoreLine } from '../../grading/report.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { FreshRun, KeptCause, KeptLine } from './keptRuns.ts';

export function entryOfReport(
  runId: string,
  run: { readonly scenario: Scenario; readonly learner: string | null },
  report: Report,
  signedAtMs: number | null,
  setUp: string | null = null,
): FreshRun {
  const { total, passed } = report;
  return {
    ...place(runId, run),
    total,
    passed,
    lines: linesOf(report),
    signedAtMs,
    ...(setUp === null ? {} : { setUp }),
  };
}

/** From what the file claims; null where it claims nothing, so that it was never signed off. */
export function entryOfFile(runId: string, file: RunFile): FreshRun | null {
  if (file.claimed === null) return null;
  const { total, passed } = file.claimed;
  const lines = file.claimed.lines.map(({ id, points }) => ({ id, points, max: null, cause: null }));
  return { ...place(runId, file), total, passed, lines, signedAtMs: null };
}

export function linesOf(report: Report): readonly KeptLine[] {
  return report.lines.map((line) => ({ id: line.id, points: line.points, max: line.max, cause: causeOf(line) }));
}

function place(runId: string, { scenario, learner }: { readonly scenario: Scenario; readonly learner: string | null }) {
  const { id: scenarioId, track, receiver, sealed } = scenario;
  return { runId, scenarioId, track, receiver, sealed, learner };
}

/** A failed part is named before a slug, as in the report. */
function causeOf(line: ScoreLine): KeptCause | null {
  if (line.part !== undefined) return { kind: 'part', part: line.part };
  return line.cause === null ? null : { kind: 'slug', slug: line.cause.slug, turns: line.cause.turns };
}
