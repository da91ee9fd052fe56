/**
 * The "on the tube" figure of the sheet: what the diode makes of a level.
 *
 * The sheet's levels are carrier volts relative to the peak. A diode reads small carriers low (square law) and large ones with an offset, so a carrier
 * at 50 per cent stands lower than half way up the tube. At the sheet's level with the slugs right, the peak carrier is
 *   A_peak = |V|_peak per ampere * siemens * source volts,
 * and a level r shows at  D(r A_peak) / D(A_peak),  D the detector's law (physics/diode.ts).
 * The probe's law serves where the sheet asks for the probe.
 */
import { createDetector } from '../physics/diode.ts';
import { BENCH_PROBE } from './benchProbe.ts';
import { highest, type ResponseCurve, voltsAt } from './curveReading.ts';
import type { Receiver } from './receiver.ts';
import { sourceVolts } from './sourceLevel.ts';
import { sheetSiemens } from './statedResponse.ts';

export interface DetectorFigure {
  /** carrier volts (peak) at the curve's reference, at the sheet's level with the slugs right */
  readonly referenceCarrierVolts: number;
  /** detected volts there, without sign */
  readonly referenceDetectedVolts: number;
  /** where a carrier level (relative to the reference, linear) shows on the tube, as a share of the reference's height */
  onTube(relative: number): number;
}

/** The part of a diode law that a detector and the probe have in common. */
export interface DiodeLaw {
  readonly saturationAmps: number;
  readonly emissionVolts: number;
  readonly loadOhms: number;
  readonly loadFarads: number;
}

/** `nominal` is the stated response of the nominal slugs, volts per ampere. */
export function createDetectorFigure(receiver: Receiver, nominal: ResponseCurve): DetectorFigure {
  const spec = receiver.specification;
  const voltsPerAmp =
    spec.referenceHz === undefined
      ? highest(nominal, spec.fromHz, spec.toHz).volts
      : voltsAt(nominal, spec.referenceHz);
  const referenceCarrierVolts = voltsPerAmp * sheetSiemens(receiver) * sourceVolts(receiver.setUp.levelDb);
  const detect = createDetector(sheetDiode(receiver));
  const referenceDetectedVolts = detect(referenceCarrierVolts);
  return {
    referenceCarrierVolts,
    referenceDetectedVolts,
    onTube: (relative) => detect(relative * referenceCarrierVolts) / referenceDetectedVolts,
  };
}

/** The diode through which the sheet's curve is seen. */
export function sheetDiode(receiver: Receiver): DiodeLaw {
  if (receiver.setUp.observeWith === 'probe') return BENCH_PROBE;
  const point = receiver.testPoints.find((p) => p.id === receiver.setUp.observeAt);
  const detector = receiver.detectors.find((d) => d.id === point?.detector);
  if (detector === undefined) throw new Error(`${receiver.id}: no detector stands at ${receiver.setUp.observeAt}`);
  return detector;
}
