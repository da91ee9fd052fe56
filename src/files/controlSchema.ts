/** What a file may have a control stand at, from the control's row. */
import * as v from 'valibot';
import type { ControlRow, ValueOf } from '../bench/controls/row.ts';
import { integer, number, oneOf, yesOrNo } from './schemaPieces.ts';

export const controlSchema = <const Row extends ControlRow>(row: Row) =>
  schemaOf(row) as unknown as v.GenericSchema<ValueOf<Row>>;

function schemaOf(row: ControlRow) {
  switch (row.kind) {
    case 'switch':
      return yesOrNo();
    case 'positions':
    case 'clicks':
      return oneOf<readonly (string | number)[]>(...row.choices);
    case 'range': {
      const { min, max, step, stepped = false } = row;
      if (!stepped || step === 'bySet') return number(min, max);
      if (step === 1) return integer(min, max);
      return v.pipe(number(min, max), v.multipleOf(step, `a multiple of ${step}`));
    }
  }
}
