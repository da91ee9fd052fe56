/**
 * Whole receivers with real diodes against time runs of ngspice: a standing carrier at the sheet's level through every stage (each a source of current Is tanh(v / Vs))
 * to the detectors' loads, at frequencies all over the curve. What we draw is what the loads hold there, within 2 % of the highest. Outside source: ngspice, as
 * packaged in eecircuit-engine. Its trapezoidal rule with STEPS a cycle sees every circuit at a frequency higher by (w h)^2 / 12, and so do we for the comparison.
 */

import { describe, expect, test } from 'vitest';
import { type Deck, findElement } from '../../src/physics/deck.ts';
import { diodeLaw, type LoadedDiode } from '../../src/physics/diodeLaw.ts';
import { detectorDiode } from '../../src/receiver/diodes.ts';
import { probeDiode } from '../../src/receiver/probeDiode.ts';
import type { Receiver } from '../../src/receiver/receiver.ts';
import { responseById } from '../../src/receiver/responses.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { shippedReceiver } from '../files/shipped.ts';
import { keptMeans, WHOLE } from './keptSpice.ts';
import { DIODE_SETTINGS, K_T_PER_Q } from './ngspice.ts';

interface SeenDiode {
  readonly node: string;
  readonly diode: LoadedDiode;
}

const meansOf = keptMeans('detectors');

const STEPS = 200;
const WARP = 1 + ((2 * Math.PI) / STEPS) ** 2 / 12;

/** The deck as ngspice has it for a time run: one source, saturating stages, diodes with their loads on `load0`, `load1` ..., these begun at `from` volts. */
function timeDeck(
  { stages }: Receiver,
  deck: Deck,
  drive: string,
  amps: number,
  hz: number,
  seconds: number,
  diodes: readonly SeenDiode[],
  from: readonly number[],
): string {
  const lines = [
    'receiver with its diodes',
    DIODE_SETTINGS.replace('reltol=1e-6', 'reltol=1e-4'),
    ...deck.elements.map((e) => {
      if (e.kind === 'I') {
        const own = e.name.toLowerCase() === drive.toLowerCase() ? amps : 0;
        return `${e.name} ${e.nodes.join(' ')} sin(0 ${own} ${hz})`;
      }
      if (e.kind === 'K') return `${e.name} ${e.coils.join(' ')} ${e.value}`;
      if (e.kind !== 'G') return `${e.name} ${e.nodes.join(' ')} ${e.value}`;
      const limit = stages.find((s) => s.element === e.name)!.saturationVolts;
      const [p, m] = e.control.map((node) => (node === '0' ? '0' : `v(${node})`));
      return `B${e.name} ${e.nodes.join(' ')} I = ${e.value * limit}*tanh((${p}-${m})/${limit})`;
    }),
  ];
  diodes.forEach(({ node, diode }, k) => {
    lines.push(`.model dd${k} d(is=${diode.saturationAmps} n=${diode.emissionVolts / K_T_PER_Q})`);
    lines.push(`Dd${k} ${node} load${k} dd${k}`, `Rd${k} load${k} 0 ${diode.loadOhms}`);
    lines.push(`Cd${k} load${k} 0 ${diode.loadFarads} ic=${from[k]}`);
  });
  const step = 1 / (hz * STEPS);
  const kept = Math.max(seconds - 8 / hz, 0);
  return [...lines, `.tran ${step} ${seconds} ${kept} ${step} uic`, '.end'].join('\n');
}

interface Compared {
  readonly hz: number;
  readonly ours: readonly number[];
  readonly theirs: readonly number[];
}

/** Volts on the loads by our law and by ngspice, at each frequency. */
async function compared(
  id: string,
  responseId: string,
  hz: readonly number[],
  seconds: number,
  seen: (receiver: Receiver, deck: Deck) => readonly SeenDiode[],
): Promise<readonly Compared[]> {
  const { receiver, deck } = shippedReceiver(id);
  const stated = createStatedResponse(
    receiver,
    deck,
    responseById(receiver, responseId),
    Float64Array.from(hz, (f) => f * WARP),
  );
  // Every detector hangs on the circuit; those looked at come first.
  const looked = seen(receiver, deck);
  const others = receiver.detectors.flatMap((detector): SeenDiode[] => {
    const nodes = detector.kind === 'envelope' ? [detector.node] : [detector.plus, detector.minus];
    const own = nodes.map((node) => ({ node, diode: detectorDiode(deck, detector) }));
    return own.filter(({ node }) => !looked.some((d) => d.node === node));
  });
  const all = [...looked, ...others];
  const volts = all.map(({ node, diode }) =>
    stated.path.magnitude(node, new Float64Array(hz.length)).map(diodeLaw(diode).detect),
  );
  const out: Compared[] = [];
  for (const [f, at] of hz.entries()) {
    const from = volts.map((v) => v[f]!);
    const loads = looked.map((_, k) => `load${k}`);
    const text = timeDeck(receiver, deck, stated.drive, stated.amps, at, seconds, all, from);
    const theirs = (await meansOf(text, loads, [WHOLE])).map(([mean]) => mean!);
    out.push({ hz: at, ours: from.slice(0, looked.length), theirs });
  }
  return out;
}

/** Largest difference of one figure over all frequencies, against the largest of that figure. */
function worst(rows: readonly Compared[], figure: (volts: readonly number[]) => number): number {
  const most = Math.max(...rows.map(({ theirs }) => Math.abs(figure(theirs))));
  return Math.max(...rows.map(({ ours, theirs }) => Math.abs(figure(ours) - figure(theirs)))) / most;
}

const detectorOf =
  (id: string) =>
  (receiver: Receiver, deck: Deck): readonly SeenDiode[] => {
    const detector = receiver.detectors.find((d) => d.id === id)!;
    const nodes = detector.kind === 'envelope' ? [detector.node] : [detector.plus, detector.minus];
    return nodes.map((node) => ({ node, diode: detectorDiode(deck, detector) }));
  };

describe('detectors loaded as in life', () => {
  test('vision valve strip, the diode on its 12 pF: within 2 % of the highest', async () => {
    const hz = [41.25e6, 41.7e6, 42.17e6, 43e6, 44e6, 45e6, 45.75e6, 46.5e6];
    const rows = await compared('video-valve-45m', 'if', hz, 2.5e-6, detectorOf('video'));
    expect(worst(rows, ([v]) => v!)).toBeLessThan(0.02);
  });

  test('AM set: within 2 % of the highest', async () => {
    const hz = [446e3, 450e3, 453e3, 456e3, 459e3, 463e3];
    const rows = await compared('am-455k', 'if', hz, 700e-6, detectorOf('diode'));
    expect(worst(rows, ([v]) => v!)).toBeLessThan(0.02);
  });

  test('FM tuner, S-curve of the ratio detector with its link open: each half and their difference within 2 % of the highest', async () => {
    const hz = [10.5e6, 10.58e6, 10.7e6, 10.78e6, 10.86e6];
    const rows = await compared('fm-10m7', 's', hz, 30e-6, detectorOf('ratio'));
    expect(worst(rows, ([a]) => a!)).toBeLessThan(0.02);
    expect(worst(rows, ([, b]) => b!)).toBeLessThan(0.02);
    expect(worst(rows, ([a, b]) => a! - b!)).toBeLessThan(0.02);
  });

  test('the probe on the loose can: within 0.2 % of the highest', async () => {
    const hz = [10.5e6, 10.6e6, 10.7e6, 10.8e6, 10.9e6];
    const point = { id: 'TP1', node: 'sec' };
    const rows = await compared('loose-can-10m7', 'can', hz, 25e-6, (receiver, deck) => [
      { node: point.node, diode: probeDiode(receiver, deck, point) },
    ]);
    expect(worst(rows, ([v]) => v!)).toBeLessThan(0.002);
  });
});

test('the decks hold none of it: no resistor stands for a diode any more', () => {
  for (const id of ['video-valve-45m', 'am-455k', 'fm-10m7', 'loose-can-10m7', 'aft-45m75', 'sound-4m5']) {
    const { receiver, deck } = shippedReceiver(id);
    expect(receiver.probeInDeck?.elements ?? []).not.toContain('Rprobe');
    for (const name of ['Rdio', 'R4a', 'R4b', 'R3a', 'R3b', 'R2a', 'R2b', 'Rprobe']) {
      expect(findElement(deck, name)).toBeUndefined();
    }
  }
});
