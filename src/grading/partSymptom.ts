/** What one failed part does by itself: the set sound but for it, every slug in its place. Computed from the model, for the report. */

import { roundTo } from '../base/rounding.ts';
import { modelOf } from '../bench/benchModel.ts';
import { lineLoading } from '../bench/biasLine.ts';
import { AGC_LINE_OHMS } from '../bench/instruments.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import { statedOn } from '../bench/statedOn.ts';
import type { ResponseCurve } from '../receiver/curveReading.ts';
import { createDetectedLevels } from '../receiver/detectedLevels.ts';
import { cureOf } from '../receiver/faults/cure.ts';
import { type Fault, faultRowOf, type ToldSymptom } from '../receiver/faults/fault.ts';
import { faultEffects, faultMarks } from '../receiver/faults/faultEffects.ts';
import { symptomOf } from '../receiver/faults/symptom.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import { readSCurve } from '../receiver/sCurveReading.ts';
import type { StatedResponse } from '../receiver/statedResponse.ts';
import type { PartSymptom } from './report.ts';

/** `part` by its name in the parts tray; `sound`: the responses of the work as the sound set has them. Throws where none of the scenario's faults is cured by it. */
export function symptomOfPart(setup: BenchSetup, part: string, sound: readonly StatedResponse[]): PartSymptom {
  const { receiver, deck, scenario } = setup;
  const faults = scenario.faults.filter((fault) => {
    const cure = cureOf(fault, receiver, deck);
    return cure.kind === 'replace' && cure.part === part;
  });
  const [first] = faults;
  if (first === undefined) throw new Error(`no failed part ${part}`);
  const row = faultRowOf(first);
  if (!('symptom' in row)) throw new Error(`${first.kind}: no part cures it`);
  switch (row.symptom) {
    case 'line':
      return lineSymptom(setup, faults);
    case 'detector':
      return diodeSymptom(setup, faults, sound);
    case 'curve':
      return curveSymptom(setup, faults, sound);
    default:
      return { kind: row.symptom.tells as ToldSymptom };
  }
}

function lineSymptom(setup: BenchSetup, faults: readonly Fault[]): PartSymptom {
  const [[at, fault] = ['', undefined]] = Object.entries(faultEffects(setup.receiver, setup.deck, faults, []).lines);
  const soundVolts = setup.receiver.biasLines.find((line) => line.at === at)?.unclampedRestVolts ?? 0;
  // As a run begins no meter hangs on the line.
  const left = lineLoading(at, initialState(setup), fault) * (soundVolts + AGC_LINE_OHMS * (fault?.amps ?? 0));
  return { kind: 'line', volts: roundTo(left, 0.01), soundVolts };
}

function diodeSymptom(
  { receiver, deck, engine }: BenchSetup,
  faults: readonly Fault[],
  [first]: readonly StatedResponse[],
): PartSymptom {
  const effects = faultEffects(receiver, deck, faults, []);
  const volts = (set: BenchSetup['receiver'], standing: BenchSetup['deck']): number =>
    createDetectedLevels(set, standing, first!.response, modelOf(engine).probePulses).referenceDetectedVolts;
  return {
    kind: 'diode',
    reversed: faultMarks(faults, { receiver, deck }).some((mark) => mark.kind === 'reversed'),
    detectedRatio: roundTo(volts(effects.receiver, effects.deck) / volts(receiver, deck), 0.001),
  };
}

function curveSymptom(
  { receiver, deck, engine }: BenchSetup,
  faults: readonly Fault[],
  sound: readonly StatedResponse[],
): PartSymptom {
  const faulty = faultEffects(receiver, deck, faults, []);
  const shown = sound.map(({ response, nominal }) => {
    const failed = statedOn(engine, faulty, response);
    return responseSymptom(response, nominal, failed.nominal);
  });
  return shown.reduce((most, one) => (sizeOf(one) > sizeOf(most) ? one : most));
}

function responseSymptom(response: SheetResponse, before: ResponseCurve, after: ResponseCurve): PartSymptom {
  const { fromHz, toHz, sCurve } = response.specification;
  if (sCurve === null) {
    const { peakDb, peakShiftHz, widthRatio, worstDb, worstHz } = symptomOf(before, after, fromHz, toHz);
    return {
      ...{ kind: 'curve', response: response.id, peakShiftHz: roundTo(peakShiftHz, 1), worstHz: roundTo(worstHz, 1) },
      ...{ peakDb: roundTo(peakDb, 0.01), widthRatio: roundTo(widthRatio, 0.001), worstDb: roundTo(worstDb, 0.01) },
    };
  }
  const sound = readSCurve(before, sCurve.centreHz, fromHz, toHz);
  const failed = readSCurve(after, sCurve.centreHz, fromHz, toHz);
  const moved = failed.zeroHz === null || sound.zeroHz === null ? null : roundTo(failed.zeroHz - sound.zeroHz, 1);
  const heightDb = roundTo(20 * Math.log10(failed.height / sound.height), 0.01);
  return { kind: 'sCurve', response: response.id, heightDb, zeroShiftHz: moved };
}

function sizeOf(symptom: PartSymptom): number {
  if (symptom.kind === 'curve') return Math.abs(symptom.worstDb);
  return symptom.kind === 'sCurve' ? Math.abs(symptom.heightDb) : 0;
}
