/** The fingerprint of a value. */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, hashOf } from '../../src/files/hash.ts';

describe('canonical JSON', () => {
  // Source: RFC 8785, sections 3.2.2 and 3.2.3 (from memory): numbers as ECMAScript writes them, keys by UTF-16 code units.
  it('writes numbers and sorts keys as the standard does', () => {
    const text = '[333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001]';
    expect(canonicalJson(JSON.parse(text))).toBe('[333333333.3333333,1e+30,4.5,0.002,1e-27]');
    const keys = ['\u20ac', '\r', '\ufb33', '1', '\ud83d\ude00', '\u0080', '\u00f6'];
    const object = Object.fromEntries(keys.map((key) => [key, 0]));
    const order = Object.keys(JSON.parse(canonicalJson(object).replace('"1"', '"x1"')));
    expect(order).toEqual(['\r', 'x1', '\u0080', '\u00f6', '\u20ac', '\ud83d\ude00', '\ufb33']);
  });

  it('is JSON of the same value, whatever the order of its keys', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        const value = JSON.parse(text);
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
        expect(hashOf(reversed(value))).toBe(hashOf(value));
      }),
    );
  });

  it('takes a key without a value as no key, and refuses what JSON cannot hold', () => {
    expect(canonicalJson({ b: undefined, a: 1 })).toBe('{"a":1}');
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, undefined, () => 1, 1n, { a: [Symbol('x')] }]) {
      expect(() => canonicalJson(value)).toThrow('no place in JSON');
    }
  });
});

describe('the hash', () => {
  it('is SHA-256 of the canonical text, by another implementation', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(hashOf(value)).toBe(createHash('sha256').update(canonicalJson(value), 'utf8').digest('hex'));
      }),
    );
    // Source: the SHA-256 of the two characters {} (widely published, from memory).
    expect(hashOf({})).toBe('44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a');
  });

  it('tells apart what differs', () => {
    expect(hashOf({ a: 1 })).not.toBe(hashOf({ a: '1' }));
    expect(hashOf([1, 2])).not.toBe(hashOf([2, 1]));
    expect(hashOf({ a: { b: 1 } })).not.toBe(hashOf({ a: 1, b: 1 }));
  });
});

function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, inside]) => [key, reversed(inside)]),
  );
}
