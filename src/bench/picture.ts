/**
 * From the state of the bench to volts at the tube's Y input over one mains period: AGC line, circuit, markers that go through it, detector, lead.
 *
 * Quasi-static: the carrier at the node is |H(f(t))| times the source, with every stage saturating by its describing function; then the diode's law,
 * its load's time constant, lead and tube. Blanking takes the carrier away in the retrace.
 */
import { periodicOnePole } from '../physics/onePole.ts';
import type { PipSweep } from '../physics/pip.ts';
import { wholePeriod } from '../physics/sweep.ts';
import type { BenchState } from './benchState.ts';
import { lineVoltsAt } from './biasLine.ts';
import { type ActiveMarker, activeMarkers } from './markers.ts';
import { meterReading } from './meter.ts';
import { carrierAt, createMoments, type Moment, TRACE_POINTS } from './moment.ts';
import { createDetectorStore, type Observation, observe, rawShare } from './observation.ts';
import type { BenchSetup } from './setup.ts';
import { type ThroughMarkers, throughMarkers, withMarkers } from './throughMarkers.ts';

/** Its arrays are used again for the next picture. */
export interface Picture {
  readonly running: boolean;
  /** null while the source stands still */
  readonly sweep: PipSweep | null;
  readonly rfConnected: boolean;
  readonly observation: Observation | null;
  readonly markers: readonly ActiveMarker[];
  readonly through: ThroughMarkers | null;
  /** largest carrier (volts peak) at the observed node, without markers */
  readonly peakCarrierVolts: number;
  /** at the tube's Y input, a whole period: detected volts with their sign, or the carrier's envelope for the raw input; without pips, hum and noise */
  readonly volts: Float64Array;
  /** null where the receiver has no AGC line */
  readonly lineVolts: number | null;
  readonly compressionDb: number;
  readonly meterVolts: number;
}

export function createPictureMaker(setup: BenchSetup): (state: BenchState) => Picture {
  const { mainsHz } = setup.scenario.bench;
  const momentOf = createMoments(setup);
  const detectors = createDetectorStore();
  const carrier = new Float64Array(TRACE_POINTS);
  const forward = new Float64Array(TRACE_POINTS);
  const volts = new Float64Array(2 * TRACE_POINTS);
  let last: { readonly of: BenchState; readonly picture: Picture } | null = null;

  const draw = (state: BenchState): Picture => {
    const moment = momentOf(state);
    const { connections, full, running, swept } = moment;
    const { controls } = state;
    const observation = observe(setup, state, connections, detectors);
    const lineVolts = lineVoltsAt(setup, moment, detectors);
    const fed = connections.rf !== null;
    if (fed) full.station.solve(full.hz, moment.conditions(lineVolts));
    const compressionDb = fed && running ? full.station.compressionDb() : 0;
    const meterVolts = meterReading(setup, moment, lineVolts, detectors, forward);
    carrier.fill(0);
    if (observation !== null) carrierAt(moment, full, observation.node, carrier);

    // After the carrier has been read: with the sweep standing still, the markers share its solver.
    const markers = activeMarkers(setup, state);
    const sent = observation !== null && fed && controls.markerRoute === 'through';
    const through = sent
      ? throughMarkers(
          markers,
          controls.pipHeightDiv,
          observation,
          moment.circuit.spots,
          moment.conditions(lineVolts),
          moment.ripple,
        )
      : null;
    if (observation === null) volts.fill(0);
    else detectInto(volts, forward, carrier, moment, observation, through?.carrierVolts ?? 0, 1 / mainsHz);
    return {
      running,
      sweep: swept ? { centreHz: controls.centreHz, spanHz: controls.spanHz, mainsHz, points: TRACE_POINTS } : null,
      rfConnected: fed,
      observation,
      markers,
      through,
      peakCarrierVolts: largest(carrier),
      volts,
      lineVolts,
      compressionDb,
      meterVolts,
    };
  };

  return (state) => {
    if (last === null || !sameBench(last.of, state)) last = { of: state, picture: draw(state) };
    return last.picture;
  };
}

function detectInto(
  volts: Float64Array,
  forward: Float64Array,
  carrier: Float64Array,
  { state, connections, full, swept }: Moment,
  { detect, sign, raw, loadSeconds, leadSeconds }: Observation,
  markerVolts: number,
  periodSeconds: number,
): void {
  for (let i = 0; i < TRACE_POINTS; i++) {
    const amplitude = markerVolts === 0 ? carrier[i]! : withMarkers(carrier[i]!, markerVolts);
    forward[i] = raw ? amplitude * rawShare(connections, full.hz[swept ? i : 0]!) : sign * detect(amplitude);
  }
  wholePeriod(forward, volts);
  if (state.controls.blanking) volts.fill(raw ? markerVolts : sign * detect(markerVolts), TRACE_POINTS);
  if (raw) return;
  periodicOnePole(volts, loadSeconds, periodSeconds, volts);
  periodicOnePole(volts, leadSeconds, periodSeconds, volts);
}

/** Nothing has changed that a picture depends on: time may have passed, readings and proofs come and gone. */
function sameBench(a: BenchState, b: BenchState): boolean {
  return (
    a.controls === b.controls &&
    a.slugs === b.slugs &&
    a.leads === b.leads &&
    a.crystals === b.crystals &&
    a.replaced === b.replaced &&
    a.tool === b.tool &&
    a.toolIn === b.toolIn &&
    a.powered === b.powered
  );
}

function largest(samples: Float64Array): number {
  let most = 0;
  for (let i = 0; i < samples.length; i++) if (samples[i]! > most) most = samples[i]!;
  return most;
}
