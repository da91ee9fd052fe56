/** How a scenario may leave the bench's knobs and switches, from their rows. Any control may be left out and then stands at its resting value. */
import * as v from 'valibot';
import type { ControlRows, ValueOf } from '../bench/controls/row.ts';
import { CONTROL_ROWS } from '../bench/controls/rows.ts';
import { controlSchema } from './controlSchema.ts';
import { object } from './schemaPieces.ts';

type Entries<Rows extends ControlRows> = {
  [Id in keyof Rows]: v.ExactOptionalSchema<v.GenericSchema<ValueOf<Rows[Id]>>, undefined>;
};

export function startControlsSchemaOf<const Rows extends ControlRows>(rows: Rows) {
  const entries = Object.entries(rows).map(([id, row]) => [id, v.exactOptional(controlSchema(row))]);
  return object(Object.fromEntries(entries) as Entries<Rows>);
}

export const startControlsSchema = startControlsSchemaOf(CONTROL_ROWS);
