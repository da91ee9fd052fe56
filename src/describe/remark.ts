/** What the technician says at the bench, as a sentence: what is seen, and why a hand goes where it goes next. */
import { linesOf } from '../grading/lines.ts';
import { lineIsMet } from '../grading/report.ts';
import { SHEET_RULES } from '../grading/rules/sheetRules.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { SpecItem } from '../receiver/specification.ts';
import type { Remark } from '../technician/person/remark.ts';
import type { Words } from '../words/words.ts';
import { partCalled } from './partCalled.ts';
import { lineWords } from './ruleWords.ts';
import { saidOf } from './said.ts';
import { slugName, slugNameFirst } from './slugName.ts';

/** `passes`: the run that it is said at comes to a pass in the end. */
export function remarkSentence(words: Words, receiver: Receiver, remark: Remark, passes: boolean): string {
  const { remarks: say } = words.demonstration;
  const { atMost, frequency, score } = words.format;
  const named = (slug: string): string => slugName(words, receiver, slug);
  const turned = (turns: Extract<Remark, { kind: 'turns' }>['turns']): readonly string[] =>
    turns.map((one) => say.turn(named(one.slug), words.format.turnsLong(one.turns), one.turns > 0));
  switch (remark.kind) {
    case 'safe':
      return say.safe(remark.mains);
    case 'leads':
    case 'stage':
      return say[remark.kind](remark.at);
    case 'bias':
      return say.bias(remark.at, score.volts(remark.volts));
    case 'reads':
      return say.reads[remark.standing](demandSaid(words, receiver, remark.demand));
    case 'turns':
    case 'back':
      return say[remark.kind](turned(remark.turns));
    case 'notch': {
      const { slug, hz, seenHz } = remark;
      const wanted = frequency(hz);
      return seenHz === null
        ? say.notchSought(named(slug), wanted)
        : say.notchSeen(named(slug), wanted, frequency(seenHz));
    }
    case 'beat':
      return say.beat(slugNameFirst(words, receiver, remark.slug), score.offset(remark.offHz), remark.offHz > 0);
    case 'follows':
      return say.follows(remark.slugs.map(named));
    case 'throughCoil':
      return say.throughCoil(slugNameFirst(words, receiver, remark.slug));
    case 'line':
      return say.line(remark.at, score.volts(remark.volts), score.volts(remark.wantedVolts));
    case 'part':
      return say.part(partCalled(words, receiver, remark.part));
    case 'proves':
      return say.proves[remark.proof];
    case 'saw': {
      if (remark.answer === 'again' || remark.answer === 'notLooked') return say.sawNothing;
      const answer = words.finding.answers[remark.answer];
      return remark.figure === null
        ? say.sawOnly(answer)
        : say.saw(answer, `${atMost(remark.figure, 2)} ${words.finding.proofs[remark.proof].unit}`);
    }
    case 'signs':
      return passes ? say.signs : say.signsShort;
    default:
      return say[remark.kind];
  }
}

/** A demand of the sheet with what it reads and what is wanted, to stand at the beginning of a sentence; without the full stop. */
function demandSaid(words: Words, receiver: Receiver, item: SpecItem): string {
  const [draft] = linesOf(SHEET_RULES, { demand: [{ response: receiver.responses[0]!.id, item, cause: null }] });
  if (draft === undefined) throw new Error(`no rule for the demand ${item.id}`);
  const { id, rule, block, measured, low, high, unit, hz = null, toHz = null } = draft;
  const line = { id, rule, block, measured, low, high, unit, hz, toHz, cause: null };
  const whole = { ...line, points: 0, max: 0, subject: null, atSeconds: null };
  const { good, bad } = lineWords(words, rule);
  const told = lineIsMet(whole) ? good : bad;
  const text = typeof told === 'string' ? told : told(saidOf(words, whole, receiver));
  return text.charAt(0).toUpperCase() + text.slice(1);
}
