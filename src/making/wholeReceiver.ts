/** A receiver file made whole: what it leaves out is taken from its deck, or is what most sets have. Keys that it does have stay as they are. */
import type { Deck } from '../physics/deck.ts';
import { findElement, nodeKey } from '../physics/deck.ts';
import { SLUG_LETTERS } from '../receiver/slugLetters.ts';
import type { Words } from '../words/words.ts';

export type Json = Record<string, unknown>;
export type MakerWords = Words['maker'];

/** Least and most of the coil with the core at its stops, and the turns between: 1/32 turn is then about a thousandth of the inductance. */
const LEAST_SHARE = 0.82;
const MOST_SHARE = 1.22;
const TRAVEL_TURNS = 20;
const BACKLASH_TURNS = 0.012;
/** Half of the peak volts at which a small stage limits. */
const SATURATION_VOLTS = 1.25;
const LEVEL_DB = -20;
/** Columns of cans on the plan, their distance, and the left edge with its test points, plan units. */
const COLUMNS = 4;
const CAN_STEP = 84;
const POINT_STEP = 32;
const PLAN = { width: 420, height: 384, margin: 60 };

export interface Draft extends Json {
  readonly adjusters: readonly Json[];
  readonly testPoints: readonly Json[];
  readonly responses: readonly (Json & { readonly setUp: Json })[];
}

export function wholeReceiver(
  draft: Draft,
  deck: Deck,
  names: { readonly id: string; readonly deck: string },
  say: MakerWords,
): Json {
  const adjusters = draft.adjusters.map((one, i) => adjuster(one, i, deck, say));
  const given = draft.testPoints.some((p) => p.role === 'earth') ? draft.testPoints : [...draft.testPoints, EARTH];
  const testPoints = given.map((one, i) => testPoint(one, i, say));
  const responses = draft.responses.map((one) => response(one, testPoints, draft, deck, say));
  const markers = responses.flatMap(({ setUp }) => (setUp as Json).markersHz as readonly number[]);
  const rows = Math.ceil(adjusters.length / COLUMNS);
  const height = Math.max(PLAN.height, PLAN.margin * 2 + rows * CAN_STEP, PLAN.margin + testPoints.length * POINT_STEP);
  const whole = {
    format: 'haystack-receiver',
    version: 1,
    id: names.id,
    setName: names.id,
    title: deck.title.replace(/^\*\s*/, '').slice(0, 100) || names.id,
    description: say.description,
    deck: names.deck,
    mains: null,
    ...{ adjusters: [], testPoints: [] },
    probeInDeck: null,
    stages: deck.elements.flatMap((e) => (e.kind === 'G' ? [stage(e.name, e.value, say)] : [])),
    biasLines: [],
    detectors: [],
    converter: null,
    videoFeed: null,
    crystalsHz: [...new Set(markers)].sort((a, b) => a - b),
    ...{ responses: [], procedure: [] },
    cautions: [...say.cautions],
    plan: { width: PLAN.width, height, hot: null, parts: [], path: [] },
    ...draft,
  };
  const made = { ...whole, adjusters, testPoints, responses };
  return draft.procedure === undefined ? { ...made, procedure: procedure(made, say, '') } : made;
}

const EARTH: Json = { id: 'Earth', role: 'earth' };

function adjuster(given: Json, i: number, deck: Deck, say: MakerWords): Json {
  const henries = findElement(deck, String(given.element))?.value ?? 0;
  const nominal = typeof given.nominalHenries === 'number' ? given.nominalHenries : henries;
  const at = { x: 140 + CAN_STEP * (i % COLUMNS), y: PLAN.margin + CAN_STEP * Math.floor(i / COLUMNS) };
  const rounded = (share: number): number => Number((nominal * share).toPrecision(6));
  return {
    id: given.id,
    label: given.id,
    kind: typeof given.trapHz === 'number' ? 'trap' : 'slug',
    element: given.element,
    ganged: [],
    nominalHenries: nominal,
    minHenries: rounded(LEAST_SHARE),
    maxHenries: rounded(MOST_SHARE),
    travelTurns: TRAVEL_TURNS,
    backlashTurns: BACKLASH_TURNS,
    head: 'hex',
    trapHz: null,
    does: say.does,
    plan: { ...at, can: given.id, shape: typeof given.trapHz === 'number' ? 'trap' : 'can', hole: 'top' },
    ...given,
  };
}

function testPoint(given: Json, i: number, say: MakerWords): Json {
  return {
    id: given.id,
    label: given.id,
    node: null,
    role: given.detector === undefined ? 'signal' : 'detector',
    inject: null,
    detector: null,
    dcVolts: 0,
    note: say.note,
    plan: { x: 40, y: PLAN.margin / 2 + POINT_STEP * i },
    ...given,
  };
}

function stage(element: string, gmSiemens: number, say: MakerWords): Json {
  const plain = { limiter: false, agc: null, inputCapacitor: null, inputResistor: null };
  return { element, device: say.device, gmSiemens, saturationVolts: SATURATION_VOLTS, ...plain };
}

/** The node that the last stage is driven from: a limiter holds it constant. Without a stage the way in. */
function drivenNode(deck: Deck, points: readonly Json[], injectAt: unknown): string {
  const last = deck.elements.filter((e) => e.kind === 'G').at(-1);
  const driven = last?.control.find((node) => nodeKey(node) !== '0');
  return driven ?? String(points.find((p) => p.id === injectAt)?.node ?? '');
}

function response(
  given: Draft['responses'][number],
  points: readonly Json[],
  draft: Draft,
  deck: Deck,
  say: MakerWords,
): Json {
  const { setUp } = given;
  const observed = points.find((p) => p.id === setUp.observeAt);
  const detectors = (Array.isArray(draft.detectors) ? draft.detectors : []) as readonly Json[];
  const detector = detectors.find((d) => d.id === observed?.detector);
  const quantity =
    detector !== undefined && detector.kind !== 'envelope'
      ? {
          kind: 'difference',
          plus: detector.plus,
          minus: detector.minus,
          per: drivenNode(deck, points, setUp.injectAt),
        }
      : { kind: 'carrier', node: observed?.node ?? detector?.node ?? '' };
  return {
    id: given.id,
    title: say.response,
    quantity,
    ...given,
    setUp: {
      ...{ centreHz: 0, spanHz: 0, mainsHz: 50, injectAt: '', observeAt: '' },
      observeWith: observed?.role === 'detector' ? 'detectorLead' : 'probe',
      levelDb: LEVEL_DB,
      biases: [],
      source: 'sweep',
      carrierHz: null,
      lowFrequencyAtLeft: true,
      markersHz: [setUp.centreHz],
      ...setUp,
    },
  };
}

/** `level`: what the sheet says of the level, once the design has been solved. */
export function procedure(
  { adjusters, responses }: { readonly adjusters: readonly Json[]; readonly responses: readonly Json[] },
  say: MakerWords,
  level: string,
): Json[] {
  const [first] = responses;
  const setUp = first!.setUp as Record<string, never>;
  const { centreHz, spanHz, injectAt, observeAt, observeWith, markersHz } = setUp;
  const biases = (setUp.biases ?? []) as readonly { readonly at: string; readonly volts: number }[];
  const letters = adjusters.map((_, i) => SLUG_LETTERS[i] ?? '');
  const ids = adjusters.map((a) => a.id);
  const step = (phase: string, text: string, slugs: readonly unknown[] = [], parts?: readonly string[]): Json => ({
    ...{ phase, text },
    ...(parts === undefined ? {} : { parts }),
    slugs,
  });
  const turned = adjusters.map((a, i) =>
    a.kind === 'trap' && typeof a.trapHz === 'number'
      ? step('align', say.trap(letters[i]!, a.trapHz), [a.id])
      : step('align', say.slug(letters[i]!), [a.id]),
  );
  return [
    step('safe', say.safe),
    step('connect', say.connect(injectAt!, observeAt!, observeWith === 'probe')),
    step(
      'setUp',
      `${say.sweep(centreHz!, spanHz!, setUp.slowSweep === true)} ${level}`.trim(),
      [],
      ['sweep', 'level', 'trace'],
    ),
    ...biases.map((b) => step('setUp', say.bias(b.at, b.volts), [], ['bias'])),
    step('setUp', say.phasing, [], ['phasing', 'blanking']),
    step('setUp', say.markers(markersHz ?? []), [], ['markers']),
    // A sheet has room for so many steps only.
    ...(turned.length <= 14 ? turned : [step('align', say.slugs(letters), ids)]),
    step('prove', say.prove),
  ];
}
