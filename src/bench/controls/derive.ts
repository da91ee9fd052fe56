/** What the bench knows of its controls, worked out from a table of rows. */
import type { Receiver } from '../../receiver/receiver.ts';
import type { Refusal } from '../benchEvent.ts';
import { type ControlRange, isDrawn, rangeOf, refusalOf } from './range.ts';
import type { ControlPanel, ControlRows, ValuesOf } from './row.ts';

export interface ControlTable<Rows extends ControlRows> {
  readonly rows: Rows;
  readonly ids: readonly (keyof Rows & string)[];
  /** how the bench is left by whoever used it last: nothing is set for any receiver */
  readonly resting: ValuesOf<Rows>;
  range(receiver: Receiver, control: keyof Rows & string): ControlRange;
  /** why a control cannot be set so; null when it can */
  check(receiver: Receiver, control: string, value: unknown): Refusal | null;
  /** what stands on a panel for this receiver, in the table's order */
  onPanel(receiver: Receiver, panel: ControlPanel): readonly (keyof Rows & string)[];
}

export function deriveControls<const Rows extends ControlRows>(rows: Rows): ControlTable<Rows> {
  const ids = Object.keys(rows);
  const resting = Object.fromEntries(ids.map((id) => [id, rows[id]!.resting])) as ValuesOf<Rows>;
  return {
    rows,
    ids,
    resting,
    range: (receiver, control) => rangeOf(rows[control]!, receiver),
    check: (receiver, control, value) =>
      Object.hasOwn(rows, control) ? refusalOf(rows[control]!, receiver, value) : 'noSuchControl',
    onPanel: (receiver, panel) => ids.filter((id) => rows[id]!.panel === panel && isDrawn(rows[id]!, receiver)),
  };
}
