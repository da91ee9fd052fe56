/** What a file may have a control stand at, from the control's row. */
import * as v from 'valibot';
import type { Unit } from '../base/phrases.ts';
import type { ControlRow, ControlUnit, ValueOf } from '../bench/controls/row.ts';
import { integer, number, oneOf, yesOrNo } from './schemaPieces.ts';
import { asMessage } from './schemaProblems.ts';

const UNITS: Readonly<Record<ControlUnit, Unit>> = {
  ...({ hz: 'Hz', hzWide: 'Hz', hzOff: 'Hz', db: 'dB', degrees: 'degrees', divisions: '' } as const),
  ...({ volts: 'V', unsignedVolts: 'V', voltsPerDiv: 'V', times: '', share: '' } as const),
};

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
      if (!stepped || step === 'bySet') return number(min, max, UNITS[row.unit]);
      if (step === 1) return integer(min, max, UNITS[row.unit]);
      return v.pipe(
        number(min, max, UNITS[row.unit]),
        v.multipleOf(step, asMessage(['multipleOf', step, UNITS[row.unit]])),
      );
    }
  }
}
