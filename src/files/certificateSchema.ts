/** The shape of a certificate (`src/certify/certificate.ts`), for whoever reads one by a program of his own. */
import * as v from 'valibot';
import { fileId, integer, list, number, oneOf, shortId, text } from './schemaPieces.ts';
import { asMessage } from './schemaProblems.ts';

const figure = () => number(-1e12, 1e12);
const hash = () => v.pipe(v.string(asMessage(['hash'])), v.regex(/^[0-9a-f]{64}$/, asMessage(['hash'])));
const line = () =>
  v.strictObject({
    response: shortId(),
    line: text(80),
    unit: oneOf('ratio', 'db', 'hz'),
    measured: figure(),
    low: v.nullable(figure()),
    high: v.nullable(figure()),
    excess: figure(),
  });

export const certificateSchema = v.strictObject({
  format: v.literal('haystack-certificate'),
  version: v.literal(1),
  scenario: fileId(),
  scenarioHash: hash(),
  receiverHash: hash(),
  engine: text(20),
  set: v.nullable(
    v.strictObject({
      seed: integer(0, 2 ** 31 - 1),
      draw: integer(0, 1000),
      henries: v.pipe(v.record(shortId(), number(1e-10, 1, 'H')), v.maxEntries(24, asMessage(['slugsAtMost', 24]))),
    }),
  ),
  nominal: list(line(), 1, 400),
  asFound: line(),
  uncured: v.nullable(line()),
  route: list(v.strictObject({ slug: shortId(), turns: number(-100, 100, 'turns') }), 0, 24),
  reached: line(),
  tries: v.nullable(integer(1, 1000)),
  par: v.strictObject({ turns: number(0.125, 2000, 'turns'), seconds: integer(30, 14_400) }),
  difficulty: number(0, 10),
  points: number(0, 100),
});
