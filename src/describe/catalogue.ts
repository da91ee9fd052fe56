/** Every word that people read or hear, in one value: one member for each file of the catalogue. A translation is another value of the same type. */
import * as advice from './catalogue/advice.ts';
import * as bench from './catalogue/bench.ts';
import * as benchFigures from './catalogue/benchFigures.ts';
import * as benchTalk from './catalogue/benchTalk.ts';
import * as course from './catalogue/course.ts';
import * as curve from './catalogue/curve.ts';
import * as endless from './catalogue/endless.ts';
import * as facts from './catalogue/facts.ts';
import * as grading from './catalogue/grading.ts';
import * as parts from './catalogue/parts.ts';
import * as problems from './catalogue/problems.ts';
import * as refusals from './catalogue/refusals.ts';
import * as reportPage from './catalogue/reportPage.ts';
import * as scene from './catalogue/scene.ts';
import * as session from './catalogue/session.ts';
import * as shell from './catalogue/shell.ts';

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
  parts,
  problems,
  refusals,
  reportPage,
  scene,
  session,
  shell,
} as const;

export type Catalogue = typeof catalogue;
