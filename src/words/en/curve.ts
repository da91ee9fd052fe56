/** What is on the tube, told to those who cannot see it. */
import type { BenchDisplay } from '../../bench/display.ts';

export const curveWords = {
  notes: {
    none: '',
    noX: 'The X lead is off: the trace is one upright line.',
    noY: 'The Y lead is off: the trace is flat.',
    noSignal: 'Nothing is detected: the trace is flat.',
    powerOff: 'The set is off: the trace is flat.',
    heating: 'The heaters are still warming up: the trace is flat.',
    offScreen: 'The trace is off the graticule.',
  } satisfies Record<BenchDisplay['note'], string>,
  height: (divisions: string): string => `A curve ${divisions} divisions high`,
  top: (place: string): string => `top ${place}`,
  places: { left: 'on the left', middle: 'in the middle', right: 'on the right' },
  between: (a: string, b: string): string => `between ${a} and ${b}`,
  beside: (side: 'left' | 'right', tag: string): string => `${side} of ${tag}`,
  at: (tag: string): string => `at ${tag}`,
  humps: (places: readonly string[], dip: string): string =>
    `${places.length} humps, ${places.join(', then ')}, with a dip to ${dip} between them`,
  sCurve: (divisions: string): string => `An S-curve ${divisions} divisions from peak to peak`,
  upper: (place: string): string => `upper peak ${place}`,
  lower: (place: string): string => `lower peak ${place}`,
  even: (percent: string): string => `the upper is ${percent} of the lower`,
  crossing: (place: string): string => `it crosses the base line ${place}`,
  pip: (name: string, percent: string): string => `${name} at ${percent}`,
  pipNumbered: (number: number, frequency: string): string => `pip ${number}, ${frequency},`,
  pipUnnamed: (number: number): string => `pip ${number} from the left`,
  tunable: 'tunable marker',
  comb: (frequency: string): string => `comb line ${frequency}`,
  noPips: 'no pips',
  pipOff: (name: string): string => `${name} off the sweep`,
  hum: 'the trace wavers with the mains',
} as const;
