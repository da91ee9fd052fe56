/** Figures of the course in people's form. */
import { courseWords as words } from '../../words/en/course.ts';

export const turnsText = (turns: number): string => words.turns(turns);
export const parText = (par: { readonly turns: number; readonly seconds: number }): string =>
  words.par(words.turns(par.turns), words.minutes(par.seconds));
