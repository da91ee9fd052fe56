/** Scenarios in an address: short, whole on arrival, and bounded. Sources: test vectors of RFC 4648, section 10 (base64, here without its padding); RFC 1951 by Node's own zlib. */
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import {
  fromBase64Url,
  LINK_CHARS,
  linkOf,
  MOST_LINK_CHARS,
  textOfLink,
  toBase64Url,
} from '../../src/services/handing/scenarioLink.ts';
import { saidOf } from '../files/said.ts';
import { shippedLibrary } from '../files/shipped.ts';

const { scenarios } = shippedLibrary();
/** Room for a long address before the scenario. */
const ADDRESS_CHARS = 120;
const linkWith = (text: string | Uint8Array): string => `1${deflateRawSync(text).toString('base64url')}`;

describe('a scenario in an address', () => {
  it('is the very same scenario when it arrives', async () => {
    for (const scenario of scenarios.slice(0, 12)) {
      const text = await textOfLink(await linkOf(scenario), 'link');
      const read = parseScenario(JSON.parse(text.ok ? text.value : ''), 'link');
      expect(read.ok && scenarioHash(read.value)).toBe(scenarioHash(scenario));
    }
  });

  it('has at most 2,000 characters for each scenario that comes with the page', async () => {
    const links = await Promise.all(scenarios.map((scenario) => linkOf(scenario)));
    expect(Math.max(...links.map((link) => link.length)) + ADDRESS_CHARS).toBeLessThanOrEqual(LINK_CHARS);
  });

  it('can be unpacked by anybody', async () => {
    const link = await linkOf(scenarios[0]!);
    const text = inflateRawSync(Buffer.from(link.slice(1), 'base64url')).toString('utf8');
    expect(JSON.parse(text)).toMatchObject({ format: 'haystack-scenario', id: scenarios[0]!.id });
  });
});

describe('base64url', () => {
  it.each([
    ['', ''],
    ['f', 'Zg'],
    ['fo', 'Zm8'],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg'],
    ['fooba', 'Zm9vYmE'],
    ['foobar', 'Zm9vYmFy'],
  ])('writes and reads "%s" as RFC 4648 has it', (text, written) => {
    expect(toBase64Url(new TextEncoder().encode(text))).toBe(written);
    expect(new TextDecoder().decode(fromBase64Url(written)!)).toBe(text);
  });

  it('gives back any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 60 }), (bytes) => {
        expect([...fromBase64Url(toBase64Url(bytes))!]).toEqual([...bytes]);
      }),
    );
  });
});

describe('a link that is none', () => {
  it.each<[string, string, RegExp]>([
    ['of nothing', '', /packed/],
    ['of another way of packing', '2abcd', /packed/],
    ['with signs that belong in no link', '1<script>', /signs/],
    ['that breaks off', linkWith('{"format":"haystack-scenario"}').slice(0, -8), /breaks off/],
    ['of bytes that are no packed file', '1AAAA____', /breaks off/],
    ['of text that is no UTF-8', linkWith(new Uint8Array([0xff, 0xfe, 0xfd])), /breaks off/],
    ['that is far too long', `1${'A'.repeat(MOST_LINK_CHARS)}`, /characters/],
    ['that swells', linkWith('0'.repeat(5_000_000)), /once unpacked/],
  ])('%s is refused', async (_, data, found) => {
    expect(saidOf(await textOfLink(data, 'link')).map((problem) => problem.found)).toEqual([
      expect.stringMatching(found),
    ]);
  });

  it('costs no more than its bound allows, however it swells', async () => {
    const bomb = linkWith(new Uint8Array(5_000_000));
    expect(bomb.length).toBeLessThan(MOST_LINK_CHARS);
    expect((await textOfLink(bomb, 'link')).ok).toBe(false);
  });

  it('of any signs is refused without a throw', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ maxLength: 200 }), async (data) => {
        expect((await textOfLink(`1${data}`, 'link')).ok).toBe(false);
      }),
      { numRuns: 60, examples: [['']] },
    );
  });
});
