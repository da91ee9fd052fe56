/** Words of the panel that shows what the chosen slug moves. */
import { format } from './numbers.ts';

const { frequency, percent } = format;

/** Levels over the top of the curve as it is; null: the slug comes to its stop before. */
interface Levels {
  readonly now: number;
  readonly in: number | null;
  readonly out: number | null;
}

export const slugPartWords = {
  /** title of the panel while it is in front */
  title: (letter: string): string => `What ${letter} moves`,
  untitled: 'What a slug moves',
  /** its tab */
  side: 'Effect',
  turnIn: 'a turn in',
  now: 'now',
  turnOut: 'a turn out',
  choose: 'Choose a slug to see which part of the curve it moves.',
  nothing: (letter: string): string => `Slug ${letter} does not move this curve as the set stands.`,
  spoken: (letter: string, fromHz: number, toHz: number, mostHz: number, levels: Levels): string => {
    const where = fromHz === toHz ? `at ${frequency(fromHz)}` : `from ${frequency(fromHz)} to ${frequency(toHz)}`;
    const turned = [
      ...(levels.in === null ? [] : [`a turn in brings it to ${percent(levels.in)}`]),
      ...(levels.out === null ? [] : [`a turn out to ${percent(levels.out)}`]),
    ];
    return `Slug ${letter} moves the curve ${where}. At ${frequency(mostHz)} it stands at ${percent(levels.now)} of the top; ${turned.join(', ')}.`;
  },
} as const;
