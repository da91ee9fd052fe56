/** How the controls send the beam across and up the tube. */
import { lifeOf } from '../scenario/life.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { BenchState, Controls } from './benchState.ts';

interface YBench {
  readonly scenario: Pick<Scenario, 'life'>;
}
interface Bench {
  readonly scenario: Pick<Scenario, 'bench'>;
}

/** 1 with the low frequency at the left, -1 turned round, as far as the switches go (a phase beyond 90 degrees turns it once more). */
export function xSense({ scenario }: Bench, { controls }: Pick<BenchState, 'controls'>): 1 | -1 {
  return controls.mirror === scenario.bench.xSwapped ? 1 : -1;
}

/** How the mirror must stand for the low frequency on this side. */
export function mirrorFor({ scenario }: Bench, lowFrequencyAtLeft: boolean): boolean {
  return scenario.bench.xSwapped === lowFrequencyAtLeft;
}

/** Divisions upwards for a volt at the Y input. */
export function divPerVolt(bench: YBench, controls: Pick<Controls, 'yInvert' | 'yVoltsPerDiv'>): number {
  return divFor(controls.yInvert ? -1 : 1, bench, controls);
}

/** How tall this many volts at the Y input stand. */
export function divFor(volts: number, { scenario }: YBench, { yVoltsPerDiv }: Pick<Controls, 'yVoltsPerDiv'>): number {
  return (volts * (1 + lifeOf(scenario).yGainError)) / yVoltsPerDiv;
}
