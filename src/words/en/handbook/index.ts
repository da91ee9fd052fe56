/** English: the handbook, in the order in which it is read. */
import type { HandbookWords } from '../../handbook.ts';
import { bias } from './bias.ts';
import { detectors } from './detectors.ts';
import { earth } from './earth.ts';
import { faults } from './faults.ts';
import { leads } from './leads.ts';
import { markers } from './markers.ts';
import { oneCan } from './oneCan.ts';
import { order } from './order.ts';
import { overload } from './overload.ts';
import { phasing } from './phasing.ts';
import { reading } from './reading.ts';
import { safety } from './safety.ts';
import { sCurve } from './sCurve.ts';
import { slug } from './slug.ts';
import { spot } from './spot.ts';
import { stagger } from './stagger.ts';
import { sweep } from './sweep.ts';
import { tooFast } from './tooFast.ts';
import { traps } from './traps.ts';
import { tube } from './tube.ts';
import { whenNot } from './whenNot.ts';

export const handbook: HandbookWords = {
  title: 'Handbook',
  intro:
    'What the course takes for granted, in the order in which a bench is set up. The figures are live: they are solved by the same engine as the sets on the bench, so turn them and see.',
  contents: 'Pages',
  page: 'Other pages',
  print: 'Print',
  next: 'Next page',
  previous: 'Page before',
  allWords: 'All trade words',
  wordsIntro:
    'Where one of these words comes up for the first time on a page it is underlined: point at it, or tap it.',
  readings: 'Read from the figure',
  nothing: 'none',
  noSuchPage: 'There is no such page in this handbook. Here is what there is.',
  drawing: 'Picture on the tube.',
  pages: [
    sweep,
    tube,
    phasing,
    tooFast,
    markers,
    slug,
    oneCan,
    stagger,
    traps,
    spot,
    detectors,
    sCurve,
    bias,
    overload,
    leads,
    earth,
    order,
    reading,
    faults,
    whenNot,
    safety,
  ],
};

export default handbook;
