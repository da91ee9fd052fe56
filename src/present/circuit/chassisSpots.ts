/** Where a symbol of the circuit is to be looked for on the chassis: its slug's hole, its test point, its valve; and for what lies under the chassis nothing. */
import type { PlanPoint, Receiver } from '../../receiver/receiver.ts';
import type { CircuitSymbol } from './circuitTypes.ts';
import { calledOf, stageOf } from './stageCalled.ts';

export interface ChassisSpot extends PlanPoint {
  readonly name: string;
}

export function chassisSpots(receiver: Receiver, symbol: CircuitSymbol): readonly ChassisSpot[] {
  const slug = receiver.adjusters.find((a) => a.id === symbol.slug);
  if (slug !== undefined) return [{ x: slug.plan.x, y: slug.plan.y, name: slug.label }];
  const point = receiver.testPoints.find((p) => p.id === symbol.name);
  if (point !== undefined) return [{ x: point.plan.x, y: point.plan.y, name: point.id }];
  const stage = symbol.name === null ? undefined : stageOf(receiver, symbol.name);
  const called = stage === undefined ? undefined : calledOf(stage.device);
  return receiver.plan.parts.flatMap((part) => {
    if (called === undefined || part.kind === 'resistor' || part.label !== called) return [];
    const middle = part.kind === 'box' ? { x: part.x + part.width / 2, y: part.y + part.height / 2 } : part;
    return [{ x: middle.x, y: middle.y, name: part.label }];
  });
}
