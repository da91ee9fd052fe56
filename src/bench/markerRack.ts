/** The rack's eight sockets and the box of crystals that belongs to the receiver. */
import type { Applied } from './benchEvent.ts';
import type { BenchState } from './benchState.ts';
import { done, refused } from './outcome.ts';
import type { BenchSetup } from './setup.ts';

export const SOCKETS = 8;

export function plugCrystal(setup: BenchSetup, state: BenchState, hz: number): Applied {
  if (!setup.receiver.crystalsHz.includes(hz)) return refused('noSuchCrystal');
  if (state.crystals.includes(hz)) return refused('crystalAlreadyIn');
  if (state.crystals.length >= SOCKETS) return refused('rackFull');
  return done({ ...state, crystals: [...state.crystals, hz] }, { kind: 'crystal' });
}

export function pullCrystal(setup: BenchSetup, state: BenchState, hz: number): Applied {
  if (!setup.receiver.crystalsHz.includes(hz)) return refused('noSuchCrystal');
  if (!state.crystals.includes(hz)) return refused('crystalNotIn');
  return done({ ...state, crystals: state.crystals.filter((c) => c !== hz) }, { kind: 'crystal' });
}
