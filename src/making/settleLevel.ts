/** Sets the way in, or the attenuator, so that the design gives the detector what a detector likes: with a source of the deck's own the level, else how much of it comes in. */

import { clamp } from '../base/rounding.ts';
import { CONTROL_ROWS } from '../bench/controls/rows.ts';
import type { Deck } from '../physics/deck.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { sourceVolts } from '../receiver/sourceLevel.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import type { Draft, Json } from './wholeReceiver.ts';

/** Peak, at the node of the detector. */
const WANTED_VOLTS = 0.5;
/** A way in of more than this is a generator by itself, whose level is the attenuator's. */
const GENERATOR_SIEMENS = 1e-3;

export function settleLevel(draft: Draft, receiver: Receiver, deck: Deck): Draft {
  const [response] = receiver.responses;
  const at = receiver.testPoints.findIndex((p) => p.id === response?.setUp.injectAt);
  const inject = receiver.testPoints[at]?.inject;
  if (response === undefined || inject?.kind !== 'deckSource') return draft;
  // Of two diodes the one that counts positive speaks for both.
  const { quantity } = response;
  const node = quantity.kind === 'carrier' ? quantity.node : quantity.plus;
  const carrier = { ...response, quantity: { kind: 'carrier', node } } as const;
  const top = createStatedResponse(receiver, deck, carrier).nominal.volts.reduce((most, v) => Math.max(most, v), 0);
  if (!(top > 0)) return draft;
  const amps = WANTED_VOLTS / top;
  if (inject.siemens < GENERATOR_SIEMENS) {
    const siemens = Number(clamp(amps / sourceVolts(response.setUp.levelDb), 1e-9, 10).toPrecision(3));
    return {
      ...draft,
      testPoints: draft.testPoints.map((p, i) => (i === at ? { ...p, inject: { ...(p.inject as Json), siemens } } : p)),
    };
  }
  const { min, max } = CONTROL_ROWS.levelDb;
  const levelDb = clamp(Math.round(20 * Math.log10(amps / inject.siemens / sourceVolts(0))), min, max);
  const [first, ...rest] = draft.responses;
  return { ...draft, responses: [{ ...first!, setUp: { ...first!.setUp, levelDb } }, ...rest] };
}
