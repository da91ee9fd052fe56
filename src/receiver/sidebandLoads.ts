/** What diodes draw from the sidebands of a carrier that stands on them. */
import { admittanceAtHz, constantAdmittance } from '../physics/admittance.ts';
import { createDiodeModulation } from '../physics/diodeModulation.ts';
import type { NodeLoad, Solver } from '../physics/solver.ts';
import type { PathLoad } from './pathLoad.ts';

/** As loads of the sidebands: what each draws from the standing carrier, which has been solved. Right for a swing of the phase. */
export function standingLoads(loads: readonly PathLoad[], carrier: Solver): NodeLoad[] {
  const y = new Float64Array(4);
  return loads.map(({ node, law }) => {
    admittanceAtHz(law.admittance, carrier.hz[0]!, carrier.magnitude(node)[0]!, y);
    return { node, admittance: constantAdmittance(y[0]!, y[1]!) };
  });
}

/**
 * The modulation of the envelope on a diode whose sidebands have been solved with standing loads: what it draws beyond them from a swing of the amplitude
 * (diodeModulation.ts) divides it by 1 + (z_u D_u + conj(z_l D_l)) / 2, z the loaded node's impedance at the sidebands. `re`, `im` by the modulating frequencies `hz`;
 * the sidebands' solver holds all upper ones, then all lower ones.
 */
export function meetModulation(
  { node, law }: PathLoad,
  carrier: Solver,
  sidebands: Solver,
  hz: Float64Array,
  re: Float64Array,
  im: Float64Array,
): void {
  const amplitude = carrier.magnitude(node)[0]!;
  const drawn = sidebands.drawnAt(node);
  if (drawn === null || amplitude === 0) return;
  const modulation = createDiodeModulation(law, amplitude);
  const y = new Float64Array(4);
  admittanceAtHz(law.admittance, carrier.hz[0]!, amplitude, y);
  const d = new Float64Array(2);
  /** z D at place k of the sidebands */
  const product = (k: number, modulationHz: number): readonly [re: number, im: number] => {
    modulation.excess(modulationHz, d);
    const ur = drawn.re[k]!;
    const ui = drawn.im[k]!;
    // z = -U / (1 - U Y)
    const br = 1 - (ur * y[0]! - ui * y[1]!);
    const bi = -(ur * y[1]! + ui * y[0]!);
    const size = br * br + bi * bi;
    const zr = -(ur * br + ui * bi) / size;
    const zi = -(ui * br - ur * bi) / size;
    return [zr * d[0]! - zi * d[1]!, zr * d[1]! + zi * d[0]!];
  };
  const n = hz.length;
  for (let i = 0; i < n; i++) {
    const [ar, ai] = product(i, hz[i]!);
    const [cr, ci] = product(n + i, -hz[i]!);
    const qr = 1 + (ar + cr) / 2;
    const qi = (ai - ci) / 2;
    const size = qr * qr + qi * qi;
    const x = re[i]!;
    const z = im[i]!;
    re[i] = (x * qr + z * qi) / size;
    im[i] = (z * qr - x * qi) / size;
  }
}
