/** What must hold of the translations in a file: another language than its own, and a text for everything that has one, no more and no less. */
import { USUAL_LANGUAGE } from '../base/languages.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Complain, Path } from './complaints.ts';
import { asFarAsKnown, eachKnown } from './known.ts';

export function scenarioTranslations(scenario: Scenario, complain: Complain): void {
  complainOfOwn(scenario, complain);
  eachKnown(
    () => Object.keys(scenario.translations ?? {}),
    (tag) => {
      complainOfCount(
        () => scenario.translations![tag]!.hints,
        () => scenario.hints,
        ['translations', tag, 'hints'],
        complain,
      );
    },
  );
}

export function receiverTranslations(receiver: Receiver, complain: Complain): void {
  complainOfOwn(receiver, complain);
  eachKnown(
    () => Object.keys(receiver.translations ?? {}),
    (tag) => {
      const text = receiver.translations![tag]!;
      for (const key of ['adjusters', 'testPoints', 'responses'] as const)
        asFarAsKnown(() => complainOfKeys(text[key], receiver[key], ['translations', tag, key], complain));
      for (const key of ['procedure', 'cautions'] as const) {
        const at = ['translations', tag, key];
        complainOfCount(
          () => text[key],
          () => receiver[key],
          at,
          complain,
        );
      }
    },
  );
}

function complainOfOwn(file: { readonly language?: string; readonly translations?: object }, complain: Complain): void {
  asFarAsKnown(() => {
    const tag = file.language ?? USUAL_LANGUAGE;
    if (!Object.hasOwn(file.translations ?? {}, tag)) return;
    complain(['translations', tag], ['ownLanguage'], ['otherLanguages']);
  });
}

type List = () => readonly unknown[];

function complainOfCount(list: List, own: List, at: Path, complain: Complain): void {
  asFarAsKnown(() => {
    const [found, wanted] = [list().length, own().length];
    if (found !== wanted) complain(at, ['texts', found], ['textsAsOwn', wanted]);
  });
}

function complainOfKeys(texts: object, of: readonly { readonly id: string }[], at: Path, complain: Complain): void {
  const ids = of.map(({ id }) => id);
  for (const id of ids) if (!Object.hasOwn(texts, id)) complain(at, ['nothingFor', id], ['textForEach']);
  for (const id of Object.keys(texts)) if (!ids.includes(id)) complain([...at, id], ['named', id], ['idsOfFile']);
}
