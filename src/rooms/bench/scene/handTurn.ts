/** Turning a slug by step, from whichever key, button or wheel it comes, and what the hand meets when it tries. */
import type { BenchState } from '../../../bench/benchState.ts';
import { fits, steelIn } from '../../../bench/tools.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Adjuster } from '../../../receiver/receiver.ts';

export function turnBy(port: BenchPort, slug: string, turns: number): void {
  port.act({ type: 'slugTurned', slug, turns });
}

export type SlugNote = 'cracked' | 'slips' | 'outerStop' | 'innerStop' | 'steelIn' | null;

const AT_STOP_TURNS = 1e-6;

/** What deserves a word beside the magnified slug, the gravest first. */
export function slugNote(state: BenchState, adjuster: Adjuster): SlugNote {
  const slug = state.slugs[adjuster.id];
  if (slug === undefined) return null;
  if (slug.cracked) return 'cracked';
  const inHere = state.toolIn === adjuster.id;
  if (inHere && state.tool !== null && !fits(state.tool, adjuster.head)) return 'slips';
  if (slug.screwTurns <= AT_STOP_TURNS) return 'outerStop';
  if (slug.screwTurns >= adjuster.travelTurns - AT_STOP_TURNS) return 'innerStop';
  return steelIn(state) === adjuster.id ? 'steelIn' : null;
}
