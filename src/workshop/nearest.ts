/**
 * Where a draft cannot be certified: the smallest change of one figure of it that can. Which figure, the certifier's reason says; sizes are tried from the smallest on.
 * Each idea is certified on the spot first, and the first that passes once more in full.
 */
import { benchSetup } from '../certify/benchSetup.ts';
import type { Certificate, CertifyProblem } from '../certify/certificate.ts';
import { type CertifyOptions, certifyScenario } from '../certify/certifyScenario.ts';
import { checkScenario } from '../files/checkScenario.ts';
import { FAULT_ROWS } from '../receiver/faults/faultRows.ts';
import type { SetParts } from '../receiver/individualSet.ts';
import { type Draft, withFault, withScatter, withSet, withSlug } from './draft.ts';
import { withField } from './faultCards.ts';

export type NearestChange =
  | { readonly kind: 'scatter'; readonly from: number; readonly to: number }
  | { readonly kind: 'slug'; readonly slug: string; readonly from: number; readonly to: number }
  | {
      readonly kind: 'amount';
      /** place in the list of faults */
      readonly fault: number;
      readonly key: string;
      readonly from: number;
      readonly to: number;
    }
  | { readonly kind: 'tolerance'; readonly from: number; readonly to: number }
  | { readonly kind: 'set'; readonly from: number; readonly to: number };

export interface Idea {
  readonly change: NearestChange;
  readonly draft: Draft;
}

export interface Nearest extends Idea {
  readonly certificate: Certificate;
}

const SLUG_STEPS = [0.25, 0.375, 0.5, 0.75, 1, 1.5, 2] as const;
/** Times a figure, the nearest first. */
const RATIOS = [1.2, 1.5, 2, 3, 5, 10, 30, 100] as const;
const TOLERANCES = [1.1, 1.25, 1.5, 2, 3, 5] as const;
const MOST_SETS = 6;
const DIGITS = 3;

/** In the order in which they are tried; none where no figure of the draft has to do with the reason. */
export function ideas(draft: Draft, problems: readonly CertifyProblem[], { receiver }: SetParts): readonly Idea[] {
  const codes = new Set(problems.map(({ code }) => code));
  const all: Idea[] = [];
  if (codes.has('nothingToDo'))
    all.push(
      ...furtherOff(
        draft,
        receiver.adjusters.map(({ id }) => id),
      ),
    );
  if (codes.has('nothingToSee')) all.push(...worseFaults(draft));
  if (codes.has('outOfReach') || codes.has('nominalOutside')) all.push(...otherSets(draft), ...wider(draft));
  return all;
}

function furtherOff(draft: Draft, slugs: readonly string[]): readonly Idea[] {
  const { randomTurns, slugs: named } = draft.start;
  if (randomTurns > 0)
    return SLUG_STEPS.map((more): Idea => {
      const to = randomTurns + more;
      return { change: { kind: 'scatter', from: randomTurns, to }, draft: withScatter(draft, to) };
    });
  const furthest = Object.entries(named).sort(([, a], [, b]) => Math.abs(b) - Math.abs(a))[0];
  const [slug, from] = furthest ?? [slugs[0] ?? '', 0];
  return SLUG_STEPS.map((more): Idea => {
    const to = from < 0 ? from - more : from + more;
    return { change: { kind: 'slug', slug, from, to }, draft: withSlug(draft, slug, to) };
  });
}

/** Each figure of each fault either way: which way is worse, the circuit says. */
function worseFaults(draft: Draft): readonly Idea[] {
  return RATIOS.flatMap((ratio) =>
    draft.faults.flatMap((fault, at) =>
      Object.entries(FAULT_ROWS[fault.kind].fields).flatMap(([key, field]) => {
        if (field.holds !== 'number') return [];
        const { [key]: from } = fault as unknown as Readonly<Record<string, number>>;
        return [from! * ratio, from! / ratio].flatMap((size): readonly Idea[] => {
          const to = Number(size.toPrecision(DIGITS));
          if (to < field.least || to > field.most || to === from) return [];
          const changed = withFault(draft, at, withField(fault, key, to));
          return [{ change: { kind: 'amount', fault: at, key, from: from!, to }, draft: changed }];
        });
      }),
    ),
  );
}

function otherSets(draft: Draft): readonly Idea[] {
  const { set } = draft;
  if (set === undefined) return [];
  return Array.from({ length: MOST_SETS }, (_, i): Idea => {
    const to = set + i + 1;
    return { change: { kind: 'set', from: set, to }, draft: withSet(draft, to) };
  });
}

function wider(draft: Draft): readonly Idea[] {
  const from = draft.toleranceFactor;
  return TOLERANCES.filter((to) => to > from).map((to) => ({
    change: { kind: 'tolerance', from, to },
    draft: { ...draft, toleranceFactor: to },
  }));
}

/** null: none of them. `onShare` hears how much has been tried. */
export function nearestThatCertifies(
  draft: Draft,
  problems: readonly CertifyProblem[],
  design: SetParts,
  onShare: (share: number) => void = () => {},
): Nearest | null {
  const all = ideas(draft, problems, design);
  for (const [i, idea] of all.entries()) {
    onShare(i / all.length);
    if (certified(idea.draft, design, { spot: true }) === null) continue;
    const certificate = certified(idea.draft, design, {});
    if (certificate !== null) return { ...idea, certificate };
  }
  return null;
}

function certified(draft: Draft, design: SetParts, options: CertifyOptions): Certificate | null {
  if (checkScenario(draft, design).length > 0) return null;
  const setup = benchSetup(design, draft);
  if (!setup.ok) return null;
  const outcome = certifyScenario(setup.value, options);
  return outcome.ok ? outcome.certificate : null;
}
