/** Changes to a receiver in the making, each as a new draft: names, slugs, test points, how the bench stands. Whatever follows from a change is changed with it. */
import { type Deck, nodeKey } from '../physics/deck.ts';
import { diodeAt, type FmKind, fmDetector, pointOf } from './firstDraft.ts';
import type { Draft, Json } from './wholeReceiver.ts';

type Step = string | number;

/** The draft with another value at a place; undefined takes the key away, so that it is worked out again. */
export function put(draft: Draft, path: readonly Step[], value: unknown): Draft {
  return set(draft, path, value) as Draft;
}

function set(at: unknown, [step, ...rest]: readonly Step[], value: unknown): unknown {
  if (step === undefined) return value;
  if (Array.isArray(at)) return at.map((one, i) => (i === step ? set(one, rest, value) : one));
  const object = (at ?? {}) as Json;
  if (rest.length === 0 && value === undefined) {
    const { [step]: _, ...others } = object;
    return others;
  }
  return { ...object, [step]: set(object[step], rest, value) };
}

/** A slug has one name wherever it is spoken of. */
export function renameSlug(draft: Draft, index: number, id: string): Draft {
  const before = draft.adjusters[index]!.id;
  const renamed = put(draft, ['adjusters', index, 'id'], id);
  const label = draft.adjusters[index]!.label === before ? put(renamed, ['adjusters', index, 'label'], id) : renamed;
  if (!Array.isArray(draft.procedure)) return label;
  const procedure = (draft.procedure as readonly Json[]).map((step) => ({
    ...step,
    slugs: (step.slugs as readonly unknown[]).map((one) => (one === before ? id : one)),
  }));
  return { ...label, procedure };
}

/** A test point likewise: leads, bias and probe go by its name. */
export function renamePoint(draft: Draft, index: number, id: string): Draft {
  const before = draft.testPoints[index]!.id;
  const named = (value: unknown): unknown => (value === before ? id : value);
  const points = draft.testPoints.map((p, i) =>
    i === index ? { ...p, id, ...(p.label === before ? { label: id } : {}) } : p,
  );
  const responses = draft.responses.map((r) => ({
    ...r,
    setUp: {
      ...r.setUp,
      ...{ injectAt: named(r.setUp.injectAt), observeAt: named(r.setUp.observeAt) },
      ...(Array.isArray(r.setUp.biases)
        ? { biases: r.setUp.biases.map((b: Json) => ({ ...b, at: named(b.at) })) }
        : {}),
    },
  }));
  const listOf = (key: string, field: string): Json =>
    Array.isArray(draft[key])
      ? { [key]: (draft[key] as readonly Json[]).map((one) => ({ ...one, [field]: named(one[field]) })) }
      : {};
  const probe = draft.probeInDeck as Json | null | undefined;
  return {
    ...draft,
    ...listOf('biasLines', 'at'),
    ...listOf('stages', 'agc'),
    ...(probe ? { probeInDeck: { ...probe, testPoint: named(probe.testPoint) } } : {}),
    ...(Array.isArray(draft.procedure) && draft.procedure.some((s: Json) => s.at === before)
      ? { procedure: draft.procedure.map((s: Json) => (s.at === before ? { ...s, at: id } : s)) }
      : {}),
    ...{ testPoints: points, responses },
  };
}

/** The steps and the sheet are worked out again, for they speak of what was there. */
export const withoutSheet = (draft: Draft): Draft => {
  const { procedure: _, ...rest } = draft;
  const responses = draft.responses.map(({ specification: __, ...one }, i) => (i === 0 ? one : draft.responses[i]!));
  return { ...rest, responses } as Draft;
};

export function removeSlug(draft: Draft, index: number): Draft {
  return withoutSheet({ ...draft, adjusters: draft.adjusters.filter((_, i) => i !== index) });
}

export function removePoint(draft: Draft, index: number): Draft {
  const { procedure: _, ...rest } = draft;
  return { ...rest, testPoints: draft.testPoints.filter((__, i) => i !== index) } as Draft;
}

/** A name that no other has: T5, TP6. */
export function freshId(given: readonly Json[], letters: string): string {
  const taken = new Set(given.map((one) => String(one.id).toLowerCase()));
  for (let i = 1; ; i++) if (!taken.has(`${letters}${i}`.toLowerCase())) return `${letters}${i}`;
}

/** A line of the sheet's set-up. What the sheet demanded at the old one says nothing of the new one. */
export function putSetUp(draft: Draft, key: string, value: unknown): Draft {
  const [first, ...rest] = draft.responses;
  const setUp: Json = { ...first!.setUp, [key]: value };
  if (key === 'centreHz' || key === 'spanHz') {
    const [centre, span] = [Number(setUp.centreHz), Number(setUp.spanHz)];
    const inside = (first!.setUp.markersHz as readonly number[]).filter((hz) => Math.abs(hz - centre) < span / 2);
    setUp.markersHz = inside.length > 0 ? inside : [centre];
  }
  const { quantity: _, ...others } = first!;
  const kept = key === 'observeAt' ? others : first!;
  const next = { ...draft, responses: [{ ...kept, setUp }, ...rest] } as Draft;
  const sheet = key === 'levelDb' ? next : withoutSheet(next);
  const { crystalsHz: __, ...noCrystals } = sheet;
  return (key === 'markersHz' || setUp.markersHz !== first!.setUp.markersHz ? noCrystals : sheet) as Draft;
}

/** The detector hangs on another node: its own point goes there with it. */
export function moveDetector(draft: Draft, node: string): Draft {
  const detectors = (draft.detectors ?? []) as readonly Json[];
  const [detector] = detectors;
  if (detector === undefined) return draft;
  const testPoints = draft.testPoints.map((p) => (p.detector === detector.id ? { ...p, node } : p));
  const [first, ...rest] = draft.responses;
  const { quantity: _, ...others } = first!;
  return withoutSheet({
    ...draft,
    ...{ detectors: [{ ...detector, node }, ...detectors.slice(1)], testPoints },
    responses: [others as Draft['responses'][number], ...rest],
  });
}

/** Another kind of detector, or other nodes for its diodes: its own test point, what is measured and the sheet follow. */
export function asDetector(draft: Draft, kind: 'envelope' | FmKind, [plus, minus]: readonly [string, string]): Draft {
  const detectors = (draft.detectors ?? []) as readonly Json[];
  const [before] = detectors;
  if (before === undefined) return draft;
  const carrierHz = Number(before.carrierHz);
  const next = kind === 'envelope' ? diodeAt(plus, carrierHz) : fmDetector([plus, minus], kind, carrierHz);
  // Diodes and loads that somebody has written stay with the same kind.
  const detector =
    before.kind === kind ? { ...before, ...(kind === 'envelope' ? { node: plus } : { plus, minus }) } : next;
  const testPoints = draft.testPoints.map((p) => {
    if (p.detector !== before.id) return p;
    const { node: _, tap: __, ...rest } = p;
    return { ...rest, ...(kind === 'envelope' ? { node: plus, detector: detector.id } : pointOf(detector)) };
  });
  const [first, ...rest] = draft.responses;
  const { quantity: _, ...others } = first!;
  return withoutSheet({
    ...draft,
    ...{ detectors: [detector, ...detectors.slice(1)], testPoints },
    responses: [others as Draft['responses'][number], ...rest],
  });
}

/** After a change of the deck: what the file says of values that are the deck's own is worked out again where it no longer agrees. */
export function followDeck(draft: Draft, before: Deck | null, after: Deck): Draft {
  const valueIn = (deck: Deck | null, name: unknown): number | null =>
    deck?.elements.find((e) => e.name.toLowerCase() === String(name).toLowerCase())?.value ?? null;
  const changed = (name: unknown): boolean => valueIn(before, name) !== valueIn(after, name);
  const adjusters = draft.adjusters.map((a) => {
    if (a.nominalHenries === undefined || !changed(a.element)) return a;
    const { nominalHenries: _, minHenries: __, maxHenries: ___, ...rest } = a;
    return rest;
  });
  if (!Array.isArray(draft.stages)) return { ...draft, adjusters };
  const stages = (draft.stages as readonly Json[]).flatMap((s) => {
    const gmSiemens = valueIn(after, s.element);
    return gmSiemens === null ? [] : [{ ...s, gmSiemens }];
  });
  const lacking = after.elements.some(
    (e) => e.kind === 'G' && !stages.some((s: Json) => String(s.element).toLowerCase() === e.name.toLowerCase()),
  );
  const { stages: _, ...rest } = draft;
  return lacking ? ({ ...rest, adjusters } as Draft) : { ...draft, adjusters, stages };
}

export const sameNode = (a: unknown, b: string): boolean => typeof a === 'string' && nodeKey(a) === nodeKey(b);
