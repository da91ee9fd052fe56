/** What is known about one kind of fault: all of it in one row of the table (`faultRows.ts`), from which the rest of the program derives what it needs. */
import type { DeckElement } from '../../physics/deck.ts';
import type { DeckEdit } from '../../physics/editDeck.ts';
import type { FaultFields, FieldValues } from './faultField.ts';
import type { FaultPlaces, FaultySet, PlaceKind } from './faultPlaces.ts';

/** What no deck can hold. */
export type FaultMark =
  | { readonly kind: 'reversed'; readonly detector: string }
  | { readonly kind: 'detectorLeak'; readonly detector: string; readonly ohms: number }
  /** nothing is rectified any more */
  | { readonly kind: 'shorted'; readonly detector: string }
  | { readonly kind: 'detectorLoad'; readonly detector: string; readonly ohms: number }
  | { readonly kind: 'lineLeak'; readonly at: string; readonly ohms: number }
  /** nothing feeds the line */
  | { readonly kind: 'lineOpen'; readonly at: string }
  /** current out of the line into a grid */
  | { readonly kind: 'lineCurrent'; readonly at: string; readonly amps: number }
  /** a grid that stands so many volts above what its line gives; what that makes of the stage is in the deck */
  | { readonly kind: 'gridDragged'; readonly element: string; readonly volts: number }
  | { readonly kind: 'stuckCore'; readonly slug: string }
  | { readonly kind: 'screwedIn' }
  | { readonly kind: 'noContact'; readonly lead: 'earth' | 'rf' };

/** Parts of the tray that are neither of the deck nor a detector or a line: a fault brings them along. */
export interface OwnParts<K extends string> {
  readonly kind: K;
  names(set: FaultySet): readonly string[];
}

/** The moment: seconds of the bench, and the seed that the scenario's chance comes from. */
export interface BenchTime {
  readonly seconds: number;
  readonly seed: number;
}

interface PartCure<V, P extends string> {
  readonly by: 'part';
  /** names in the parts tray, any one of which is the cure: two that have changed places go back together */
  parts(fault: V, set: FaultySet): readonly [string, ...string[]];
  readonly own?: OwnParts<P>;
}

/**
 * What the report says that the part did. `curve`: to the response that shows it most; `detector`: to the detected volts; `line`: to a bias line's own volts; all three
 * worked out from the model. `tells`: nothing to be measured, a sentence by this key.
 */
export type FaultSymptom<W extends string> = 'curve' | 'detector' | 'line' | { readonly tells: W };

/** Where such a fault makes sense by itself, and of what size. */
type Sits<V, P extends PlaceKind> = {
  readonly at: P;
  /** the endless track draws it; what is not drawn stands in the fault-finding chart all the same */
  readonly drawn: boolean;
  /** where a place has more than one, the chart has all of them at once too */
  readonly together?: true;
  of(place: FaultPlaces[P], set: FaultySet): readonly V[];
};

interface FaultBase<F extends FaultFields> {
  readonly fields: F;
  /** on the deck as the faults before it have left it */
  edits?(fault: FieldValues<F>, set: FaultySet): readonly DeckEdit[];
  marks?(fault: FieldValues<F>, set: FaultySet): readonly FaultMark[];
  /** whether the fault is there at this time; left out: always */
  present?(fault: FieldValues<F>, now: BenchTime): boolean;
  /** null: neither drawn nor charted, as it is found otherwise than by its curve */
  readonly sits: { [P in PlaceKind]: Sits<FieldValues<F>, P> }[PlaceKind] | null;
}

/** Cured by a part of the tray, which then has a symptom to tell of; or with a tool or by hand. */
export type FaultRow<F extends FaultFields = FaultFields, W extends string = string, P extends string = string> =
  | (FaultBase<F> & { readonly cure: PartCure<FieldValues<F>, P>; readonly symptom: FaultSymptom<W> })
  | (FaultBase<F> & {
      readonly cure: { readonly by: 'turning' } | { readonly by: 'lead'; readonly lead: 'earth' | 'rf' };
    });

export function faultRow<const F extends FaultFields, const W extends string = never, const P extends string = never>(
  row: FaultRow<F, W, P>,
): FaultRow<F, W, P> {
  return row;
}

export function add(element: DeckElement): DeckEdit {
  return { kind: 'add', element };
}

/** Name of a part that belongs to an element of the deck and is none itself. */
export function partAt(kind: string, element: string): string {
  return `${kind}:${element}`;
}
