/** Where the parts of the magnified slug stand inside its rectangle, for the three forms of the page. Pure; pixels of the rectangle. */

import type { Rect } from '../../../kit/px.ts';
import type { BenchForm, BenchLayout } from '../layout.ts';

export interface InsetPlaces {
  readonly ring: { readonly x: number; readonly y: number; readonly r: number };
  readonly head: Rect;
  readonly reading: Rect;
  readonly section: Rect | null;
  readonly fine: Rect;
  readonly out: Rect;
  readonly in: Rect;
  /** short wording beside the ring's corner instead of a line of its own */
  readonly narrow: boolean;
}

const BUTTON = 44;

export function insetPlaces(form: BenchForm, { width, height }: Pick<Rect, 'width' | 'height'>): InsetPlaces {
  if (form === 'shelf') return stacked(width, height);
  return form === 'upright' ? ringLeft(width, height) : ringRight(width, height);
}

/** The ring in page pixels, for the leader that joins it to its slug. */
export function ringOnPage(layout: BenchLayout): { x: number; y: number; r: number } {
  const { ring } = insetPlaces(layout.form, layout.slugInset);
  return { x: layout.slugInset.x + ring.x, y: layout.slugInset.y + ring.y, r: ring.r };
}

function ringRight(width: number, height: number): InsetPlaces {
  const r = Math.min((height - BUTTON - 8) / 2 - 2, (width - 128) / 2 - 4, 96);
  const ring = { x: width - r - 6, y: r + 2, r };
  const left = width - 2 * r - 22;
  const row = height - BUTTON;
  const third = (width - 16) / 3;
  return {
    ring,
    head: { x: 0, y: 0, width: left, height: 24 },
    reading: { x: 0, y: 26, width: left + 12, height: 26 },
    section: { x: 14, y: 62, width: 60, height: row - 20 - 62 },
    fine: { x: 0, y: row, width: third - 14, height: BUTTON },
    out: { x: third - 6, y: row, width: third + 7, height: BUTTON },
    in: { x: 2 * third + 9, y: row, width: third + 7, height: BUTTON },
    narrow: false,
  };
}

function ringLeft(width: number, height: number): InsetPlaces {
  const row = height - BUTTON - 4;
  const r = Math.min((row - 10) / 2, width / 2 - 62, 100);
  const right = 2 * r + 20;
  const third = (width - 20) / 3;
  return {
    ring: { x: r + 2, y: Math.max(r + 2, Math.min(row / 2 - 3, r + 14)), r },
    head: { x: right, y: 0, width: width - right, height: 24 },
    reading: { x: right, y: 26, width: width - right, height: 26 },
    section: { x: right + 12, y: 66, width: 60, height: Math.min(150, row - 22 - 66) },
    fine: { x: 0, y: row, width: third - 10, height: BUTTON },
    out: { x: third, y: row, width: third + 5, height: BUTTON },
    in: { x: 2 * third + 15, y: row, width: third + 5, height: BUTTON },
    narrow: false,
  };
}

/** In the narrow column the disc and the reading stand in the ring's empty corners. */
function stacked(width: number, height: number): InsetPlaces {
  const row = height - BUTTON;
  const r = Math.min((row - 8) / 2, width / 2 - 14, 92);
  const third = (width - 12) / 3;
  return {
    ring: { x: width / 2, y: Math.max(r + 1, (row - 6) / 2), r },
    head: { x: 0, y: 0, width: 22, height: 24 },
    reading: { x: width - 54, y: 0, width: 54, height: 22 },
    section: null,
    fine: { x: 0, y: row, width: third, height: BUTTON },
    out: { x: third + 6, y: row, width: third, height: BUTTON },
    in: { x: 2 * third + 12, y: row, width: third, height: BUTTON },
    narrow: true,
  };
}
