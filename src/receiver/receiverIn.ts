/** A receiver as it is told to somebody: its texts in the language of the file that suits best. The circuit, the ids and the figures are the same. */
import { bestLanguage, USUAL_LANGUAGE } from '../base/languages.ts';
import type { Receiver } from './receiver.ts';

/** The same receiver where its own language is the best match. */
export function receiverIn(wanted: string, receiver: Receiver): Receiver {
  const { language = USUAL_LANGUAGE, translations = {} } = receiver;
  const best = bestLanguage(wanted, [language, ...Object.keys(translations)]) ?? language;
  const text = best === language ? undefined : translations[best];
  if (text === undefined) return receiver;
  return {
    ...receiver,
    language: best,
    setName: text.setName,
    title: text.title,
    description: text.description,
    adjusters: receiver.adjusters.map((slug) => ({ ...slug, ...text.adjusters[slug.id] })),
    testPoints: receiver.testPoints.map((point) => ({ ...point, ...text.testPoints[point.id] })),
    responses: receiver.responses.map((one) => ({ ...one, title: text.responses[one.id] ?? one.title })),
    procedure: receiver.procedure.map((step, i) => ({ ...step, text: text.procedure[i] ?? step.text })),
    cautions: receiver.cautions.map((caution, i) => text.cautions[i] ?? caution),
  };
}
