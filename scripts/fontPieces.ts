/**
 * Cuts every face of src/kit/theme/fonts.css in two when the page is built: the letters that English needs, and the rest, which the browser fetches only where a text has
 * one of them. A third of the weight of the first page goes. In `npm run dev` the faces are whole.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';
import type { Plugin } from 'vite';

const PROJECT = fileURLToPath(new URL('..', import.meta.url));
const PIECES = path.join(PROJECT, '.cache', 'fonts');

type Range = readonly [first: number, last: number];

/** ASCII; no-break space, degree, plus-minus, middle dot, fractions, times; dashes, quotation marks, ellipsis; minus. */
export const CORE: readonly Range[] = [
  [0x20, 0x7e],
  [0xa0, 0xa0],
  [0xb0, 0xb1],
  [0xb5, 0xb5],
  [0xb7, 0xb7],
  [0xbc, 0xbe],
  [0xd7, 0xd7],
  [0x2013, 0x2014],
  [0x2018, 0x201a],
  [0x201c, 0x201e],
  [0x2026, 0x2026],
  [0x2212, 0x2212],
];

/** All that the latin faces have, by the list that comes with them, without what stands in `CORE`. */
export const REST: readonly Range[] = [
  [0x00, 0x1f],
  [0x7f, 0x9f],
  [0xa1, 0xaf],
  [0xb2, 0xb4],
  [0xb6, 0xb6],
  [0xb8, 0xbb],
  [0xbf, 0xd6],
  [0xd8, 0xff],
  [0x131, 0x131],
  [0x152, 0x153],
  [0x2bb, 0x2bc],
  [0x2c6, 0x2c6],
  [0x2da, 0x2da],
  [0x2dc, 0x2dc],
  [0x304, 0x304],
  [0x308, 0x308],
  [0x329, 0x329],
  [0x2000, 0x2012],
  [0x2015, 0x2017],
  [0x201b, 0x201b],
  [0x201f, 0x2025],
  [0x2027, 0x206f],
  [0x20ac, 0x20ac],
  [0x2122, 0x2122],
  [0x2191, 0x2191],
  [0x2193, 0x2193],
  [0x2215, 0x2215],
  [0xfeff, 0xfeff],
  [0xfffd, 0xfffd],
];

const FACE = /@font-face\s*\{[^}]*url\("([^"]+\.woff2)"\)[^}]*\}/g;

export function fontPieces(): Plugin {
  return {
    name: 'font-pieces',
    apply: 'build',
    enforce: 'pre',
    async transform(css, id) {
      if (!id.endsWith('/kit/theme/fonts.css')) return null;
      let cut = css;
      for (const [face, place] of css.matchAll(FACE)) {
        const file = path.join(PROJECT, 'node_modules', place!);
        const pieces = await Promise.all([piece(file, 'core', CORE), piece(file, 'rest', REST)]);
        const faces = [CORE, REST].map((ranges, i) => {
          const url = path.relative(path.dirname(id), pieces[i]!).replaceAll('\\', '/');
          return face.replace(place!, url).replace(/\}$/, `  unicode-range: ${rangeText(ranges)};\n}`);
        });
        cut = cut.replace(face, faces.join('\n'));
      }
      return { code: cut, map: null };
    },
  };
}

/** The piece of a font with these letters, kept from one building to the next. */
async function piece(file: string, name: string, ranges: readonly Range[]): Promise<string> {
  const font = readFileSync(file);
  const print = createHash('sha256').update(font).update(rangeText(ranges)).digest('hex').slice(0, 12);
  const kept = path.join(PIECES, print, `${path.basename(file, '.woff2')}-${name}.woff2`);
  if (existsSync(kept)) return kept;
  const cut = await subsetFont(font, lettersOf(ranges), { targetFormat: 'woff2' });
  mkdirSync(path.dirname(kept), { recursive: true });
  writeFileSync(kept, cut);
  return kept;
}

export function lettersOf(ranges: readonly Range[]): string {
  return ranges
    .flatMap(([first, last]) => Array.from({ length: last - first + 1 }, (_, i) => String.fromCodePoint(first + i)))
    .join('');
}

function rangeText(ranges: readonly Range[]): string {
  const hex = (code: number): string => code.toString(16).toUpperCase().padStart(2, '0');
  return ranges.map(([first, last]) => `U+${hex(first)}${last === first ? '' : `-${hex(last)}`}`).join(', ');
}
