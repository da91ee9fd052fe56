/** Words of the circuit diagram. */
import { format } from './numbers.ts';

export const circuitWords = {
  title: 'Circuit diagram',
  hint: 'Letters are slugs, as on the chassis. Point at a part, or tap it.',
  opening: 'The circuit is being drawn.',
  failed: 'The circuit could not be fetched. Close it and try again.',
  diagram: 'Circuit, from left to right',
  chassis: 'The same part on the chassis',
  print: 'Print',
  list: 'List of parts',
  /** a stage that takes several pages */
  goesOn: (stage: string, at: number, of: number): string => `${stage}, ${at} of ${of}`,
  /** a page that begins before any stage */
  input: 'Input',
  detector: 'Detector',
  own: { bypass: 'bypass', decoupling: 'decoupling', coupling: 'coupling', shield: 'screening lid' },
  hertz: format.frequency,
  coupledWith: (coil: string): string => `with ${coil}`,
  /** names of things that are not in the tray */
  named: {
    point: (name: string): string => `Test point ${name}`,
    source: (name: string): string => `${name}, where the signal comes in`,
    fixed: (name: string): string => `${name}, fixed`,
    detector: (name: string): string => `Detector ${name}`,
    line: (name: string): string => `Feed of the line ${name}`,
    slugged: (name: string, letter: string): string => `${name}, slug ${letter}`,
  },
  /** beside the name of what is pointed at: where to look on the chassis */
  at: (places: string): string => `On the chassis: ${places}.`,
  nowhere: 'Under the chassis.',
} as const;
