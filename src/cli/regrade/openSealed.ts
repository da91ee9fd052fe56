/** Opens a sealed sheet by a phrase with Node's own cryptography, as the page does with the browser's: a key by PBKDF2 with HMAC-SHA-256 (RFC 8018), the sheet under AES-256-GCM (NIST SP 800-38D). */
import { createDecipheriv, pbkdf2Sync } from 'node:crypto';
import { headText, phraseOf, type SealedEvening } from '../../files/sealedEvening.ts';

const KEY_BYTES = 32;
const TAG_BYTES = 16;

/** The text of the sheet inside; null: none of the phrases opens it, or the file was changed on its way. */
export function openSealed(sealed: SealedEvening, phrases: readonly string[]): string | null {
  for (const phrase of phrases) {
    const text = openBy(sealed, phrase);
    if (text !== null) return text;
  }
  return null;
}

function openBy({ seal, content, ...head }: SealedEvening, phrase: string): string | null {
  const bytes = Buffer.from(content, 'base64url');
  const key = pbkdf2Sync(phraseOf(phrase), Buffer.from(seal.salt, 'base64url'), seal.rounds, KEY_BYTES, 'sha256');
  try {
    const cipher = createDecipheriv('aes-256-gcm', key, Buffer.from(seal.nonce, 'base64url'), {
      authTagLength: TAG_BYTES,
    });
    cipher.setAAD(Buffer.from(headText(head)));
    cipher.setAuthTag(bytes.subarray(-TAG_BYTES));
    const plain = Buffer.concat([cipher.update(bytes.subarray(0, -TAG_BYTES)), cipher.final()]);
    return new TextDecoder('utf-8', { fatal: true }).decode(plain);
  } catch {
    return null;
  }
}
