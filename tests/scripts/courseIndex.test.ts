/** What builds the page puts the course's index into it, and a broken file ends the building with every problem. */
import { cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Plugin } from 'vite';
import { afterAll, describe, expect, it } from 'vitest';
import { courseIndex, INDEX_FILE } from '../../scripts/courseIndex.ts';
import { makeCourseIndex } from '../../scripts/makeCourseIndex.ts';
import { inside } from '../cli/commandLine.ts';
import { SCENARIOS } from '../files/shipped.ts';

const place = mkdtempSync(path.join(tmpdir(), 'haystack-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

/** A copy of the scenarios with one track and its receiver, some of its files changed. */
function folderWith(changes: Readonly<Record<string, (text: string) => string>>): string {
  const folder = mkdtempSync(path.join(place, 'scenarios-'));
  for (const part of ['am', 'receivers'])
    cpSync(path.join(SCENARIOS, part), path.join(folder, part), { recursive: true });
  for (const [name, change] of Object.entries(changes)) {
    const file = path.join(folder, name);
    writeFileSync(file, change(readFileSync(file, 'utf8')));
  }
  return folder;
}

/** What the builder would get, or what it would be told. */
async function built(plugin: Plugin, file: string): Promise<string | null> {
  const load = plugin.load as (this: { error(text: string): never }, id: string) => Promise<string | null>;
  return load.call(
    {
      error(text) {
        throw new Error(text);
      },
    },
    file,
  );
}

describe('the index', () => {
  it('stands in the place of its file, and of no other', async () => {
    const folder = folderWith({});
    const plugin = courseIndex(folder);
    const text = (await built(plugin, INDEX_FILE))!;
    const made = makeCourseIndex(folder);
    if (!made.ok) throw new Error(made.lines.join('\n'));
    expect(made.entries.map((entry) => entry.code)).toEqual(['A-01', 'A-02', 'A-03', 'A-04']);
    const data = /^export const SHIPPED_INDEX = JSON\.parse\((".*")\);$/s.exec(text)![1]!;
    expect(JSON.parse(JSON.parse(data) as string)).toEqual(JSON.parse(JSON.stringify(made.entries)));
    expect(await built(plugin, `${INDEX_FILE}x`)).toBeNull();
  });

  it('of a folder with broken files is not made: each problem is told on a line', async () => {
    const folder = folderWith({
      'am/slow-down.json': (text) => text.replace('"toleranceFactor"', '"dificulty"'),
      'am/the-first-pair.json': (text) => text.replace('"am-455k"', '"am-456k"'),
    });
    const told = await built(courseIndex(folder), INDEX_FILE).then(
      () => '',
      (error: Error) => error.message,
    );
    const lines = told.split('\n');
    expect(lines.some((line) => /^am\/slow-down\.json, line \d+, column 3, \/dificulty: found/.test(line))).toBe(true);
    expect(
      lines.some((line) => /^am\/the-first-pair\.json, line \d+, column \d+, \/receiver: found "am-456k"/.test(line)),
    ).toBe(true);
  });

  it('marks a scenario without a certificate, though its file states a par', () => {
    const folder = folderWith({
      'am/slow-down.json': (text) =>
        text.replace('"slow-down"', '"slower"').replace('"title"', '"par": { "turns": 2, "seconds": 300 },\n  "title"'),
    });
    renameSync(path.join(folder, 'am/slow-down.json'), path.join(folder, 'am/slower.json'));
    const recommending = path.join(folder, 'am/the-first-pair.json');
    writeFileSync(recommending, readFileSync(recommending, 'utf8').replace('"slow-down"', '"slower"'));
    const made = makeCourseIndex(folder);
    if (!made.ok) throw new Error(made.lines.join('\n'));
    expect(made.entries.map(({ id, uncertified = false }) => [id, uncertified])).toContainEqual(['slower', true]);
    expect(made.entries.filter(({ uncertified }) => uncertified)).toHaveLength(1);
  });

  it('is made without solving what only a check of files solves: a gain line that cannot fail ends no building', () => {
    const folder = folderWith({
      'receivers/am-455k/receiver.json': (text) => text.replace('"minDb": -1.5', '"minDb": -40'),
    });
    const file = path.join(folder, 'receivers/am-455k/receiver.json');
    expect(makeCourseIndex(folder).ok).toBe(true);
    const { err, code } = inside('check', file);
    expect(code).toBe(1);
    expect(err).toContain('wanted a line that can fail');
  });
});
