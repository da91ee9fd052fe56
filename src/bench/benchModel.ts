/** What the bench of an engine knows and the one before it did not: runs are done again on the bench that they were done on. */
import { ENGINE, type Engine } from '../base/engine.ts';

export interface BenchModel {
  /** the resistor in the tip of the Y lead takes its share of the carrier that is left on a detector's load */
  readonly leadDraws: boolean;
  /** where the sweep hurries the circuits both loads of an FM detector charge and discharge as they do; else each is one pole behind the law */
  readonly pairsCharge: boolean;
  /** a sweep of too many lines is reckoned exactly where it hurries the circuits; else to the first order in its rate */
  readonly lens: boolean;
  /** either diode of an FM detector has the circuit, the load and the leak of its own end and the other's pulses, and its loads charge under every sweep; else the mean of both ends, and the leak on both */
  readonly ownDiodes: boolean;
  /** a sweep that hurries the circuits before an FM detector is reckoned with limiters and loads as they stand at the moment; else to the first order in its rate */
  readonly chirps: boolean;
  /** to the pulses of the probe's current neither its load nor the circuit that it rests on is a short circuit; else both are */
  readonly probePulses: boolean;
}

const MODELS: Readonly<Record<Engine, BenchModel>> = {
  '0.3.0': { leadDraws: false, pairsCharge: false, lens: false, ownDiodes: false, chirps: false, probePulses: false },
  '0.4.0': { leadDraws: true, pairsCharge: true, lens: true, ownDiodes: false, chirps: false, probePulses: false },
  '0.5.0': { leadDraws: true, pairsCharge: true, lens: true, ownDiodes: true, chirps: false, probePulses: false },
  '0.6.0': { leadDraws: true, pairsCharge: true, lens: true, ownDiodes: true, chirps: true, probePulses: false },
  '0.7.0': { leadDraws: true, pairsCharge: true, lens: true, ownDiodes: true, chirps: true, probePulses: true },
};

export function modelOf(engine: Engine = ENGINE): BenchModel {
  return MODELS[engine];
}
