/** What every step of drawing a circuit knows: the deck, the tray, the pen, and how one part is put into a line. */
import type { Coupling, Deck } from '../../physics/deck.ts';
import { type Part, partsTray } from '../../receiver/faults/partsTray.ts';
import type { Adjuster, Receiver, TestPoint } from '../../receiver/receiver.ts';
import { slugLetters } from '../../receiver/slugLetters.ts';
import { type Branch, type CircuitGraph, circuitGraph, type StageBranch } from './circuitGraph.ts';
import { CircuitPen, LEVEL, lettering } from './circuitPen.ts';
import { type CircuitWords, letteringWidth } from './circuitTypes.ts';

export const KINDS = { R: 'resistor', C: 'capacitor', L: 'coil', D: 'diode' } as const;
export const HALF = {
  resistor: { x: 7, y: 19 },
  capacitor: { x: 13, y: 7 },
  coil: { x: 16, y: 26 },
  diode: { x: 11, y: 11 },
} as const;

export class CircuitDrawing {
  protected readonly pen = new CircuitPen();
  protected readonly graph: CircuitGraph;
  protected readonly tray: readonly Part[];
  protected readonly letters: ReadonlyMap<string, string>;
  protected readonly drawn = new Set<Branch>();
  protected readonly couplings: { element: string; at: { x: number; y: number } }[] = [];
  /** couplings that the drawing has shown, by lines or in words */
  protected readonly shown = new Set<Coupling>();
  /** the coil that was placed last and has nothing beside it yet */
  protected beside: string | null = null;
  protected readonly openArches = new Map<Branch, CircuitPen['arches'][number]>();
  protected readonly openLinks = new Map<string, CircuitPen['arches'][number]>();
  /** where the bias of a stage comes in, by test point */
  protected readonly biased = new Map<string, { x: number; y: number; section: number }[]>();

  constructor(
    protected readonly receiver: Receiver,
    protected readonly deck: Deck,
    protected readonly words: CircuitWords,
  ) {
    this.graph = circuitGraph(receiver, deck);
    this.tray = partsTray(receiver, deck);
    this.letters = slugLetters(receiver);
  }

  protected trayName(name: string): string | null {
    return this.tray.find((p) => p.name.toLowerCase() === name.toLowerCase())?.name ?? null;
  }

  protected own(kind: Part['kind'], at: string): string | null {
    return this.tray.find((p) => p.kind === kind && p.at?.toLowerCase() === at.toLowerCase())?.name ?? null;
  }

  protected slugOf(coil: string): Adjuster | undefined {
    const key = coil.toLowerCase();
    return this.receiver.adjusters.find((a) => [a.element, ...a.ganged].some((e) => e.toLowerCase() === key));
  }

  protected coilMarks(branch: Branch, x: number, y: number = LEVEL.foot - 11) {
    if (branch.kind !== 'L') return { slug: null, disc: null, note: null, width: 0 };
    const adjuster = this.slugOf(branch.name);
    const others = this.graph.couplings.filter(
      (k) => !this.shown.has(k) && k.coils.some((c) => c.toLowerCase() === branch.name.toLowerCase()),
    );
    const told = others.flatMap((k) => {
      const other = k.coils.find((c) => c.toLowerCase() !== branch.name.toLowerCase());
      const placed = other !== undefined && [...this.drawn].find((b) => b.name.toLowerCase() === other.toLowerCase());
      if (!placed) return [];
      this.shown.add(k);
      return [placed.name];
    });
    const disc = adjuster === undefined ? null : { letter: this.letters.get(adjuster.id)!, at: { x: x + 16, y } };
    const text = [
      ...(adjuster?.trapHz == null ? [] : [this.words.hertz(adjuster.trapHz)]),
      ...(told.length === 0 ? [] : [this.words.coupledWith(told[0]!)]),
    ].join(', ');
    const from = disc === null ? x + 6 : x + 29;
    const note = text === '' ? null : lettering(text, from, y + 5);
    const width = note === null ? (disc === null ? 0 : 32) : from - x + note.box.width + 6;
    return { slug: adjuster?.id ?? null, disc, note, width };
  }

  /** A part that lies in a line at height `y`, its left end after `x`. */
  protected lying(branch: Branch, x: number, y: number): { left: number; right: number; end: number } {
    const kind = KINDS[branch.kind];
    const half = { x: HALF[kind].y, y: HALF[kind].x };
    const named = letteringWidth(branch.name);
    const middle = x + 14 + Math.max(half.x, named / 2);
    const { slug, disc, note, width } = this.coilMarks(branch, middle - 16, y + 27);
    this.pen.put({
      kind,
      lying: true,
      at: { x: middle, y },
      half,
      name: branch.name,
      part: branch.detector ? branch.name : this.trayName(branch.name),
      slug,
      label: lettering(branch.name, middle, y - half.y - 5, true),
      disc,
      note,
    });
    this.drawn.add(branch);
    return {
      left: middle - half.x,
      right: middle + half.x,
      end: Math.max(middle + Math.max(half.x, named / 2) + 12, middle - 16 + width + 6),
    };
  }

  /** One end of a lead that goes over the line, at the pen. */
  protected lead(key: string, down = 0): number {
    const x = this.pen.x + 12;
    const open = this.openLinks.get(key);
    if (open === undefined) {
      const arch = { from: x, to: null, fromY: down, toY: 0, part: null };
      this.pen.arches.push(arch);
      this.openLinks.set(key, arch);
    } else {
      open.to = x;
      open.toY = down;
    }
    this.pen.x += 22;
    this.beside = null;
    return x;
  }

  /** Leads of a stage that cannot go straight to it. */
  protected leads(stage: StageBranch): readonly (readonly [string, string])[] {
    const { order } = this.graph;
    const direct = order[order.indexOf(stage.output) - 1] === stage.control;
    return [
      ...(direct ? [] : [['grid', stage.control] as const]),
      ...(stage.cathode === null ? [] : [['cathode', stage.cathode] as const]),
      ...(stage.controlReturn === null ? [] : [['return', stage.controlReturn] as const]),
    ];
  }

  protected point(point: TestPoint): number {
    const { pen } = this;
    const half = Math.max(10, letteringWidth(point.id) / 2 + 4);
    const x = pen.x + half;
    pen.put({
      kind: 'point',
      at: { x, y: -24 },
      half: { x: 9, y: 9 },
      name: point.id,
      part: null,
      label: lettering(point.id, x, -38, true),
    });
    pen.wire([x, 0], [x, -15]);
    pen.x = x + half + 4;
    this.beside = null;
    return x;
  }
}
