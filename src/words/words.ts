/** Every word that people read or hear, in one value: one member for each file of the catalogue. A translation is another value of the same type. */
import * as advice from './en/advice.ts';
import * as bench from './en/bench.ts';
import * as benchFigures from './en/benchFigures.ts';
import * as benchTalk from './en/benchTalk.ts';
import * as course from './en/course.ts';
import * as curve from './en/curve.ts';
import * as endless from './en/endless.ts';
import * as facts from './en/facts.ts';
import * as grading from './en/grading.ts';
import * as numbers from './en/numbers.ts';
import * as parts from './en/parts.ts';
import * as problems from './en/problems.ts';
import * as refusals from './en/refusals.ts';
import * as reportPage from './en/reportPage.ts';
import * as scene from './en/scene.ts';
import * as session from './en/session.ts';
import * as shell from './en/shell.ts';

export const catalogue = {
  advice,
  bench,
  benchFigures,
  benchTalk,
  course,
  curve,
  endless,
  facts,
  grading,
  numbers,
  parts,
  problems,
  refusals,
  reportPage,
  scene,
  session,
  shell,
} as const;

export type Catalogue = typeof catalogue;
