/** What the certifier says, in sentences. */
import type { CertifiedLine, CertifyProblem } from '../../../certify/certificate.ts';
import { partCalled } from '../../../describe/partCalled.ts';
import { FAULT_ROWS } from '../../../receiver/faults/faultRows.ts';
import type { SetParts } from '../../../receiver/individualSet.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';
import type { SpecItemKind } from '../../../receiver/specification.ts';
import type { Words } from '../../../words/words.ts';
import type { Draft } from '../../../workshop/draft.ts';
import { cardFields } from '../../../workshop/faultCards.ts';
import type { NearestChange } from '../../../workshop/nearest.ts';

export function saidReason(words: Words, problem: CertifyProblem, { receiver }: Pick<SetParts, 'receiver'>): string {
  const { reasons, off } = words.workshop.proof;
  switch (problem.code) {
    case 'nominalOutside':
    case 'outOfReach':
      return reasons[problem.code](saidLine(words, problem.line), off(problem.line.excess));
    case 'nothingToSee':
      return reasons.nothingToSee(partCalled(words, receiver, problem.part));
    case 'nothingToDo':
      return reasons.nothingToDo;
    case 'refused': {
      const refusals: Readonly<Record<string, string>> = words.refusals;
      return reasons.refused(refusals[problem.reason] ?? '');
    }
    case 'lineLost': {
      const rules: Readonly<Record<string, { readonly label: unknown }>> = words.rules;
      const label = rules[/^G\d+/.exec(problem.line)?.[0] ?? '']?.label;
      const name = typeof label === 'string' ? label : problem.line;
      return reasons.lineLost(name, words.format.percent(problem.share));
    }
  }
}

/** `the level at 45.75 MHz is 40%` */
function saidLine(words: Words, line: CertifiedLine): string {
  const { workshop: say } = words;
  // Of a sense there is no more or less.
  const amount = line.line.startsWith('polarity:') ? say.senseWrong : amountOf(words, line.measured, line.unit);
  return say.proof.lineIs(kindOf(words, line), placeOf(words, line), amount);
}

/** `level at 45.75 MHz`: short, for a slip */
export const shortLine = (words: Words, line: CertifiedLine): string =>
  `${kindOf(words, line)}, ${placeOf(words, line)}`;

const kindOf = ({ workshop: say }: Words, { line }: CertifiedLine): string =>
  say.lineKinds[line.split(':')[0] as SpecItemKind] ?? line;

/** A line is named by its frequency, or by the level that its width is taken at. */
function placeOf({ format, workshop: say }: Words, { line }: CertifiedLine): string {
  const figure = Number(/:(-?[\d.]+)/.exec(line)?.[1] ?? 0);
  return Math.abs(figure) < 1e3 ? say.decibels(figure) : format.frequency(figure);
}

function amountOf({ workshop: say }: Words, value: number, unit: CertifiedLine['unit']): string {
  return unit === 'ratio' ? say.level(value) : unit === 'db' ? say.decibels(value) : say.hertz(value);
}

export function saidChange(words: Words, change: NearestChange, draft: Draft, set: SetParts): string {
  const { format, workshop: say } = words;
  const { changes } = say.proof;
  switch (change.kind) {
    case 'scatter':
      return changes.scatter(format.turnsLong(change.from), format.turnsLong(change.to));
    case 'slug': {
      const way = change.to > 0 ? 'in' : 'out';
      return changes.slug(letterOf(set.receiver, change.slug), say.turned(format.turnsLong(change.to), way));
    }
    case 'amount': {
      const fault = draft.faults[change.fault]!;
      const field = cardFields(fault, set).find(({ key }) => key === change.key);
      const unit = field?.holds === 'number' ? field.unit : '×';
      const name = say.fields[change.key] ?? change.key;
      return changes.amount(say.faults[fault.kind], name, say.amount(change.from, unit), say.amount(change.to, unit));
    }
    case 'tolerance':
      return changes.tolerance(format.atMost(change.from, 2), format.atMost(change.to, 2));
    case 'set':
      return changes.set(change.from, change.to);
  }
}

export const letterOf = (receiver: Receiver, slug: string): string => slugLetters(receiver).get(slug) ?? slug;

/** Parts that whoever does the job must replace. */
export function partsToReplace({ faults }: Draft, set: SetParts): readonly string[] {
  return faults.flatMap((fault) => {
    const { cure } = FAULT_ROWS[fault.kind];
    return cure.by === 'part' ? [cure.parts(fault as never, set)[0]] : [];
  });
}
