/** What a bench is made of, and how it stands before the first act. */

import type { Engine } from '../base/engine.ts';
import { seededRandom } from '../base/random.ts';
import { clamp } from '../base/rounding.ts';
import type { Deck } from '../physics/deck.ts';
import { faultMarks } from '../receiver/faults/faultEffects.ts';
import type { SetParts } from '../receiver/individualSet.ts';
import type { Receiver, SheetResponse } from '../receiver/receiver.ts';
import { workResponses } from '../receiver/responses.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type BenchState, type Controls, LEAD_IDS, type LeadId, NO_PROOFS, type SlugState } from './benchState.ts';
import { CONTROLS } from './controls/controls.ts';
import { STONE_COLD } from './heat.ts';
import { sheetFittings, sheetLeads } from './sheetSetUp.ts';

export interface BenchSetup {
  /** what stands on the bench */
  readonly receiver: Receiver;
  readonly deck: Deck;
  readonly scenario: Scenario;
  /** the design that the sheet was printed from; left out: `receiver` and `deck` are it */
  readonly design?: SetParts;
  /** which draw of the scenario's seed the set is, where it is not the design itself */
  readonly draw?: number;
  /** whose bench it is; left out: today's. A run is done again on the bench that it names */
  readonly engine?: Engine;
}

/** What the printed sheet is about. */
export function designOf({ receiver, deck, design }: Pick<BenchSetup, 'receiver' | 'deck' | 'design'>): SetParts {
  return design ?? { receiver, deck };
}

/** How the bench is left by whoever used it last: nothing is set for any receiver. */
export const RESTING_CONTROLS: Controls = CONTROLS.resting;

const NO_LEADS = Object.fromEntries(LEAD_IDS.map((lead) => [lead, null])) as Readonly<Record<LeadId, null>>;

export function initialState(setup: BenchSetup): BenchState {
  const { receiver, scenario } = setup;
  const safe = scenario.start.prepared.includes('safe');
  const connected = scenario.start.prepared.includes('connect');
  const leads = { ...(connected ? sheetLeads(receiver, firstResponse(setup)) : NO_LEADS), ...scenario.start.leads };
  return {
    seconds: 0,
    cautionsAcknowledged: safe,
    isolated: safe && receiver.mains !== null,
    powered: safe || receiver.mains === null,
    heat: STONE_COLD,
    // The parser has held each end against what the lead may be put on.
    leads,
    rfHasBeenOn: leads.rf !== null,
    controls: startingControls(setup),
    crystals: [],
    slugs: startingSlugs(setup),
    tool: scenario.start.steelIn === undefined ? null : 'steel',
    toolIn: scenario.start.steelIn ?? null,
    replaced: [],
    bridged: null,
    incidents: [],
    proofs: NO_PROOFS,
    turnsMade: 0,
    lastSlugTurnSeconds: null,
    hintsTaken: 0,
    helped: false,
    asFound: {},
    diagnosis: null,
    signedOff: false,
    stopped: null,
  };
}

/** The response that the job begins with: whoever prepared the bench put the leads on for it. */
export function firstResponse({ receiver, scenario }: BenchSetup): SheetResponse {
  const [first] = workResponses(receiver, scenario);
  if (first === undefined) throw new Error(`${scenario.id}: a scenario about no response`);
  return first;
}

function startingControls(setup: BenchSetup): Controls {
  const { scenario } = setup;
  const lead = scenario.start.prepared.includes('connect') ? sheetFittings(firstResponse(setup).setUp) : {};
  // The scenario's parser has held each value against controlRange.
  return { ...RESTING_CONTROLS, ...lead, ...(scenario.start.controls as Partial<Controls>) };
}

/** How far from the inner stop they were left by somebody who screwed them all in. */
const SCREWED_IN_TURNS = 1;

function startingSlugs({ receiver, deck, scenario }: BenchSetup): Record<string, SlugState> {
  const chance = seededRandom(scenario.seed);
  const marks = faultMarks(scenario.faults, { receiver, deck });
  const allIn = marks.some((mark) => mark.kind === 'screwedIn');
  const slugs: Record<string, SlugState> = {};
  for (const adjuster of receiver.adjusters) {
    // Drawn for every slug, so that naming one in a scenario does not move the others.
    const scatter = (2 * chance() - 1) * scenario.start.randomTurns;
    const away = Object.hasOwn(scenario.start.slugs, adjuster.id) ? (scenario.start.slugs[adjuster.id] ?? 0) : scatter;
    const named = Object.hasOwn(scenario.start.slugs, adjuster.id);
    const turns =
      allIn && !named
        ? adjuster.travelTurns - SCREWED_IN_TURNS
        : clamp(nominalTurns(adjuster) + away, 0, adjuster.travelTurns);
    const cracked = marks.some((mark) => mark.kind === 'stuckCore' && mark.slug === adjuster.id);
    slugs[adjuster.id] = { screwTurns: turns, coreTurns: turns, cracked, forcedTurns: 0, wear: 0 };
  }
  return slugs;
}
