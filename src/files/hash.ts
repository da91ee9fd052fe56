/**
 * The fingerprint of a value: SHA-256 of its canonical JSON, so that it does not depend on the order of keys or on how a file was laid out.
 * Canonical: keys sorted by UTF-16 code units, no spaces, numbers and strings as ECMAScript writes them (RFC 8785).
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** 64 hexadecimal digits. */
export function hashOf(value: unknown): string {
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(value))));
}

/** Throws on what JSON cannot hold. A key whose value is undefined counts as absent. */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return JSON.stringify(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${value} has no place in JSON`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item)).join(',')}]`;
  if (typeof value === 'object') {
    const object = value as Record<string, unknown>;
    const keys = Object.keys(object).filter((key) => object[key] !== undefined);
    // The default order of sort() is by UTF-16 code units, which is what is wanted.
    return `{${keys
      .sort()
      .map((key) => `${JSON.stringify(key)}:${canonicalJson(object[key])}`)
      .join(',')}}`;
  }
  throw new Error(`a ${typeof value} has no place in JSON`);
}
