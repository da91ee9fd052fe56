/** Whether the sweep of a sheet's own set-up goes slowly enough for its curve: a bench that stands as such a sheet says cannot earn the line for the speed of the sweep. */
import type { Problem } from '../base/result.ts';
import { MOST_SWEEP_LAG, SLOW_SWEEP_DIVISOR } from '../bench/instruments.ts';
import { TRACE_POINTS } from '../bench/moment.ts';
import type { Deck } from '../physics/deck.ts';
import { createGentleSweep } from '../physics/gentleSweep.ts';
import { sweepFrequencies } from '../physics/sweep.ts';
import type { Receiver, SheetResponse } from '../receiver/receiver.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { complaints } from './complaints.ts';

export function checkSweep(receiver: Receiver, deck: Deck, file: string): Problem[] {
  const { problems, complain } = complaints(file);
  receiver.responses.forEach((response, i) => {
    const lag = sweepLag(receiver, deck, response);
    if (lag <= MOST_SWEEP_LAG) return;
    const { spanHz, slowSweep } = response.setUp;
    // Where the curve is narrow beside it the lag grows with the span.
    const calmHz = twoFigures((spanHz * MOST_SWEEP_LAG) / lag);
    complain(
      ['responses', i, 'setUp', 'spanHz'],
      ['sweepLate', spanHz, lag],
      ['calmSweep', calmHz, slowSweep === true],
    );
  });
  return problems;
}

/** How late the sheet's sweep shows the curve of the design, as a share of its width; a video sweep stands on its carrier. */
function sweepLag(receiver: Receiver, deck: Deck, response: SheetResponse): number {
  const { centreHz, spanHz, mainsHz, slowSweep, source } = response.setUp;
  if (source !== 'sweep') return 0;
  const hz = sweepFrequencies(centreHz, spanHz, TRACE_POINTS);
  if (!(hz[0]! > 0)) return 0;
  const stated = createStatedResponse(receiver, deck, response, hz);
  stated.solve({});
  const { quantity } = response;
  const nodes = quantity.kind === 'carrier' ? [quantity.node] : [quantity.plus, quantity.minus];
  const gentle = createGentleSweep(TRACE_POINTS);
  const sweepHz = slowSweep === true ? mainsHz / SLOW_SWEEP_DIVISOR : mainsHz;
  return Math.max(
    ...nodes.map((node) => gentle.lag(stated.path.real(node), stated.path.imag(node), hz, spanHz, sweepHz)),
  );
}

/** Rounded down, so that what is asked for holds. */
function twoFigures(hz: number): number {
  const unit = 10 ** (Math.floor(Math.log10(hz)) - 1);
  return Math.floor(hz / unit) * unit;
}
