/** Where in a JSON text the places stand that problems speak of: line and column of the value, or of the key where the key is what is wrong. */
import type { Problem, TextPlace } from '../base/result.ts';
import { pointer } from './schemaProblems.ts';

interface Spot {
  readonly key: number;
  readonly value: number;
}

const SPACE = /[ \t\r\n]*/y;
const STRING = /"(?:[^"\\]|\\[\s\S])*"/y;
const PLAIN = /[^,\]}\s]*/y;

/** The problems of `file`, each with its line and column. `text` is the file's own, and JSON; a text that breaks off keeps the problems as they are. */
export function withTextPlaces(problems: readonly Problem[], file: string, text: string): Problem[] {
  const placed = (p: Problem): boolean => p.file === file && p.at === undefined && p.place.startsWith('/');
  if (!problems.some(placed)) return [...problems];
  const spots = spotsIn(text, new Set(problems.filter(placed).flatMap(({ place }) => withParents(place))));
  const lineOf = linesOf(text);
  const said = problems.map((problem) => {
    if (!placed(problem)) return problem;
    const spot = spots.get(problem.place);
    if (spot !== undefined) {
      const [found] = problem.found;
      return { ...problem, at: lineOf(found === 'key' || found === 'keyTwice' ? spot.key : spot.value) };
    }
    // What is missing is shown at the nearest thing that is there.
    for (let above = parentOf(problem.place); ; above = parentOf(above)) {
      const near = spots.get(above);
      if (near !== undefined) return { ...problem, at: lineOf(near.value) };
      if (above === '') return problem;
    }
  });
  return inOrderOfText(said, file);
}

/** Those of the file in the order of its lines; the others stay where they stand. */
function inOrderOfText(problems: readonly Problem[], file: string): Problem[] {
  const own = problems.filter((p) => p.file === file && p.at !== undefined);
  own.sort((a, b) => a.at!.line - b.at!.line || a.at!.column - b.at!.column);
  return problems.map((p) => (p.file === file && p.at !== undefined ? own.shift()! : p));
}

/** The place and all that it stands in. */
function withParents(place: string): string[] {
  return place === '' ? [] : [place, ...withParents(parentOf(place))];
}

const parentOf = (place: string): string => place.slice(0, Math.max(0, place.lastIndexOf('/')));

/** The places that are wanted, by their JSON pointers; of a key that stands twice the first. */
function spotsIn(text: string, wanted: ReadonlySet<string>): ReadonlyMap<string, Spot> {
  const spots = new Map<string, Spot>();
  // How many places are still looked for inside each thing: a list of which none is left is passed over, and when there is none at all the rest of the text is not looked at.
  const left = new Map<string, number>();
  for (const place of wanted) left.set(parentOf(place), (left.get(parentOf(place)) ?? 0) + 1);
  let missing = wanted.size;
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const skip = (pattern: RegExp): string => {
    pattern.lastIndex = at;
    const [match = ''] = pattern.exec(text) ?? [];
    at += match.length;
    return match;
  };
  const members = (above: string | null, close: string, keyed: boolean): void => {
    at++;
    for (let index = 0; at < text.length; index++) {
      skip(SPACE);
      if (text[at] === close) break;
      const key = at;
      let step: string | number = index;
      if (keyed) {
        const name = skip(STRING);
        if (name === '') return;
        step = JSON.parse(name) as string;
        skip(SPACE);
        at++;
        skip(SPACE);
      }
      // What no problem speaks of is passed over.
      const here = above === null || (left.get(above) ?? 0) === 0 ? null : `${above}${pointer([step])}`;
      const asked = here !== null && wanted.has(here) ? here : null;
      if (asked !== null && !spots.has(asked)) {
        spots.set(asked, { key, value: at });
        left.set(above!, left.get(above!)! - 1);
        if (--missing === 0) at = text.length;
      }
      const before = at;
      value(asked);
      if (at === before) return;
      skip(SPACE);
      if (text[at] === ',') at++;
    }
    at++;
  };
  const value = (here: string | null): void => {
    skip(SPACE);
    if (text[at] === '{') members(here, '}', true);
    else if (text[at] === '[') members(here, ']', false);
    else if (text[at] === '"') skip(STRING);
    else skip(PLAIN);
  };
  skip(SPACE);
  spots.set('', { key: at, value: at });
  value('');
  return spots;
}

function linesOf(text: string): (at: number) => TextPlace {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (at) => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (starts[middle]! <= at) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: at - starts[low]! + 1 };
  };
}
