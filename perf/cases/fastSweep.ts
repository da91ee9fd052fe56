/** The exact fast sweep: 40 kHz at 60 Hz around 455 kHz, which a 60 Hz frame has 16 ms for; and the first order in the rate beside it. */

import { chargingDiode } from '../../src/physics/chargingDiode.ts';
import { diodeLaw } from '../../src/physics/diodeLaw.ts';
import { createFastSweep } from '../../src/physics/fastSweep.ts';
import { createGentleSweep } from '../../src/physics/gentleSweep.ts';
import { sweepFrequencies } from '../../src/physics/sweep.ts';
import { detectorDiode } from '../../src/receiver/diodes.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { shippedReceiver } from '../../tests/files/shipped.ts';
import { deckText, solved } from '../../tests/physics/decks.ts';
import type { PerfCase } from '../case.ts';
import { timed } from '../case.ts';

const POINTS = 1024;
const [CENTRE_HZ, SPAN_HZ, SWEEP_HZ] = [455e3, 40e3, 60];

const total = (values: Float64Array) => values.reduce((sum, v) => sum + v, 0);

/** A slug turned to and fro, the lines solved and the envelope made, as in one frame. */
const frame = (gated: boolean) => () => {
  const fast = createFastSweep(POINTS);
  const hz = fast.linesHz(CENTRE_HZ, SPAN_HZ, SWEEP_HZ, 10e3);
  const solver = solved(deckText('am-455k'), hz);
  const nominal = solver.value('L1p');
  const out = new Float64Array(2 * POINTS);
  const run = (i: number) => {
    solver.setValue('L1p', nominal * (0.99 + 0.001 * (i % 20)));
    solver.solve();
    fast.envelope(solver.real('det'), solver.imag('det'), gated, out);
  };
  return timed({ warmUp: 200, runs: 200, run, checksum: () => total(out) });
};

const loadedFrame = () => {
  const { receiver, deck } = shippedReceiver('am-455k');
  const detector = receiver.detectors[0]!;
  const law = diodeLaw(detectorDiode(deck, detector));
  const fast = createFastSweep(POINTS);
  const solver = solved(deckText('am-455k'), fast.linesHz(CENTRE_HZ, SPAN_HZ, SWEEP_HZ, 10e3));
  solver.setDrive('Isig', createStatedResponse(receiver, deck, receiver.responses[0]!).amps);
  solver.setLoads([{ node: 'det', admittance: law.admittance }]);
  const nominal = solver.value('L1p');
  const out = new Float64Array(2 * POINTS);
  const volts = new Float64Array(2 * POINTS);
  const run = (i: number) => {
    solver.setValue('L1p', nominal * (0.99 + 0.001 * (i % 20)));
    solver.solve();
    const { re, im } = solver.drawnAt('det')!;
    const load = { law, leadFarads: 100e-12, re, im, periodSeconds: 1 / SWEEP_HZ, hz: solver.hz };
    fast.loadedEnvelope(solver.real('det'), solver.imag('det'), true, load, out);
    chargingDiode(law, Math.max(...out), 100e-12).charge(out, 1 / SWEEP_HZ, volts.fill(0));
  };
  return timed({ warmUp: 50, runs: 200, run, checksum: () => total(volts) });
};

export const cases: readonly PerfCase[] = [
  { id: 'fast-sweep', title: 'radio IF, 40 kHz at 60 Hz: lines solved, exact envelope', measure: frame(false) },
  {
    id: 'fast-sweep-gated',
    title: 'the same with the retrace blanked',
    against: 'fast-sweep',
    measure: frame(true),
  },
  {
    id: 'fast-sweep-loaded',
    title: 'the same with its diode, which follows in its own time, retrace blanked; volts on its load',
    against: 'fast-sweep-gated',
    measure: loadedFrame,
  },
  {
    id: 'fast-sweep-span',
    title: 'the same, unblanked, while the span is turned',
    against: 'fast-sweep',
    measure() {
      const fast = createFastSweep(POINTS);
      const solver = solved(deckText('am-455k'), Float64Array.of(CENTRE_HZ));
      const out = new Float64Array(2 * POINTS);
      const run = (i: number) => {
        solver.setFrequencies(fast.linesHz(CENTRE_HZ, SPAN_HZ + 100 * (i % 20), SWEEP_HZ, 10e3));
        solver.solve();
        fast.envelope(solver.real('det'), solver.imag('det'), false, out);
      };
      return timed({ warmUp: 200, runs: 200, run, checksum: () => total(out) });
    },
  },
  {
    id: 'gentle-sweep',
    title: 'lag and first-order envelope, 1024 points, known network',
    measure() {
      const hz = sweepFrequencies(CENTRE_HZ, SPAN_HZ, POINTS);
      const solver = solved(deckText('am-455k'), hz);
      const gentle = createGentleSweep(POINTS);
      const [re, im] = [solver.real('det'), solver.imag('det')];
      const out = new Float64Array(2 * POINTS);
      let lag = 0;
      const run = () => {
        lag = gentle.lag(re, im, hz, SPAN_HZ, SWEEP_HZ);
        gentle.envelope(re, im, out);
      };
      return timed({ warmUp: 400, runs: 400, run, checksum: () => total(out) + lag });
    },
  },
];
