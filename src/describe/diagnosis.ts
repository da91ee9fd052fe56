/** The diagnosis of a run in sentences: what was said, what was so, and in what the two differ. */
import type { JudgedDiagnosis } from '../grading/judgedDiagnosis.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { SET_UP_MATTERS, type SetUpMatter } from '../scenario/diagnosis.ts';
import type { Words } from '../words/words.ts';
import { partCalled } from './partCalled.ts';
import { slugName } from './slugName.ts';

export interface DiagnosisTold {
  readonly said: string;
  readonly was: string;
  /** empty: all was named, and nothing else */
  readonly differs: readonly string[];
}

export function diagnosisTold(words: Words, judged: JudgedDiagnosis, receiver: Receiver): DiagnosisTold {
  const { diagnosis, format } = words;
  const { report: say, matters } = diagnosis;
  const { stated, asFound } = judged;
  const called = (name: string): string => (isMatter(name) ? matters[name] : partCalled(words, receiver, name));
  const slug = (id: string): string => slugName(words, receiver, id);
  const sentence = (things: readonly string[]): string => {
    const text = format.list(things);
    return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
  };
  const named =
    stated === null
      ? []
      : [...stated.slugs.map(slug), ...stated.parts.map(called), ...stated.setUp.map((matter) => matters[matter])];
  const wrong = [
    ...asFound.failed.map((names) => say.part(called(names[0]!))),
    ...asFound.badContacts.map((lead) => say.contact[lead]),
    ...asFound.astray.map((one) =>
      say.slug(slug(one.slug), format.turnsLong(Math.abs(one.turns)), one.turns > 0 ? 'in' : 'out'),
    ),
  ];
  const unnamed = [...judged.unnamed.map(called), ...judged.slugsUnnamed.map(slug)];
  const blamed = [...judged.blamed.map(called), ...judged.slugsBlamed.map(slug)];
  return {
    said: stated === null ? say.saidNothing : named.length === 0 ? say.leftAlone : sentence(named),
    was: wrong.length === 0 ? say.good : sentence(wrong),
    differs: [
      ...(stated === null || unnamed.length === 0 ? [] : [say.unnamed(format.list(unnamed))]),
      ...(blamed.length === 0 ? [] : [say.blamed(format.list(blamed))]),
    ],
  };
}

function isMatter(name: string): name is SetUpMatter {
  return (SET_UP_MATTERS as readonly string[]).includes(name);
}
