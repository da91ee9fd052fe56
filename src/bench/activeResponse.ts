/** The response of the sheet that the bench is set up for, or comes nearest to: what the facts, the session and the open page of the sheet are about. */
import type { SheetResponse } from '../receiver/receiver.ts';
import { workResponses } from '../receiver/responses.ts';
import type { BenchState } from './benchState.ts';
import type { BenchSetup } from './setup.ts';

/** Of the scenario's responses the one that fits best; where two fit alike, the earlier on the sheet. */
export function activeResponse({ receiver, scenario }: BenchSetup, state: BenchState): SheetResponse {
  let best: SheetResponse | null = null;
  let most = -1;
  for (const response of workResponses(receiver, scenario)) {
    const fit = fitOf(response, state);
    if (fit > most) {
      most = fit;
      best = response;
    }
  }
  if (best === null) throw new Error(`${scenario.id}: a scenario about no response`);
  return best;
}

/** The Y lead counts most, then the RF lead, then the source; the level only decides between two that are otherwise alike. */
function fitOf({ setUp }: SheetResponse, { leads, controls }: BenchState): number {
  const video = controls.sourceMode === 'video';
  const centred = Math.abs(controls.centreHz - setUp.centreHz) <= setUp.spanHz / 4;
  return (
    (leads.y === setUp.observeAt ? 16 : 0) +
    (leads.rf === setUp.injectAt ? 8 : 0) +
    (video === (setUp.source === 'video') ? 4 : 0) +
    (centred ? 2 : 0) +
    (Math.abs(controls.levelDb - setUp.levelDb) <= 10 ? 1 : 0)
  );
}
