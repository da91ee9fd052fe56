/**
 * The "on the tube" figure of the sheet: what the detector makes of a level.
 *
 * The sheet's levels are carrier volts relative to the reference. A diode reads small carriers low (square law) and large ones with an offset, so a carrier
 * at 50 per cent stands lower than half way up the tube. At the sheet's level with the slugs right A is the carrier at the reference, and a level r shows at  D(r A) / D(A),  D the diode's law (physics/diodeLaw.ts). The probe's law serves where
 * the sheet asks for the probe. An FM detector's output is E1 - E2 of its two diodes (half of it in a ratio detector), levels relative to half the
 * distance between its peaks; there a level shows as it is. The sum of a ratio detector is held at its mean over the blanked sweep.
 */
import type { Deck } from '../physics/deck.ts';
import { diodeLaw, type LoadedDiode } from '../physics/diodeLaw.ts';
import { fmOutput } from '../physics/fmDetector.ts';
import { sweepFrequencies } from '../physics/sweep.ts';
import { BENCH_PROBE } from './benchProbe.ts';
import { highest, voltsAt } from './curveReading.ts';
import { detectorDiode } from './diodes.ts';
import { probeDiode } from './probeDiode.ts';
import type { FmDetector, Receiver, SheetResponse } from './receiver.ts';
import { readSCurve } from './sCurveReading.ts';
import { createStatedResponse, type StatedResponse } from './statedResponse.ts';

export interface DetectedLevels {
  /** detected volts at the curve's reference (S-curve: half the distance between the peaks), without sign */
  readonly referenceDetectedVolts: number;
  /** carrier volts (peak) at the curve's reference; of an S-curve the larger diode's at its peak */
  readonly referenceCarrierVolts: number;
  /** where a level (relative to the reference, linear) shows on the tube, as a share of the reference's height; `hz`: where it stands, left out: at the reference */
  onTube(relative: number, hz?: number): number;
}

/** With the slugs at their nominal places and the source as the sheet sets it. `probePulses`: see `probeDiode`. */
export function createDetectedLevels(
  receiver: Receiver,
  deck: Deck,
  response: SheetResponse,
  probePulses = true,
): DetectedLevels {
  const { quantity, specification: spec, setUp } = response;
  const stated = createStatedResponse(receiver, deck, response, undefined, probePulses);
  const { amps } = stated;
  stated.path.solve(stated.hz, stated.drive, amps, stated.source);
  const carrier = (node: string) => stated.path.magnitude(node, new Float64Array(stated.hz.length));
  if (quantity.kind === 'difference') {
    const detector = fmDetector(receiver, response);
    const { detect } = diodeLaw(detectorDiode(deck, detector));
    const plus = carrier(detector.plus);
    const minus = carrier(detector.minus);
    const open = receiver.testPoints.find((p) => p.id === setUp.observeAt)?.tap === 'open';
    const kind = open ? 'discriminator' : detector.kind;
    const held = kind === 'ratio' ? heldSum(stated, response, detector, detect, amps) : 0;
    const volts = plus.map((v, i) => fmOutput(kind, detect(v), detect(minus[i]!), held));
    const { height } = readSCurve({ hz: stated.hz, volts }, spec.sCurve!.centreHz, spec.fromHz, spec.toHz);
    const most = Math.max(...plus, ...minus);
    return { referenceDetectedVolts: height, referenceCarrierVolts: most, onTube: (relative) => relative };
  }
  const curve = { hz: stated.hz, volts: carrier(quantity.node) };
  const { referenceHz } = spec;
  const { hz: atHz, volts: reference } =
    referenceHz === undefined
      ? highest(curve, spec.fromHz, spec.toHz)
      : { hz: referenceHz, volts: voltsAt(curve, referenceHz) };
  const { detect } = diodeLaw(sheetDiode(receiver, deck, response, probePulses));
  const referenceDetectedVolts = detect(reference, atHz);
  return {
    referenceCarrierVolts: reference,
    referenceDetectedVolts,
    onTube: (relative, hz = atHz) => detect(relative * reference, hz) / referenceDetectedVolts,
  };
}

const SWEEP_POINTS = 256;

/** Mean of both diodes over trace and blanked retrace. */
function heldSum(
  stated: StatedResponse,
  { setUp }: SheetResponse,
  { plus, minus }: FmDetector,
  detect: (volts: number) => number,
  amps: number,
): number {
  const hz = sweepFrequencies(setUp.centreHz, setUp.spanHz, SWEEP_POINTS);
  stated.path.solve(hz, stated.drive, amps, stated.source);
  const a = stated.path.magnitude(plus, new Float64Array(SWEEP_POINTS));
  const b = stated.path.magnitude(minus, new Float64Array(SWEEP_POINTS));
  return a.reduce((sum, v, i) => sum + detect(v) + detect(b[i]!), 0) / (2 * SWEEP_POINTS);
}

/** The diode through which a curve of carriers is seen. */
export function sheetDiode(receiver: Receiver, deck: Deck, { setUp }: SheetResponse, probePulses = true): LoadedDiode {
  const point = receiver.testPoints.find((p) => p.id === setUp.observeAt);
  if (setUp.observeWith === 'probe') {
    return point === undefined ? BENCH_PROBE : probeDiode(receiver, deck, point, probePulses);
  }
  const detector = receiver.detectors.find((d) => d.id === point?.detector);
  if (detector === undefined) throw new Error(`${receiver.id}: no detector stands at ${setUp.observeAt}`);
  return detectorDiode(deck, detector);
}

function fmDetector(receiver: Receiver, { setUp }: SheetResponse): FmDetector {
  const point = receiver.testPoints.find((p) => p.id === setUp.observeAt);
  const detector = receiver.detectors.find((d) => d.id === point?.detector);
  if (detector === undefined || detector.kind === 'envelope') {
    throw new Error(`${receiver.id}: no FM detector stands at ${setUp.observeAt}`);
  }
  return detector;
}
