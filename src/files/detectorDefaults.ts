/**
 * Figures of a detector that a receiver file may leave out. Its carrier is then the middle of the band of the sheet's first response, and its load has a capacitor that just
 * smooths such a carrier, w R C = SMOOTHED. Both only matter to how the diode loads a small tank. Common practice, no source.
 */

const SMOOTHED = 10;
const BOUNDS = [1e-13, 1e-3] as const;

/** Where nothing is known of the sheet either; its own problems are told. */
const ANY_HZ = 1e6;

type Json = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const itemsOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value) && value > 0;

/** The file with what its detectors leave out; what is no receiver stays as it is. */
export function withDetectorDefaults(file: unknown): unknown {
  if (!isObject(file) || !Array.isArray(file.detectors)) return file;
  const carrierHz = middleOf(file.responses);
  return { ...file, detectors: file.detectors.map((one: unknown) => (isObject(one) ? whole(one, carrierHz) : one)) };
}

function whole(detector: Json, middleHz: number): Json {
  const { carrierHz = middleHz, loadOhms } = detector;
  if (!isNumber(carrierHz) || !isNumber(loadOhms)) return { carrierHz, ...detector };
  const farads = SMOOTHED / (2 * Math.PI * carrierHz * loadOhms);
  return { carrierHz, loadFarads: Math.min(Math.max(farads, BOUNDS[0]), BOUNDS[1]), ...detector };
}

function middleOf(responses: unknown): number {
  const first = itemsOf(responses)[0];
  const band = isObject(first) && isObject(first.specification) ? first.specification : {};
  return isNumber(band.fromHz) && isNumber(band.toHz) ? (band.fromHz + band.toHz) / 2 : ANY_HZ;
}
