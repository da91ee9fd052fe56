/**
 * The seal of an exam. Sources: vectors of PBKDF2 with HMAC-SHA-256 from RFC 7914, section 11; Node's own cryptography as another program that opens the file;
 * the rounds are those of the Password Storage Cheat Sheet of OWASP.
 */
import { createDecipheriv, pbkdf2Sync, webcrypto } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { headText, phraseOf, readSealedEvening, type SealedHead } from '../../src/files/sealedEvening.ts';
import { derived, openSheet, ROUNDS, sealSheet } from '../../src/services/handing/phraseSeal.ts';
import { saidOf } from '../files/said.ts';

const subtle = webcrypto.subtle as SubtleCrypto;
const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');
const head: SealedHead = {
  format: 'haystack-sealed-evening',
  version: 1,
  title: 'Second Thursday',
  minutes: 90,
  count: 3,
  candidates: 'numbers',
};
/** Quick for a test, and the least that a file may have. */
const FEW = 100_000;

describe('PBKDF2 with HMAC-SHA-256', () => {
  it.each([
    [
      'passwd',
      'salt',
      1,
      '55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783',
    ],
    [
      'Password',
      'NaCl',
      80_000,
      '4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d',
    ],
  ])('gives what RFC 7914 says for %s, %s, %i', async (password, salt, rounds, key) => {
    expect(hex(await derived(subtle, password, Buffer.from(salt), rounds, 64))).toBe(key);
  });

  it('goes round as often as is recommended for it', () => {
    expect(ROUNDS).toBe(600_000);
  });
});

describe('a sealed sheet', () => {
  const phrase = 'lantern on the slip';

  it('is opened by its phrase, however that is typed, and by no other', async () => {
    const sealed = await sealSheet(subtle, head, 'the sheet', phrase, FEW);
    expect(await openSheet(subtle, sealed, phrase)).toBe('the sheet');
    expect(await openSheet(subtle, sealed, '  Lantern  on the SLIP ')).toBe('the sheet');
    expect(await openSheet(subtle, sealed, 'lantern on the ship')).toBeNull();
    expect(phraseOf('\u00c9t\u00e9')).toBe(phraseOf('E\u0301te\u0301'));
  });

  it('can be opened by any program that is told the phrase', async () => {
    const sealed = await sealSheet(subtle, head, 'the sheet', phrase, FEW);
    const { salt, nonce, rounds } = sealed.seal;
    const bytes = Buffer.from(sealed.content, 'base64url');
    const key = pbkdf2Sync(phrase, Buffer.from(salt, 'base64url'), rounds, 32, 'sha256');
    const decipher = createDecipheriv('aes-256-gcm', key, Buffer.from(nonce, 'base64url'));
    decipher.setAAD(Buffer.from(headText(head)));
    decipher.setAuthTag(bytes.subarray(-16));
    expect(decipher.update(bytes.subarray(0, -16), undefined, 'utf8') + decipher.final('utf8')).toBe('the sheet');
  });

  it('is not opened where anything of it was changed', async () => {
    const sealed = await sealSheet(subtle, head, 'the sheet', phrase, FEW);
    for (const changed of [
      { ...sealed, minutes: 240 },
      { ...sealed, title: 'Third Thursday' },
      { ...sealed, candidates: 'names' as const },
      { ...sealed, content: `${sealed.content.startsWith('A') ? 'B' : 'A'}${sealed.content.slice(1)}` },
      { ...sealed, seal: { ...sealed.seal, rounds: FEW + 1 } },
    ])
      expect(await openSheet(subtle, changed, phrase)).toBeNull();
  });

  it('says nothing of what is inside, and is another each time', async () => {
    const text = 'one-hump-gone '.repeat(50);
    const [one, two] = [
      await sealSheet(subtle, head, text, phrase, FEW),
      await sealSheet(subtle, head, text, phrase, FEW),
    ];
    expect(JSON.stringify(one)).not.toContain('one-hump');
    expect(one.content).not.toBe(two.content);
  });

  it('is read from its file, or refused with places', async () => {
    const sealed = await sealSheet(subtle, head, 'the sheet', phrase, FEW);
    const file = (changes: object) => readSealedEvening(JSON.stringify({ ...sealed, ...changes }, null, 1), 's.json');
    expect(file({})).toEqual({ ok: true, value: sealed });
    const places = (changes: object) => saidOf(file(changes)).map(({ place }) => place.replace(/^.*, /, ''));
    expect(places({ seal: { ...sealed.seal, rounds: 1 } })).toEqual(['/seal/rounds']);
    expect(places({ seal: { ...sealed.seal, rounds: 1e12 } })).toEqual(['/seal/rounds']);
    expect(places({ content: '<script>' })).toEqual(['/content']);
    expect(places({ count: 0, minutes: 1 })).toEqual(['/minutes', '/count']);
    expect(places({ extra: 1 })).toEqual(['/extra']);
  });
});
