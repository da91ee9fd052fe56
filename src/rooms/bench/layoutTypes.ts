/** What `benchLayout` hands out: rectangles, jacks and sizes in CSS pixels of the page. */
import type { Rect } from '../../kit/px.ts';
import { tubeSize } from '../../kit/tube/hood.ts';

/** Breadth of the tube's engraved ring and height of its lip for the tags. */
const TUBE_HOOD = 15;
const TUBE_LIP = 24;

export type BenchForm = 'full' | 'shelf' | 'upright';

/** The X lead has two jacks: it leaves the sweep source (`xOut`) and ends in the tube (`xIn`). */
export type JackId = 'rf' | 'xOut' | 'xIn' | 'y' | 'earth' | 'biasA' | 'biasB' | 'meter';

export interface Jack {
  /** centre of the jack */
  readonly x: number;
  readonly y: number;
  /** the way a plug sticks out of it */
  readonly side: 'left' | 'right' | 'top' | 'bottom';
  /** true: the jack sits on a sliding shelf, so none is drawn; the lead comes up from behind the shelf's top edge here */
  readonly hidden: boolean;
}

export type PanelId = 'tube' | 'sweep' | 'rack' | 'bias';

export interface BenchLayout {
  readonly form: BenchForm;
  /** may be higher than the window: then the page scrolls */
  readonly page: { readonly width: number; readonly height: number };
  readonly header: Rect;
  /** two rows: the phase rail stands under the title */
  readonly headerRows: 1 | 2;
  /** the opened service sheet; in the shelf and upright forms it lies over the rest and can be put away */
  readonly sheet: Rect;
  readonly sheetFolds: boolean;
  /** the folded sheet's tab (shelf form) */
  readonly sheetTab: Rect | null;
  /** strip with the current step (shelf and upright forms) */
  readonly strip: Rect | null;
  /** outer box of the tube's hood with the lip for the tags, as `hoodSize` has it */
  readonly tube: Rect;
  /** pixels per graticule division */
  readonly cell: number;
  /** panels that have a place of their own; the others stand on the shelf */
  readonly panels: Readonly<Record<PanelId, Rect | null>>;
  readonly shelf: (Rect & { readonly rows: 1 | 2 }) | null;
  readonly tabs: Rect | null;
  /** corner for the menu in the shelf form */
  readonly menu: Rect | null;
  /** where hints, parts, circuit and sound stand one under the other (shelf form); null: in the header */
  readonly atHand: Rect | null;
  /** title row of the chassis */
  readonly chassisHead: Rect | null;
  /** the pan itself: the plan (420 x 384) times `scale` */
  readonly chassis: Rect & { readonly scale: number };
  /** the magnified slug with its readout, section and buttons */
  readonly slugInset: Rect;
  readonly tools: Rect;
  /** zoom cone from slug to inset, or a single leader from the letter */
  readonly leader: 'cone' | 'line';
  readonly jacks: Readonly<Record<JackId, Jack>>;
  /** where ends lie that are connected to nothing: a strip under the chassis, or the gully beside the jacks (full form) */
  readonly leadTray: Rect;
}

/** Drawing size of a chassis plan at scale 1. */
export const PLAN = { width: 420, height: 384 } as const;

/** Outer box of a tube with this many pixels a division, its hood and its lip. */
export function hoodSize(cell: number): { width: number; height: number } {
  const { width, height } = tubeSize({ cell, hood: TUBE_HOOD, lip: TUBE_LIP });
  return { width: Math.ceil(width), height: Math.ceil(height) };
}

/** Most pixels a division, in halves, so that the hood's box fits; never under `least`. */
export function cellThatFits(width: number, height: number, least: number, most: number): number {
  let cell = Math.floor(2 * most) / 2;
  for (; cell > least; cell -= 0.5) {
    const hood = hoodSize(cell);
    if (hood.width <= width && hood.height <= height) return cell;
  }
  return least;
}
