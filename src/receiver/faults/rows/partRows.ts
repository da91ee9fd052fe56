/**
 * Resistors, capacitors, coils and couplings that fail. An open resistor is 1e4 times its value. An open coupling keeps one part in a thousand (a K) or in a hundred (a
 * capacitor, through its strays). Turns that touch are a winding of one part in sixty of the coil's inductance (one turn of eight), coupled to it by 0.8 and closed by
 * 20 milliohm; a broken winding has 10 megohm in it. The sizes: round figures of our own, no source.
 */
import { findElement } from '../../../physics/deck.ts';
import { elementOf, numberFrom } from '../faultField.ts';
import { coilOf, joinsTwoSlugs, nameOf, straysAt, trapCapacitors } from '../faultPlaces.ts';
import { add, faultRow } from '../faultRow.ts';
import { farads, LEAST_OHMS, OPEN_C, OPEN_RESISTOR, ohms, WRONG_VALUE } from './sizes.ts';

const OPEN_K = 1e-3;
/** How far a trap's capacitor has drifted: past what its slug can bring back. */
const DRIFT = 1.6;
const TURN_SHARE = 1 / 60;
const TURN_OHMS = 0.02;
const TURN_COUPLING = 0.8;
const OPEN_OHMS = 1e7;

const factor = numberFrom(0.01, 100);

export const PART_ROWS = {
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
  /** a tuning capacitor that is open or has dried out: what valve and wiring leave tunes the coil */
  openCapacitor: faultRow({
    fields: { element: elementOf('C'), farads },
    edits: (fault) => [{ kind: 'set', name: fault.element, value: fault.farads }],
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'curve',
    sits: {
      at: 'slug',
      drawn: true,
      of: (slug, set) =>
        trapCapacitors(set.deck, slug.element).map((element) => ({ element, farads: straysAt(set, element) })),
    },
  }),
  /** turns of a coil that touch: they are a small winding of their own, shorted, on the same core */
  shortedTrap: faultRow({
    fields: { slug: { holds: 'slug' } },
    edits: ({ slug }, set) => {
      const coil = findElement(set.deck, coilOf(set, slug));
      if (coil?.kind !== 'L') return [];
      const [turn, node] = [`Lturn_${slug}`, `turn_${slug}`];
      const ends = [node, '0'] as const;
      return [
        add({ kind: 'L', name: turn, nodes: ends, value: coil.value * TURN_SHARE }),
        add({ kind: 'R', name: `Rturn_${slug}`, nodes: ends, value: TURN_OHMS }),
        add({ kind: 'K', name: `Kturn_${slug}`, coils: [coil.name, turn], value: TURN_COUPLING }),
      ];
    },
    cure: { by: 'part', parts: ({ slug }, set) => [coilOf(set, slug)] },
    symptom: 'curve',
    sits: { at: 'trap', drawn: true, of: ({ id }) => [{ slug: id }] },
  }),
  /** a winding with a broken end: the coil is there, and no current goes through it */
  openWinding: faultRow({
    fields: { slug: { holds: 'slug' } },
    edits: ({ slug }, set) => {
      const coil = findElement(set.deck, coilOf(set, slug));
      if (coil?.kind !== 'L') return [];
      const node = `open_${slug}`;
      return [
        { kind: 'move', name: coil.name, end: 1, node },
        add({ kind: 'R', name: `Ropen_${slug}`, nodes: [node, coil.nodes[1]], value: OPEN_OHMS }),
      ];
    },
    cure: { by: 'part', parts: ({ slug }, set) => [coilOf(set, slug)] },
    symptom: 'curve',
    sits: { at: 'slug', drawn: true, of: ({ id }) => [{ slug: id }] },
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
} as const;
