/**
 * A set that sings (physics/limitCycle.ts), as the bench shows it: a carrier of its own that stands at the node whatever the source does, blanked retrace included, so that
 * the base line is lifted; stages that are taken up by it and leave the sweep less; and a beat where the sweep goes by it, through one pole of load, lead and tube, as at an
 * oscillator's loop (oscillation.ts). Away from the beat the diode follows the mean of the two carriers' envelope. Not modelled: noise, hum and ghost on top of it, and what
 * it does to a bias line that is left to itself. All of it is the tube's and the needle's business: facts and score are made without it.
 */
import { type LimitCycle, meanOfTwo } from '../physics/limitCycle.ts';
import { pipShape } from '../physics/pip.ts';
import type { LineVolts } from './conditions.ts';
import { type Moment, TRACE_POINTS } from './moment.ts';
import type { Half, Observation } from './observation.ts';
import type { Oscillation } from './oscillation.ts';

/** Null while it does not sing. */
export function singingAt(moment: Moment, lineVolts: LineVolts): LimitCycle | null {
  return moment.running ? moment.circuit.song.at(moment.conditions(lineVolts)) : null;
}

/** The same moment, for whatever else goes through the set. */
export function besideSong(moment: Moment, { gains }: LimitCycle): Moment {
  return {
    ...moment,
    conditions: (lineVolts, relative) => {
      const plain = moment.conditions(lineVolts, relative);
      return { ...plain, stages: { ...plain.stages, takenUp: gains } };
    },
  };
}

/** Turns the sweep's carriers at a node into what the diode follows, in place. */
export function joinSong(carriers: Float64Array, songVolts: number): void {
  for (let i = 0; i < carriers.length; i++) carriers[i] = meanOfTwo(songVolts, carriers[i]!);
}

/** The song with its beat: `plus` and `minus` hold the sweep's carriers by themselves, and a sweep that stands still its one. */
export function songBeat(
  moment: Moment,
  song: LimitCycle,
  observation: Observation,
  plus: Float64Array,
  minus: Float64Array,
): Oscillation {
  const { centreHz, state, swept, sweepHz, full } = moment;
  const { loadSeconds, leadSeconds, raw, node, minusNode, minus: other } = observation;
  const halfWidthHz = 1 / (2 * Math.PI * (loadSeconds + leadSeconds));
  const at = swept ? nearest(full.hz, song.hz) : 0;
  const swing = ({ detect }: Half, carriers: Float64Array, songVolts: number): number => {
    const swept = at === null ? 0 : carriers[at]!;
    return raw ? swept : (detect(songVolts + swept) - detect(Math.abs(songVolts - swept))) / 2;
  };
  const carrierVolts = song.volts(node);
  const second = minusNode === null ? 0 : swing(other ?? observation, minus, song.volts(minusNode));
  const volts = Math.abs(swing(observation, plus, carrierVolts) - second);
  const sweep = { centreHz, spanHz: state.controls.spanHz, mainsHz: sweepHz, points: TRACE_POINTS };
  const [forward] = swept ? pipShape(sweep, song.hz, halfWidthHz) : [];
  let share = swept ? 0 : 1;
  forward?.re.forEach((re, i) => {
    share = Math.max(share, Math.hypot(re, forward.im[i]!));
  });
  const beats = volts > 0 ? [{ hz: swept ? null : centreHz, volts }] : [];
  return { hz: song.hz, carrierVolts, halfWidthHz, beats, shownVolts: volts * share };
}

/** Where in a rising run of frequencies; null outside it. */
function nearest(hz: Float64Array, wanted: number): number | null {
  if (wanted < hz[0]! || wanted > hz.at(-1)!) return null;
  let best = 0;
  for (let i = 1; i < hz.length; i++) if (Math.abs(hz[i]! - wanted) < Math.abs(hz[best]! - wanted)) best = i;
  return best;
}
