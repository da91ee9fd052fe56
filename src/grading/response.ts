/** The response as it is judged: each demand of the service sheet, measured on the receiver's true curve, and the slug or the part that is to blame. */
import { excessOver } from '../base/limits.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import { evaluateSpecification, type SpecItem, widenSpecification } from '../receiver/specification.ts';
import type { CoreTurns, StatedResponse } from '../receiver/statedResponse.ts';
import { roundMeasured } from './falling.ts';
import type { ScoreLine } from './report.ts';
import type { Subjects } from './rules/rule.ts';

export type { CoreTurns };

/** What the sheet demands of the curve, and how a setting of the slugs answers it. */
export interface SheetJudge {
  demands(coreTurns: CoreTurns, withCauses: boolean): readonly Subjects['demand'][];
}

/** One item of one response. */
interface JudgedItem {
  readonly response: string;
  readonly item: SpecItem;
}

/** What the curves would be with one failed part replaced. */
export interface Mended {
  readonly part: string;
  readonly stated: readonly StatedResponse[];
}

export function createSheetJudge(
  receiver: Receiver,
  stated: readonly StatedResponse[],
  toleranceFactor: number,
  mended: readonly Mended[] = [],
): SheetJudge {
  const sheets = stated.map((one) => ({ one, spec: widenSpecification(one.response.specification, toleranceFactor) }));
  const itemsOf = (list: typeof sheets, coreTurns: CoreTurns): readonly JudgedItem[] =>
    list.flatMap(({ one, spec }) => {
      const { hz, volts } = one.solve(coreTurns);
      const response = one.response.id;
      return evaluateSpecification(spec, hz, volts, null).map((item) => ({ response, item }));
    });
  const itemsAt = (coreTurns: CoreTurns): readonly JudgedItem[] => itemsOf(sheets, coreTurns);
  return {
    demands(coreTurns, withCauses) {
      const items = itemsAt(coreTurns);
      const causes = withCauses ? causesOf(receiver, itemsAt, coreTurns, items) : [];
      const parts = withCauses ? partsToBlame(items, causes) : [];
      return items.map((item, index) => {
        const part = parts[index];
        return { ...item, cause: causes[index]?.cause ?? null, ...(part === undefined ? {} : { part }) };
      });

      function partsToBlame(as: readonly JudgedItem[], slugs: readonly SlugCause[]): readonly (string | undefined)[] {
        const trials = mended.map((m) => ({
          part: m.part,
          items: itemsOf(
            m.stated.map((one) => ({ one, spec: widenSpecification(one.response.specification, toleranceFactor) })),
            coreTurns,
          ),
        }));
        return as.map(({ item }, index) => {
          let best: string | undefined;
          let most = slugs[index]?.mend ?? 0;
          for (const trial of trials) {
            const mend = excessOf(item) - excessOf(trial.items[index]!.item);
            if (mend <= most) continue;
            most = mend;
            best = trial.part;
          }
          if (best !== undefined || slugs[index]?.cause != null || excessOf(item) <= 0) return best;
          // Several parts have failed and none mends the line by itself: the one that moves it most.
          return trials.reduce<{ part?: string; moved: number }>(
            (top, trial) => {
              const moved = Math.abs(excessOf(item) - excessOf(trial.items[index]!.item));
              return moved > top.moved ? { part: trial.part, moved } : top;
            },
            { moved: -1 },
          ).part;
        });
      }
    },
  };
}

/** Offsets below this are as good as none, turns. */
const NO_OFFSET_TURNS = 0.01;

/**
 * For each item, the slug that would mend it most if it alone were put to its nominal place; where none would mend it, the one that would move it most.
 * The whole step is taken, not the slope at the present place: far from nominal the slope may point anywhere.
 */
function causesOf(
  receiver: Receiver,
  itemsAt: (coreTurns: CoreTurns) => readonly JudgedItem[],
  coreTurns: CoreTurns,
  items: readonly JudgedItem[],
): readonly SlugCause[] {
  const trials = receiver.adjusters.flatMap((adjuster) => {
    const nominal = nominalTurns(adjuster);
    const turns = roundMeasured((coreTurns[adjuster.id] ?? nominal) - nominal, 'turns');
    if (Math.abs(turns) < NO_OFFSET_TURNS) return [];
    return [{ slug: adjuster.id, turns, items: itemsAt({ ...coreTurns, [adjuster.id]: nominal }) }];
  });
  return items.map(({ item }, index) => {
    let best: ScoreLine['cause'] = null;
    let bestMend = 0;
    let bestMove = 0;
    for (const { slug, turns, items: after } of trials) {
      const other = after[index]!.item;
      const mend = excessOf(item) - excessOf(other);
      const move = Math.abs(other.measured - item.measured);
      if (mend > bestMend || (bestMend === 0 && mend <= 0 && move > bestMove)) {
        best = { slug, turns };
        bestMend = Math.max(mend, 0);
        bestMove = move;
      }
    }
    return { cause: best, mend: bestMend };
  });
}

/** The slug to blame, and how far it alone would bring the figure back, in its unit. */
interface SlugCause {
  readonly cause: ScoreLine['cause'];
  readonly mend: number;
}

/** How far outside its limits, in its unit. */
function excessOf(item: SpecItem): number {
  return Math.max(excessOver(item, item.measured), 0);
}
