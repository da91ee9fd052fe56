/**
 * What the course page asks of the line at its first load: the built page, the scripts and styles that it loads at once, and every font in English letters, each gzipped
 * (fonts as they are: woff2 is compressed already). A browser leaves out fonts that no text wants, and fetches what opens the logbook besides: perf/cases/firstPage.ts
 * asks one.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Bytes on the line; null where the page has not been built. */
export function firstLoadBytes(dist: string): number | null {
  const start = join(dist, 'index.html');
  if (!existsSync(start)) return null;
  const assets = join(dist, 'assets');
  const html = readFileSync(start, 'utf8');
  const waiting = [...html.matchAll(/assets\/([\w.-]+\.(?:js|css|svg))/g)].map((m) => m[1]!);
  const wanted = new Set<string>();
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (wanted.has(name)) continue;
    wanted.add(name);
    if (!name.endsWith('.js')) continue;
    const script = readFileSync(join(assets, name), 'utf8');
    // Static imports only: `import('...')` waits until its room is opened.
    for (const found of script.matchAll(/(?:from|import)\s*"\.\/([\w.-]+\.js)"/g)) waiting.push(found[1]!);
  }
  let bytes = gzipSync(html).length;
  for (const name of wanted) bytes += gzipSync(readFileSync(join(assets, name))).length;
  for (const name of readdirSync(assets))
    if (/-core-.*\.woff2$/.test(name)) bytes += readFileSync(join(assets, name)).length;
  return bytes;
}
