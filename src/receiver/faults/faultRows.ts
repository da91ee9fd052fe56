/**
 * Every kind of fault, one row each, by what fails (rows/). Faults compose: each edits the deck as the one before left it, in the order of this table. What they make of
 * deck, diodes and lines is checked against a circuit simulator.
 */
import { BENCH_ROWS } from './rows/benchRows.ts';
import { DETECTOR_ROWS } from './rows/detectorRows.ts';
import { JOINT_ROWS } from './rows/jointRows.ts';
import { PART_ROWS } from './rows/partRows.ts';
import { STAGE_ROWS } from './rows/stageRows.ts';

export const FAULT_ROWS = {
  ...PART_ROWS,
  ...JOINT_ROWS,
  ...STAGE_ROWS,
  ...DETECTOR_ROWS,
  ...BENCH_ROWS,
} as const;
