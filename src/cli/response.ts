/** `response`: a deck's own alternating-current solution at one node, as CSV. */
import { bad, type Result } from '../base/result.ts';
import { buildNetwork } from '../physics/buildNetwork.ts';
import { type AcLine, acFrequencies, type Deck } from '../physics/deck.ts';
import { readDeck } from '../physics/readDeck.ts';
import { createSolver } from '../physics/solver.ts';
import { readSpiceNumber } from '../physics/spiceNumber.ts';
import { readText } from './files.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems, UsageError, worded } from './terminal.ts';

export interface ResponseOptions {
  readonly node: string;
  readonly from?: string;
  readonly to?: string;
  readonly points?: string;
}

const MOST_POINTS = 100_000;
const MOST_HZ = 1e12;
const DIGITS = 12;

export function response(terminal: Terminal, name: string, options: ResponseOptions): ExitCode {
  const asked = {
    fromHz: hertz(terminal, '--from', options.from),
    toHz: hertz(terminal, '--to', options.to),
    points: wholePoints(terminal, options.points),
  };
  const text = readText(terminal, name);
  const deck = text.ok ? readDeck(text.value, name) : text;
  if (!deck.ok) return tellProblems(terminal, deck.problems);
  const table = solveAt(terminal, deck.value, name, options.node, frequencies(terminal, deck.value.ac, asked));
  if (!table.ok) return tellProblems(terminal, table.problems);
  terminal.out(table.value);
  return EXIT.good;
}

function solveAt(terminal: Terminal, deck: Deck, file: string, node: string, hz: Float64Array): Result<string> {
  const network = buildNetwork(deck, file);
  if (!network.ok) return network;
  if (!network.value.nodeNumber.has(node.toLowerCase())) {
    const { files } = terminal.words.cli;
    const [found, wanted] = [files.node(node), files.nodes(network.value.nodeNames)];
    return bad(worded({ file, place: '--node', found, wanted }));
  }
  const solver = createSolver(network.value, hz);
  solver.solve();
  const re = solver.real(node);
  const im = solver.imag(node);
  const lines = ['hz,re,im'];
  for (let i = 0; i < hz.length; i++)
    lines.push([hz[i]!, re[i]!, im[i]!].map((value) => value.toPrecision(DIGITS)).join(','));
  return { ok: true, value: `${lines.join('\n')}\n` };
}

interface Asked {
  readonly fromHz: number | null;
  readonly toHz: number | null;
  readonly points: number | null;
}

function frequencies(terminal: Terminal, ac: AcLine | null, asked: Asked): Float64Array {
  const say = terminal.words.cli.response;
  const { fromHz, toHz, points } = asked;
  if (ac === null && (fromHz === null || toHz === null || points === null)) throw new UsageError(say.noAcLine);
  if (ac !== null && fromHz === null && toHz === null && points === null) {
    const own = acFrequencies(ac);
    if (own.length > MOST_POINTS) throw new UsageError(say.tooManyPoints(own.length, MOST_POINTS));
    return own;
  }
  const grid: AcLine = {
    spacing: 'lin',
    fromHz: fromHz ?? ac!.fromHz,
    toHz: toHz ?? ac!.toHz,
    points: points ?? acFrequencies(ac!).length,
  };
  if (grid.fromHz > grid.toHz) throw new UsageError(say.backwards(grid.fromHz, grid.toHz));
  if (grid.points === 1 && grid.fromHz !== grid.toHz) throw new UsageError(say.onePoint(grid.fromHz, grid.toHz));
  return acFrequencies(grid);
}

function hertz(terminal: Terminal, option: string, text: string | undefined): number | null {
  if (text === undefined) return null;
  const value = readSpiceNumber(text);
  if (value === null || value <= 0 || value > MOST_HZ)
    throw new UsageError(terminal.words.cli.response.badHz(option, text));
  return value;
}

function wholePoints(terminal: Terminal, text: string | undefined): number | null {
  if (text === undefined) return null;
  const value = readSpiceNumber(text);
  if (value === null || !Number.isInteger(value) || value < 1 || value > MOST_POINTS) {
    throw new UsageError(terminal.words.cli.response.badPoints(MOST_POINTS, text));
  }
  return value;
}
