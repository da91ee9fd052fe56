/**
 * Valves and transistors, and what belongs to them: bypasses, supply decouplings, coupling capacitors, screens. A stage that has lost gm, or whose grid is dragged off its
 * bias, follows its bias law (biasLaw.ts). An open bypass leaves the resistor that it was to bridge between cathode and earth; an open decoupling leaves the cold ends of two
 * coils on one impedance. A missing screen is a capacitor between two nodes (strayFarads.ts). The other sizes that are drawn and charted: round figures of our own, no source.
 */
import { findElement } from '../../../physics/deck.ts';
import { stageAtBias, stageAtGain } from '../../biasLaw.ts';
import { elementOf, numberFrom } from '../faultField.ts';
import { biasedStages, cathodeNode, earthedEnds, faultPlaces, hotNode, nameOf, supplyNode } from '../faultPlaces.ts';
import { add, faultRow, partAt } from '../faultRow.ts';
import { stageEdits } from '../stageEdits.ts';
import { strayFarads } from '../strayFarads.ts';
import { farads, ohms } from './sizes.ts';

const WEAK = 0.35;
/** Drags a grid that should stand at -3 V well into grid current. */
const DRAGGED_VOLTS = 4.5;
/** Half of the stage's gain. */
const DEGENERATION = 1;
/** Of the impedance at which circuits of one tune would sing: of two neighbours, and where staggered circuits between them take most of the gain away. */
const NEARLY_SINGS = 0.6;
const STAGGERED = 5;
/** Less than this no wire has at these frequencies. */
const LEAST_SUPPLY_OHMS = 0.02;

export const STAGE_ROWS = {
  /** a tired valve or transistor: its gm, what it loads its input with, and its input capacitance go down together, as they do with bias */
  weakStage: faultRow({
    fields: { element: { holds: 'stage', of: 'any' }, factor: numberFrom(0.01, 1) },
    edits: (fault, set) => stageEdits(set, fault.element, (law) => stageAtGain(law, fault.factor)),
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'curve',
    sits: { at: 'stage', drawn: true, of: ({ element }) => [{ element, factor: WEAK }] },
  }),
  /** the capacitor from the plate before lets direct current through: the grid is dragged towards the supply, whatever its bias line says */
  leakyCoupling: faultRow({
    fields: { element: { holds: 'stage', of: 'biased' }, volts: numberFrom(0.1, 30) },
    edits: (fault, set) => stageEdits(set, fault.element, (law) => stageAtBias(law, law.referenceVolts + fault.volts)),
    marks: ({ element, volts }) => [{ kind: 'gridDragged', element, volts }],
    cure: {
      by: 'part',
      parts: ({ element }, { deck }) => [partAt('coupling', nameOf(deck, element))],
      own: {
        kind: 'coupling',
        names: ({ receiver }) => biasedStages(receiver).map((s) => partAt('coupling', s.element)),
      },
    },
    symptom: 'curve',
    sits: {
      at: 'stage',
      drawn: true,
      of: (stage, { receiver }) =>
        biasedStages(receiver).includes(stage) ? [{ element: stage.element, volts: DRAGGED_VOLTS }] : [],
    },
  }),
  /** a valve that has let gas in: its grid draws current out of the bias line, and drags it the wrong way */
  gassyValve: faultRow({
    fields: { element: { holds: 'stage', of: 'valve' }, amps: numberFrom(1e-8, 1e-4) },
    marks: ({ element, amps }, { receiver }) => {
      const at = receiver.stages.find((s) => s.element === element)?.agc ?? '';
      return [{ kind: 'lineCurrent', at, amps }];
    },
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'line',
    // Found with the meter.
    sits: null,
  }),
  /** a cathode, emitter or screen bypass that has gone open: the stage works against its own resistor and gives less */
  openBypass: faultRow({
    fields: { element: { holds: 'stage', of: 'any' }, ohms },
    edits: (fault, { receiver, deck }) => {
      const stage = findElement(deck, fault.element);
      if (stage?.kind !== 'G') return [];
      const node = cathodeNode(fault.element);
      const { inputResistor } = receiver.stages.find((s) => s.element === fault.element)!;
      const loading = inputResistor === null ? undefined : findElement(deck, inputResistor);
      return [
        ...earthedEnds(stage.nodes).map((end) => ({ kind: 'move', name: stage.name, end, node }) as const),
        ...earthedEnds(stage.control).map((end) => ({ kind: 'moveControl', name: stage.name, end, node }) as const),
        ...(loading?.kind === 'R'
          ? earthedEnds(loading.nodes).map((end) => ({ kind: 'move', name: loading.name, end, node }) as const)
          : []),
        add({ kind: 'R', name: `Rcathode_${fault.element}`, nodes: [node, '0'], value: fault.ohms }),
      ];
    },
    cure: {
      by: 'part',
      parts: ({ element }, { deck }) => [partAt('bypass', nameOf(deck, element))],
      own: { kind: 'bypass', names: ({ receiver }) => receiver.stages.map((s) => partAt('bypass', s.element)) },
    },
    symptom: 'curve',
    sits: { at: 'stage', drawn: true, of: ({ element, gmSiemens }) => [{ element, ohms: DEGENERATION / gmSiemens }] },
  }),
  /** a supply decoupling that has gone open: the cold ends of two coils share what impedance the line has, and what one stage gives the one before it gets */
  openDecoupling: faultRow({
    fields: { first: elementOf('L'), second: elementOf('L'), ohms },
    edits: (fault, { deck }) => {
      const node = supplyNode(fault.second);
      const moves = [fault.first, fault.second].flatMap((name) => {
        const coil = findElement(deck, name);
        const ends = coil?.kind === 'L' ? earthedEnds(coil.nodes) : [];
        return ends.map((end) => ({ kind: 'move', name, end, node }) as const);
      });
      if (moves.length !== 2) return [];
      return [...moves, add({ kind: 'R', name: `Rsupply_${fault.second}`, nodes: [node, '0'], value: fault.ohms })];
    },
    cure: {
      by: 'part',
      parts: ({ second }, { deck }) => [partAt('decoupling', nameOf(deck, second))],
      own: {
        kind: 'decoupling',
        names: (set) =>
          faultPlaces(set).flatMap((one) => (one.at === 'supplyPair' ? [partAt('decoupling', one.place.second)] : [])),
      },
    },
    symptom: 'curve',
    sits: {
      at: 'supplyPair',
      // The slugs may well make up for it.
      drawn: false,
      of: ({ first, second, neighbours, singsOhms }) => {
        const most = singsOhms * (neighbours ? NEARLY_SINGS : STAGGERED);
        return most < LEAST_SUPPLY_OHMS ? [] : [{ first, second, ohms: most }];
      },
    },
  }),
  /** a screen left off: one node talks to another; a screen keeps each stage's output from the inputs of the stages before it */
  missingShield: faultRow({
    fields: { from: { holds: 'node' }, to: { holds: 'node' }, farads },
    edits: (fault) => {
      const nodes = [fault.from, fault.to] as const;
      return [add({ kind: 'C', name: 'Cstray_shield', nodes, value: fault.farads })];
    },
    cure: { by: 'part', parts: () => ['shield'], own: { kind: 'shield', names: () => ['shield'] } },
    symptom: 'curve',
    sits: {
      at: 'stagePair',
      drawn: false,
      of({ early, late }, set) {
        const [from, to] = [hotNode(late.nodes), hotNode(early.control)];
        return [{ from, to, farads: strayFarads(set, from, to) }];
      },
    },
  }),
} as const;
