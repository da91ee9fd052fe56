/**
 * Whether the design of a scenario's receiver meets the lines that the scenario judges, inside the tolerances that it leaves: no slug of a learner could bring a line in that the
 * design itself misses. It takes solving the circuit, so it is for whoever checks a file.
 */
import { isInside } from '../base/limits.ts';
import type { Problem } from '../base/result.ts';
import type { Deck } from '../physics/deck.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { workResponses } from '../receiver/responses.ts';
import { evaluateSpecification, widenSpecification } from '../receiver/specification.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { MEASURED_UNITS } from './checkDesign.ts';
import { complaints } from './complaints.ts';

export function checkTolerance(
  scenario: Pick<Scenario, 'toleranceFactor' | 'responses'>,
  { receiver, deck }: { readonly receiver: Receiver; readonly deck: Deck },
  file: string,
): Problem[] {
  const { problems, complain } = complaints(file);
  for (const response of workResponses(receiver, scenario)) {
    const { hz, nominal } = createStatedResponse(receiver, deck, response);
    const judged = widenSpecification(response.specification, scenario.toleranceFactor);
    for (const item of evaluateSpecification(judged, hz, nominal.volts, null)) {
      if (isInside(item, item.measured)) continue;
      const unit = MEASURED_UNITS[item.unit];
      complain(
        ['toleranceFactor'],
        ['designGives', item.kind, item.hz, item.toHz, item.measured, unit],
        ['designMeets', item.low, item.high, unit],
      );
    }
  }
  return problems;
}
