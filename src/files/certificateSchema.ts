/** The shape of a certificate (`src/certify/certificate.ts`), for whoever reads one by a program of his own. */
import * as v from 'valibot';
import { type Sizes, tooBig } from './guardSize.ts';
import { knownOf, type Reading } from './known.ts';
import { bringForward, type FormatHistory } from './migrations.ts';
import { fileId, integer, list, number, object, oneOf, shortId, text } from './schemaPieces.ts';
import { asMessage, problemsOf } from './schemaProblems.ts';

const figure = () => number(-1e12, 1e12);
const hash = () => v.pipe(v.string(asMessage(['hash'])), v.regex(/^[0-9a-f]{64}$/, asMessage(['hash'])));
const line = () =>
  object({
    response: shortId(),
    line: text(80),
    unit: oneOf('ratio', 'db', 'hz'),
    measured: figure(),
    low: v.nullable(figure()),
    high: v.nullable(figure()),
    excess: figure(),
  });

export const certificateSchema = object({
  format: v.literal('haystack-certificate'),
  version: v.literal(1),
  scenario: fileId(),
  scenarioHash: hash(),
  receiverHash: hash(),
  engine: text(20),
  set: v.nullable(
    object({
      seed: integer(0, 2 ** 31 - 1),
      draw: integer(0, 1000),
      henries: v.pipe(v.record(shortId(), number(1e-10, 1, 'H')), v.maxEntries(24, asMessage(['slugsAtMost', 24]))),
    }),
  ),
  nominal: list(line(), 1, 400),
  asFound: line(),
  uncured: v.nullable(line()),
  route: list(object({ slug: shortId(), turns: number(-100, 100, 'turns') }), 0, 24),
  reached: line(),
  tries: v.nullable(integer(1, 1000)),
  par: object({ turns: number(0.125, 2000, 'turns'), seconds: integer(30, 14_400) }),
  difficulty: number(0, 10),
  points: number(0, 100),
});

const CERTIFICATE_HISTORY: FormatHistory = { format: 'haystack-certificate', current: 1, migrations: {} };
/** A certificate has at most as many lines as six responses can ask for. */
const MOST: Sizes = { values: 8000, items: 400, keys: 64, characters: 1000, levels: 6 };

/** What a certificate says, or every problem of its shape. */
export function readCertificate(json: unknown, file: string): Reading<v.InferOutput<typeof certificateSchema>> {
  const big = tooBig(json, file, MOST);
  if (big !== null) return { value: null, problems: [big] };
  const forward = bringForward(json, CERTIFICATE_HISTORY, file);
  if (!forward.ok) return { value: null, problems: forward.problems };
  const shape = v.safeParse(certificateSchema, forward.value);
  const issues = shape.issues ?? [];
  return { value: knownOf(shape.output, issues), problems: problemsOf(issues, file) };
}
