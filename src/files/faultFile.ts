/**
 * Faults as a file has them: whatever has failed is named under `part`, or under `parts` where there are two, be it an element of the deck, a stage, a slug, a detector
 * or the point of a line. What kind of thing it is, the kind of the fault says.
 */
import type { Fault, FaultKind } from '../receiver/faults/fault.ts';
import { FAULT_ROWS } from '../receiver/faults/faultRows.ts';

type Plain = Readonly<Record<string, unknown>>;

/** The fields of a kind that name something, in order. */
function namedFields(kind: FaultKind): readonly string[] {
  return Object.entries(FAULT_ROWS[kind].fields).flatMap(([key, { holds }]) => (holds === 'number' ? [] : [key]));
}

/** Where in a file the field of a fault stands: `part`, or `parts` and a place in it. */
export function placeInFile(kind: FaultKind, field: string): readonly (string | number)[] {
  const named = namedFields(kind);
  const at = named.indexOf(field);
  if (at < 0) return [field];
  return named.length === 1 ? ['part'] : ['parts', at];
}

/** What stands in the file is copied unread: a place that was refused stays closed (`known.ts`) and hides nothing of the rest. */
export function faultFromFile(fault: Plain): Fault {
  const { part, parts, ...rest } = Object.getOwnPropertyDescriptors(fault);
  const inList = (i: number): PropertyDescriptor | undefined =>
    Array.isArray(parts?.value) ? Object.getOwnPropertyDescriptor(parts.value, i) : parts;
  const named = namedFields(fault.kind as FaultKind).flatMap((field, i) => {
    const place = part ?? inList(i);
    return place === undefined ? [] : [[field, place] as const];
  });
  return Object.defineProperties({}, { ...Object.fromEntries(named), ...rest }) as Fault;
}

/** As `faultFromFile`, the other way; also of a fault of the first version, which is as ours. */
export function faultToFile(fault: Plain): Plain {
  const kind = fault.kind as FaultKind;
  if (!Object.hasOwn(FAULT_ROWS, kind)) return fault;
  const named = namedFields(kind).filter((field) => Object.hasOwn(fault, field));
  const { kind: _, ...rest } = Object.fromEntries(Object.entries(fault).filter(([key]) => !named.includes(key)));
  const names = named.map((field) => fault[field]);
  return { kind, ...(named.length === 0 ? {} : named.length === 1 ? { part: names[0] } : { parts: names }), ...rest };
}
