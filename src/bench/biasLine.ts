/**
 * The bias lines: each clamped by a lead of the bias supply, or left to follow the signal.
 *
 * Left alone a line stands at V = rest + slope * D(V), D the mean output over the sweep's period of the detector that it follows, which itself falls as the line
 * takes the gain down. The crossing is found by bisection and false position (Illinois rule) between "no signal" and "all the signal that rest bias
 * gives", a fixed number of rounds, always from the same ends, so that the same bench gives the same volts. Two lines that are both free are settled in turn, a
 * fixed number of times. A clamped line stands where the supply's own resistance leaves it, and the supply gives what its knob says only about (biasOutputs.ts):
 * V = (E / Rs + U / Rl) / (1 / Rs + 1 / Rl + 1 / Rm), U and Rl the line's own, Rm meter and leak. A meter on an unclamped line draws current through the line's own resistance and pulls it towards earth.
 */
import { diodeLaw } from '../physics/diodeLaw.ts';
import { unclampedVolts } from '../receiver/biasLaw.ts';
import type { LineFault } from '../receiver/faults/faultEffects.ts';
import type { BiasLaw, BiasLine } from '../receiver/receiver.ts';
import { lifeOf } from '../scenario/life.ts';
import type { BenchState } from './benchState.ts';
import { BIAS_OUTPUTS, type BiasOutput, knobError, outputVolts } from './biasOutputs.ts';
import type { LineVolts } from './conditions.ts';
import { AGC_LINE_OHMS, METER_OHMS_PER_VOLT } from './instruments.ts';
import { diodesNow } from './loads.ts';
import { carrierAt, frequenciesAt, type Moment, meanDetected } from './moment.ts';

/** How often two free lines are settled in turn. */
const TURNS = 4;

/** Volts on each line at this moment. A line left to itself is dead without power. */
export function lineVoltsAt(moment: Moment): LineVolts {
  const volts: Record<string, number> = {};
  const free: BiasLine[] = [];
  for (const law of moment.setup.receiver.biasLines) {
    const clamped = clampedVolts(law.at, moment.state);
    if (clamped !== null) volts[law.at] = heldVolts(moment, law, clamped);
    else if (!moment.running) volts[law.at] = 0;
    else {
      volts[law.at] = law.unclampedRestVolts;
      free.push(law);
    }
  }
  const rounds = free.length > 1 ? TURNS : free.length;
  for (let round = 0; round < rounds; round++) {
    for (const law of free) volts[law.at] = settled(moment, law, volts);
  }
  return volts;
}

function settled(moment: Moment, law: BiasLine, others: LineVolts): number {
  const detector = moment.setup.receiver.detectors.find((d) => d.id === law.follows);
  const loading = lineLoading(law.at, moment.state, moment.lineFaults[law.at]);
  const drawnVolts = AGC_LINE_OHMS * (moment.lineFaults[law.at]?.amps ?? 0);
  if (detector?.kind !== 'envelope' || moment.connections.rf === null)
    return loading * (law.unclampedRestVolts + drawnVolts);
  const { detect } = diodeLaw(diodesNow(moment.setup, detector, moment.state, moment.connections)[0]!);
  const samples = new Float64Array(moment.thin.hz.length);
  const own = { ...law, unclampedRestVolts: law.unclampedRestVolts + drawnVolts };
  return settledVolts(own, loading, (volts) => {
    moment.thin.solvers.solve(moment.thin.hz, moment.conditions({ ...others, [law.at]: volts }));
    carrierAt(moment, moment.thin, detector.node, samples);
    return meanDetected(moment, samples, frequenciesAt(moment, moment.thin, detector.node), detect);
  });
}

/** What a line holds that the supply is clipped to, its knob at `said` volts. */
function heldVolts({ setup, state, running, lineFaults }: Moment, law: BiasLine, said: number): number {
  const { biasOhms } = lifeOf(setup.scenario);
  const given = said * (1 + knobError(setup.scenario, outputAt(law.at, state.leads)));
  if (biasOhms === 0) return given;
  const { leakOhms, open, amps } = lineFaults[law.at] ?? SOUND_LINE;
  const fed = open ? 0 : 1 / AGC_LINE_OHMS;
  const own = running ? law.unclampedRestVolts * fed + amps : 0;
  const others = meterSiemens(law.at, state) + 1 / leakOhms;
  return (given / biasOhms + own) / (1 / biasOhms + fed + others);
}

/** Volts on the knob of the bias supply where one of its leads stands on the line; null where none does. */
export function clampedVolts(line: string, { leads, controls }: Pick<BenchState, 'leads' | 'controls'>): number | null {
  const output = outputAt(line, leads);
  return output === undefined ? null : outputVolts(output, controls);
}

function outputAt(line: string, leads: BenchState['leads']): BiasOutput | undefined {
  return BIAS_OUTPUTS.find(({ lead }) => leads[lead] === line);
}

const SOUND_LINE: LineFault = { leakOhms: Number.POSITIVE_INFINITY, open: false, amps: 0 };

const ROUNDS = 24;
const CLOSE_VOLTS = 1e-4;

/** `meanDetected` gives the detector's mean output, without sign, for a line at some volts. */
function settledVolts(law: BiasLaw, loading: number, meanDetected: (lineVolts: number) => number): number {
  const wanted = (volts: number) => loading * unclampedVolts(law, meanDetected(volts));
  let a = loading * law.unclampedRestVolts;
  let b = wanted(a);
  let errorA = a - b;
  let errorB = b - wanted(b);
  if (errorA === 0) return b;
  // A diode the wrong way round drives its line on and on, until the stages choke on grid current.
  for (let i = 0; i < ROUNDS && errorA * errorB > 0; i++) {
    a = b;
    errorA = errorB;
    b = wanted(b);
    errorB = b - wanted(b);
  }
  if (errorA * errorB > 0) return b;
  for (let i = 0; i < ROUNDS && Math.abs(b - a) > CLOSE_VOLTS; i++) {
    const guess = (a * errorB - b * errorA) / (errorB - errorA);
    const error = guess - wanted(guess);
    if (Math.abs(error) < CLOSE_VOLTS) return guess;
    if (error * errorB < 0) {
      a = b;
      errorA = errorB;
    } else errorA /= 2;
    b = guess;
    errorB = error;
  }
  return b;
}

/** Share of the unclamped line's volts that a meter on it and a leak to earth leave: both work against the line's own resistance. */
export function lineLoading(
  line: string,
  { leads, controls }: Pick<BenchState, 'leads' | 'controls'>,
  { leakOhms, open }: LineFault = SOUND_LINE,
): number {
  if (open) return 0;
  return 1 / (1 + AGC_LINE_OHMS * meterSiemens(line, { leads, controls }) + AGC_LINE_OHMS / leakOhms);
}

function meterSiemens(line: string, { leads, controls }: Pick<BenchState, 'leads' | 'controls'>): number {
  return leads.meter === line ? 1 / (METER_OHMS_PER_VOLT * controls.meterRangeVolts) : 0;
}
