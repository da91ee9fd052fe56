/** Bounds of a number as the shape of a scenario file has them, so that a form offers no other. */
import { scenarioSchema } from './scenarioSchema.ts';

export interface Bounds {
  readonly least: number;
  readonly most: number;
}

/** As much of a schema as is asked here. */
interface Shape {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Shape>>;
  readonly wrapped?: Shape;
  readonly pipe?: readonly { readonly type: string; readonly requirement?: unknown }[];
}

/** Bounds of a number, of a text its length, of a list its count; throws where the format has none at this place. */
export function numberBounds(...path: readonly string[]): Bounds {
  let shape = scenarioSchema as unknown as Shape;
  for (const key of path) {
    const inside = bare(shape).entries?.[key];
    if (inside === undefined) throw new Error(`no key ${path.join('/')}`);
    shape = inside;
  }
  const steps = bare(shape).pipe ?? [];
  const figure = (...types: readonly string[]): number => {
    const found = steps.find((step) => types.includes(step.type))?.requirement;
    if (typeof found !== 'number') throw new Error(`no bound at ${path.join('/')}`);
    return found;
  };
  return { least: figure('min_value', 'min_length'), most: figure('max_value', 'max_length') };
}

function bare(shape: Shape): Shape {
  return shape.wrapped === undefined ? shape : bare(shape.wrapped);
}
