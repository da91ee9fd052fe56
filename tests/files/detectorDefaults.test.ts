/** What a detector of a receiver file may leave out, and what it has then: the formula of the format's page, written out here. */
import { describe, expect, it } from 'vitest';
import { parseReceiver } from '../../src/files/receiverSchema.ts';
import { shippedJson } from './shipped.ts';

const FILE = 'receivers/am-455k/receiver.json';

function detectorWithout(...keys: readonly string[]) {
  const json = shippedJson(FILE);
  for (const key of keys) delete json.detectors[0][key];
  const read = parseReceiver(json, FILE);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value.detectors[0]!;
}

describe('a detector that leaves figures out', () => {
  it('is made for the middle of the first response, 435 to 475 kHz', () => {
    expect(detectorWithout('carrierHz')).toEqual(detectorWithout());
    const json = shippedJson(FILE);
    delete json.detectors[0].carrierHz;
    json.responses[0].specification.toHz = 479_000;
    const read = parseReceiver(json, FILE);
    expect(read.ok && read.value.detectors[0]!.carrierHz).toBe(457_000);
  });

  it('has a capacitor that just smooths its carrier on 470 kilohm', () => {
    const farads = 10 / (2 * Math.PI * 455e3 * 470e3);
    expect(detectorWithout('loadFarads').loadFarads).toBeCloseTo(farads, 18);
    expect(detectorWithout('loadFarads', 'carrierHz').loadFarads).toBeCloseTo(farads, 18);
    expect(detectorWithout().loadFarads).toBe(1e-10);
  });

  it('is still refused for what it cannot do without, and for a figure that is none', () => {
    const json = shippedJson(FILE);
    delete json.detectors[0].loadOhms;
    json.detectors[0].carrierHz = 'middle';
    const read = parseReceiver(json, FILE);
    const places = read.ok ? [] : read.problems.map(({ place }) => place);
    expect(places).toContain('/detectors/0/carrierHz');
    expect(places.some((place) => place.startsWith('/detectors/0') && place !== '/detectors/0/carrierHz')).toBe(true);
  });
});
