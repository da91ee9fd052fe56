/** Lengths of texts and bounds of figures on the workshop's form, as the shape of a scenario file has them. */
import { type Bounds, numberBounds } from '../files/numberBounds.ts';

export const BOUNDS = {
  title: numberBounds('title'),
  brief: numberBounds('words', 'brief'),
  story: numberBounds('words', 'story'),
  lesson: numberBounds('words', 'lesson'),
  hints: numberBounds('hints'),
  /** a hint is as long as a brief */
  hint: { least: 1, most: 240 },
  id: { least: 1, most: 40 },
  /** `ABC-12` */
  code: { least: 1, most: 6 },
  track: { least: 1, most: 40 },
  author: { least: 0, most: 80 },
  /** a tag of BCP 47 */
  language: { least: 0, most: 35 },
  /** ids of other scenarios */
  after: { least: 0, most: 8 },
  order: numberBounds('order'),
  weight: numberBounds('weights', 'response'),
} as const satisfies Readonly<Record<string, Bounds>>;
