/** A sweep that leaves out a part of the band, which is why no curve of the sheet stands on the tube; and whether what stands there instead is the answer to the source's second harmonic. Pure. */
import { responseById } from '../receiver/responses.ts';
import { lifeOf } from '../scenario/life.ts';
import type { BenchState } from './benchState.ts';
import type { Facts } from './facts.ts';
import type { BenchSetup } from './setup.ts';

/** Everything is joined and on, so that no more than the sweep is wrong before a curve can be looked for. */
export function besideBand(facts: Facts): boolean {
  const joined = facts.powered && facts.rfConnected && facts.yAtSheetPoint && facts.xConnected;
  return joined && facts.sweeping && !facts.spanCovers;
}

/** By the dial: twice what it says the source sweeps meets what the sheet measures, and nothing of that is swept itself. */
export function halfBand(
  { receiver, scenario }: Pick<BenchSetup, 'receiver' | 'scenario'>,
  facts: Facts,
  { controls: { centreHz, spanHz } }: Pick<BenchState, 'controls'>,
): boolean {
  const { fromHz, toHz } = responseById(receiver, facts.response).specification;
  const meets = (times: number): boolean =>
    times * (centreHz - spanHz / 2) < toHz && times * (centreHz + spanHz / 2) > fromHz;
  return lifeOf(scenario).harmonicDb !== null && meets(2) && !meets(1);
}
