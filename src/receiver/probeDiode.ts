/**
 * The bench's probe as a diode on a point: its law (benchProbe.ts) with the circuit that it rests on.
 *
 * Its 30 pF and the tank of a loose can are no short circuits to the pulses of its current. They dent the crest and come late, so that the probe does not only damp its point but detunes it: on 57 pF at 10.7 MHz by 0.13 pF
 * at 80 mV, 0.025 pF at 0.5 V. On a slope that is up to 4 % of the curve. So it goes by the balance of physics/diodeHarmonics.ts, at the middle of the band in which its point is looked at; over a band as wide as
 * a video amplifier's, at both its ends too.
 * Under a loose loop nothing but its own load is in the way of the pulses. Where that is a short circuit too, as at an oscillator, the closed forms of physics/diode.ts hold.
 * The band: of the response that the sheet looks at there with the probe; else of a detector in that part of the deck; else of the sheet's first response.
 */
import { type Deck, nodeKey } from '../physics/deck.ts';
import type { LoadedDiode } from '../physics/diodeLaw.ts';
import { editDeck } from '../physics/editDeck.ts';
import { HARMONICS, type HarmonicCircuit } from '../physics/harmonicCircuit.ts';
import { BENCH_PROBE } from './benchProbe.ts';
import { deckParts } from './deckParts.ts';
import { circuitsAt } from './harmonics.ts';
import type { Receiver, TestPoint } from './receiver.ts';
import { mainResponse } from './responses.ts';

/** Upper end of a band over its lower end, from which on the law is drawn up at both. */
const WIDE = 1.35;
/** Of the diode's own resistance to a small carrier: a load with less reactance is a short circuit, to 1e-4 of the volts. */
const SHORT = 0.01;

const NO_CIRCUIT: readonly number[] = new Array(HARMONICS - 1).fill(0);

/** `pulses`: false as benches of engines before 0.7.0 had it, with closed forms everywhere. */
export function probeDiode(
  receiver: Receiver,
  deck: Deck,
  point: Pick<TestPoint, 'id' | 'node' | 'looseLoop'>,
  pulses = true,
): LoadedDiode {
  const { id, node, looseLoop } = point;
  if (!pulses || node === null) return BENCH_PROBE;
  const [lowHz, highHz] = bandOf(receiver, deck, id, node);
  const wide = highHz > WIDE * lowHz;
  const carriers = wide ? [2 / (1 / lowHz + 1 / highHz), lowHz, highHz] : [(lowHz + highHz) / 2];
  const own = BENCH_PROBE.saturationAmps / BENCH_PROBE.emissionVolts;
  if (looseLoop === true && own < SHORT * 2 * Math.PI * lowHz * BENCH_PROBE.loadFarads) return BENCH_PROBE;
  const circuits =
    looseLoop === true
      ? carriers.map((hz): HarmonicCircuit => ({ hz, re: NO_CIRCUIT, im: NO_CIRCUIT }))
      : circuitsAt(withProbe(receiver, deck, id, node), node, carriers);
  if (circuits === null) return BENCH_PROBE;
  const [harmonics, below, above] = circuits;
  const diode = { ...BENCH_PROBE, harmonics: harmonics! };
  return wide ? { ...diode, beside: [below!, above!], besideByPeriod: true } : diode;
}

function bandOf(receiver: Receiver, deck: Deck, id: string, node: string): readonly [lowHz: number, highHz: number] {
  const looked = receiver.responses.find(({ setUp }) => setUp.observeWith === 'probe' && setUp.observeAt === id);
  const part = deckParts(deck).find(({ nodes }) => nodes.has(nodeKey(node)));
  const detector = receiver.detectors.find((one) =>
    part?.nodes.has(nodeKey(one.kind === 'envelope' ? one.node : one.plus)),
  );
  if (looked === undefined && detector !== undefined) return [detector.carrierHz, detector.carrierHz];
  const { centreHz, spanHz } = (looked ?? mainResponse(receiver)).setUp;
  return looked === undefined ? [centreHz, centreHz] : [centreHz - spanHz / 2, centreHz + spanHz / 2];
}

const probed = new WeakMap<Deck, Map<string, Deck>>();

/** With the probe's own capacitance on the node, where the deck does not have it already. */
function withProbe({ probeInDeck }: Receiver, deck: Deck, id: string, node: string): Deck {
  if (probeInDeck?.testPoint === id) return deck;
  const ofDeck = probed.get(deck) ?? new Map<string, Deck>();
  probed.set(deck, ofDeck);
  const value = BENCH_PROBE.inputFarads;
  const found =
    ofDeck.get(node) ??
    editDeck(deck, [{ kind: 'add', element: { kind: 'C', name: 'Cprobing', nodes: [node, '0'], value } }]);
  ofDeck.set(node, found);
  return found;
}
