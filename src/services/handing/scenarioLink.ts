/**
 * A scenario inside an address: the file as UTF-8, deflated (RFC 1951), in base64url (RFC 4648, section 5). Whatever comes with an address is bounded before it is
 * unpacked and while it is: nobody's link costs more than a small file.
 */
import type { Phrase } from '../../base/phrases.ts';
import { bad, good, type Result } from '../../base/result.ts';
import { scenarioToFile } from '../../files/scenarioFile.ts';
import type { Scenario } from '../../scenario/scenario.ts';

/** The way of packing; another one would begin with another sign. */
const PACKED = '1';
/** Characters of a link that mail and messages carry whole, by common practice. */
export const LINK_CHARS = 2000;
/** Longest that is looked at. */
export const MOST_LINK_CHARS = 8192;
/** More than any scenario that could be read. */
const MOST_UNPACKED_BYTES = 65_536;

export async function linkOf(scenario: Scenario): Promise<string> {
  return PACKED + (await packed(JSON.stringify(scenarioToFile(scenario))));
}

/** The text of the file inside, not yet read; `file`: the name by which problems speak of the link. */
export async function textOfLink(data: string, file: string): Promise<Result<string>> {
  const refused = (found: Phrase, wanted: Phrase): Result<never> => bad({ file, place: '', found, wanted });
  if (data.length > MOST_LINK_CHARS) return refused(['characters', data.length], ['charactersAtMost', MOST_LINK_CHARS]);
  if (!data.startsWith(PACKED)) return refused(['linkOfOtherKind'], ['wholeLink']);
  const bytes = fromBase64Url(data.slice(PACKED.length));
  if (bytes === null) return refused(['linkSigns'], ['wholeLink']);
  const unpacked = await inflated(bytes, MOST_UNPACKED_BYTES);
  if (unpacked === 'broken') return refused(['linkBroken'], ['wholeLink']);
  if (unpacked === 'tooLarge') return refused(['moreUnpacked', MOST_UNPACKED_BYTES], ['smallerFile']);
  try {
    return good(new TextDecoder('utf-8', { fatal: true }).decode(unpacked));
  } catch {
    return refused(['linkBroken'], ['wholeLink']);
  }
}

async function packed(text: string): Promise<string> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return toBase64Url(new Uint8Array(await new Response(stream).arrayBuffer()));
}

async function inflated(bytes: Uint8Array, most: number): Promise<Uint8Array | 'broken' | 'tooLarge'> {
  const unpacking = new DecompressionStream('deflate-raw');
  const writer = unpacking.writable.getWriter();
  // What goes wrong is reported at the reading end.
  writer.write(new Uint8Array(bytes)).catch(() => {});
  writer.close().catch(() => {});
  const reader = unpacking.readable.getReader();
  const pieces: Uint8Array[] = [];
  let length = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      length += value.length;
      if (length > most) {
        await reader.cancel().catch(() => {});
        return 'tooLarge';
      }
      pieces.push(value);
    }
  } catch {
    return 'broken';
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

export function toBase64Url(bytes: Uint8Array): string {
  let signs = '';
  for (const byte of bytes) signs += String.fromCharCode(byte);
  return btoa(signs).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** null: signs that do not belong there, or a length that none has. */
export function fromBase64Url(text: string): Uint8Array | null {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return null;
  const signs = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(signs, (sign) => sign.charCodeAt(0));
}
