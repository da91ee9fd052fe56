/**
 * Time runs of ngspice against what we have in closed form: the loaded diode, and a tuned circuit under a sweep that is fast against it.
 * Outside source: ngspice, as packaged in eecircuit-engine.
 */

import { describe, expect, test } from 'vitest';
import { detectEnvelope } from '../../src/physics/diode.ts';
import { createFastSweep } from '../../src/physics/fastSweep.ts';
import { rateHzPerSecond, sweepAngle, sweepFrequencies } from '../../src/physics/sweep.ts';
import { solved } from './decks.ts';
import { keptMeans, WHOLE } from './keptSpice.ts';
import { DIODE_SETTINGS, K_T_PER_Q, runTransient } from './ngspice.ts';

const meansOf = keptMeans('transient');

describe('exponential diode, 1 uA, into 10 kilohm and 0.1 uF, from a 1 MHz carrier', () => {
  // Left over: the last e^-10 of the charging, and ripple of a thousandth of the mean, which counts in the second order.
  test.each([
    [0.1, 4e-3],
    [0.5, 1e-3],
    [2, 1e-3],
  ])(
    '%d V peak, settled for %d s: mean output as by the law of mean currents (within 0.02 %)',
    async (amplitude, seconds) => {
      const from = seconds - 20e-6;
      const text = [
        'diode detector',
        DIODE_SETTINGS,
        '.model dd d(is=1u n=1)',
        `V1 a 0 sin(0 ${amplitude} 1meg)`,
        'D1 a o dd',
        'R1 o 0 10k',
        'C1 o 0 0.1u',
        `.tran 20n ${seconds} ${from} 20n`,
        '.end',
      ];
      const mean = (await meansOf(text.join('\n'), ['o'], [WHOLE]))[0]![0]!;
      const law = detectEnvelope(amplitude, { saturationAmps: 1e-6, emissionVolts: K_T_PER_Q, loadOhms: 10e3 });
      expect(Math.abs(mean / law - 1)).toBeLessThan(2e-4);
    },
  );
});

describe.each([0.5, 1])('20 kHz circuit, B 2 kHz, 12 kHz sine sweep of rate / B^2 = %d at its centre', (ratio) => {
  const [centreHz, bandwidth, spanHz] = [20e3, 2e3, 12e3];
  const sweepHz = (ratio * bandwidth ** 2) / (Math.PI * spanHz);
  const index = spanHz / (2 * sweepHz);
  const farads = 10e-9;
  const circuit = [
    `L1 a 0 ${1 / ((2 * Math.PI * centreHz) ** 2 * farads)}`,
    `C1 a 0 ${farads}`,
    `R1 a 0 ${1 / (2 * Math.PI * bandwidth * farads)}`,
  ];
  /** Phase of the carrier's envelope, and of the carrier; time from the beginning of a trace. */
  const phase = (t: number): number => -index * Math.cos(2 * Math.PI * sweepHz * t - Math.PI / 2);

  test('trace and retrace of the exact swept envelope are those of the time run (within 0.05 % of the highest point)', async () => {
    const points = 1024;
    const fast = createFastSweep(points);
    const solver = solved(['circuit', 'I1 0 a AC 1m', ...circuit, '.end'].join('\n'), Float64Array.of(centreHz));
    const still = solver.magnitude('a')[0]!;
    solver.setFrequencies(fast.linesHz(centreHz, spanHz, sweepHz, 1));
    solver.solve();
    const envelope = new Float64Array(2 * points);
    fast.envelope(solver.real('a'), solver.imag('a'), false, envelope);

    // Half a period to settle, then a whole one. Steps of a four-hundredth of a cycle: the trapezoidal rule's error of (wh)^2 / 12 moves the
    // resonance by 0.02 % of the bandwidth.
    const period = 1 / sweepHz;
    const step = 1 / (400 * centreHz);
    const text = [
      'swept circuit',
      '.options reltol=1e-6',
      `B1 0 a I = 1e-3*cos(${2 * Math.PI * centreHz}*time - ${index}*cos(${2 * Math.PI * sweepHz}*time - ${Math.PI / 2}))`,
      ...circuit,
      `.tran ${step} ${1.51 * period} ${0.49 * period} ${step}`,
      '.end',
    ];
    const { seconds, nodes } = await runTransient(text.join('\n'), ['a']);
    const volts = nodes.get('a')!;

    let worst = 0;
    let compared = 0;
    for (let i = 8; i < 2 * points; i += 16) {
      const at = (((sweepAngle(i, points) + Math.PI / 2) / (2 * Math.PI)) * period) % period;
      const when = at < 0.5 * period ? at + period : at;
      const measured = envelopeNear(seconds, volts, when, (t) => 2 * Math.PI * centreHz * t + phase(t), 0.6 / centreHz);
      worst = Math.max(worst, Math.abs(measured - envelope[i]!));
      compared++;
    }
    expect(compared).toBe(128);
    expect(worst / still).toBeLessThan(5e-4);

    // The same run shows what the fast sweep does: a quasi-static curve would be wrong by a tenth and more.
    const hz = sweepFrequencies(centreHz, spanHz, points);
    solver.setFrequencies(hz);
    solver.solve();
    const slow = solver.magnitude('a');
    const off = slow.reduce((most, v, i) => Math.max(most, Math.abs(v - envelope[i]!)), 0);
    expect(off / still).toBeGreaterThan(0.1);
    expect(rateHzPerSecond(spanHz, sweepHz) / bandwidth ** 2).toBeCloseTo(ratio, 12);
  });
});

/**
 * Size of e(t) at `when`, where volts = Re(e exp(j angle(t))): least squares with e a parabola in t, over `half` seconds to either side.
 */
function envelopeNear(
  seconds: Float64Array,
  volts: Float64Array,
  when: number,
  angle: (t: number) => number,
  half: number,
): number {
  const size = 6;
  const matrix = Array.from({ length: size }, () => new Float64Array(size + 1));
  for (let i = 0; i < seconds.length; i++) {
    const t = seconds[i]! - when;
    if (Math.abs(t) > half) continue;
    const [c, s] = [Math.cos(angle(seconds[i]!)), Math.sin(angle(seconds[i]!))];
    const x = t / half;
    const row = [c, -s, c * x, -s * x, c * x * x, -s * x * x, volts[i]!];
    for (let a = 0; a < size; a++) for (let b = 0; b <= size; b++) matrix[a]![b] = matrix[a]![b]! + row[a]! * row[b]!;
  }
  for (let a = 0; a < size; a++) {
    for (let b = a + 1; b < size; b++) {
      const share = matrix[b]![a]! / matrix[a]![a]!;
      for (let c = a; c <= size; c++) matrix[b]![c] = matrix[b]![c]! - share * matrix[a]![c]!;
    }
  }
  const x = new Float64Array(size);
  for (let a = size - 1; a >= 0; a--) {
    let rest = matrix[a]![size]!;
    for (let b = a + 1; b < size; b++) rest -= matrix[a]![b]! * x[b]!;
    x[a] = rest / matrix[a]![a]!;
  }
  return Math.hypot(x[0]!, x[1]!);
}
