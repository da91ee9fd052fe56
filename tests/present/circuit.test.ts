/** The circuit diagram of every receiver: all of the tray is on it, nothing lies on anything else, and what is joined in the deck is joined there. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Deck } from '../../src/physics/deck.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import { circuitDiagram } from '../../src/present/circuit/circuitDiagram.ts';
import { circuitPages, isOnPage } from '../../src/present/circuit/circuitPages.ts';
import { type CircuitDiagram, LETTERING, type SymbolBox } from '../../src/present/circuit/circuitTypes.ts';
import { partRole } from '../../src/present/circuit/partRole.ts';
import { partsTray } from '../../src/receiver/faults/partsTray.ts';
import type { Receiver } from '../../src/receiver/receiver.ts';

const WORDS = {
  own: { bypass: 'bypass', decoupling: 'decoupling', coupling: 'coupling', shield: 'screening lid' },
  hertz: (hz: number) => `${hz / 1e6} MHz`,
  coupledWith: (coil: string) => `with ${coil}`,
};
const FOLDER = 'scenarios/receivers';

function setOf(id: string): { receiver: Receiver; deck: Deck } {
  const receiver = JSON.parse(readFileSync(`${FOLDER}/${id}/receiver.json`, 'utf8')) as Receiver;
  return { receiver, deck: deckOf(readFileSync(`${FOLDER}/${id}/network.cir`, 'utf8')) };
}

function deckOf(text: string): Deck {
  const read = readDeck(text, 'deck');
  if (!read.ok) throw new Error('no deck');
  return read.value;
}

const boxesOf = (diagram: CircuitDiagram): (SymbolBox & { of: string })[] =>
  diagram.symbols.flatMap((s) => [
    { ...s.box, of: `${s.name} ${s.kind}` },
    // The lid's tag is a frame round its own words.
    ...(s.label === null || s.kind === 'shield' ? [] : [{ ...s.label.box, of: `label ${s.label.text}` }]),
    ...(s.note === null ? [] : [{ ...s.note.box, of: `note ${s.note.text} of ${s.name}` }]),
    ...(s.disc === null
      ? []
      : [{ x: s.disc.at.x - 10, y: s.disc.at.y - 10, width: 20, height: 20, of: `disc of ${s.name}` }]),
  ]);

function overlaps(boxes: readonly (SymbolBox & { of: string })[]): string[] {
  return boxes.flatMap((a, i) =>
    boxes.slice(i + 1).flatMap((b) => {
      const w = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      const h = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
      return w > 0.5 && h > 0.5 ? [`${a.of} on ${b.of}`] : [];
    }),
  );
}

/** Wires that run through a symbol or a word, instead of up to it. */
function crossed(diagram: CircuitDiagram): string[] {
  const boxes = boxesOf(diagram);
  return diagram.wires.flatMap((wire) =>
    wire.slice(1).flatMap((b, i) => {
      const a = wire[i]!;
      return boxes.flatMap((box) => {
        const inX = Math.min(a.x, b.x) < box.x + box.width - 2 && Math.max(a.x, b.x) > box.x + 2;
        const inY = Math.min(a.y, b.y) < box.y + box.height - 2 && Math.max(a.y, b.y) > box.y + 2;
        return inX && inY ? [`${a.x},${a.y} to ${b.x},${b.y} through ${box.of}`] : [];
      });
    }),
  );
}

describe.each(readdirSync(FOLDER))('the circuit of %s', (id) => {
  const { receiver, deck } = setOf(id);
  const diagram = circuitDiagram(receiver, deck, WORDS);

  it('shows every part of the tray, every slug and every test point', () => {
    const shown = new Set(diagram.symbols.map((s) => s.part));
    expect(partsTray(receiver, deck).filter((p) => !shown.has(p.name))).toEqual([]);
    const slugs = new Set(diagram.symbols.map((s) => s.slug));
    expect(receiver.adjusters.filter((a) => !slugs.has(a.id)).map((a) => a.id)).toEqual([]);
    const points = diagram.symbols.filter((s) => s.kind === 'point').map((s) => s.name);
    expect([...points].sort()).toEqual(receiver.testPoints.map((p) => p.id).sort());
  });

  it('draws each element of the deck once at most', () => {
    const names = diagram.symbols.filter((s) => s.part !== null && s.kind !== 'biasFeed').map((s) => s.part!);
    const detectors = new Set(receiver.detectors.map((d) => d.id));
    const elements = names.filter((n) => !detectors.has(n));
    expect(elements.filter((n, i) => elements.indexOf(n) !== i)).toEqual([]);
  });

  it('lays nothing on anything else', () => {
    expect(overlaps(boxesOf(diagram))).toEqual([]);
    expect(crossed(diagram)).toEqual([]);
  });

  it('comes in pages that a window of 683 px holds with lettering of 12 px, each symbol on one of them and whole', () => {
    const room = 683 - 24 - 76;
    const most = (room * LETTERING) / 12;
    const pages = circuitPages(diagram, room, most);
    for (const { fromX, toX } of pages) expect(toX - fromX).toBeLessThanOrEqual(most);
    for (const symbol of diagram.symbols) {
      const on = pages.filter((page) => isOnPage(page, symbol));
      expect(on).toHaveLength(1);
      if (on[0]!.part === undefined) continue;
      expect(symbol.box.x).toBeGreaterThanOrEqual(on[0]!.fromX);
      expect(symbol.box.x + symbol.box.width).toBeLessThanOrEqual(on[0]!.toX);
    }
  });
});

it('draws a receiver that nobody has seen', () => {
  const { receiver } = setOf('loose-can-10m7');
  const deck = deckOf(
    [
      '* ladder',
      'I1 0 a AC 1',
      'L1 a b 1u',
      'C9 a b 5p',
      'C8 a c 5p',
      'R7 c 0 1k',
      'R8 b c 1k',
      'G5 d 0 c 0 1m',
      'C3 d a 1p',
      'R2 d 0 1k',
      'G6 d 0 a 0 1m',
      '.end',
    ].join('\n'),
  );
  const strange: Receiver = { ...receiver, adjusters: [], testPoints: [], notParts: [], probeInDeck: null };
  const diagram = circuitDiagram(strange, deck, WORDS);
  const shown = diagram.symbols.map((s) => s.name);
  for (const name of ['L1', 'C9', 'C8', 'R7', 'R8', 'G5', 'C3', 'R2', 'G6']) expect(shown).toContain(name);
  expect(overlaps(boxesOf(diagram))).toEqual([]);
});

/** No source: what a part is there for is the words of the trade; that each part finds the words of its own kind is checked. */
describe('what is said of a part', () => {
  const KINDS = {
    resistor: /Resistor$/,
    capacitor: /Capacitor$/,
    coil: /^(slug|coil)$/,
    stage: /^stage$/,
    diode: /^detector$/,
  };
  for (const id of readdirSync(FOLDER)) {
    it(`is of its kind in the ${id}`, () => {
      const { receiver, deck } = setOf(id);
      const tray = partsTray(receiver, deck);
      const { symbols } = circuitDiagram(receiver, deck, WORDS);
      for (const part of tray) {
        const symbol = symbols.find((s) => s.part === part.name)!;
        const role = partRole(symbol, part);
        const { kind } = part;
        const wanted = Object.hasOwn(KINDS, kind) ? KINDS[kind as keyof typeof KINDS] : new RegExp(`^${kind}$`);
        expect(role, `${part.name}, ${kind}`).toMatch(wanted);
      }
      for (const point of symbols.filter(({ kind }) => kind === 'point'))
        expect(partRole(point, undefined)).toBe('point');
    });
  }
});
