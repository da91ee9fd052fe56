/**
 * The bench as its readers see it: the tube's face and dials, the measured facts, and the truth about the receiver. Pure functions of the state with
 * caches behind them (kept.ts): equal states give equal answers whatever was asked before, and the same state the same object.
 *
 * `display().beam.data` is one buffer, written anew by each call: read it (or copy it) before asking for the next display.
 */
import { activeResponse } from './activeResponse.ts';
import type { BenchState } from './benchState.ts';
import type { BenchDisplay } from './display.ts';
import { createFace, markerTags } from './face.ts';
import type { Facts } from './facts.ts';
import { createFaultBook } from './faultsNow.ts';
import { warmthOf } from './heat.ts';
import { HALF_HEIGHT_DIV, HALF_WIDTH_DIV } from './instruments.ts';
import { keepLast } from './kept.ts';
import { measureFacts } from './measureFacts.ts';
import { trueCentreHz } from './moment.ts';
import { type PartReading, partReading } from './partMeter.ts';
import { createPictureMaker, type Picture } from './picture.ts';
import type { BenchSetup } from './setup.ts';
import { createTruth, type Truth } from './truth.ts';

export interface Bench {
  /** time passing moves the shimmer of pips, noise and tone, and a set that warms up: give `{ ...state, seconds }` to see it */
  display(state: BenchState): BenchDisplay;
  facts(state: BenchState): Facts;
  /** what the meter says with its prods across a part of the tray */
  partReading(state: BenchState, part: string): PartReading;
  /** a response of the receiver under the sheet's own conditions with the slugs as they stand; left out: the one that the bench is set up for */
  truth(state: BenchState, response?: string): Truth;
}

/** `pictures`: what draws the pictures; a caller that looks at one set again and again may keep them. */
export function createBench(setup: BenchSetup, pictures = createPictureMaker): Bench {
  const faults = createFaultBook(setup);
  const pictureOf = pictures(setup, faults);
  const faceOf = createFace(setup);
  const truth = createTruth(setup, faults);
  const tagsOf = keepLast(
    ({ controls, leads }: BenchState, { markers, sweep }: Picture) => [controls, leads, markers, sweep === null],
    (state, picture) => markerTags(setup, state, picture),
  );

  return {
    display: keepLast(
      (shown) => [shown],
      (shown) => {
        const state = faults(shown).really(shown);
        const picture = pictureOf(state);
        const face = faceOf(state, picture);
        const range = state.controls.meterRangeVolts;
        const pinned = Math.abs(picture.meterVolts) > range;
        return {
          beam: { data: face.data, count: face.count },
          tags: tagsOf(state, picture),
          meterVolts: pinned ? Math.sign(picture.meterVolts) * range : picture.meterVolts,
          meterPinned: pinned,
          toneVolts: picture.tone?.rmsVolts ?? 0,
          beatHz: beatOf(setup, picture, state),
          humDiv: face.humDiv,
          grassDiv: face.grassDiv,
          note: noteOf(setup, state, picture, face.lowDiv, face.highDiv),
        };
      },
    ),
    facts: keepLast(
      (shown) => [shown],
      (shown) => {
        const state = faults(shown).really(shown);
        const response = activeResponse(setup, state);
        return measureFacts(setup, state, response, pictureOf(state), truth.sheetPeakVolts(response));
      },
    ),
    partReading: (state, part) =>
      partReading(setup, faults(state), state, part, (prodsOn) => {
        const meter = prodsOn === '' ? state.leads.meter : prodsOn;
        return pictureOf(faults(state).really({ ...state, leads: { ...state.leads, meter } })).lineVolts;
      }),
    truth: (state, response) => truth.of(state, response ?? activeResponse(setup, state).id),
  };
}

/** The highest beat that an ear takes for a note rather than for hiss. */
const HIGHEST_NOTE_HZ = 5e3;

/** A source that stands still beats with the nearest marker, and with an oscillator at whose loop the lead is: zero beat is where the note vanishes. */
function beatOf(
  setup: BenchSetup,
  { markers, sweep, running, rfConnected, oscillation, song }: Picture,
  state: BenchState,
): number | null {
  if (!running || !rfConnected) return null;
  const spotHz = trueCentreHz(setup, state);
  const rack = sweep === null && state.controls.pipHeightDiv > 0 ? markers : [];
  const carrier = oscillation ?? song;
  const loop = carrier?.beats.flatMap(({ hz }) => (hz === null ? [] : [Math.abs(hz - carrier.hz)])) ?? [];
  const away = Math.min(...rack.map((marker) => Math.abs(marker.trueHz - spotHz)), ...loop);
  return away <= HIGHEST_NOTE_HZ ? away : null;
}

/** Share of the emission below which the set is as good as dead. */
const HEATING_BELOW = 0.1;
/** Less than this of a carrier is not seen by any diode here. */
const NOTHING_VOLTS = 1e-6;

function noteOf(
  setup: BenchSetup,
  state: BenchState,
  picture: Picture,
  lowDiv: number,
  highDiv: number,
): BenchDisplay['note'] {
  const { leads, controls } = state;
  if (leads.y === null) return 'noY';
  if (!picture.running) return 'powerOff';
  if (warmthOf(setup, state).emission < HEATING_BELOW) return 'heating';
  const carrierVolts =
    picture.oscillation?.carrierVolts ?? Math.max(picture.peakCarrierVolts, picture.song?.carrierVolts ?? 0);
  if (picture.observation === null || carrierVolts < NOTHING_VOLTS) return 'noSignal';
  if (leads.x === null) return 'noX';
  const above = lowDiv > HALF_HEIGHT_DIV || highDiv < -HALF_HEIGHT_DIV;
  const aside = Math.abs(controls.xPositionDiv) - HALF_WIDTH_DIV * controls.xGain > HALF_WIDTH_DIV;
  return above || aside ? 'offScreen' : 'none';
}
