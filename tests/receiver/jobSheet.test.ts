/** The sheet as a job has it: no step about a curve that is not asked for; and the level that it asks for is the one that the sound set shows (common practice, no source). */
import { describe, expect, test } from 'vitest';
import { sheetFigures } from '../../src/present/sheetFigures.ts';
import { jobSheet } from '../../src/receiver/jobSheet.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { onBench } from '../bench/shippedSheet.ts';
import { shippedLibrary } from '../files/shipped.ts';

const { receivers, scenarios } = shippedLibrary();
const receiver = (id: string) => receivers.get(id)!.receiver;
const shown = (id: string, ...responses: string[]) =>
  jobSheet(receiver(id), responses.length === 0 ? {} : { responses }).procedure;

describe('of the steps', () => {
  test('those about other curves are left out', () => {
    const texts = shown('tuner-vhf', 'osc').map(({ text }) => text);
    expect(texts.length).toBe(6);
    expect(texts.some((text) => text.startsWith('Back to TP5 and TP8'))).toBe(false);
    expect(texts.some((text) => text.includes('177.5'))).toBe(false);
    expect(shown('sound-4m5', 's').flatMap(({ slugs }) => slugs)).toEqual(['T3T', 'T3B']);
  });

  test('a job that begins with the first curve has the steps that name none, and a job about all has every curve', () => {
    for (const job of [shown('fm-10m7'), shown('fm-10m7', 'if')]) {
      const setting = job.filter(({ phase }) => phase === 'connect' || phase === 'setUp');
      expect(setting.length).toBe(3);
      expect(setting.every(({ response }) => response === undefined)).toBe(true);
    }
    const slugs = new Set(shown('fm-10m7').flatMap((step) => step.slugs));
    expect(slugs.size).toBe(receiver('fm-10m7').adjusters.length);
    expect(shown('fm-10m7', 'if').some(({ response }) => response === 's')).toBe(false);
  });

  test('the same job is given the same sheet, and a receiver with one curve its own', () => {
    expect(shown('fm-10m7', 's')).toBe(shown('fm-10m7', 's'));
    expect(jobSheet(receiver('video-b-38m9'), {})).toBe(receiver('video-b-38m9'));
  });

  test.each(scenarios.map((scenario) => [scenario.id, scenario] as const))(
    '%s: each slug that shapes a curve asked for stands in a step, and every phase has one',
    (_, scenario) => {
      const set = receiver(scenario.receiver);
      const { procedure } = jobSheet(set, scenario);
      for (const phase of ['safe', 'connect', 'setUp', 'align', 'prove'] as const)
        expect(procedure.some((step) => step.phase === phase)).toBe(true);
      const work = workResponses(set, scenario).map(({ id }) => id);
      const about = set.procedure.filter(
        ({ phase, response }) => phase === 'align' && work.includes(response ?? set.responses[0]!.id),
      );
      expect(procedure.filter(({ phase }) => phase === 'align')).toEqual(about);
    },
  );
});

const jobs = new Map(
  scenarios.map(({ receiver: id, responses }) => [`${id} ${responses?.join() ?? 'all'}`, { id, responses }]),
);

describe('of the level', () => {
  test.each([...jobs])('%s asks for what the sound set shows (within 12 per cent)', (_, { id, responses }) => {
    const job = responses === undefined ? {} : { responses };
    const [first] = workResponses(receiver(id), job);
    const { setup } = onBench(id, first!.id);
    const text = jobSheet(receiver(id), job)
      .procedure.filter(({ phase, parts }) => phase === 'setUp' && parts?.includes('level'))
      .map((step) => step.text)
      .join(' ');
    expect(text).not.toMatch(/dB/);
    if (first!.specification.peaks.some(({ oscillator }) => oscillator === true)) {
      expect(text).toContain('beat');
      return;
    }
    const asked = [...text.matchAll(/(?:for|about) ([\d.]+) (m?)V/g)].map(
      ([, figure, milli]) => Number(figure) * (milli === 'm' ? 1e-3 : 1),
    );
    const { volts } = sheetFigures(setup, first!);
    expect(
      asked.some((wanted) => Math.abs(wanted / volts - 1) < 0.12),
      `${asked} V for ${volts} V`,
    ).toBe(true);
  });
});
