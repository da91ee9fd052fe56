/** How the slugs stood when the run began: what a person counts turns from. Nothing here knows the right place. */
import { useMemo } from 'preact/hooks';
import type { SlugState } from '../../../bench/benchState.ts';
import { initialState } from '../../../bench/setup.ts';
import type { BenchPort } from '../../../present/ports.ts';

export function useStart(port: BenchPort): Readonly<Record<string, SlugState>> {
  return useMemo(() => initialState(port.setup).slugs, [port]);
}
