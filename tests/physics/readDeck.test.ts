/** The deck reader on particular texts. Number suffixes as in any SPICE manual (a bare F is femto, M is milli, MEG is mega). */

import { describe, expect, test } from 'vitest';
import { acFrequencies, findElement } from '../../src/physics/deck.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import { numberHint, readSpiceNumber } from '../../src/physics/spiceNumber.ts';
import { saidOf } from '../files/said.ts';
import { DECK_IDS, deckOf, deckText } from './decks.ts';

function problems(...lines: string[]): string[] {
  const deck = readDeck(['title', ...lines].join('\n'), 'x.cir');
  return saidOf(deck).map((p) => `${p.place}: ${p.found}`);
}

describe('numbers', () => {
  test.each([
    ['1', 1],
    ['1.5', 1.5],
    ['.5', 0.5],
    ['5.', 5],
    ['1e-6', 1e-6],
    ['1E3', 1e3],
    ['+2', 2],
    ['-0.3', -0.3],
    ['10pF', 10e-12],
    ['10P', 10e-12],
    ['1MEG', 1e6],
    ['1meghz', 1e6],
    ['1M', 1e-3],
    ['4.7K', 4.7e3],
    ['3.3uH', 3.3e-6],
    ['2n', 2e-9],
    ['7f', 7e-15],
    ['7F', 7e-15],
    ['1g', 1e9],
    ['1T', 1e12],
    ['75ohm', 75],
    ['12V', 12],
    ['2.2e3k', 2.2e6],
    ['918.21n', 918.21e-9],
  ])('%s is %d', (word, value) => {
    expect(readSpiceNumber(word)).toBe(value);
  });

  test.each([
    '',
    'k',
    'abc',
    '1..2',
    '1e',
    '1e400',
    '4k7',
    '1,5',
    '1d3',
    '1mil',
    '1a',
    '1A',
    '0x10',
    '1_000',
    'NaN',
    'Infinity',
    '1k$',
    '--1',
    '1µ',
  ])('`%s` is refused', (word) => {
    expect(readSpiceNumber(word)).toBeNull();
  });

  test('suffixes that SPICE would take silently get a word of explanation', () => {
    expect(['1A', '10mil', 'xyz'].map(numberHint)).toEqual(['atto', 'mil', 'none']);
    const [amps, mils] = ['1A', '10mil'].map((value) => saidOf(readDeck(`t\nR1 a 0 ${value}`, 'x.cir'))[0]!.wanted);
    expect(amps).toContain('1e-18');
    expect(mils).toContain('inch');
    expect(problems('I1 0 a AC 1A', 'R1 a 0 1')).toEqual(['line 2, column 11: `1A`']);
  });
});

describe('a deck as people write them', () => {
  const text = [
    'R1 is no element here: the first line is the title',
    '',
    '* comment',
    '\t* comment after a tab',
    'I1\t0 IN  DC 0 ac 2m 45 ; source',
    'i2 0 out 1m',
    'R1 in 0',
    '* comment between',
    '',
    '+ 4.7K',
    'rfloat in Out 10k;no gap before the comment',
    'L1 in gnd 3.3uH',
    'L2 out GND 1e-6',
    'Kab L1 l2 -0.02',
    'C1 in 0 10pF',
    'C2 out',
    '+ 0',
    '+10p',
    'Gm out 0 in 0 5M',
    '.AC LIN 11 1Meg 2MEG',
    '.print AC vdb(out) vp(in,out) v(0)',
    '.save all v(IN) i(l1)',
    '.END',
    '* only comments after the end',
    '',
  ];

  test.each([
    ['LF', '\n'],
    ['CRLF', '\r\n'],
    ['CR', '\r'],
  ])('reads with %s line ends', (_, end) => {
    const deck = deckOf(text.join(end));
    expect(deck.title).toBe(text[0]);
    expect(deck.elements.map((e) => e.name)).toEqual(['I1', 'i2', 'R1', 'rfloat', 'L1', 'L2', 'Kab', 'C1', 'C2', 'Gm']);
    expect(findElement(deck, 'r1')).toMatchObject({ kind: 'R', nodes: ['in', '0'], value: 4700 });
    expect(findElement(deck, 'RFLOAT')).toMatchObject({ kind: 'R', nodes: ['in', 'Out'], value: 1e4 });
    expect(findElement(deck, 'I1')).toMatchObject({
      kind: 'I',
      nodes: ['0', 'IN'],
      value: 2e-3,
      phaseDegrees: 45,
      dcAmps: 0,
    });
    expect(findElement(deck, 'I2')).toMatchObject({ value: 0, phaseDegrees: 0, dcAmps: 1e-3 });
    expect(findElement(deck, 'kab')).toMatchObject({ kind: 'K', coils: ['L1', 'l2'], value: -0.02 });
    expect(findElement(deck, 'C2')).toMatchObject({ nodes: ['out', '0'], value: 1e-11 });
    expect(findElement(deck, 'gm')).toMatchObject({
      kind: 'G',
      nodes: ['out', '0'],
      control: ['in', '0'],
      value: 5e-3,
    });
    expect(deck.ac).toEqual({ spacing: 'lin', points: 11, fromHz: 1e6, toHz: 2e6 });
    expect(deck.outputs).toEqual(['vdb(out)', 'vp(in,out)', 'v(0)', 'all', 'v(IN)', 'i(l1)']);
  });

  test('a byte order mark before the title and a missing .end do no harm', () => {
    expect(deckOf('\uFEFFtitle\nR1 a 0 1k').title).toBe('title');
  });

  test('places count lines of the text and columns from 1, through continuation', () => {
    const deck = deckOf(text.join('\n'));
    const places = (name: string) => findElement(deck, name)!.places!.map(({ line, column }) => [line, column]);
    expect(places('R1')).toEqual([
      [7, 1],
      [7, 4],
      [7, 7],
      [10, 3],
    ]);
    expect(places('C2')).toEqual([
      [16, 1],
      [16, 4],
      [17, 3],
      [18, 2],
    ]);
  });

  test('a source with AC and no amount is one amp', () => {
    expect(findElement(deckOf('t\nI1 0 a AC\nR1 a 0 1'), 'I1')).toMatchObject({ value: 1, phaseDegrees: 0 });
  });

  test.each(DECK_IDS)('%s reads', (id) => {
    const deck = deckOf(deckText(id));
    expect(deck.elements.length).toBeGreaterThan(10);
    expect(acFrequencies(deck.ac!)).toHaveLength(281);
  });
});

describe('.ac', () => {
  test('lin, dec and oct spacing', () => {
    const hz = (line: string) => [...acFrequencies(deckOf(`t\nR1 a 0 1\n${line}`).ac!)];
    expect(hz('.ac lin 3 1k 2k')).toEqual([1000, 1500, 2000]);
    expect(hz('.ac lin 1 1k 1k')).toEqual([1000]);
    expect(hz('.ac oct 1 1k 8k').map(Math.round)).toEqual([1000, 2000, 4000, 8000]);
    expect(hz('.ac dec 2 1k 100k').map(Math.round)).toEqual([1000, 3162, 10_000, 31_623, 100_000]);
  });

  test.each([
    ['.ac', 'line 3, column 1: 0 words after .ac'],
    ['.ac lin 281 1meg', 'line 3, column 1: 3 words after .ac'],
    ['.ac lin 281 1meg 2meg 3', 'line 3, column 23: 5 words after .ac'],
    ['.ac log 281 1meg 2meg', 'line 3, column 5: `log`'],
    ['.ac lin 2.5 1meg 2meg', 'line 3, column 9: `2.5`'],
    ['.ac lin 281 0 2meg', 'line 3, column 13: `0`'],
    ['.ac lin 281 2meg 1meg', 'line 3, column 18: `1meg`'],
    ['.ac lin 281 1meg 2meg\n.ac lin 2 1 2', 'line 4, column 1: a second .ac line'],
  ])('%s is refused', (line, problem) => {
    expect(problems('R1 a 0 1', line)).toEqual([problem]);
  });
});

describe('outside the subset: an error with line and column', () => {
  test.each([
    ['V1 a 0 1', 'line 3, column 1: `V1`'],
    ['Q1 a b 0 model', 'line 3, column 1: `Q1`'],
    ['X1 a 0 sub', 'line 3, column 1: `X1`'],
    ['E1 a 0 b 0 1', 'line 3, column 1: `E1`'],
    ['.tran 1n 1u', 'line 3, column 1: `.tran`'],
    ['.include other.cir', 'line 3, column 1: `.include`'],
    ['.control', 'line 3, column 1: `.control`'],
    ['.param x=1', 'line 3, column 1: `.param`'],
    ['$ comment', 'line 3, column 1: `$`'],
    ['// comment', 'line 3, column 1: `//`'],
    ['R2 a 0 1k $ comment', 'line 3, column 11: `$`'],
    ['R2 a 0 1k tc=0.1', 'line 3, column 11: `tc=0.1`'],
    ['L2 a 0 1u ic=0', 'line 3, column 11: `ic=0`'],
    ['R2 a 0 {x}', 'line 3, column 8: `{x}`'],
    ['R2 a(1) 0 1k', 'line 3, column 4: `a(1)`'],
    ['R2 a 0', 'line 3, column 6: the end of the line after `0`'],
    ['R2', 'line 3, column 1: the end of the line after `R2`'],
    ['R2 a 0 0', 'line 3, column 8: `0`'],
    ['R2 a 0 -5', 'line 3, column 8: `-5`'],
    ['C2 a 0 1e-30', 'line 3, column 8: `1e-30`'],
    ['L2 a 0 1e400', 'line 3, column 8: `1e400`'],
    ['G2 a 0 a 0 -1m', 'line 3, column 12: `-1m`'],
    ['G2 a 0 a 1m', 'line 3, column 10: the end of the line after `1m`'],
    ['I2 0 a AC -1', 'line 3, column 11: `-1`'],
    ['I2 0 a AC 1 90 5', 'line 3, column 16: `5`'],
    ['I2 0 a SIN(0 1 1k)', 'line 3, column 8: `SIN(0`'],
    ['I2 0 a DC', 'line 3, column 8: the end of the line after `DC`'],
    ['.print tran v(a)', 'line 3, column 8: `tran`'],
    ['.print', 'line 3, column 1: nothing after .print'],
    ['.print ac', 'line 3, column 1: no outputs'],
    ['.print ac i(R9)', 'line 3, column 11: element `R9` in `i(R9)`'],
    ['.print ac i(a,0)', 'line 3, column 11: element `a,0` in `i(a,0)`'],
    ['.print ac w(a)', 'line 3, column 11: `w(a)`'],
    ['.print ac vx(a)', 'line 3, column 11: `vx(a)`'],
    ['.print ac v(nowhere)', 'line 3, column 11: node `nowhere` in `v(nowhere)`'],
    ['.save all b', 'line 3, column 11: `b`'],
    ['.end now', 'line 3, column 6: `now`'],
    ['.end\nR2 a 0 1', 'line 4, column 1: `R2` after .end'],
    ['é1 a 0 1', 'line 3, column 1: `é1`'],
    ['R\u00A0 a 0 1', 'line 3, column 1: `R\u00A0`'],
    ['r1 a 0 2k', 'line 3, column 1: a second element r1'],
  ])('%s', (line, problem) => {
    expect(problems('R1 a 0 1k', line)).toEqual([problem]);
  });

  test('a continuation with nothing before it', () => {
    expect(problems('+ R1 a 0 1k')).toContain('line 2, column 1: `+` with no line before it');
  });

  test('all problems come at once, in order of the text', () => {
    expect(problems('V1 a 0 1', 'R1 a 0 oops', 'K1 L1 L2 0.1', 'L2 b 0 1u', '.tran 1')).toEqual([
      'line 2, column 1: `V1`',
      'line 3, column 8: `oops`',
      'line 6, column 1: `.tran`',
      'line 4, column 4: coil `L1`',
    ]);
  });

  test('a coupling is not blamed for a coil whose own line is wrong', () => {
    expect(problems('L1 a 0 oops', 'L2 b 0 1u', 'K1 L1 L2 0.1', 'R1 a 0 1', 'R2 b 0 1')).toEqual([
      'line 2, column 8: `oops`',
    ]);
  });

  test('not a text', () => {
    for (const value of [undefined, null, 5, {}, []]) expect(readDeck(value, 'x').ok).toBe(false);
  });
});

describe('couplings', () => {
  const coils = ['L1 a 0 1u', 'L2 b 0 1u', 'L3 c 0 1u', 'R1 a 0 1', 'R2 b 0 1', 'R3 c 0 1'];

  test.each([
    [['K1 L1 L9 0.1'], ['line 8, column 7: coil `L9`']],
    [['K1 R1 L2 0.1'], ['line 8, column 4: coil `R1`']],
    [['K1 L1 l1 0.1'], ['line 8, column 7: coil l1 coupled with itself']],
    [['K1 L1 L2 1'], ['line 8, column 10: `1`']],
    [['K1 L1 L2 -1.2'], ['line 8, column 10: `-1.2`']],
    [['K1 L1 L2 L3 0.5'], ['line 8, column 13: `0.5`']],
    [['K1 L1 L2 0.1', 'K2 L2 L1 0.2'], ['line 9, column 1: a second coupling of L2 and L1']],
    [
      ['K1 L1 L2 0.9', 'K2 L2 L3 0.9', 'K3 L1 L3 -0.9'],
      ['line 8, column 1: couplings of L1, L2, L3 that store negative energy'],
    ],
  ])('%j is refused', (lines, expected) => {
    expect(problems(...coils, ...lines)).toEqual(expected);
  });

  test('three close coils that can store only positive energy are taken', () => {
    expect(problems(...coils, 'K1 L1 L2 0.9', 'K2 L2 L3 0.9', 'K3 L1 L3 0.9')).toEqual([]);
  });
});

describe('bounds', () => {
  const many = (count: number, line: (i: number) => string) => Array.from({ length: count }, (_, i) => line(i));

  test('256 elements and 64 nodes are taken, one more of either is not', () => {
    expect(problems(...many(256, (i) => `R${i} n${i % 64} 0 1k`))).toEqual([]);
    expect(problems(...many(257, (i) => `R${i} n${i % 64} 0 1k`))).toEqual([': 257 elements']);
    expect(problems(...many(65, (i) => `R${i} n${i} 0 1k`))).toEqual([': 65 nodes besides ground']);
  });

  test('too long a text, too long a line, too many problems, nothing at all', () => {
    expect(problems('*'.repeat(70_000))).toEqual([': 70006 characters']);
    expect(problems('R1 a 0 1k', `* ${'x'.repeat(1000)}`)).toEqual(['line 3, column 1001: 1002 characters']);
    const found = problems(...many(5000, () => 'x'));
    expect(found).toHaveLength(1001);
    expect(found.at(-1)).toBe(': more problems than are listed');
    expect(problems()).toEqual([': no elements']);
    expect(problems('.end')).toEqual([': no elements']);
  });
});

describe('circuits without a solution name the node', () => {
  test.each([
    [['R1 a 0 1', 'R2 b c 1'], ['line 3, column 1: nodes `b`, `c` with no path to ground']],
    [['R1 a 0 1', 'I2 0 b AC 1'], ['line 3, column 1: node `b` with no path to ground']],
    [['R1 a 0 1', 'G1 a 0 b 0 1m'], ['line 3, column 1: node `b` with no path to ground']],
    [['R1 a 0 1', 'G1 b 0 a 0 1m'], ['line 3, column 1: node `b` with no path to ground']],
    [
      ['L1 a 0 1u', 'L2 b c 1u', 'K1 L1 L2 0.5', 'R1 b c 1'],
      ['line 3, column 1: nodes `b`, `c` with no path to ground'],
    ],
    [['R1 a a 1'], ['line 2, column 1: node `a` with no path to ground']],
    [
      ['R1 a b 1k', 'R2 a 0 1k', 'R3 b 0 1k', 'G1 0 a a 0 1.5m'],
      ['line 2, column 1: node `b`, whose voltage the circuit does not fix'],
    ],
    [['R1 a 0 1k', 'G1 0 a a 0 1m'], ['line 2, column 1: node `a`, whose voltage the circuit does not fix']],
  ])('%j', (lines, expected) => {
    expect(problems(...lines)).toEqual(expected);
  });

  test('a G element that feels and holds a node grounds it', () => {
    expect(problems('I1 0 a AC 1', 'G1 a 0 a 0 1m')).toEqual([]);
  });
});
