/** From the bytes of a file to its text, or why there is none; told with the words of whoever asks. */
import { bad, good, type Result } from '../base/result.ts';
import type { Words } from '../words/words.ts';

/** No file of ours is larger: a run file has at most 4 Mi characters, few of which take more than a byte. */
const LARGEST_BYTES = 8 * 1024 * 1024;

/** Asked before the bytes are read. */
export function sizeProblem(
  { textFiles }: Pick<Words, 'textFiles'>,
  bytes: number,
  file: string,
): Result<never> | null {
  if (bytes <= LARGEST_BYTES) return null;
  return bad({
    file,
    place: '',
    found: ['said', textFiles.tooLarge(bytes)],
    wanted: ['said', textFiles.atMost(LARGEST_BYTES)],
  });
}

/** `decode` throws a TypeError where the bytes are no UTF-8. */
export function textOfBytes(
  { textFiles }: Pick<Words, 'textFiles'>,
  bytes: Uint8Array,
  file: string,
  decode: (bytes: Uint8Array) => string,
): Result<string> {
  const binary = bad({ file, place: '', found: ['said', textFiles.binary], wanted: ['said', textFiles.utf8] });
  if (bytes.includes(0)) return binary;
  try {
    return good(decode(bytes));
  } catch (error) {
    if (error instanceof TypeError) return binary;
    throw error;
  }
}

/** For a file that nothing was read of. */
export function notRead({ textFiles }: Pick<Words, 'textFiles'>, reason: string, file: string): Result<never> {
  return bad({ file, place: '', found: ['said', textFiles.unreadable(reason)], wanted: ['said', textFiles.readable] });
}
