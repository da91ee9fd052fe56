/**
 * Every kind of fault, one row each. Faults compose: each edits the deck as the one before left it, in the order of this table.
 *
 * Sizes. An open resistor is 1e4 times its value. Shorted turns are 0.3 ohm across the coil. An open coupling keeps one part in a thousand (a K) or in a hundred
 * (a capacitor, through its strays). Feedback of an open bypass and of a missing screen is a capacitor of the size that the fault names between output and input of
 * the stage, or between two nodes, so that blocks of the network merge. A diode's leak lies across its load, and, as the load's capacitor is a short to the carrier,
 * across the circuit that feeds it. Our own plain models, no source; what they make of deck, diodes and lines is checked against a circuit
 * simulator. The sizes that are drawn and charted: round figures of our own, no source.
 */
import { findElement } from '../../physics/deck.ts';
import { elementOf, numberFrom } from './faultField.ts';
import { coilOf, hotNode, joinsTwoSlugs, nameOf, trapCapacitors } from './faultPlaces.ts';
import { faultRow } from './faultRow.ts';

const OPEN_RESISTOR = 1e4;
const SHORT_OHMS = 0.3;
const OPEN_K = 1e-3;
const OPEN_C = 1e-2;
/** Links and leads of some ohms are no parts that fail unseen. */
const LEAST_OHMS = 100;
/** How far a trap's capacitor has drifted: past what its slug can bring back. */
const DRIFT = 1.6;
const WEAK = 0.35;
/** Feedback that peaks a stage without making it howl. */
const BACK_FARADS = 0.02e-12;
const STRAY_FARADS = 0.2e-12;
const WRONG_VALUE = 0.3;
const LEAK_SHARE = 0.2;

const ohms = numberFrom(1e-3, 1e9);
const factor = numberFrom(0.01, 100);
const farads = numberFrom(1e-16, 1e-9);

export const FAULT_ROWS = {
  /** a damping or load resistor that has gone open */
  openResistor: faultRow({
    fields: { element: elementOf('R') },
    edits: ({ element }) => [{ kind: 'scale', name: element, factor: OPEN_RESISTOR }],
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'curve',
    sits: {
      at: 'element',
      drawn: true,
      of: ({ kind, name, value }) => (kind === 'R' && value >= LEAST_OHMS ? [{ element: name }] : []),
    },
  }),
  /** a resistor of another value than the sheet's */
  wrongLoad: faultRow({
    fields: { element: elementOf('R'), ohms },
    edits: (fault) => [{ kind: 'set', name: fault.element, value: fault.ohms }],
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'curve',
    sits: {
      at: 'element',
      drawn: false,
      of: ({ kind, name, value }) =>
        kind === 'R' && value >= LEAST_OHMS ? [{ element: name, ohms: value * WRONG_VALUE }] : [],
    },
  }),
  /** a bias line that leaks to earth: what the set's own line gives is divided down, and the supply's leads hold it all the same */
  leakyBiasLine: faultRow({
    fields: { at: { holds: 'line' }, ohms },
    marks: (fault) => [{ kind: 'lineLeak', at: fault.at, ohms: fault.ohms }],
    cure: { by: 'part', parts: ({ at }) => [at] },
    symptom: 'line',
    // Found with the meter.
    sits: null,
  }),
  /** a tired valve or transistor */
  weakStage: faultRow({
    fields: { element: { holds: 'stage' }, factor: numberFrom(0.01, 1) },
    edits: (fault) => [{ kind: 'scale', name: fault.element, factor: fault.factor }],
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'curve',
    sits: { at: 'stage', drawn: true, of: ({ element }) => [{ element, factor: WEAK }] },
  }),
  /** a capacitor that has drifted: of a trap, so far that no slug brings the notch back */
  driftedCapacitor: faultRow({
    fields: { element: elementOf('C'), factor },
    edits: (fault) => [{ kind: 'scale', name: fault.element, factor: fault.factor }],
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'curve',
    sits: {
      at: 'trap',
      drawn: true,
      of: (trap, { deck }) => trapCapacitors(deck, trap.element).map((element) => ({ element, factor: DRIFT })),
    },
  }),
  /** turns of a trap that touch */
  shortedTrap: faultRow({
    fields: { slug: { holds: 'slug' } },
    edits: ({ slug }, set) => {
      const coil = findElement(set.deck, coilOf(set, slug));
      if (coil?.kind !== 'L') return [];
      return [{ kind: 'add', element: { kind: 'R', name: `Rshort_${slug}`, nodes: coil.nodes, value: SHORT_OHMS } }];
    },
    cure: { by: 'part', parts: ({ slug }, set) => [coilOf(set, slug)] },
    symptom: 'curve',
    sits: { at: 'trap', drawn: true, of: ({ id }) => [{ slug: id }] },
  }),
  /** a decoupling capacitor that has gone open: what should end at earth gets back to the stage's input */
  openBypass: faultRow({
    fields: { element: { holds: 'stage' }, farads },
    edits: (fault, { deck }) => {
      const stage = findElement(deck, fault.element);
      if (stage?.kind !== 'G') return [];
      const nodes = [hotNode(stage.nodes), hotNode(stage.control)] as const;
      return [{ kind: 'add', element: { kind: 'C', name: `Cback_${fault.element}`, nodes, value: fault.farads } }];
    },
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'curve',
    sits: { at: 'stage', drawn: true, of: ({ element }) => [{ element, farads: BACK_FARADS }] },
  }),
  /** a screen left off: one node talks to another; a screen keeps each stage's output from the inputs of the stages before it */
  missingShield: faultRow({
    fields: { from: { holds: 'node' }, to: { holds: 'node' }, farads },
    edits: (fault) => {
      const nodes = [fault.from, fault.to] as const;
      return [{ kind: 'add', element: { kind: 'C', name: 'Cstray_shield', nodes, value: fault.farads } }];
    },
    cure: { by: 'part', parts: () => ['shield'], own: { kind: 'shield', name: 'shield' } },
    symptom: 'curve',
    sits: {
      at: 'stagePair',
      drawn: false,
      of: ({ early, late }) => [{ from: hotNode(late.nodes), to: hotNode(early.control), farads: STRAY_FARADS }],
    },
  }),
  reversedDiode: faultRow({
    fields: { detector: { holds: 'detector', of: 'envelope' } },
    marks: ({ detector }) => [{ kind: 'reversed', detector }],
    cure: { by: 'part', parts: ({ detector }) => [detector] },
    symptom: 'detector',
    sits: { at: 'detector', drawn: true, of: ({ id, kind }) => (kind === 'envelope' ? [{ detector: id }] : []) },
  }),
  leakyDiode: faultRow({
    fields: { detector: { holds: 'detector', of: 'any' }, ohms },
    edits: (fault, { receiver }) => {
      const detector = receiver.detectors.find((d) => d.id === fault.detector);
      if (detector === undefined) return [];
      const nodes = [detector.kind === 'envelope' ? detector.node : detector.plus, '0'] as const;
      return [{ kind: 'add', element: { kind: 'R', name: `Rleak_${detector.id}`, nodes, value: fault.ohms } }];
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
  /** a core that no longer turns with its screw */
  crackedSlug: faultRow({
    fields: { slug: { holds: 'slug' } },
    marks: ({ slug }) => [{ kind: 'stuckCore', slug }],
    cure: { by: 'part', parts: ({ slug }, set) => [coilOf(set, slug)] },
    symptom: { tells: 'core' },
    // Felt at the tool.
    sits: null,
  }),
  /** a coupling (K) or a coupling capacitor with a broken joint */
  openCoupling: faultRow({
    fields: { element: elementOf('K', 'C') },
    edits: ({ element }, { deck }) => {
      const kept = findElement(deck, element)?.kind === 'K' ? OPEN_K : OPEN_C;
      return [{ kind: 'scale', name: element, factor: kept }];
    },
    cure: {
      by: 'part',
      parts: (fault, { deck }) => {
        const element = findElement(deck, fault.element);
        // The coupling of two coils goes with the coil that it is wound on.
        return [nameOf(deck, element?.kind === 'K' ? element.coils[1] : fault.element)];
      },
    },
    symptom: 'curve',
    sits: {
      at: 'element',
      drawn: true,
      of: (element, { receiver }) => (joinsTwoSlugs(element, receiver.adjusters) ? [{ element: element.name }] : []),
    },
  }),
  /** two trap capacitors put in each other's place */
  swappedTraps: faultRow({
    fields: { first: elementOf('C'), second: elementOf('C') },
    edits: (fault, { deck }) => {
      const first = findElement(deck, fault.first);
      const second = findElement(deck, fault.second);
      if (first === undefined || second === undefined) return [];
      return [
        { kind: 'set', name: fault.first, value: second.value },
        { kind: 'set', name: fault.second, value: first.value },
      ];
    },
    cure: { by: 'part', parts: ({ first, second }, { deck }) => [nameOf(deck, first), nameOf(deck, second)] },
    symptom: 'curve',
    sits: {
      at: 'trapPair',
      drawn: false,
      together: true,
      of: (pair, { deck }) => {
        const seconds = trapCapacitors(deck, pair.second.element);
        return trapCapacitors(deck, pair.first.element).flatMap((first, n) => {
          const second = seconds[n];
          return second === undefined ? [] : [{ first, second }];
        });
      },
    },
  }),
  /** the owner before screwed every slug in */
  screwedIn: faultRow({
    fields: {},
    marks: () => [{ kind: 'screwedIn' }],
    cure: { by: 'turning' },
    sits: null,
  }),
  /** an earth strap whose clip makes no contact until it is lifted and put back */
  looseEarth: faultRow({
    fields: {},
    marks: () => [{ kind: 'noContact', lead: 'earth' }],
    cure: { by: 'lead', lead: 'earth' },
    sits: null,
  }),
  /** an RF lead whose pad makes no contact until it is unclipped and clipped on again */
  unmatchedLead: faultRow({
    fields: {},
    marks: () => [{ kind: 'noContact', lead: 'rf' }],
    cure: { by: 'lead', lead: 'rf' },
    sits: null,
  }),
} as const;
