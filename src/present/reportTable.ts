/** The lines of a report as a table for spreadsheets: figures as figures, and the sentence that the page says. Pure. */
import { csvText } from '../base/csv.ts';
import { lineIsMet, type Report, type ScoreLine } from '../grading/report.ts';

const COLUMNS = [
  'line',
  'rule',
  'block',
  'measured',
  'low',
  'high',
  'unit',
  'met',
  'points',
  'max',
  'atSeconds',
  'reason',
] as const;

export function reportCsv({ lines }: Pick<Report, 'lines'>, sentence: (line: ScoreLine) => string): string {
  return csvText([
    COLUMNS,
    ...lines.map((line) => [
      ...[line.id, line.rule, line.block, line.measured, line.low, line.high, line.unit, lineIsMet(line)],
      ...[line.points, line.max, line.atSeconds, sentence(line)],
    ]),
  ]);
}
