/** The controls of this bench: the table of rows and what follows from it. */
import { deriveControls } from './derive.ts';
import { CONTROL_ROWS } from './rows.ts';

export const CONTROLS = deriveControls(CONTROL_ROWS);
