/**
 * The guide through a first bench: a table of steps, in the order of the work. Each says when it stands, which part of the bench is meant, and which ordinary acts
 * show it. Nothing is remembered: the step in hand is the first that does not stand. A slug is shown by one eighth at most, and what was seen is never said
 * for anybody: the curve is brought in, and proved, by the one who looks. Pure.
 */
import type { BenchEvent, ControlId } from '../bench/benchEvent.ts';
import type { BenchState, LeadId } from '../bench/benchState.ts';
import { type BenchSetup, firstResponse, initialState } from '../bench/setup.ts';
import { sheetFittings, sheetLeads } from '../bench/sheetSetUp.ts';
import { toolFor } from '../bench/tools.ts';
import { findingsOf } from '../bench/witness.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import type { ProofId } from '../scenario/proofId.ts';
import type { MissingCode } from '../session/missing.ts';
import type { Phase, SessionView } from '../session/phase.ts';
import type { GuideStepId } from '../words/guideSaid.ts';
import { lackOfStep, type StepLack } from './steps.ts';

/** The part of the bench that is meant. */
export type GuideSpot =
  | { readonly kind: 'control'; readonly control: ControlId }
  | { readonly kind: 'lead'; readonly lead: LeadId; readonly to: string }
  | { readonly kind: 'crystal'; readonly hz: number }
  | { readonly kind: 'slug'; readonly slug: string; readonly way?: 'in' | 'out' }
  | { readonly kind: 'isolation' | 'mains' | 'tool' | 'finding' | 'sign' };

export interface GuideMoment {
  readonly setup: BenchSetup;
  readonly state: BenchState;
  readonly session: SessionView;
}

export interface GuideStep {
  readonly id: string;
  readonly words: GuideStepId;
  readonly phase: Phase;
  /** what it asks for is so */
  stands(moment: GuideMoment): boolean;
  spot(moment: GuideMoment): GuideSpot;
  /** acts that show it; none where only the learner can */
  show(moment: GuideMoment): readonly BenchEvent[];
  /** of a slug's step: the slug to turn, and how far it is off; undefined while the picture settles or where no slug is to blame */
  off?(moment: GuideMoment): StepLack['slug'];
}

const EIGHTH = 1 / 8;
/** A slug this near to where it belongs needs no guide any more: one just inside the sheet still shows a lean to every eye. */
const NEAR_TURNS = 0.25;
/** Within what the sheet allows the two traces still stand apart to every eye; within this they are one line. */
const ONE_TRACE_DEGREES = 1;
const HALF_DB = 6;
const SWING_DEGREES = 15;
/** the trace with its base line low on the graticule */
const LOW_BASE_DIV = -3.5;
export const SMALL_PIP_DIV = 0.3;

const set = (control: ControlId, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});

const lacks = ({ session }: GuideMoment, phase: Phase, codes: readonly MissingCode[]): boolean =>
  codes.some((code) => session.missing[phase].includes(code));

export function guideSteps(setup: BenchSetup): readonly GuideStep[] {
  const { receiver, scenario } = setup;
  const response = firstResponse(setup);
  const { setUp } = response;
  const ends = sheetLeads(receiver, response);
  const fittings = sheetFittings(setUp);
  const asFound = initialState(setup).slugs;
  const finding = ({ state }: GuideMoment, proof: ProofId) => findingsOf(setup, state)[proof];
  /** What does not fit the picture is not said yet: the card still asks, or the act is to be done again. */
  const said = (moment: GuideMoment, proof: ProofId): boolean => finding(moment, proof) === 'right';
  const allSaid = (moment: GuideMoment): boolean => scenario.proofs.every((proof) => said(moment, proof));
  const provedAny = ({ state }: GuideMoment): boolean => scenario.proofs.some((proof) => state.proofs[proof].done);
  /** A proof moves what the set-up has put right, and puts it back. */
  const proving = (moment: GuideMoment): boolean => moment.session.done.align && !allSaid(moment);

  const spanStands = ({ state: { controls } }: GuideMoment): boolean =>
    Math.abs(controls.spanHz - setUp.spanHz) <= setUp.spanHz / 10;
  const centreStands = ({ state: { controls } }: GuideMoment): boolean =>
    Math.abs(controls.centreHz - setUp.centreHz) <= setUp.spanHz / 20;

  const clip = (words: GuideStepId, lead: LeadId, codes: readonly MissingCode[]): GuideStep => ({
    id: words,
    words,
    phase: 'connect',
    stands: (moment) => !lacks(moment, 'connect', codes),
    spot: () => ({ kind: 'lead', lead, to: ends[lead]! }),
    show: () => [{ type: 'leadConnected', lead, to: ends[lead]! }],
  });
  const screwed = (words: GuideStepId, control: keyof typeof fittings, code: MissingCode): GuideStep => ({
    id: words,
    words,
    phase: 'connect',
    stands: (moment) => !lacks(moment, 'connect', [code]),
    spot: () => ({ kind: 'control', control }),
    show: () => [set(control, fittings[control])],
  });
  const knob = (
    words: GuideStepId,
    control: ControlId,
    stands: (moment: GuideMoment) => boolean,
    show: readonly BenchEvent[],
    meant: (moment: GuideMoment) => ControlId = () => control,
  ): GuideStep => ({
    id: words,
    words,
    phase: 'setUp',
    stands: (moment) => proving(moment) || stands(moment),
    spot: (moment) => ({ kind: 'control', control: meant(moment) }),
    show: () => show,
  });
  const slug = (at: number): GuideStep => {
    const id = receiver.procedure[at]!.slugs[0]!;
    const adjuster = receiver.adjusters.find((one) => one.id === id)!;
    const lack = (moment: GuideMoment): StepLack | null => {
      const { session, state } = moment;
      const missing = lackOfStep(receiver, at, session);
      if (missing !== null || provedAny(moment)) return missing;
      const turns = state.slugs[id]!.coreTurns - nominalTurns(adjuster);
      return Math.abs(turns) > NEAR_TURNS ? { code: 'linesOutside', slug: { id, turns } } : null;
    };
    return {
      id: `slug ${id}`,
      words: 'slug',
      phase: 'align',
      stands: (moment) => lack(moment) === null,
      spot(moment) {
        const off = lack(moment)?.slug;
        return off === undefined
          ? { kind: 'slug', slug: id }
          : { kind: 'slug', slug: off.id, way: off.turns < 0 ? 'in' : 'out' };
      },
      off: (moment) => lack(moment)?.slug,
      show(moment) {
        const off = lack(moment)?.slug;
        if (off === undefined) return [];
        const untouched = moment.state.slugs[off.id]!.screwTurns === asFound[off.id]!.screwTurns;
        return untouched ? [{ type: 'slugTurned', slug: off.id, turns: off.turns > 0 ? -EIGHTH : EIGHTH }] : [];
      },
    };
  };
  const proof = (
    id: ProofId,
    words: 'halveLevel' | 'swingPhase',
    control: 'levelDb' | 'phasingDegrees',
    stood: number,
    by: number,
  ): readonly GuideStep[] => [
    {
      id: words,
      words,
      phase: 'prove',
      stands: (moment) => moment.state.proofs[id].done && finding(moment, id) !== 'again',
      spot: () => ({ kind: 'control', control }),
      // One press away, and the next one back: in between there is something to see.
      show({ state }) {
        const now = state.controls[control];
        const from = state.proofs[id].from ?? stood;
        return [set(control, Math.abs(now - from) > by / 2 ? from : now - by)];
      },
    },
    {
      id: `${words} seen`,
      words: 'finding',
      phase: 'prove',
      stands: (moment) => said(moment, id),
      spot: () => ({ kind: 'finding' }),
      show: () => [],
    },
  ];

  const aligning = receiver.procedure.flatMap(({ phase }, at) => (phase === 'align' ? [slug(at)] : []));
  const head = receiver.adjusters[0]!.head;
  return [
    clip('earth', 'earth', ['notEarthed']),
    clip('rf', 'rf', ['rfNotConnected', 'rfWrongPoint']),
    screwed('pad', 'rfTerminated', 'rfNotTerminated'),
    screwed('capacitor', 'rfCapacitor', 'rfNoCapacitor'),
    clip('probe', 'y', ['yWrongPoint']),
    screwed('tip', 'yTip', 'yWrongTip'),
    clip('x', 'x', ['xNotConnected']),
    knob(
      'sweep',
      'spanHz',
      (moment) => spanStands(moment) && centreStands(moment),
      [set('centreHz', setUp.centreHz), set('spanHz', setUp.spanHz)],
      (moment) => (centreStands(moment) ? 'spanHz' : 'centreHz'),
    ),
    knob(
      'level',
      'levelDb',
      (moment) =>
        Math.abs(moment.state.controls.levelDb - setUp.levelDb) <= HALF_DB / 2 &&
        !lacks(moment, 'setUp', ['overloaded', 'tooWeak', 'nothingOnTube']),
      [set('levelDb', setUp.levelDb)],
    ),
    knob(
      'phasing',
      'phasingDegrees',
      (moment) =>
        !lacks(moment, 'setUp', ['phaseOff']) &&
        Math.abs(moment.state.controls.phasingDegrees + scenario.bench.phaseLagDegrees) <= ONE_TRACE_DEGREES,
      [set('phasingDegrees', -scenario.bench.phaseLagDegrees)],
    ),
    knob('blanking', 'blanking', (moment) => !lacks(moment, 'setUp', ['blankingOff']), [set('blanking', true)]),
    // Only now: until the retrace is blanked the trace is a hair lower, and would ask for more gain than the face has room for once the slugs stand right.
    knob(
      'height',
      'yPositionDiv',
      (moment) => !lacks(moment, 'setUp', ['traceTooLow', 'traceOffScreen']),
      [set('yVoltsPerDiv', 0.1), set('yPositionDiv', LOW_BASE_DIV)],
      (moment) => (lacks(moment, 'setUp', ['traceOffScreen']) ? 'yPositionDiv' : 'yVoltsPerDiv'),
    ),
    {
      id: 'crystals',
      words: 'crystals',
      phase: 'setUp',
      stands: ({ state }) => setUp.markersHz.every((hz) => state.crystals.includes(hz)),
      spot: ({ state }) => ({
        kind: 'crystal',
        hz: setUp.markersHz.find((hz) => !state.crystals.includes(hz)) ?? setUp.markersHz[0]!,
      }),
      show: ({ state }) =>
        setUp.markersHz
          .filter((hz) => !state.crystals.includes(hz))
          .slice(0, 1)
          .map((hz) => ({ type: 'crystalPlugged', hz })),
    },
    knob('pips', 'pipHeightDiv', (moment) => !lacks(moment, 'setUp', ['pipsTooHigh', 'pipsTooLow']), [
      set('pipHeightDiv', SMALL_PIP_DIV),
    ]),
    {
      id: 'tool',
      words: 'tool',
      phase: 'align',
      stands: ({ state, session }) => session.done.align || state.tool === toolFor(head),
      spot: () => ({ kind: 'tool' }),
      show: () => [{ type: 'toolTaken', tool: toolFor(head) }],
    },
    ...aligning,
    ...(scenario.proofs.includes('halveLevel')
      ? proof('halveLevel', 'halveLevel', 'levelDb', setUp.levelDb, HALF_DB)
      : []),
    ...(scenario.proofs.includes('swingPhase')
      ? proof('swingPhase', 'swingPhase', 'phasingDegrees', -scenario.bench.phaseLagDegrees, SWING_DEGREES)
      : []),
    {
      id: 'sign',
      words: 'sign',
      phase: 'prove',
      stands: ({ state }) => state.signedOff,
      spot: () => ({ kind: 'sign' }),
      show: () => [],
    },
  ];
}

/** Whether the knob that a step means goes up from where it stands to where the step would show it. */
export function goesUp(step: GuideStep, moment: GuideMoment): boolean {
  const spot = step.spot(moment);
  if (spot.kind !== 'control') return false;
  const now = moment.state.controls[spot.control];
  return step
    .show(moment)
    .some((event) => event.type === 'controlSet' && event.control === spot.control && event.value > now);
}

/** Number of the step in hand, from 0. */
export function guideStepNow(steps: readonly GuideStep[], moment: GuideMoment): number {
  const at = steps.findIndex((step) => !step.stands(moment));
  return at < 0 ? steps.length - 1 : at;
}
