/**
 * A good capacitor clipped across one that is suspected. The circuit is held against ngspice on a deck that is written by hand here: the part as it failed, the good one
 * beside it, and a picofarad to earth from each clip. What the trade says of a bridge is common practice, no source: an open one shows itself, a leaky one does not.
 */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { connectedDeck } from '../../src/bench/connections.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { grade, gradeUnder } from '../../src/grading/grade.ts';
import { buildNetwork } from '../../src/physics/buildNetwork.ts';
import { createSolver } from '../../src/physics/solver.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import { faultEffects } from '../../src/receiver/faults/faultEffects.ts';
import { partsTray } from '../../src/receiver/faults/partsTray.ts';
import { replay } from '../../src/run/replay.ts';
import { appendEvent, createRun } from '../../src/run/runLog.ts';
import { shippedReceiver, shippedTexts } from '../files/shipped.ts';
import { runSpice } from '../physics/ngspice.ts';
import { wholeJob } from '../session/acts.ts';
import { canSetup, play, readySetup, refusal, stripSetup } from './fixture.ts';
import { heights, trace } from './look.ts';

const bridge = (element: string | null): BenchEvent => ({ type: 'partBridged', element });
const strip = (...faults: readonly Fault[]): BenchSetup => readySetup(stripSetup, { faults });
const off: BenchEvent = { type: 'powerSwitched', on: false };
const on: BenchEvent = { type: 'powerSwitched', on: true };
const seen = (setup: BenchSetup, state: BenchState): number[] =>
  heights(trace(createBench(setup).display({ ...state, seconds: 100 })));
const apart = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((worst, v, i) => Math.max(worst, Math.abs(v - b[i]!)), 0);

type Edit = (text: string) => string;
const value =
  (name: string, to: string): Edit =>
  (text) =>
    text.replace(new RegExp(`^(${name}\\s+\\S+\\s+\\S+\\s+)\\S+`, 'im'), `$1${to}`);
const more =
  (...lines: readonly string[]): Edit =>
  (text) =>
    text.replace(/^\.ac /im, `${lines.join('\n')}\n.ac `);

const VALVE = 'video-valve-45m';
const CASES: readonly (readonly [string, string, Fault, string, readonly Edit[]])[] = [
  [
    'an open one, one end on earth',
    'fm-10m7',
    { kind: 'openCapacitor', element: 'C2p', farads: 8e-12 },
    'C2p',
    [value('C2p', '8p'), more('Cgood p1 0 56p', 'Cclip p1 0 1p')],
  ],
  [
    'a drifted one, both ends hot',
    'video-solid-45m',
    { kind: 'driftedCapacitor', element: 'C39a', factor: 1.6 },
    'C39a',
    [value('C39a', '256p'), more('Cgood x1 m39 160p', 'Cclip x1 0 1p', 'Cclop m39 0 1p')],
  ],
  [
    'a good one, with something else wrong',
    VALVE,
    { kind: 'openResistor', element: 'Rp1' },
    'C39',
    [value('Rp1', '120meg'), more('Cgood t39 0 47p', 'Cclip t39 0 1p')],
  ],
  [
    'an open bypass',
    VALVE,
    { kind: 'openBypass', element: 'G2', ohms: 180 },
    'bypass:G2',
    [
      (t) => t.replace(/^G2 p2 0 p1 0 /im, 'G2 p2 k p1 k ').replace(/^Rgp1 p1 0 /im, 'Rgp1 p1 k '),
      more('Rk k 0 180', 'Cgood k 0 0.1u', 'Cclip k 0 1p'),
    ],
  ],
  [
    'an open decoupling',
    VALVE,
    { kind: 'openDecoupling', first: 'Lp1', second: 'Lp2', ohms: 0.5 },
    'decoupling:Lp2',
    [
      (t) => t.replace(/^(Lp[12] p[12]) 0 /gim, '$1 supply '),
      more('Rhot supply 0 0.5', 'Cgood supply 0 0.1u', 'Cclip supply 0 1p'),
    ],
  ],
  [
    'a coupling: two clips on one point',
    VALVE,
    { kind: 'openResistor', element: 'Rp1' },
    'coupling:G2',
    [value('Rp1', '120meg'), more('Cclip p1 0 1p', 'Cclop p1 0 1p')],
  ],
];

describe('the circuit under a bridge', () => {
  it.each(CASES)('%s, of %s: all nodes as in ngspice', async (_, id, fault, part, edits) => {
    const { receiver, deck } = shippedReceiver(id);
    const { fromHz, toHz } = receiver.responses[0]!.specification;
    const text = edits
      .reduce((t, edit) => edit(t), shippedTexts()[`receivers/${id}/network.cir`]!)
      .replace(/^(I\S+\s+\S+\s+\S+).*$/gim, '$1 AC 1u')
      .replace(/^\.ac .*$/im, `.ac lin 141 ${fromHz} ${toHz}`);
    const spice = await runSpice(text);
    const effects = faultEffects(receiver, deck, [fault], []);
    const whole = connectedDeck(
      { receiver: effects.receiver, deck: effects.deck, design: { receiver, deck }, scenario: strip().scenario },
      {
        ...{ rf: null, terminated: true, y: null, tip: 'plain', steelIn: null, handAt: null },
        bridged: part,
      },
    );
    const network = buildNetwork(whole, 'bridged.cir');
    if (!network.ok) throw new Error(JSON.stringify(network.problems));
    const solver = createSolver(network.value, spice.hz);
    for (const e of deck.elements) if (e.kind === 'I') solver.setDrive(e.name, 1e-6);
    solver.solve();
    let worst = 0;
    for (const name of network.value.nodeNames) {
      const own = name.startsWith('cathode_') ? 'k' : name.startsWith('supply_') ? 'supply' : name.toLowerCase();
      const { re, im } = spice.nodes.get(own)!;
      const [a, b] = [solver.real(name), solver.imag(name)];
      for (let f = 0; f < re.length; f++) {
        const error = Math.hypot(a[f]! - re[f]!, b[f]! - im[f]!);
        if (error > 0) worst = Math.max(worst, error / Math.hypot(re[f]!, im[f]!));
      }
    }
    expect(network.value.nodeNames.length).toBeGreaterThan(5);
    expect(worst).toBeLessThan(1e-9);
  });
});

describe('a bridge at the bench', () => {
  const bypass: Fault = { kind: 'openBypass', element: 'G2', ohms: 200 };

  it('shows an open one while it hangs, on a set that is on, and costs nothing but time', () => {
    const setup = strip(bypass);
    const sound = seen(strip(), play(strip(), [off, on]));
    const before = play(setup, [off, on]);
    const under = play(setup, [bridge('bypass:G2')], before);
    expect(apart(seen(setup, before), sound)).toBeGreaterThan(0.5);
    // 0.1 uF is 0.035 ohm at 45 MHz: what is left of 200.
    expect(apart(seen(setup, under), sound)).toBeLessThan(0.02);
    const after = play(setup, [bridge(null)], under);
    expect(seen(setup, after)).toEqual(seen(setup, before));
    expect([under.incidents, after.incidents, after.replaced]).toEqual([[], [], []]);
  });

  it('leaves a leaky coupling as it is, but for its own clips', () => {
    const leaky = strip({ kind: 'leakyCoupling', element: 'G2', volts: 4 });
    const state = play(leaky, [off, on]);
    const good = strip({ kind: 'looseEarth' });
    const clips = apart(seen(good, play(good, [off, on, bridge('coupling:G2')])), seen(good, play(good, [off, on])));
    expect(apart(seen(leaky, play(leaky, [bridge('coupling:G2')], state)), seen(leaky, state))).toBeLessThan(2 * clips);
  });

  it('across a good one detunes what it tunes', () => {
    const setup = strip(bypass);
    const state = play(setup, [off, on]);
    expect(apart(seen(setup, play(setup, [bridge('Cp1')], state)), seen(setup, state))).toBeGreaterThan(0.5);
  });

  it('takes only capacitors of the tray, one at a time, and each once', () => {
    const setup = strip(bypass);
    const state = play(setup, [bridge('C39')]);
    expect(refusal(setup, state, bridge('C39'))).toBe('alreadySo');
    expect(refusal(setup, state, bridge('Rp1'))).toBe('noCapacitor');
    expect(refusal(setup, state, bridge('K39'))).toBe('noSuchPart');
    expect(play(setup, [bridge('C47')], state).bridged).toBe('C47');
    expect(refusal(setup, initialState(setup), bridge(null))).toBe('alreadySo');
    expect(refusal(strip(), play(strip(), [off]), bridge('C39'))).toBe('notInThisScenario');
    const fresh = { ...setup, scenario: { ...setup.scenario, start: { ...setup.scenario.start, prepared: [] } } };
    expect(refusal(fresh, initialState(fresh), bridge('C39'))).toBe('cautionsFirst');
    const { receiver, deck } = setup;
    const kinds = partsTray(receiver, deck)
      .filter(({ name }) => refusal(setup, initialState(setup), bridge(name)) === null)
      .map(({ kind }) => kind);
    expect([...new Set(kinds)].sort()).toEqual(['bypass', 'capacitor', 'coupling', 'decoupling']);
  });

  it('on a live chassis that nothing isolates ends the run, as any clip does', () => {
    const setup = strip(bypass);
    const start = { ...setup.scenario.start, prepared: [] };
    const bare = { ...setup, scenario: { ...setup.scenario, start } };
    const touched = play(bare, [{ type: 'cautionsAcknowledged' }, bridge('C39')]);
    expect(touched.stopped).toBe('hotChassis');
  });

  it('takes back what was proved, going on and coming off, and no curve is as found under it', () => {
    const setup = readySetup(canSetup, { faults: [{ kind: 'screwedIn' }] });
    const level = Number(setup.scenario.start.controls.levelDb);
    const halved: BenchEvent[] = [
      { type: 'controlSet', control: 'levelDb', value: level - 6 },
      { type: 'controlSet', control: 'levelDb', value: level },
    ];
    const proved = play(setup, [{ type: 'toolTaken', tool: 'hex' }, ...halved]);
    expect(proved.proofs.halveLevel.done).toBe(true);
    const under = play(setup, [bridge('C2')], proved);
    expect(under.proofs.halveLevel.done).toBe(false);
    const again = play(setup, halved, under);
    expect(again.proofs.halveLevel.done).toBe(true);
    expect(play(setup, [bridge(null)], again).proofs.halveLevel.done).toBe(false);
    const record: BenchEvent = { type: 'asFoundRecorded', response: setup.receiver.responses[0]!.id };
    expect(refusal(setup, under, record)).toBe('notAsFound');
    expect(refusal(setup, play(setup, [bridge(null)], under), record)).toBe(null);
  });

  it('[G67] left on at sign-off, the bench is not true and a failed part under it is still failed; the run plays again alike', () => {
    const setup = strip(bypass);
    const job = wholeJob(setup).filter((act) => act.type !== 'partReplaced' && act.type !== 'signedOff');
    const log = (acts: readonly BenchEvent[]) => {
      let run = createRun(setup, null);
      acts.forEach((act, i) => {
        const appended = appendEvent(run, act, 1000 * i);
        if (!appended.ok) throw new Error(`${act.type}: ${appended.reason}`);
        run = appended.run;
      });
      return run;
    };
    const left = log([...job, bridge('bypass:G2'), { type: 'signedOff' }]);
    const report = grade(setup, left.events);
    expect(report.verdicts).toMatchObject({
      aligned: { stands: false },
      true: { stands: false, lacks: ['G67'] },
      safe: { stands: true },
    });
    const lost = report.lines.find(({ rule }) => rule === 'G67');
    expect(lost).toMatchObject({ points: 0, subject: 'bypass:G2' });
    expect(report.lines.find(({ rule }) => rule === 'G62')?.points).toBe(0);
    expect(gradeUnder(3)(setup, left.events).lines.some(({ rule }) => rule === 'G67')).toBe(false);
    expect(replay(setup, left.events).state).toEqual(left.state);
  });
});
