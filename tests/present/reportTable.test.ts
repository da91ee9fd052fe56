/** The lines of a report as a table: read back by the rules of RFC 4180, section 2 (records end in CRLF, a quote in a quoted field is doubled). */
import { describe, expect, it } from 'vitest';
import { grade } from '../../src/grading/grade.ts';
import { reportCsv } from '../../src/present/reportTable.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { setupOf } from '../technician/oneScenario.ts';

function read(text: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, quoted, plain, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/g)) {
    rows.at(-1)!.push(quoted === undefined ? plain! : quoted.replaceAll('""', '"'));
    if (end === '\r\n') rows.push([]);
  }
  return rows.slice(0, -1);
}

describe('the table of a report', () => {
  const setup = setupOf('first-curve');
  const report = grade(setup, demonstrate(setup).events);

  it('has a row for every line, whose points come to the points of the blocks', () => {
    const [head, ...rows] = read(reportCsv(report, (line) => `because of "${line.id}", and more`));
    expect(rows).toHaveLength(report.lines.length);
    const column = (name: string): string[] => rows.map((row) => row[head!.indexOf(name)]!);
    expect(rows.every((row) => row.length === head!.length)).toBe(true);
    const points = column('points').reduce((sum, one) => sum + Number(one), 0);
    const blocks = Object.values(report.blocks).reduce((sum, block) => sum + block.points, 0);
    expect(points).toBeCloseTo(blocks, 1);
    expect(column('reason')[0]).toBe(`because of "${report.lines[0]!.id}", and more`);
    expect(new Set(column('met'))).toEqual(new Set(['true']));
  });

  it('keeps what begins like a formula from being one', () => {
    const [, row] = read(reportCsv({ lines: report.lines.slice(0, 1) }, () => '=1+1'));
    expect(row!.at(-1)).toBe("'=1+1");
  });
});
