/** The shape of a chassis plan: where things stand on the drawing, in its own units. */
import * as v from 'valibot';
import { list, number, object, oneOf, shortId, text, yesOrNo } from './schemaPieces.ts';

const across = () => number(0, 1000);
const label = () => text(16);
const point = object({ x: across(), y: across() });
const place = { x: across(), y: across() };

export const slugPlanSchema = object({
  ...place,
  can: shortId(),
  shape: oneOf('can', 'trap'),
  hole: oneOf('top', 'bottom'),
  letter: v.exactOptional(point),
});

const partSchema = v.variant('kind', [
  object({ kind: v.literal('valve'), ...place, label: label() }),
  object({ kind: v.literal('can'), ...place, label: label() }),
  object({ kind: v.literal('electrolytic'), ...place, label: label() }),
  object({
    kind: v.literal('box'),
    ...place,
    width: number(20, 600),
    height: number(20, 600),
    label: label(),
    sub: text(24),
  }),
  object({ kind: v.literal('transformer'), ...place, label: label() }),
  object({ kind: v.literal('resistor'), ...place, upright: yesOrNo() }),
]);

export const planSchema = object({
  width: number(200, 1000),
  height: number(200, 1000),
  hot: v.nullable(
    object({ ...place, width: number(20, 1000), height: number(20, 1000), volts: number(1, 50_000, 'V') }),
  ),
  parts: list(partSchema, 0, 48),
  path: list(list(point, 2, 32), 0, 16),
});
