/** Where on the chassis the faults of a scenario sit: at a slug, a valve, a test point, or at the can whose coil the part is joined to. What lies nowhere to be seen has no spot. */
import { type Deck, findElement, nodeKey } from '../physics/deck.ts';
import { coilOn } from '../receiver/coilOn.ts';
import { cureOf } from '../receiver/faults/cure.ts';
import type { Fault } from '../receiver/faults/fault.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { ChassisPlaces, PlanBox } from './chassisPlaces.ts';
import { partBox } from './chassisPlaces.ts';
import { calledOf, stageOf } from './circuit/stageCalled.ts';

export interface FaultSpot {
  /** of the fault in its list */
  readonly at: number;
  /** what is lettered there: `T1`, `V2`, `AGC` */
  readonly name: string;
  /** what is to be marked */
  readonly box: PlanBox;
}

interface NamedBox {
  readonly name: string;
  readonly box: PlanBox;
}

const POINT_RADIUS = 9;

export function faultSpots(
  { receiver, deck }: { readonly receiver: Receiver; readonly deck: Deck },
  places: ChassisPlaces,
  faults: readonly Fault[],
): readonly FaultSpot[] {
  return faults.flatMap((fault, at) => {
    const cure = cureOf(fault, receiver, deck);
    const found =
      cure.kind === 'replace'
        ? cure.parts.map((part) => placeOf(receiver, deck, places, part)).filter((place) => place !== null)
        : cure.kind === 'reconnect'
          ? [pointPlace(receiver, (p) => (cure.lead === 'earth' ? p.role === 'earth' : p.inject !== null))]
          : [];
    const seen = new Set<string>();
    return found.flatMap((place) => {
      if (place === null || seen.has(place.name)) return [];
      seen.add(place.name);
      return [{ at, ...place }];
    });
  });
}

function placeOf(receiver: Receiver, deck: Deck, places: ChassisPlaces, part: string): NamedBox | null {
  const stage = stageOf(receiver, part);
  if (stage !== undefined) return partPlace(receiver, calledOf(stage.device)) ?? canAt(receiver, deck, places, part);
  if (receiver.detectors.some(({ id }) => id === part))
    return pointPlace(receiver, (p) => p.role === 'detector' && p.detector === part);
  if (receiver.testPoints.some(({ id }) => id === part)) return pointPlace(receiver, (p) => p.id === part);
  return canAt(receiver, deck, places, part);
}

/** The valve, box or can of the plan that is lettered so. */
function partPlace({ plan }: Receiver, label: string): NamedBox | null {
  const found = plan.parts.find((part) => part.kind !== 'resistor' && part.label === label);
  return found === undefined ? null : { name: label, box: partBox(found) };
}

function pointPlace({ testPoints }: Receiver, is: (point: Receiver['testPoints'][number]) => boolean): NamedBox | null {
  const found = testPoints.find(is);
  if (found === undefined) return null;
  const { x, y } = found.plan;
  return { name: found.id, box: { x: x - POINT_RADIUS, y: y - POINT_RADIUS, width: 18, height: 18 } };
}

/** The can of the coil itself, of one that a coupling names, or of one that hangs at the same node. */
function canAt({ adjusters }: Receiver, deck: Deck, places: ChassisPlaces, part: string): NamedBox | null {
  const element = findElement(deck, part);
  if (element === undefined || element === null) return null;
  const named = (element.kind === 'K' ? element.coils : [element.name]).map((name) => name.toLowerCase());
  const own = adjusters.find((one) => [one.element, ...one.ganged].some((coil) => named.includes(coil.toLowerCase())));
  // Earth is everywhere.
  const nodes = element.kind === 'K' ? [] : element.nodes.map(nodeKey).filter((node) => node !== '0');
  const found = own ?? coilOn(adjusters, deck, nodes);
  const can = places.cans.find(({ slugs }) => slugs.some(({ id }) => id === found?.id));
  return can === undefined ? null : { name: can.id, box: can };
}
