/** A diode on a node of a receiver's deck. */
import type { DiodeLaw } from '../physics/diodeLaw.ts';

export interface PathLoad {
  readonly node: string;
  readonly law: DiodeLaw;
}
