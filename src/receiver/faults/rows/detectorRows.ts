/**
 * Bias lines, and detectors with their loads. A diode that leaks or is shorted is written into the deck with the load behind it; what it does to the volts, to a line that
 * follows it, and what a line's own parts do, no deck can hold. The sizes that are charted: round figures of our own, no source.
 */

import type { DeckEdit } from '../../../physics/editDeck.ts';
import type { Detector } from '../../receiver.ts';
import { add, faultRow } from '../faultRow.ts';
import { ohms } from './sizes.ts';

const LEAK_SHARE = 0.2;
const WRONG_LOAD = 0.1;

export const DETECTOR_ROWS = {
  /** a bias line that leaks to earth: what the set's own line gives is divided down, and the supply's leads hold it all the same */
  leakyBiasLine: faultRow({
    fields: { at: { holds: 'line' }, ohms },
    marks: (fault) => [{ kind: 'lineLeak', at: fault.at, ohms: fault.ohms }],
    cure: { by: 'part', parts: ({ at }) => [at] },
    symptom: 'line',
    // Found with the meter.
    sits: null,
  }),
  /** the filter resistor of a bias line is open: nothing of the detector's volts comes down the line */
  openAgcFilter: faultRow({
    fields: { at: { holds: 'line' } },
    marks: ({ at }) => [{ kind: 'lineOpen', at }],
    cure: { by: 'part', parts: ({ at }) => [at] },
    symptom: 'line',
    // Found with the meter.
    sits: null,
  }),
  reversedDiode: faultRow({
    fields: { detector: { holds: 'detector', of: 'envelope' } },
    marks: ({ detector }) => [{ kind: 'reversed', detector }],
    cure: { by: 'part', parts: ({ detector }) => [detector] },
    symptom: 'detector',
    sits: { at: 'detector', drawn: true, of: ({ id, kind }) => (kind === 'envelope' ? [{ detector: id }] : []) },
  }),
  /** a diode that leaks both ways: its leak stands between the circuit and the load */
  leakyDiode: faultRow({
    fields: { detector: { holds: 'detector', of: 'any' }, ohms },
    edits: (fault, { receiver }) => {
      const detector = receiver.detectors.find((d) => d.id === fault.detector);
      if (detector === undefined) return [];
      const load = `leak_${detector.id}`;
      const node = detector.kind === 'envelope' ? detector.node : detector.plus;
      return [
        add({ kind: 'R', name: `Rleak_${detector.id}`, nodes: [node, load], value: fault.ohms }),
        ...loadOf(detector, load),
      ];
    },
    marks: (fault) => [{ kind: 'detectorLeak', detector: fault.detector, ohms: fault.ohms }],
    cure: { by: 'part', parts: ({ detector }) => [detector] },
    symptom: 'detector',
    sits: {
      at: 'detector',
      drawn: false,
      of: ({ id, loadOhms }) => [{ detector: id, ohms: loadOhms * LEAK_SHARE }],
    },
  }),
  /** a diode that is a piece of wire: the load stands across the circuit, and nothing is rectified */
  shortedDiode: faultRow({
    fields: { detector: { holds: 'detector', of: 'envelope' } },
    edits: (fault, { receiver }) => {
      const detector = receiver.detectors.find((d) => d.id === fault.detector);
      return detector?.kind === 'envelope' ? loadOf(detector, detector.node) : [];
    },
    marks: ({ detector }) => [{ kind: 'shorted', detector }],
    cure: { by: 'part', parts: ({ detector }) => [detector] },
    symptom: 'detector',
    sits: { at: 'detector', drawn: true, of: ({ id, kind }) => (kind === 'envelope' ? [{ detector: id }] : []) },
  }),
  /** a detector's load of another value than the sheet's: the diode loads its circuit as the load has it, and gives other volts */
  wrongDetectorLoad: faultRow({
    fields: { detector: { holds: 'detector', of: 'any' }, ohms },
    marks: (fault) => [{ kind: 'detectorLoad', detector: fault.detector, ohms: fault.ohms }],
    cure: { by: 'part', parts: ({ detector }) => [detector] },
    symptom: 'detector',
    sits: {
      at: 'detector',
      drawn: false,
      of: ({ id, loadOhms }) => [{ detector: id, ohms: loadOhms * WRONG_LOAD }],
    },
  }),
} as const;

/** A detector's load, hung on a node. */
function loadOf({ id, loadOhms, loadFarads }: Detector, node: string): readonly DeckEdit[] {
  const nodes = [node, '0'] as const;
  return [
    add({ kind: 'R', name: `Rload_${id}`, nodes, value: loadOhms }),
    add({ kind: 'C', name: `Cload_${id}`, nodes, value: loadFarads }),
  ];
}
