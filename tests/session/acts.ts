/** What a good hand does at the bench, as plain lists of acts made from the receiver and the scenario: for tests and for driving the page. */

import { applyEvent } from '../../src/bench/applyEvent.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState, LeadId } from '../../src/bench/benchState.ts';
import { BIAS_OUTPUTS } from '../../src/bench/biasOutputs.ts';
import { choicesOf } from '../../src/bench/controlRange.ts';
import { mirrorFor } from '../../src/bench/deflection.ts';
import { type BenchSetup, firstResponse, initialState } from '../../src/bench/setup.ts';
import { PLAIN_PICTURE, settings, sheetControls, sheetFittings, sheetLeads } from '../../src/bench/sheetSetUp.ts';
import { inPieces } from '../../src/bench/slugTurning.ts';
import { toolFor } from '../../src/bench/tools.ts';
import { trueFinding } from '../../src/bench/witness.ts';
import { trueDiagnosis } from '../../src/grading/diagnosis.ts';
import { setCurves } from '../../src/grading/setCurves.ts';
import { cureOf } from '../../src/receiver/faults/cure.ts';
import { responseById } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { PROOFS, type ProofId } from '../../src/scenario/proofId.ts';

type Acts = readonly BenchEvent[];

const set = (
  control: Extract<BenchEvent, { type: 'controlSet' }>['control'],
  value: number | boolean | string,
): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});

export function safetyActs({ receiver, scenario }: BenchSetup): Acts {
  if (scenario.start.prepared.includes('safe')) return [];
  return receiver.mains === null
    ? [{ type: 'cautionsAcknowledged' }]
    : [{ type: 'cautionsAcknowledged' }, { type: 'isolationSwitched', on: true }];
}

/** Leads on a set that is off, then the switch; where the bench was made ready, what is not as the sheet wants it. */
export function connectionActs(setup: BenchSetup, state: BenchState = initialState(setup)): Acts {
  const { receiver } = setup;
  const response = firstResponse(setup);
  const clips = Object.entries(sheetLeads(receiver, response)).flatMap(([lead, to]): BenchEvent[] =>
    to === null || state.leads[lead as LeadId] === to ? [] : [{ type: 'leadConnected', lead: lead as LeadId, to }],
  );
  const ends = settings(sheetFittings(response.setUp)).flatMap(([control, value]) =>
    state.controls[control] === value ? [] : [set(control, value)],
  );
  return onASetThatIsOff(setup, state, [...clips, ...ends]);
}

/** Every part that has failed replaced, every bad contact made again. */
export function cureActs(setup: BenchSetup, state: BenchState): Acts {
  const { receiver, deck, scenario } = setup;
  const acts = scenario.faults.flatMap((fault): BenchEvent[] => {
    const cure = cureOf(fault, receiver, deck);
    if (cure.kind === 'replace') return [{ type: 'partReplaced', element: cure.part }];
    if (cure.kind === 'turn') return [];
    return [
      { type: 'leadRemoved', lead: cure.lead },
      { type: 'leadConnected', lead: cure.lead, to: state.leads[cure.lead]! },
    ];
  });
  return onASetThatIsOff(setup, state, acts);
}

function onASetThatIsOff({ receiver }: BenchSetup, state: BenchState, acts: Acts): Acts {
  if (receiver.mains === null) return acts;
  if (!state.powered) return [...acts, { type: 'powerSwitched', on: true }];
  if (acts.length === 0) return acts;
  return [{ type: 'powerSwitched', on: false }, ...acts, { type: 'powerSwitched', on: true }];
}

/** Everything that the sheet asks of the knobs; `yActs` follow, made for the height of the trace. */
export function setUpActs(setup: BenchSetup): Acts {
  const { scenario } = setup;
  const { setUp } = firstResponse(setup);
  const { controls } = initialState(setup);
  const source = {
    ...sheetControls(setUp),
    centreHz: setUp.centreHz - (scenario.bench.centreErrorHz ?? 0),
    phasingDegrees: -scenario.bench.phaseLagDegrees,
    mirror: mirrorFor(setup, setUp.lowFrequencyAtLeft),
    blanking: true,
  };
  const moved = settings(PLAIN_PICTURE).filter(([control, value]) => controls[control] !== value);
  // Knobs are set as the sheet says, wherever they stand; switches are flipped where they stand otherwise.
  const wanted = settings(source).filter(
    ([control, value]) => controls[control] !== value || !['sourceMode', 'slowSweep'].includes(control),
  );
  return [
    ...wanted.map(([control, value]) => set(control, value)),
    ...setUp.markersHz.map((hz): BenchEvent => ({ type: 'crystalPlugged', hz })),
    set('pipHeightDiv', 0.3),
    ...moved.map(([control, value]) => set(control, value)),
  ];
}

/** A trace that is taller, from half a division above the lower edge, has its top too near the upper one to be read. */
const READ_DIV = 7.4;

/** Y gain and position that show the trace as tall as can be read: by steps down from the tallest, until one is on the screen. */
export function yActs(setup: BenchSetup, state: BenchState): Acts {
  const { bench } = setCurves(setup);
  const gains = choicesOf(setup, 'yVoltsPerDiv')
    .map(Number)
    .toSorted((a, b) => a - b);
  let best: Acts = [];
  let bestHeight = 0;
  for (const gain of gains) {
    if (bestHeight > 0) break;
    for (const position of [-3.5, 0, 3.5]) {
      const acts = [set('yVoltsPerDiv', gain), set('yPositionDiv', position)];
      const facts = bench.facts(stateAfter(setup, acts, state));
      if (facts.traceOnScreen && facts.traceHeightDiv <= READ_DIV && facts.traceHeightDiv > bestHeight) {
        best = acts;
        bestHeight = facts.traceHeightDiv;
      }
    }
  }
  return best;
}

/** Every slug to its nominal place, backlash and all, with the tool that fits. */
export function alignmentActs({ receiver }: BenchSetup, state: BenchState): Acts {
  return receiver.adjusters.flatMap((adjuster): BenchEvent[] => {
    const core = state.slugs[adjuster.id]!.coreTurns;
    const away = nominalTurns(adjuster) - core;
    if (away === 0) return [];
    const whole = away + (Math.sign(away) * adjuster.backlashTurns) / 2;
    return [
      { type: 'toolTaken', tool: toolFor(adjuster.head) },
      ...inPieces(whole).map((turns): BenchEvent => ({ type: 'slugTurned', slug: adjuster.id, turns })),
      { type: 'toolTaken', tool: null },
    ];
  });
}

/** All proofs that can be made on a set: without a bias line there is none to meter. */
export function proofsOn({ receiver }: Pick<BenchSetup, 'receiver'>): readonly ProofId[] {
  return PROOFS.filter((proof) => proof !== 'bias' || receiver.responses[0]!.setUp.biases.length > 0);
}

export function proofActs(proof: ProofId, setup: BenchSetup, state: BenchState): Acts {
  const { receiver } = setup;
  const { controls } = state;
  switch (proof) {
    case 'halveLevel':
      return [set('levelDb', controls.levelDb - 6), set('levelDb', controls.levelDb)];
    case 'markersOffOn':
      return [set('pipHeightDiv', 0), set('pipHeightDiv', controls.pipHeightDiv)];
    case 'touchEarth':
      return [
        { type: 'leadRemoved', lead: 'earth' },
        { type: 'leadConnected', lead: 'earth', to: earthPoint(receiver) },
      ];
    case 'swingPhase':
      return [set('phasingDegrees', controls.phasingDegrees - 15), set('phasingDegrees', controls.phasingDegrees)];
    case 'liftCrystal': {
      const [hz] = state.crystals;
      return hz === undefined
        ? []
        : [
            { type: 'crystalPulled', hz },
            { type: 'crystalPlugged', hz },
          ];
    }
    case 'bias': {
      const at = state.leads.biasA;
      if (at === null) return [];
      return [
        set('meterMode', 'dc'),
        { type: 'leadConnected', lead: 'meter', to: at },
        { type: 'leadRemoved', lead: 'meter' },
      ];
    }
    case 'skirts':
    case 'pipDown': {
      const larger = choicesOf(setup, 'yVoltsPerDiv')
        .filter((gain) => Number(gain) <= controls.yVoltsPerDiv / 4)
        .at(-1);
      // With the gain at its end already the level makes the picture larger.
      if (larger === undefined) return [set('levelDb', controls.levelDb + 12), set('levelDb', controls.levelDb)];
      return [set('yVoltsPerDiv', larger), set('yVoltsPerDiv', controls.yVoltsPerDiv)];
    }
  }
}

/** From first act to signing: the whole job as it should be done. */
/** `stepSeconds` from act to act: what is seen at a proof may hang on the clock. */
export function wholeJob(setup: BenchSetup, stepSeconds = 0.1): Acts {
  const acts: BenchEvent[] = [];
  let state = initialState(setup);
  const take = (more: Acts): void => {
    acts.push(...more);
    state = stateAfter(setup, more, state, stepSeconds);
  };
  take(safetyActs(setup));
  take(connectionActs(setup, state));
  take(cureActs(setup, state));
  take(setUpActs(setup));
  take(needleActs(setup, state));
  take(alignmentActs(setup, state));
  take(yActs(setup, state));
  for (const proof of setup.scenario.proofs) {
    // What setting up happened to prove was made on another picture.
    if (setup.scenario.sealed && state.proofs[proof].done)
      take([{ type: 'findingStated', proof, answer: 'again', figure: null }]);
    take(proofActs(proof, setup, state));
    take([trueFinding(setup, state, proof)]);
  }
  const diagnosis = trueDiagnosis(setup);
  if (diagnosis !== null) take([diagnosis]);
  take([{ type: 'signedOff' }]);
  return acts;
}

/** A line that the supply's knob leaves too far off is brought to its volts as the needle has them. */
function needleActs(setup: BenchSetup, state: BenchState): Acts {
  const facts = setCurves(setup).bench.facts(state);
  const wanted = responseById(setup.receiver, facts.response).setUp.biases;
  return facts.biases.flatMap(({ errorVolts, toleranceVolts }, i) => {
    const output = BIAS_OUTPUTS[i];
    if (output === undefined || Math.abs(errorVolts) <= toleranceVolts / 2) return [];
    const { volts } = wanted[i]!;
    const said = (Math.abs(state.controls[output.volts]) * volts) / (volts + errorVolts);
    return [set(output.volts, Math.round(said * 100) / 100)];
  });
}

/** Takes every act, a tenth of a second apart unless told; what is so already is passed over, any other refusal is an error. */
export function stateAfter(setup: BenchSetup, acts: Acts, from: BenchState, stepSeconds = 0.1): BenchState {
  let state = from;
  for (const act of acts) {
    const applied = applyEvent(setup, state, act, state.seconds + stepSeconds);
    if (applied.ok) state = applied.state;
    else if (applied.reason !== 'alreadySo' && applied.reason !== 'crystalAlreadyIn') {
      throw new Error(`${applied.reason}: ${JSON.stringify(act)}`);
    }
  }
  return state;
}

function earthPoint({ testPoints }: BenchSetup['receiver']): string {
  const earth = testPoints.find((point) => point.role === 'earth');
  if (earth === undefined) throw new Error('a receiver without an earth point');
  return earth.id;
}
