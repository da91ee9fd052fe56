/** What may be wrong with the bench, one row each, as a scenario file has it: where it stands, what it holds and from where to where. */
import { type Bounds, numberBounds } from '../files/numberBounds.ts';
import { type Life, MILD_LIFE } from '../scenario/life.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Draft } from './draft.ts';

export type FlawUnit = '°' | 'Hz' | 'F' | 'V' | 'dB' | 'Ω' | '×' | 'share';

/** The value of a flaw; null: the bench has it not. */
export type FlawValue = number | boolean | string | null;

interface AmountRow {
  readonly holds: 'number';
  readonly unit: FlawUnit;
  /** where a new card begins */
  readonly usual: number;
  readonly bounds: Bounds;
}
type Held = AmountRow | { readonly holds: 'yes' } | { readonly holds: 'slug' };

export type FlawRow = Held & {
  /** a usual bench has a little of it, so that a card may say that there is none */
  readonly isUsual?: boolean;
  read(draft: Draft): FlawValue;
  write(draft: Draft, value: FlawValue): Draft;
};

type BenchKey = Exclude<keyof Scenario['bench'], 'mainsHz'>;

const figure = (unit: FlawUnit, usual: number, ...path: readonly string[]): AmountRow => ({
  holds: 'number',
  unit,
  usual,
  bounds: numberBounds(...path),
});
const YES = { holds: 'yes' } as const;

/** `rest`: what stands in the file of a bench that has it not; undefined: nothing. */
function ofBench(key: BenchKey, held: Held, rest: 0 | false | undefined): FlawRow {
  return {
    ...held,
    read: ({ bench }) => (bench[key] === rest ? null : (bench[key] ?? null)),
    write: (draft, value) => {
      const { [key]: _, ...others } = draft.bench;
      const put = value ?? rest;
      return { ...draft, bench: { ...others, ...(put === undefined ? {} : { [key]: put }) } as Draft['bench'] };
    },
  };
}

function ofLife(key: keyof Life, held: Held): FlawRow {
  return {
    ...held,
    isUsual: Number(MILD_LIFE[key]) > 0,
    read: ({ life }) => life?.[key] ?? null,
    write: ({ life, ...draft }, value) => {
      const { [key]: _, ...others } = life ?? {};
      const left = value === null ? others : { ...others, [key]: value };
      return Object.keys(left).length === 0 ? draft : { ...draft, life: left as Partial<Life> };
    },
  };
}

const STEEL_IN: FlawRow = {
  holds: 'slug',
  read: ({ start }) => start.steelIn ?? null,
  write: (draft, value) => {
    const { steelIn: _, ...start } = draft.start;
    return { ...draft, start: value === null ? start : { ...start, steelIn: String(value) } };
  },
};

const FLAW_ROWS = {
  phaseLag: ofBench('phaseLagDegrees', figure('°', 14, 'bench', 'phaseLagDegrees'), 0),
  xSwapped: ofBench('xSwapped', YES, false),
  dialError: ofBench('dialErrorHz', figure('Hz', -60e3, 'bench', 'dialErrorHz'), 0),
  centreError: ofBench('centreErrorHz', figure('Hz', 200e3, 'bench', 'centreErrorHz'), undefined),
  steelIn: STEEL_IN,
  cold: ofLife('cold', YES),
  noise: ofLife('noise', figure('×', 2, 'life', 'noise')),
  drift: ofLife('driftFarads', figure('F', 0.4e-12, 'life', 'driftFarads')),
  biasHum: ofLife('biasHumVolts', figure('V', 0.1, 'life', 'biasHumVolts')),
  supplyHum: ofLife('supplyHum', figure('share', 0.05, 'life', 'supplyHum')),
  uneven: ofLife('unevenDb', figure('dB', 1, 'life', 'unevenDb')),
  leakage: ofLife('leakageDb', { ...figure('dB', -50, 'life', 'leakageDb') }),
  harmonic: ofLife('harmonicDb', figure('dB', -20, 'life', 'harmonicDb')),
  hand: ofLife('handFarads', figure('F', 0.1e-12, 'life', 'handFarads')),
  biasKnob: ofLife('biasKnobError', figure('share', 0.1, 'life', 'biasKnobError')),
  biasOhms: ofLife('biasOhms', figure('Ω', 10e3, 'life', 'biasOhms')),
  crystalHarmonics: ofLife('crystalHarmonics', figure('share', 0.8, 'life', 'crystalHarmonics')),
  yGain: ofLife('yGainError', figure('share', 0.2, 'life', 'yGainError')),
  strapHum: ofLife('strapHumVolts', figure('V', 0.15, 'life', 'strapHumVolts')),
} as const satisfies Readonly<Record<string, FlawRow>>;

export type FlawId = keyof typeof FLAW_ROWS;

export const FLAWS = Object.keys(FLAW_ROWS) as readonly FlawId[];

export const flawRow = (id: FlawId): FlawRow => FLAW_ROWS[id];

/** The card takes away what a usual bench has. */
export const isStilled = (id: FlawId, draft: Draft): boolean => {
  const row = flawRow(id);
  return row.isUsual === true && row.read(draft) === 0;
};

/** What a new card says; of a slug the first. */
export function usualFlaw(id: FlawId, slugs: readonly string[]): FlawValue {
  const row = flawRow(id);
  if (row.holds === 'number') return row.usual;
  return row.holds === 'yes' ? true : (slugs[0] ?? null);
}
