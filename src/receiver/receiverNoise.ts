/**
 * The receiver's own noise at a node: what its stages and the circuits before them bring there.
 *
 * Referred to a stage's control node the noise is 4 k T (Re Z + 2.5 / gm) a hertz: the circuits' own by Nyquist's law, Z what the node sees, and the valve's as that
 * of a resistor of 2.5 / gm. On its way it meets what a signal would meet, so  sigma^2 = sum over the stages of  integral |V(node) / V(control)|^2 4 k T (Re Z + 2.5 / gm) df.
 * A circuit before the first stage is in that stage's Z; a lead of 75 ohm on a control node is too, and so it takes away the noise from before it. Stages are taken
 * at small signal, diodes as the standing carrier leaves them; a mixer adds none of its own, nor does what stands behind the last stage.
 * Sources: H. Nyquist, Phys. Rev. 32, 1928 (checked against ngspice's own noise analysis); 2.5 / gm of a triode, Thompson, North and Harris, RCA Review 1940-41
 * (from memory; a pentode has more, from the current that its screen takes).
 */
import { standingAdmittance } from '../physics/admittance.ts';
import type { Deck, DeckElement } from '../physics/deck.ts';
import { findElement, nodeKey } from '../physics/deck.ts';
import { deckParts } from './deckParts.ts';
import type { PathLoad } from './pathLoad.ts';
import type { Receiver } from './receiver.ts';
import { createSignalPath, PLAIN_SWEEP, type SignalPath } from './signalPath.ts';
import { LOWEST_HZ } from './sourceLevel.ts';

export interface NodeNoise {
  /** noise volts a side, rms */
  readonly sigmaVolts: number;
  /** width of the flat band that would let as much through */
  readonly bandHz: number;
}

export const NO_NOISE: NodeNoise = { sigmaVolts: 0, bandHz: 0 };

/** k T at 290 K, four times, joules. */
export const FOUR_K_T = 4 * 1.380649e-23 * 290;
const TRIODE_RESISTANCE = 2.5;
const POINTS = 64;
/** The band of a response reaches this much of its width beyond the ends that its sheet looks at. */
const BEYOND = 0.5;
/** Far below what any stage or diode would respond to. */
const PROBE_AMPS = 1e-9;

export interface ReceiverNoise {
  /** takes element values; saturations are left out, loads are set by `stand` */
  readonly path: SignalPath;
  /** what each diode draws while carriers stand on it: its table at that amplitude */
  stand(loads: readonly (PathLoad & { readonly carrierVolts: number })[]): void;
  at(node: string): NodeNoise;
}

interface NoisyStage {
  readonly element: string;
  readonly control: string;
  readonly source: string;
}

/** `deck` with the leads as they are. */
export function createReceiverNoise(receiver: Receiver, deck: Deck): ReceiverNoise {
  const stages = receiver.stages.flatMap(({ element }): NoisyStage[] => {
    const found = findElement(deck, element);
    // A control node that does not stand against ground would need its noise between two nodes; no receiver has one.
    if (found?.kind !== 'G' || nodeKey(found.control[1]) !== '0') return [];
    return [{ element: found.name, control: found.control[0], source: `Inoise_${found.name}` }];
  });
  const sources = stages.map(
    ({ source, control }): DeckElement => ({
      kind: 'I',
      name: source,
      nodes: ['0', control],
      value: 1,
      phaseDegrees: 0,
      dcAmps: 0,
    }),
  );
  const noisy: Deck = { ...deck, elements: [...deck.elements, ...sources] };
  const path = createSignalPath(receiver, noisy);
  const gm = new Map(stages.map(({ element }) => [element, findElement(deck, element)!.value] as const));
  const bands = bandsOf(receiver, deck);
  const level = new Float64Array(POINTS);

  return {
    path: {
      ...path,
      setValue(value) {
        if (gm.has(value.element)) gm.set(value.element, value.value);
        path.setValue(value);
      },
    },
    stand(loads) {
      path.setLoads(
        loads.map(({ node, law, carrierVolts }) => ({
          node,
          law: { ...law, admittance: standingAdmittance(law.admittance, carrierVolts) },
        })),
      );
    },
    at(node) {
      let power = 0;
      let passed = 0;
      let most = 0;
      for (const { element, control, source } of stages) {
        const hz = bands(control, node);
        const siemens = gm.get(element) ?? 0;
        if (hz === null || siemens <= 0) continue;
        path.solve(hz, source, PROBE_AMPS, PLAIN_SWEEP);
        path.magnitude(node, level);
        const re = path.real(control);
        const im = path.imag(control);
        const stepHz = hz[1]! - hz[0]!;
        let peak = 0;
        let sum = 0;
        for (let i = 0; i < POINTS; i++) {
          const gain = level[i]! ** 2 / (re[i]! ** 2 + im[i]! ** 2);
          const perHz = gain * FOUR_K_T * (re[i]! / PROBE_AMPS + TRIODE_RESISTANCE / siemens);
          peak = Math.max(peak, perHz);
          sum += perHz * stepHz;
        }
        power += sum;
        // The band is that of the stage which brings the most.
        if (sum > most) {
          most = sum;
          passed = peak;
        }
      }
      return power === 0 ? NO_NOISE : { sigmaVolts: Math.sqrt(power), bandHz: most / passed };
    },
  };
}

/** Frequencies at which the noise of a stage is added up for a node: about the responses that are measured there, else about all that go into its part of the deck. */
function bandsOf(receiver: Receiver, deck: Deck): (control: string, node: string) => Float64Array | null {
  const parts = deckParts(deck);
  const partOf = (node: string | null): number =>
    node === null ? -1 : parts.findIndex((p) => p.nodes.has(nodeKey(node)));
  const known = new Map<string, Float64Array | null>();
  const fresh = (control: string, node: string): Float64Array | null => {
    const part = partOf(control);
    const fed = receiver.responses.filter(({ setUp }) => {
      const inject = receiver.testPoints.find((p) => p.id === setUp.injectAt);
      const source = inject?.inject?.kind === 'deckSource' ? findElement(deck, inject.inject.element) : undefined;
      const into = source?.kind === 'I' ? source.nodes.find((n) => nodeKey(n) !== '0') : inject?.node;
      return setUp.source === 'sweep' && partOf(into ?? null) === part;
    });
    const measured = fed.filter(
      ({ quantity }) => quantity.kind === 'carrier' && nodeKey(quantity.node) === nodeKey(node),
    );
    const about = (measured.length > 0 ? measured : fed).map(({ specification }) => specification);
    if (about.length === 0) return null;
    const low = Math.min(...about.map((s) => s.fromHz));
    const high = Math.max(...about.map((s) => s.toHz));
    const from = Math.max(LOWEST_HZ, low - BEYOND * (high - low));
    const step = (high + BEYOND * (high - low) - from) / POINTS;
    return Float64Array.from({ length: POINTS }, (_, i) => from + step * (i + 0.5));
  };
  return (control, node) => {
    const key = `${control}|${node}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = fresh(control, node);
    known.set(key, made);
    return made;
  };
}
