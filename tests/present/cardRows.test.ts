/** The lines of a record card: nothing that the sheet asks at a frequency is without a place to write it down. */
import { describe, expect, it } from 'vitest';
import { cardLines } from '../../src/present/cardRows.ts';
import { sheetFigures } from '../../src/present/sheetFigures.ts';
import { slugLetters } from '../../src/receiver/slugLetters.ts';
import { en } from '../../src/words/en/index.ts';
import { SETUPS } from '../rooms/sceneSets.ts';

const ALL = SETUPS.flatMap((setup) =>
  setup.receiver.responses.map((response) => ({ name: `${setup.receiver.id} ${response.id}`, setup, response })),
);

describe.each(ALL)('the record card of $name', ({ setup: { receiver, ...rest }, response }) => {
  const figures = sheetFigures({ receiver, ...rest }, response);
  const { measured, biases } = cardLines(en, receiver, figures);
  const spec = response.specification;

  it('has a line for every level, trap, top and zero of its sheet, in order of frequency', () => {
    const asked = [...spec.points, ...spec.traps, ...spec.peaks].map(({ hz }) => hz);
    if (spec.sCurve !== null) asked.push(spec.sCurve.centreHz);
    expect(measured.length).toBeGreaterThan(0);
    expect(measured.slice(0, asked.length).map(({ at }) => at)).toEqual(
      asked.sort((a, b) => a - b).map((hz) => en.rack.canLabel(hz)),
    );
    expect(biases.map(({ at }) => at)).toEqual(response.setUp.biases.map(({ at }) => at));
  });

  it('names the slug that takes a trap\u2019s frequency out', () => {
    const letters = slugLetters(receiver);
    for (const { hz } of spec.traps) {
      const slug = receiver.adjusters.find(({ trapHz }) => trapHz === hz);
      const line = measured.find(({ at, wanted }) => at === en.rack.canLabel(hz) && wanted.startsWith('least'))!;
      expect(line.wanted.endsWith(slug === undefined ? 'lower' : `(trap ${letters.get(slug.id)})`)).toBe(true);
    }
  });
});
