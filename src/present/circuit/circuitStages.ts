/** The symbols of a circuit that are more than one part with two ends: stages, detectors, feeds of bias lines, and what stands beside the signal's way. */
import { findElement, nodeKey } from '../../physics/deck.ts';
import { CircuitDrawing, HALF } from './circuitDrawing.ts';
import { hot, type StageBranch } from './circuitGraph.ts';
import { LEVEL, lettering } from './circuitPen.ts';
import { letteringWidth } from './circuitTypes.ts';
import { calledOf, stageOf } from './stageCalled.ts';

export class CircuitStages extends CircuitDrawing {
  /** A valve or transistor; gives where its output meets the line. */
  protected stage(stage: StageBranch, lineEnd: number | null): number {
    const { pen, words } = this;
    const { name } = stage.element;
    const known = stageOf(this.receiver, name);
    const device = known?.device ?? name;
    const called = calledOf(device);
    const kind = /^q\d|npn|pnp|transistor/i.test(device) ? 'transistor' : 'valve';
    this.beside = null;
    pen.x += 6;
    pen.sections.push({ stage: name, fromX: pen.x });
    for (const [which] of this.leads(stage)) if (which !== 'grid') this.lead(`${name} ${which}`, LEVEL.grid + 26);
    let x = lineEnd === null ? this.lead(`${name} grid`, LEVEL.grid) : pen.x + 12;
    if (lineEnd !== null) pen.wire([lineEnd, 0], [x, 0], [x, LEVEL.grid]);
    const y = LEVEL.grid;
    const coupling = this.own('coupling', name);
    if (coupling !== null) {
      const width = Math.max(44, letteringWidth(words.own.coupling) + 10);
      const middle = x + 4 + width / 2;
      pen.put({
        kind: 'capacitor',
        lying: true,
        at: { x: middle, y },
        half: { x: 7, y: 13 },
        name: coupling,
        part: coupling,
        label: lettering(words.own.coupling, middle, y - 18, true),
      });
      pen.wire([x, y], [middle - 7, y]);
      pen.wire([middle + 7, y], [x + width + 10, y]);
      x += width + 10;
    } else {
      pen.wire([x, y], [x + 12, y]);
      x += 12;
    }
    if (known?.agc != null && this.receiver.biasLines.some((line) => line.at === known.agc)) {
      const section = pen.sections.length - 1;
      this.biased.set(known.agc, [...(this.biased.get(known.agc) ?? []), { x, y, section }]);
    }
    const middle = x + 50;
    pen.wire([x, y], [middle - 28, y]);
    const label = lettering(called === name ? name : `${called} (${name})`, middle + 34, y - 16);
    pen.put({ kind, at: { x: middle, y }, half: { x: 29, y: 29 }, name, part: this.trayName(name), label });
    pen.wire([middle, y - 29], [middle, 0]);
    const bypass = this.own('bypass', name);
    const foot = y + 29;
    let right = label.box.x + label.box.width;
    if (bypass === null) {
      pen.wire([middle, foot], [middle, foot + 10]);
      pen.earth(middle, foot + 10);
    } else {
      pen.wire([middle, foot], [middle, foot + 12], [middle + 38, foot + 12], [middle + 38, foot + 29]);
      pen.dot(middle, foot + 12);
      pen.put({ kind: 'resistor', at: { x: middle, y: foot + 36 }, half: { x: 7, y: 16 }, name: null, part: null });
      pen.wire([middle, foot + 12], [middle, foot + 20]);
      const caption = lettering(words.own.bypass, middle + 56, foot + 41);
      pen.put({
        kind: 'capacitor',
        at: { x: middle + 38, y: foot + 36 },
        half: HALF.capacitor,
        name: bypass,
        part: bypass,
        label: caption,
      });
      pen.wire([middle + 38, foot + 43], [middle + 38, foot + 62]);
      pen.wire([middle, foot + 52], [middle, foot + 62]);
      pen.earth(middle, foot + 62);
      pen.earth(middle + 38, foot + 62);
      right = Math.max(right, caption.box.x + caption.box.width);
    }
    pen.x = right + 12;
    return middle;
  }

  protected fmDetector(id: string, plus: string, minus: string): number {
    const { pen, graph } = this;
    const placed = (node: string) => graph.order.includes(nodeKey(node));
    pen.sections.push({ stage: null, fromX: pen.x });
    const inner = placed(minus) ? this.lead(`${id} minus`, 96) : null;
    const outer = placed(plus) ? this.lead(`${id} plus`, 36) : null;
    const left = pen.x + 14;
    if (inner !== null) pen.wire([inner, 96], [left, 96]);
    if (outer !== null) pen.wire([outer, 36], [left, 36]);
    pen.put({
      kind: 'fmDetector',
      at: { x: left + 60, y: 68 },
      half: { x: 60, y: 56 },
      name: id,
      part: this.trayName(id),
      label: lettering(id, left + 60, 144, true),
    });
    pen.wire([left + 120, 68], [left + 134, 68], [left + 134, 0]);
    pen.x = left + 140;
    return left + 134;
  }

  /** Where a deck's source drives a node and no test point does: the signal comes from elsewhere. */
  protected source(node: string, taps: number[]): void {
    const { pen } = this;
    for (const e of this.deck.elements) {
      if (e.kind !== 'I' || hot(e.nodes.map(nodeKey) as [string, string]) !== node) continue;
      const driven = this.receiver.testPoints.some(
        (p) => p.inject?.kind === 'deckSource' && p.inject.element.toLowerCase() === e.name.toLowerCase(),
      );
      if (driven) continue;
      const x = pen.x + 18;
      const label = lettering(e.name, x + 18, LEVEL.hanging + 5);
      pen.put({ kind: 'source', at: { x, y: LEVEL.hanging }, half: { x: 14, y: 14 }, name: e.name, part: null, label });
      pen.wire([x, 0], [x, LEVEL.hanging - 14]);
      pen.wire([x, LEVEL.hanging + 14], [x, LEVEL.foot]);
      pen.earth(x, LEVEL.foot);
      pen.x = label.box.x + label.box.width + 8;
      taps.push(x);
      this.beside = null;
    }
  }

  protected earthPoint(): void {
    const { pen } = this;
    for (const point of this.receiver.testPoints.filter((p) => p.role === 'earth')) {
      const label = lettering(point.id, pen.x - 40, LEVEL.foot - 38);
      const x = Math.max(pen.x - 20, label.box.x + label.box.width / 2);
      pen.put({
        kind: 'point',
        at: { x, y: LEVEL.foot - 24 },
        half: { x: 9, y: 9 },
        name: point.id,
        part: null,
        label,
      });
      pen.wire([x, LEVEL.foot - 15], [x, LEVEL.foot]);
      pen.earth(x, LEVEL.foot);
      pen.x = Math.max(pen.x, label.box.x + label.box.width) + 20;
    }
  }

  protected biasLines(): void {
    const { pen, receiver } = this;
    const points = receiver.testPoints.filter((p) => p.role === 'agc');
    const names = [...new Set([...points.map((p) => p.id), ...receiver.biasLines.map((l) => l.at)])];
    let row = 0;
    for (const name of names) {
      const led = this.biased.get(name) ?? [];
      const y = LEVEL.bias + row++ * LEVEL.biasStep;
      const width = 100 + letteringWidth(name) + 24;
      // It stands whole before the first stage that it leads to, so that no page cuts it.
      let section = Math.max(0, (led[0]?.section ?? 0) - 1);
      while (section > 0 && pen.sections[section + 1]!.fromX - pen.sections[section]!.fromX < width) section--;
      const from = led.length === 0 ? 40 : (pen.sections[section + 1]?.fromX ?? Math.min(...led.map((l) => l.x))) - 12;
      const part = this.trayName(name);
      const pointX = from - 100 - letteringWidth(name);
      pen.put({
        kind: 'point',
        at: { x: pointX, y },
        half: { x: 9, y: 9 },
        name,
        part: null,
        label: lettering(name, pointX + 14, y - 12),
      });
      const symbols = pen.symbols.length - 1;
      pen.wire([pointX + 9, y], [from - 48, y]);
      pen.put({ kind: 'biasFeed', at: { x: from - 24, y }, half: { x: 24, y: 12 }, name, part });
      for (let i = symbols; i < pen.symbols.length; i++) pen.symbols[i] = { ...pen.symbols[i]!, section };
      if (led.length === 0) continue;
      const to = Math.max(...led.map((l) => l.x));
      pen.wire([from, y], [to, y]);
      for (const { x, y: gridY } of led) {
        pen.wire([x, gridY], [x, y]);
        pen.dot(x, gridY);
        if (x < to) pen.dot(x, y);
      }
    }
  }

  /** Parts that nothing above has a place for still have one. */
  protected leftOver(): void {
    const { pen } = this;
    const has = new Set(pen.symbols.map((s) => s.part));
    for (const part of this.tray) {
      if (has.has(part.name) || part.kind === 'shield') continue;
      const kind = part.kind === 'resistor' ? 'resistor' : part.kind === 'coil' ? 'coil' : 'capacitor';
      const label = lettering(part.name, pen.x + 40, LEVEL.hanging + 5);
      const found = findElement(this.deck, part.name);
      const slug = found?.kind === 'L' ? (this.slugOf(found.name)?.id ?? null) : part.slug;
      pen.put({
        kind,
        at: { x: pen.x + 20, y: LEVEL.hanging },
        half: HALF[kind],
        name: part.name,
        part: part.name,
        slug,
        label,
      });
      pen.x = label.box.x + label.box.width + 12;
    }
  }

  /** Above all that is drawn, in a row of its own. Gives the height of that row. */
  protected shield(drawn: { x: number; y: number; width: number }): number {
    const part = this.tray.find((p) => p.kind === 'shield');
    if (part === undefined) return 0;
    const width = letteringWidth(this.words.own.shield);
    const half = { x: width / 2 + 8, y: 12 };
    const at = { x: drawn.x + half.x, y: drawn.y - half.y - 6 };
    this.pen.put({
      kind: 'shield',
      at,
      half,
      name: part.name,
      part: part.name,
      label: lettering(this.words.own.shield, at.x, at.y + 5, true),
    });
    const symbols = this.pen.symbols;
    symbols[symbols.length - 1] = { ...symbols.at(-1)!, section: 0 };
    return 2 * half.y + 6;
  }
}
