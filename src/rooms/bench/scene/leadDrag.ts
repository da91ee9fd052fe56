/** Dragging the end of a lead by pointer or finger; a press that does not move lifts the end as a key would. */
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { LeadEnd, LeadId } from '../../../bench/benchState.ts';
import { HOT_CORNER } from '../../../bench/benchState.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import { endUnder, labelUnder, REACH } from './leadAim.ts';
import type { LeadCanvas } from './leadCanvas.ts';
import { carriedLead, type LeadGround, type LeadPlace } from './leadPlaces.ts';

interface DragUse {
  readonly ground: LeadGround;
  readonly receiver: Receiver;
  readonly sheet: RefObject<LeadCanvas | null>;
  readonly lift: (lead: LeadId, by: 'pointer' | 'keys') => void;
  readonly drop: (lead: LeadId, end: LeadEnd | null) => void;
  /** let go where no point is, of a lead that was in the tray */
  readonly missed: (lead: LeadId) => void;
  readonly cancel: () => void;
}

const STILL = 5;
const FENCE = 6;

export function useLeadDrag(use: DragUse): (e: PointerEvent, place: LeadPlace) => void {
  const latest = useRef(use);
  latest.current = use;
  const stop = useRef<(() => void) | null>(null);
  useEffect(() => () => stop.current?.(), []);

  return (down, place) => {
    if (down.button !== 0 || !down.isPrimary) return;
    const target = down.currentTarget as HTMLElement;
    const lead = place.kind.id;
    let lifted = false;
    let hand = place.grip;
    let tip = place.route.tip;
    const box = target.getBoundingClientRect();
    /** from the middle of the grip */
    const held = { x: down.clientX - box.left - box.width / 2, y: down.clientY - box.top - box.height / 2 };
    let pointer = hand;
    target.setPointerCapture(down.pointerId);
    const move = (e: PointerEvent): void => {
      const dx = e.clientX - down.clientX;
      const dy = e.clientY - down.clientY;
      if (!lifted && Math.hypot(dx, dy) < STILL) return;
      const { ground, sheet, lift } = latest.current;
      if (!lifted) {
        lifted = true;
        lift(lead, 'pointer');
      }
      hand = { x: place.grip.x + dx, y: place.grip.y + dy };
      pointer = { x: hand.x + held.x, y: hand.y + held.y };
      const carried = carriedLead(ground, lead, place.tip, hand);
      tip = carried.route.tip;
      sheet.current?.carry(carried);
    };
    const end = (): void => {
      target.removeEventListener('pointermove', move);
      target.removeEventListener('pointerup', up);
      target.removeEventListener('pointercancel', lost);
      window.removeEventListener('keydown', key, true);
      stop.current = null;
    };
    const up = (): void => {
      end();
      const { ground, receiver, drop, lift } = latest.current;
      if (!lifted) {
        lift(lead, 'keys');
        return;
      }
      // Some aim with the tip, some with the pointer: the tip counts first.
      const aims = [tip, pointer, hand];
      const reached =
        endUnder(ground.ends, tip.x, tip.y, REACH) ??
        endUnder(ground.ends, pointer.x, pointer.y, REACH) ??
        endUnder(ground.ends, hand.x, hand.y, REACH * 0.7) ??
        aims.map(({ x, y }) => labelUnder(ground.labels, x, y)).find((end) => end !== null) ??
        null;
      if (reached !== null) drop(lead, reached);
      else if (inHotCorner(ground, receiver, tip)) drop(lead, HOT_CORNER);
      else if (place.end === null) latest.current.missed(lead);
      else drop(lead, null);
    };
    const lost = (): void => {
      end();
      latest.current.cancel();
    };
    const key = (e: KeyboardEvent): void => {
      if (e.key !== 'Escape') return;
      e.preventDefault();
      e.stopPropagation();
      lost();
    };
    stop.current = end;
    target.addEventListener('pointermove', move);
    target.addEventListener('pointerup', up);
    target.addEventListener('pointercancel', lost);
    window.addEventListener('keydown', key, true);
  };
}

function inHotCorner(
  { layout }: LeadGround,
  { plan }: Receiver,
  tip: { readonly x: number; readonly y: number },
): boolean {
  if (plan.hot === null) return false;
  const x = (tip.x - layout.chassis.x) / layout.chassis.scale;
  const y = (tip.y - layout.chassis.y) / layout.chassis.scale;
  const { hot } = plan;
  // The fence itself harms nobody.
  return x >= hot.x + FENCE && x <= hot.x + hot.width - FENCE && y >= hot.y + FENCE && y <= hot.y + hot.height - FENCE;
}
