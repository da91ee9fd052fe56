/** What must hold inside a specification beyond its shape: stretches that run upwards, limits that enclose their target, each demand once. */
import type { Unit } from '../base/phrases.ts';
import type { Specification } from '../receiver/receiver.ts';
import { type Complain, complainOfRepeats, type Path } from './complaints.ts';
import { asFarAsKnown, eachKnown, picked } from './known.ts';
import { shown } from './schemaProblems.ts';

export function specificationConsistency(spec: Specification, place: Path, complain: Complain): void {
  const at = (...path: Path): Path => [...place, ...path];
  const rising = (ends: () => readonly [number, number], path: Path, unit: Unit = 'Hz'): void => {
    asFarAsKnown(() => {
      const [low, high] = ends();
      asFarAsKnown(() => {
        if (!(low < high)) complain(path, ['stretch', low, high, unit], ['lowerFirst']);
      });
    });
  };
  const inside: Inside = (given, path) => {
    asFarAsKnown(() => {
      const hz = given();
      if (hz === null || hz === undefined || (hz >= spec.fromHz && hz <= spec.toHz)) return;
      complain(path, shown(hz, 'Hz'), ['from', spec.fromHz, spec.toHz, 'Hz']);
    });
  };

  rising(() => [spec.fromHz, spec.toHz], at('toHz'));
  inside(() => spec.referenceHz, at('referenceHz'));
  eachKnown(
    () => spec.points,
    (p, i) => {
      inside(() => p.hz, at('points', i, 'hz'));
      rising(() => [p.low, p.high], at('points', i, 'low'), '');
      asFarAsKnown(() => {
        if (p.target < p.low || p.target > p.high)
          complain(at('points', i, 'target'), shown(p.target), ['targetBetween', p.low, p.high]);
      });
    },
  );
  for (const key of ['windows', 'skirts'] as const) {
    eachKnown(
      () => spec[key] as readonly Stretch[],
      (stretch, i) => {
        inside(() => stretch.fromHz, at(key, i, 'fromHz'));
        inside(() => stretch.toHz, at(key, i, 'toHz'));
        rising(() => [stretch.fromHz, stretch.toHz], at(key, i, 'toHz'));
      },
    );
    complainOfRepeats(
      picked(
        () => spec[key] as readonly Stretch[],
        (s) => `${s.fromHz}-${s.toHz}`,
      ),
      (i) => at(key, i),
      complain,
    );
  }
  eachKnown(
    () => spec.tilts,
    (t, i) => {
      inside(() => t.lowHz, at('tilts', i, 'lowHz'));
      inside(() => t.highHz, at('tilts', i, 'highHz'));
      rising(() => [t.lowHz, t.highHz], at('tilts', i, 'highHz'));
    },
  );
  eachKnown(
    () => spec.traps,
    (t, i) => {
      inside(() => t.hz, at('traps', i, 'hz'));
      asFarAsKnown(() => {
        if (t.notchWithinHz === 0)
          complain(at('traps', i, 'notchWithinHz'), ['amount', 0, 'Hz'], ['widthAboveNothing']);
      });
    },
  );
  eachKnown(
    () => spec.skirts,
    (s, i) => {
      asFarAsKnown(() => {
        if (s.max === 0) complain(at('skirts', i, 'max'), ['amount', 0, ''], ['levelAboveNothing']);
      });
    },
  );
  eachKnown(
    () => spec.bandwidths,
    (b, i) => {
      rising(() => [b.minHz, b.maxHz], at('bandwidths', i, 'minHz'));
      asFarAsKnown(() => {
        if ((b.centreHz === null) !== (b.centreToleranceHz === null)) {
          complain(at('bandwidths', i), ['halfCentre'], ['wholeCentre']);
        }
      });
      inside(() => b.centreHz, at('bandwidths', i, 'centreHz'));
      asFarAsKnown(() => {
        if (b.centreToleranceHz === 0)
          complain(at('bandwidths', i, 'centreToleranceHz'), ['amount', 0, 'Hz'], ['toleranceAboveNothing']);
      });
    },
  );
  complainOfRepeats(
    picked(
      () => spec.points,
      (p) => p.hz,
    ),
    (i) => at('points', i, 'hz'),
    complain,
    'Hz',
  );
  complainOfRepeats(
    picked(
      () => spec.traps,
      (t) => t.hz,
    ),
    (i) => at('traps', i, 'hz'),
    complain,
    'Hz',
  );
  complainOfRepeats(
    picked(
      () => spec.tilts,
      (t) => `${t.lowHz}-${t.highHz}`,
    ),
    (i) => at('tilts', i),
    complain,
  );
  complainOfRepeats(
    picked(
      () => spec.bandwidths,
      (b) => b.levelDb,
    ),
    (i) => at('bandwidths', i, 'levelDb'),
    complain,
    'dB',
  );
  eachKnown(
    () => spec.peaks,
    (p, i) => {
      inside(() => p.hz, at('peaks', i, 'hz'));
      asFarAsKnown(() => {
        if (p.toleranceHz === 0)
          complain(at('peaks', i, 'toleranceHz'), ['amount', 0, 'Hz'], ['toleranceAboveNothing']);
      });
    },
  );
  complainOfRepeats(
    picked(
      () => spec.peaks,
      (p) => p.hz,
    ),
    (i) => at('peaks', i, 'hz'),
    complain,
    'Hz',
  );
  inside(() => spec.gain?.hz, at('gain', 'hz'));
  asFarAsKnown(() => sCurve(spec, at, inside, complain));
  asFarAsKnown(() => {
    const s = spec.sCurve;
    const weights = [
      ...[spec.points, spec.windows, spec.tilts, spec.traps, spec.skirts, spec.bandwidths, spec.peaks].flat(),
      ...(s === null ? [] : [s.zero, s.separation, s.symmetry, ...(s.linearity === null ? [] : [s.linearity])]),
    ];
    const sum = weights.reduce((total, item) => total + item.weight, spec.gain?.weight ?? 0);
    if (sum <= 0) complain(at(), ['weightsOfNothing'], ['someWeight']);
  });
}

interface Stretch {
  readonly fromHz: number;
  readonly toHz: number;
}

/** What is left out, or null, is nowhere. */
type Inside = (hz: () => number | null | undefined, path: Path) => void;

function sCurve(spec: Specification, at: (...path: Path) => Path, inside: Inside, complain: Complain): void {
  const s = spec.sCurve;
  if (s === null) {
    eachKnown(
      () => spec.points,
      (p, i) => {
        if (p.low < 0) complain(at('points', i, 'low'), shown(p.low), ['levelFromNothing']);
      },
    );
    return;
  }
  inside(() => s.centreHz, at('sCurve', 'centreHz'));
  asFarAsKnown(() => {
    if (s.zero.toleranceHz === 0)
      complain(at('sCurve', 'zero', 'toleranceHz'), ['amount', 0, 'Hz'], ['toleranceAboveNothing']);
  });
  asFarAsKnown(() => {
    if (!(s.separation.minHz < s.separation.maxHz)) {
      complain(at('sCurve', 'separation'), ['stretch', s.separation.minHz, s.separation.maxHz, 'Hz'], ['lowerFirst']);
    }
  });
  asFarAsKnown(() => {
    if (s.symmetry.low === s.symmetry.high) complain(at('sCurve', 'symmetry'), ['noRoom'], ['lowBelowHigh']);
  });
  asFarAsKnown(() => {
    if (s.linearity?.withinHz === 0)
      complain(at('sCurve', 'linearity', 'withinHz'), ['amount', 0, 'Hz'], ['widthAboveNothing']);
  });
  asFarAsKnown(() => {
    if (spec.referenceHz !== undefined) complain(at('referenceHz'), shown(spec.referenceHz, 'Hz'), ['nothingOnSCurve']);
  });
  asFarAsKnown(() => {
    for (const key of ['windows', 'tilts', 'traps', 'skirts', 'bandwidths', 'peaks'] as const) {
      if (spec[key].length > 0) complain(at(key), ['demands'], ['emptyOnSCurve']);
    }
  });
}
