/** Seals a sheet by a phrase and opens it again, with the browser's own cryptography. docs/evening-sheet.md says what that protects and what it does not. */
import { headText, phraseOf, type SealedEvening, type SealedHead } from '../../files/sealedEvening.ts';
import { fromBase64Url, toBase64Url } from './scenarioLink.ts';

/** For PBKDF2 with HMAC-SHA-256, from the Password Storage Cheat Sheet of OWASP. */
export const ROUNDS = 600_000;
const SALT_BYTES = 16;
const NONCE_BYTES = 12;
const KEY_BYTES = 32;

/** null: this browser gives the page none, as where the page came over a way that is not safe. */
export const cryptoHere = (): SubtleCrypto | null => (globalThis.crypto as Crypto | undefined)?.subtle ?? null;

/** PBKDF2 with HMAC-SHA-256 (RFC 8018, section 5.2). */
export async function derived(
  subtle: SubtleCrypto,
  password: string,
  salt: Uint8Array,
  rounds: number,
  bytes: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const base = await subtle.importKey('raw', new TextEncoder().encode(password), 'PBKDF2', false, ['deriveBits']);
  const how = { name: 'PBKDF2', hash: 'SHA-256', salt: new Uint8Array(salt), iterations: rounds };
  return new Uint8Array(await subtle.deriveBits(how, base, bytes * 8));
}

export async function sealSheet(
  subtle: SubtleCrypto,
  head: SealedHead,
  text: string,
  phrase: string,
  rounds = ROUNDS,
): Promise<SealedEvening> {
  const salt = crypto.getRandomValues(new Uint8Array(SALT_BYTES));
  const nonce = crypto.getRandomValues(new Uint8Array(NONCE_BYTES));
  const key = await keyOf(subtle, phrase, salt, rounds, 'encrypt');
  const content = await subtle.encrypt(cipherOf(nonce, head), key, new TextEncoder().encode(text));
  return {
    ...head,
    seal: {
      ...{ key: 'PBKDF2-HMAC-SHA-256', rounds, salt: toBase64Url(salt) },
      ...{ cipher: 'AES-256-GCM', nonce: toBase64Url(nonce) },
    },
    content: toBase64Url(new Uint8Array(content)),
  };
}

/** null: another phrase, or a file that was changed; the cipher cannot tell which. */
export async function openSheet(subtle: SubtleCrypto, sealed: SealedEvening, phrase: string): Promise<string | null> {
  const { seal, content, ...head } = sealed;
  const [salt, nonce, bytes] = [seal.salt, seal.nonce, content].map(fromBase64Url);
  if (!salt || !nonce || !bytes) return null;
  const key = await keyOf(subtle, phrase, salt, seal.rounds, 'decrypt');
  try {
    const plain = await subtle.decrypt(cipherOf(nonce, head), key, new Uint8Array(bytes));
    return new TextDecoder('utf-8', { fatal: true }).decode(plain);
  } catch {
    return null;
  }
}

const cipherOf = (nonce: Uint8Array, head: SealedHead) => ({
  name: 'AES-GCM',
  iv: new Uint8Array(nonce),
  additionalData: new TextEncoder().encode(headText(head)),
});

async function keyOf(
  subtle: SubtleCrypto,
  phrase: string,
  salt: Uint8Array,
  rounds: number,
  use: 'encrypt' | 'decrypt',
) {
  const bits = await derived(subtle, phraseOf(phrase), salt, rounds, KEY_BYTES);
  return subtle.importKey('raw', bits, 'AES-GCM', false, [use]);
}
