/** Which way the volts of a rectifier go. */
import { BENCH_PROBE } from './benchProbe.ts';
import type { Receiver, SheetResponse } from './receiver.ts';

export const signOf = (polarity: 'positive' | 'negative'): 1 | -1 => (polarity === 'negative' ? -1 : 1);

/** Of what the Y lead stands on when it stands as the sheet asks; an FM detector's pair counts upwards. */
export function sheetSign({ testPoints, detectors }: Receiver, { setUp }: SheetResponse): 1 | -1 {
  if (setUp.observeWith === 'probe') return signOf(BENCH_PROBE.polarity);
  const point = testPoints.find((p) => p.id === setUp.observeAt);
  const detector = detectors.find((d) => d.id === point?.detector);
  return detector?.kind === 'envelope' ? signOf(detector.polarity) : 1;
}
