/** The wrong peak of a two-peak slug: the sheet shows it, in the model and against ngspice with the same coupling. */
import { expect, it } from 'vitest';
import { slugValues } from '../../src/receiver/elementValues.ts';
import { nominalTurns, slugHenries } from '../../src/receiver/slugLaw.ts';
import { evaluateSpecification, isInside } from '../../src/receiver/specification.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { shippedLibrary, shippedTexts } from '../files/shipped.ts';
import { runSpice } from '../physics/ngspice.ts';

const CASES = [...shippedLibrary().receivers.values()].flatMap(({ receiver, deck }) =>
  receiver.adjusters.flatMap((a) =>
    a.twoPeaks === undefined ? [] : [[`${receiver.id} ${a.id}`, receiver, deck, a] as const],
  ),
);

it('there are some', () => {
  expect(CASES.length).toBeGreaterThan(0);
});

it.each(CASES)('%s on its inner peak has the same inductance and misses the sheet', (_, receiver, deck, a) => {
  const inner = a.travelTurns - nominalTurns(a);
  expect(Math.abs(slugHenries(a, inner) / a.nominalHenries - 1)).toBeLessThan(1e-9);
  const missed = receiver.responses.filter((response) => {
    const stated = createStatedResponse(receiver, deck, response);
    const { hz, volts } = stated.solve({ [a.id]: inner });
    return evaluateSpecification(response.specification, hz, volts, stated.nominal).some((item) => !isInside(item));
  });
  expect(missed.length).toBeGreaterThan(0);
});

it.each(CASES)(
  '%s on its inner peak: the curve is that of ngspice with the closer coupling',
  async (_, receiver, deck, a) => {
    const response = receiver.responses.find((r) => r.quantity.kind === 'carrier')!;
    if (response.quantity.kind !== 'carrier') throw new Error('a carrier was looked for');
    const { fromHz, toHz } = response.specification;
    const inner = a.travelTurns - nominalTurns(a);
    const closer = slugValues(a, deck, inner).find((v) => v.element === a.twoPeaks!.coupling)!.value;
    const text = shippedTexts()
      [`receivers/${receiver.id}/network.cir`]!.replace(
        new RegExp(`^(${a.twoPeaks!.coupling}\\s+\\S+\\s+\\S+)\\s+\\S+`, 'im'),
        `$1 ${closer}`,
      )
      .replace(/^\.ac .*$/im, `.ac lin 141 ${fromHz} ${toHz}`);
    const spice = await runSpice(text);
    const node = spice.nodes.get(response.quantity.node.toLowerCase())!;
    const stated = createStatedResponse(receiver, deck, response, spice.hz);
    // Both as a share of the level at the first frequency, as the deck's source and the sheet's differ. The simulator's circuit has no diodes, and no stage gives way.
    stated.solve({ [a.id]: inner });
    stated.path.setLoads([]);
    for (const { element } of receiver.stages) stated.path.setSaturation(element, null);
    stated.path.solve(spice.hz, stated.drive, 1, stated.source);
    const volts = stated.path.magnitude(response.quantity.node, new Float64Array(spice.hz.length));
    const theirs = node.re.map((re, f) => Math.hypot(re, node.im[f]!));
    for (let f = 0; f < volts.length; f += 5) {
      expect(Math.abs(volts[f]! / volts[0]! / (theirs[f]! / theirs[0]!) - 1)).toBeLessThan(1e-9);
    }
  },
);
