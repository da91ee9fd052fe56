/** The Pixi canvas of the leads: wires below, then plugs, then tips, the lead in the hand on top. Draws a lead again only when its place changed. */
import { Container, Graphics } from 'pixi.js';
import type { LeadId } from '../../../bench/benchState.ts';
import { pageFrames } from '../../../kit/frameLoop.ts';
import { openSheet } from '../../../kit/pixiCanvas.ts';
import type { Rect } from '../../../kit/px.ts';
import { drawJack, drawPlug, drawTip, drawWire } from './leadDrawing.ts';
import { bent, type Spot, swing } from './leadPath.ts';
import type { LeadPlace } from './leadPlaces.ts';

export interface LeadCanvas {
  /** the part of the page that the canvas covers */
  cover(area: Rect): void;
  jacks(at: readonly Spot[]): void;
  show(places: readonly LeadPlace[]): void;
  /** the lead in the hand, instead of its place at rest; null when the hand is empty */
  carry(place: LeadPlace | null): void;
  /** one small swing of the lead that was just put down */
  settle(lead: LeadId): void;
  close(): void;
}

const SETTLE_MS = 260;
const SWING_PX = 9;

interface Drawn {
  place: LeadPlace;
  readonly wire: Graphics;
  readonly plug: Graphics;
  readonly tip: Graphics;
}

export async function openLeadSheet(canvas: HTMLCanvasElement): Promise<LeadCanvas> {
  const sheet = await openSheet(canvas);
  const layers = { jacks: new Container(), wires: new Container(), plugs: new Container(), tips: new Container() };
  const hand = new Container();
  sheet.stage.addChild(layers.jacks, layers.wires, layers.plugs, layers.tips, hand);
  const drawn = new Map<LeadId, Drawn>();
  const carried = { wire: new Graphics(), tip: new Graphics() };
  hand.addChild(carried.wire, carried.tip);
  let inHand: LeadId | null = null;
  let settling: Drawn | null = null;
  let began = -1;

  const setTip = (g: Graphics, place: LeadPlace): void => {
    drawTip(g, place.tip, place.kind.colour);
    g.position.set(place.route.tip.x, place.route.tip.y);
    g.angle = place.route.tipDegrees;
  };
  const setAll = (d: Drawn): void => {
    drawWire(d.wire, d.place.line, d.place.kind);
    d.plug.clear();
    if (d.place.route.jackDegrees !== -90) drawPlug(d.plug, d.place.kind.colour);
    d.plug.position.set(d.place.route.jack.x, d.place.route.jack.y);
    d.plug.angle = d.place.route.jackDegrees;
    setTip(d.tip, d.place);
  };
  const rest = (): void => {
    pageFrames.drop(step);
    if (settling !== null) drawWire(settling.wire, settling.place.line, settling.place.kind);
    settling = null;
  };
  function step(nowMs: number): void {
    if (settling === null) return;
    if (began < 0) began = nowMs;
    const { wire, place } = settling;
    const t = (nowMs - began) / SETTLE_MS;
    drawWire(wire, bent(place.line, SWING_PX * swing(t)), place.kind);
    sheet.invalidate();
    if (t < 1) pageFrames.ask('tell', step);
    else settling = null;
  }

  return {
    cover(area) {
      sheet.stage.position.set(-area.x, -area.y);
      sheet.resize(area.width, area.height);
    },
    jacks(at) {
      for (const child of layers.jacks.removeChildren()) child.destroy();
      for (const spot of at) {
        const g = new Graphics();
        drawJack(g);
        g.position.set(spot.x, spot.y);
        layers.jacks.addChild(g);
      }
      sheet.invalidate();
    },
    show(places) {
      for (const place of places) {
        const old = drawn.get(place.kind.id);
        if (old?.place === place) continue;
        const d = old ?? { place, wire: new Graphics(), plug: new Graphics(), tip: new Graphics() };
        if (old === undefined) {
          drawn.set(place.kind.id, d);
          layers.wires.addChild(d.wire);
          layers.plugs.addChild(d.plug);
          layers.tips.addChild(d.tip);
        }
        d.place = place;
        setAll(d);
      }
      sheet.invalidate();
    },
    carry(place) {
      const before = inHand === null ? undefined : drawn.get(inHand);
      if (before !== undefined) before.wire.visible = before.tip.visible = true;
      inHand = place?.kind.id ?? null;
      hand.visible = place !== null;
      if (place !== null) {
        const d = drawn.get(place.kind.id);
        if (d !== undefined) d.wire.visible = d.tip.visible = false;
        drawWire(carried.wire, place.line, place.kind);
        setTip(carried.tip, place);
      }
      sheet.invalidate();
    },
    settle(lead) {
      rest();
      const d = drawn.get(lead);
      if (d === undefined) return;
      settling = d;
      began = -1;
      pageFrames.ask('tell', step);
    },
    close() {
      pageFrames.drop(step);
      sheet.close();
    },
  };
}
