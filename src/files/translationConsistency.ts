/** What must hold of the translations in a file: another language than its own, and a text for everything that has one, no more and no less. */
import { USUAL_LANGUAGE } from '../base/languages.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Complain, Path } from './complaints.ts';

export function scenarioTranslations({ language, translations = {}, hints }: Scenario, complain: Complain): void {
  complainOfOwn(language, translations, complain);
  for (const [tag, text] of Object.entries(translations))
    complainOfCount(text.hints, hints.length, ['translations', tag, 'hints'], complain);
}

export function receiverTranslations(receiver: Receiver, complain: Complain): void {
  const { language, translations = {}, adjusters, testPoints, responses, procedure, cautions } = receiver;
  complainOfOwn(language, translations, complain);
  for (const [tag, text] of Object.entries(translations)) {
    const at = (key: string): Path => ['translations', tag, key];
    complainOfKeys(text.adjusters, adjusters, at('adjusters'), complain);
    complainOfKeys(text.testPoints, testPoints, at('testPoints'), complain);
    complainOfKeys(text.responses, responses, at('responses'), complain);
    complainOfCount(text.procedure, procedure.length, at('procedure'), complain);
    complainOfCount(text.cautions, cautions.length, at('cautions'), complain);
  }
}

function complainOfOwn(own: string | undefined, translations: object, complain: Complain): void {
  const tag = own ?? USUAL_LANGUAGE;
  if (Object.hasOwn(translations, tag)) complain(['translations', tag], ['ownLanguage'], ['otherLanguages']);
}

function complainOfCount(list: readonly string[], count: number, at: Path, complain: Complain): void {
  if (list.length !== count) complain(at, ['texts', list.length], ['textsAsOwn', count]);
}

function complainOfKeys(texts: object, of: readonly { readonly id: string }[], at: Path, complain: Complain): void {
  const ids = of.map(({ id }) => id);
  for (const id of ids) if (!Object.hasOwn(texts, id)) complain(at, ['nothingFor', id], ['textForEach']);
  for (const id of Object.keys(texts)) if (!ids.includes(id)) complain([...at, id], ['named', id], ['idsOfFile']);
}
