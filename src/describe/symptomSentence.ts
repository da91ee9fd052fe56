/** What a failed part does by itself, as one sentence with its figures. */
import type { PartSymptom } from '../grading/report.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { responseById } from '../receiver/responses.ts';
import type { Words } from '../words/words.ts';

/** Less than this is not spoken of. */
const LEAST_DB = 0.25;
const LEAST_WIDTH = 0.03;
/** A place is named where its change exceeds that of the top by this much. */
const WORSE_DB = 1;
/** The top of a flat curve wanders: its place is spoken of from this share of its frequency. */
const LEAST_SHIFT = 0.002;

export function symptomSentence(words: Words, symptom: PartSymptom, receiver: Receiver): string {
  const W = words.grading.faults;
  const { frequency } = words.format;
  const { decibels, offset, percent } = words.format.score;
  switch (symptom.kind) {
    case 'line':
      return W.line(words.format.score.volts(symptom.volts), words.format.score.volts(symptom.soundVolts));
    case 'diode':
      return symptom.reversed ? W.reversed : W.leaky(percent(100 * symptom.detectedRatio));
    case 'sCurve': {
      const { heightDb, zeroShiftHz, response } = symptom;
      const moved =
        zeroShiftHz === null ? [W.noZero] : zeroShiftHz === 0 ? [] : [W.zero(offset(zeroShiftHz), zeroShiftHz > 0)];
      return W.curve(titleOf(receiver, response), listed(words, [...level(words, heightDb), ...moved]));
    }
    case 'curve': {
      const { peakDb, peakShiftHz, widthRatio, worstDb, worstHz, response } = symptom;
      const changes = [...level(words, peakDb)];
      if (Math.abs(widthRatio - 1) >= LEAST_WIDTH)
        changes.push((widthRatio > 1 ? W.wider : W.narrower)(percent(100 * Math.abs(widthRatio - 1))));
      if (Math.abs(peakShiftHz) >= LEAST_SHIFT * worstHz)
        changes.push(W.topMoved(offset(peakShiftHz), peakShiftHz > 0));
      if (Math.abs(worstDb - peakDb) >= WORSE_DB)
        changes.push(W.worst(decibels(Math.abs(worstDb)), worstDb > 0, frequency(worstHz)));
      return W.curve(titleOf(receiver, response), listed(words, changes));
    }
    default:
      return W.told[symptom.kind];
  }
}

function level({ grading, format }: Words, db: number): string[] {
  const { higher, lower } = grading.faults;
  return Math.abs(db) < LEAST_DB ? [] : [(db > 0 ? higher : lower)(format.score.decibels(Math.abs(db)))];
}

function listed({ grading, format }: Words, changes: readonly string[]): string {
  return changes.length === 0 ? grading.faults.hardly : format.list(changes);
}

function titleOf(receiver: Receiver, response: string): string {
  return receiver.responses.length < 2 ? '' : responseById(receiver, response).title;
}
