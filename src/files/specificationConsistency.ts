/** What must hold inside a specification beyond its shape: stretches that run upwards, limits that enclose their target, each demand once. */
import type { Unit } from '../base/phrases.ts';
import type { Specification } from '../receiver/receiver.ts';
import { type Complain, complainOfRepeats, type Path } from './complaints.ts';
import { shown } from './schemaProblems.ts';

export function specificationConsistency(spec: Specification, place: Path, complain: Complain): void {
  const at = (...path: Path): Path => [...place, ...path];
  const rising = (low: number, high: number, path: Path, unit: Unit = 'Hz'): void => {
    if (!(low < high)) complain(path, ['stretch', low, high, unit], ['lowerFirst']);
  };
  const inside = (hz: number, path: Path): void => {
    if (hz < spec.fromHz || hz > spec.toHz) complain(path, shown(hz, 'Hz'), ['from', spec.fromHz, spec.toHz, 'Hz']);
  };

  rising(spec.fromHz, spec.toHz, at('toHz'));
  if (spec.referenceHz !== undefined) inside(spec.referenceHz, at('referenceHz'));
  spec.points.forEach((p, i) => {
    inside(p.hz, at('points', i, 'hz'));
    rising(p.low, p.high, at('points', i, 'low'), '');
    if (p.target < p.low || p.target > p.high)
      complain(at('points', i, 'target'), shown(p.target), ['targetBetween', p.low, p.high]);
  });
  for (const key of ['windows', 'skirts'] as const) {
    spec[key].forEach((stretch, i) => {
      inside(stretch.fromHz, at(key, i, 'fromHz'));
      inside(stretch.toHz, at(key, i, 'toHz'));
      rising(stretch.fromHz, stretch.toHz, at(key, i, 'toHz'));
    });
    complainOfRepeats(
      spec[key].map((s) => `${s.fromHz}-${s.toHz}`),
      (i) => at(key, i),
      complain,
    );
  }
  spec.tilts.forEach((t, i) => {
    inside(t.lowHz, at('tilts', i, 'lowHz'));
    inside(t.highHz, at('tilts', i, 'highHz'));
    rising(t.lowHz, t.highHz, at('tilts', i, 'highHz'));
  });
  spec.traps.forEach((t, i) => {
    inside(t.hz, at('traps', i, 'hz'));
    if (t.notchWithinHz === 0) complain(at('traps', i, 'notchWithinHz'), ['figure', 0, 'Hz'], ['widthAboveNothing']);
  });
  spec.skirts.forEach((s, i) => {
    if (s.max === 0) complain(at('skirts', i, 'max'), ['figure', 0, ''], ['levelAboveNothing']);
  });
  spec.bandwidths.forEach((b, i) => {
    rising(b.minHz, b.maxHz, at('bandwidths', i, 'minHz'));
    if ((b.centreHz === null) !== (b.centreToleranceHz === null)) {
      complain(at('bandwidths', i), ['halfCentre'], ['wholeCentre']);
    }
    if (b.centreHz !== null) inside(b.centreHz, at('bandwidths', i, 'centreHz'));
    if (b.centreToleranceHz === 0)
      complain(at('bandwidths', i, 'centreToleranceHz'), ['figure', 0, 'Hz'], ['toleranceAboveNothing']);
  });
  complainOfRepeats(
    spec.points.map((p) => p.hz),
    (i) => at('points', i, 'hz'),
    complain,
    'Hz',
  );
  complainOfRepeats(
    spec.traps.map((t) => t.hz),
    (i) => at('traps', i, 'hz'),
    complain,
    'Hz',
  );
  complainOfRepeats(
    spec.tilts.map((t) => `${t.lowHz}-${t.highHz}`),
    (i) => at('tilts', i),
    complain,
  );
  complainOfRepeats(
    spec.bandwidths.map((b) => b.levelDb),
    (i) => at('bandwidths', i, 'levelDb'),
    complain,
    'dB',
  );
  spec.peaks.forEach((p, i) => {
    inside(p.hz, at('peaks', i, 'hz'));
    if (p.toleranceHz === 0) complain(at('peaks', i, 'toleranceHz'), ['figure', 0, 'Hz'], ['toleranceAboveNothing']);
  });
  complainOfRepeats(
    spec.peaks.map((p) => p.hz),
    (i) => at('peaks', i, 'hz'),
    complain,
    'Hz',
  );
  if (spec.gain !== null) inside(spec.gain.hz, at('gain', 'hz'));
  sCurve(spec, at, inside, complain);
  const s = spec.sCurve;
  const weights = [
    ...[spec.points, spec.windows, spec.tilts, spec.traps, spec.skirts, spec.bandwidths, spec.peaks].flat(),
    ...(s === null ? [] : [s.zero, s.separation, s.symmetry, ...(s.linearity === null ? [] : [s.linearity])]),
  ];
  const sum = weights.reduce((total, item) => total + item.weight, spec.gain?.weight ?? 0);
  if (sum <= 0) complain(at(), ['weightsOfNothing'], ['someWeight']);
}

type Inside = (hz: number, path: Path) => void;

function sCurve(spec: Specification, at: (...path: Path) => Path, inside: Inside, complain: Complain): void {
  const s = spec.sCurve;
  if (s === null) {
    spec.points.forEach((p, i) => {
      if (p.low < 0) complain(at('points', i, 'low'), shown(p.low), ['levelFromNothing']);
    });
    return;
  }
  inside(s.centreHz, at('sCurve', 'centreHz'));
  if (s.zero.toleranceHz === 0)
    complain(at('sCurve', 'zero', 'toleranceHz'), ['figure', 0, 'Hz'], ['toleranceAboveNothing']);
  if (!(s.separation.minHz < s.separation.maxHz)) {
    complain(at('sCurve', 'separation'), ['stretch', s.separation.minHz, s.separation.maxHz, 'Hz'], ['lowerFirst']);
  }
  if (s.symmetry.low === s.symmetry.high) complain(at('sCurve', 'symmetry'), ['noRoom'], ['lowBelowHigh']);
  if (s.linearity?.withinHz === 0)
    complain(at('sCurve', 'linearity', 'withinHz'), ['figure', 0, 'Hz'], ['widthAboveNothing']);
  if (spec.referenceHz !== undefined) complain(at('referenceHz'), shown(spec.referenceHz, 'Hz'), ['nothingOnSCurve']);
  for (const key of ['windows', 'tilts', 'traps', 'skirts', 'bandwidths', 'peaks'] as const) {
    if (spec[key].length > 0) complain(at(key), ['demands'], ['emptyOnSCurve']);
  }
}
