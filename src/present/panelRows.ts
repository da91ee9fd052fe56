/** What stands on a panel: places that the panel's layout gives by hand, and a place for every control that has none. And the positions of a control with names. */
import type { ControlId } from '../bench/benchEvent.ts';
import type { ControlTable } from '../bench/controls/derive.ts';
import { isDrawn, isOffered } from '../bench/controls/range.ts';
import type { ControlPanel, ControlRows, PositionsRow } from '../bench/controls/row.ts';
import { CONTROL_ROWS } from '../bench/controls/rows.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { PositionWords } from '../words/controlWords.ts';

/** The controls of a panel that its layout has no place for, in the table's order. */
export function unplaced<Rows extends ControlRows>(
  table: ControlTable<Rows>,
  receiver: Receiver,
  panel: ControlPanel,
  placed: readonly string[],
): readonly (keyof Rows & string)[] {
  return table.onPanel(receiver, panel).filter((id) => !placed.includes(id));
}

/** Those of a layout's controls that have anything to do on this receiver. */
export function drawn<Place extends { readonly control: ControlId }>(
  receiver: Receiver,
  places: readonly Place[],
): readonly Place[] {
  return places.filter(({ control }) => isDrawn(CONTROL_ROWS[control], receiver));
}

export interface ControlPosition extends PositionWords {
  readonly value: string;
}

/** The choices of a control that this receiver has any use for, with their words. */
export function positionsOf(
  receiver: Receiver,
  row: PositionsRow,
  words: Readonly<Record<string, PositionWords>>,
): readonly ControlPosition[] {
  return row.choices.filter((choice) => isOffered(row, receiver, choice)).map((value) => ({ value, ...words[value]! }));
}
