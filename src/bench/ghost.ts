/**
 * What the source's second harmonic puts on a node while the fundamental is swept elsewhere: a carrier of its own, at twice the frequency, that the diode sees with the first. Only
 * looked for where twice the sweep comes near a band that the sheet measures; the two make a mean envelope as markers and sweep do (throughMarkers.ts).
 */
import type { Receiver } from '../receiver/receiver.ts';
import { carrierAt, type Moment, TRACE_POINTS } from './moment.ts';
import { withMarkers } from './throughMarkers.ts';

/** Adds it to the carriers of a node over a whole period, in place; true where it adds anything. */
export type GhostMaker = (
  moment: Moment,
  conditions: ReturnType<Moment['conditions']>,
  node: string,
  carriers: Float64Array,
) => boolean;

export function createGhost(): GhostMaker {
  const hz = new Float64Array(TRACE_POINTS);
  const level = new Float64Array(TRACE_POINTS);
  return (moment, conditions, node, carriers) => {
    const { harmonic, swept, full, setup, state, circuit } = moment;
    if (harmonic === 0 || !swept || state.controls.sourceMode !== 'sweep' || moment.connections.rf === null)
      return false;
    if (!meets(setup.receiver, 2 * full.hz[0]!, 2 * full.hz[full.hz.length - 1]!)) return false;
    for (let i = 0; i < hz.length; i++) hz[i] = 2 * full.hz[i]!;
    const solvers = circuit.harmonic;
    solvers.solve(hz, { ...conditions, sourceVolts: conditions.sourceVolts * harmonic });
    carrierAt(moment, { solvers, hz }, node, level);
    const lit = state.controls.blanking ? TRACE_POINTS : carriers.length;
    for (let i = 0; i < lit; i++) {
      const at = i < TRACE_POINTS ? i : 2 * TRACE_POINTS - 1 - i;
      carriers[i] = withMarkers(carriers[i]!, level[at]!);
    }
    return true;
  };
}

function meets({ responses }: Receiver, fromHz: number, toHz: number): boolean {
  return responses.some(({ specification: s }) => s.fromHz < toHz && s.toHz > fromHz);
}
