/** Figures in English: the locale, the words for turns and how a written figure is read aloud. */
import { createFormat } from '../format.ts';

export const format = createFormat('en-GB', {
  aloud: (text) =>
    text
      .replace('\u2212', 'minus ')
      .replace('MHz', 'megahertz')
      .replace('kHz', 'kilohertz')
      .replace(/dB$/, 'decibels')
      .replace('mV', 'millivolts')
      .replace(/\bV\b/, 'volts')
      .replace('/div', ' a division')
      .replace(/\bdiv$/, 'divisions')
      .replace('\u00b0', ' degrees')
      .replace('\u00d7', 'times')
      .replace(/\s?%$/, ' per cent'),
  turns: { part: 'turn', one: 'turn', other: 'turns' },
  typedDegrees: ['deg', 'degrees'],
});
