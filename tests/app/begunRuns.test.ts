/** Which open runs lie on the bench. Source: the house's own promises. */
import { expect, it } from 'vitest';
import { begunRuns } from '../../src/app/begunRuns.ts';

it('a run whose briefing was put aside does not lie on the bench; one that was begun does, without a turn too', () => {
  const head = (runId: string, elapsedMs: number) => ({ runId, scenarioId: runId, elapsedMs, turns: 0, savedAtMs: 1 });
  const openRuns = () => [head('put-aside', 0), head('begun', 400)];
  expect(begunRuns({ openRuns }).map(({ runId }) => runId)).toEqual(['begun']);
});
