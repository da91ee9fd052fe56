/** A stream as lines. Only the line feed ends one: a run may hold every other character that ends a line elsewhere. */
export async function* linesOf(stream: AsyncIterable<Buffer | string>): AsyncGenerator<string, void> {
  const decoder = new TextDecoder();
  let pieces: string[] = [];
  for await (const chunk of stream) {
    const parts = (typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true })).split('\n');
    for (const part of parts.slice(0, -1)) {
      yield [...pieces, part].join('');
      pieces = [];
    }
    pieces.push(parts.at(-1)!);
  }
  const rest = pieces.join('') + decoder.decode();
  if (rest !== '') yield rest;
}
