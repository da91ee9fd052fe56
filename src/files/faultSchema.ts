/** The shape of a fault in a scenario file, made from the table of faults: what it names stands under `part` or `parts` (`faultFile.ts`). What must hold against the receiver is in checkFaults.ts. */
import * as v from 'valibot';
import type { Unit } from '../base/phrases.ts';
import type { FaultKind } from '../receiver/faults/fault.ts';
import type { FaultField, FaultFields } from '../receiver/faults/faultField.ts';
import { FAULT_ROWS } from '../receiver/faults/faultRows.ts';
import { elementName, list, nodeName, number, object, shortId } from './schemaPieces.ts';

type Shape = v.StrictObjectSchema<{ readonly kind: v.LiteralSchema<string, undefined> }, string>;

/** The name of a figure carries its unit; a factor has none. */
const UNITS: Readonly<Record<string, Unit>> = {
  ohms: 'Ω',
  farads: 'F',
  volts: 'V',
  amps: 'A',
  seconds: 'seconds',
  afterSeconds: 'seconds',
};

/** One shape for each row. The shapes are as many and of the kinds that the table has, which the compiler cannot count. */
export const faultSchema = v.variant('kind', shapes()) as unknown as v.GenericSchema<{ readonly kind: FaultKind }>;

function shapes(): [Shape, ...Shape[]] {
  const kinds = Object.keys(FAULT_ROWS) as FaultKind[];
  return kinds.map((kind) => shapeOf(kind, FAULT_ROWS[kind].fields)) as [Shape, ...Shape[]];
}

function shapeOf(kind: FaultKind, fields: FaultFields): Shape {
  const all = Object.entries(fields).map(([key, field]) => ({ key, field, piece: pieceOf(key, field) }));
  const named = all.filter(({ field }) => field.holds !== 'number').map(({ piece }) => piece);
  const figures = all.filter(({ field }) => field.holds === 'number').map(({ key, piece }) => [key, piece] as const);
  const [part] = named;
  return object({
    kind: v.literal<string>(kind),
    ...(part === undefined ? {} : named.length === 1 ? { part } : { parts: list(part, named.length, named.length) }),
    ...Object.fromEntries(figures),
  });
}

function pieceOf(key: string, field: FaultField): v.GenericSchema {
  switch (field.holds) {
    case 'element':
    case 'stage':
      return elementName();
    case 'slug':
    case 'line':
    case 'detector':
      return shortId();
    case 'node':
      return nodeName();
    case 'number':
      return number(field.least, field.most, UNITS[key] ?? '');
  }
}
