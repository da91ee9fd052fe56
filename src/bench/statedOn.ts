/** Circuits measured as the sheet says, on the bench of a run: with the probe as its engine has it. */
import type { Deck } from '../physics/deck.ts';
import type { Receiver, SheetResponse } from '../receiver/receiver.ts';
import { createStatedResponse, type StatedResponse } from '../receiver/statedResponse.ts';
import { modelOf } from './benchModel.ts';
import type { BenchSetup } from './setup.ts';

/** `receiver`, `deck`: what stands on the bench, which may be another set than the run's own. */
export function statedOn(
  engine: BenchSetup['engine'],
  { receiver, deck }: { readonly receiver: Receiver; readonly deck: Deck },
  response: SheetResponse,
): StatedResponse {
  return createStatedResponse(receiver, deck, response, undefined, modelOf(engine).probePulses);
}
