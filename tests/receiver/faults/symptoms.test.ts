/** What a failed part does to the curve, the way the trade says (common practice, no source, where no formula stands beside it). */
import { describe, expect, it } from 'vitest';
import { buildNetwork } from '../../../src/physics/buildNetwork.ts';
import { editDeck } from '../../../src/physics/editDeck.ts';
import { createSolver } from '../../../src/physics/solver.ts';
import type { Fault } from '../../../src/receiver/faults/fault.ts';
import { faultEffects } from '../../../src/receiver/faults/faultEffects.ts';
import { plausibleFaults } from '../../../src/receiver/faults/faultsThatFit.ts';
import { partsTray } from '../../../src/receiver/faults/partsTray.ts';
import { symptomOf } from '../../../src/receiver/faults/symptom.ts';
import { nominalTurns, slugHenries } from '../../../src/receiver/slugLaw.ts';
import { createStatedResponse } from '../../../src/receiver/statedResponse.ts';
import { shippedLibrary, shippedReceiver, shippedTexts } from '../../files/shipped.ts';

function seen(id: string, fault: Fault, turns: Record<string, number> = {}) {
  const { receiver, deck } = shippedReceiver(id);
  const response = receiver.responses[0]!;
  const { fromHz, toHz } = response.specification;
  const sound = createStatedResponse(receiver, deck, response).nominal;
  const faulted = faultEffects(receiver, deck, [fault], []);
  const faulty = createStatedResponse(faulted.receiver, faulted.deck, response).solve(turns);
  return { ...symptomOf(sound, faulty, fromHz, toHz), sound, faulty };
}
const level = ({ hz, volts }: { hz: Float64Array; volts: Float64Array }, at: number): number =>
  volts[hz.findIndex((f) => f >= at - 1)]!;

describe('symptoms', () => {
  it('an open damping resistor: higher and narrower', () => {
    const s = seen('video-valve-45m', { kind: 'openResistor', element: 'Rp2' });
    expect(s.peakDb).toBeGreaterThan(1);
    expect(s.widthRatio).toBeLessThan(0.95);
  });

  it('a load from the wrong drawer, too low: lower and wider', () => {
    const s = seen('chroma-3m58', { kind: 'wrongLoad', element: 'R2', ohms: 820 });
    expect(s.peakDb).toBeLessThan(-1);
  });

  it('a weak stage: 20 log10 of the factor, and a little more as the diode loads a small carrier harder; its circuit set afresh, the shape stays', () => {
    const { receiver } = shippedReceiver('video-early-25m');
    const fault: Fault = { kind: 'weakStage', element: 'G2', factor: 0.35 };
    const own = 20 * Math.log10(0.35);
    // Its input capacitance is less too: 20 pF by 2 pF (1 - sqrt 0.35), which the slug before it makes up for.
    const slug = receiver.adjusters.find((a) => a.element === 'L2')!;
    const more = 20 / (20 - 2 * (1 - Math.sqrt(0.35)));
    const wanted = slug.nominalHenries * more;
    let turns = nominalTurns(slug);
    while (slugHenries(slug, turns) < wanted) turns += 0.005;
    expect(Math.abs(turns - nominalTurns(slug))).toBeGreaterThan(0.5);
    const s = seen('video-early-25m', fault, { [slug.id]: turns });
    for (const db of [s.peakDb, s.worstDb]) {
      expect(db).toBeLessThan(own);
      expect(db).toBeGreaterThan(own - 2.5);
    }
    expect(Math.abs(s.widthRatio - 1)).toBeLessThan(0.03);
    // Its top has two humps of one height, so the place of the highest point says nothing; the whole curve does.
    const height = (volts: Float64Array): number => volts.reduce((top, v) => Math.max(top, v), 0);
    const [was, is] = [height(s.sound.volts), height(s.faulty.volts)];
    const apart = s.faulty.volts.map((v, i) => Math.abs(v / is - s.sound.volts[i]! / was));
    expect(height(apart)).toBeLessThan(0.06);
  });

  it('a drifted trap capacitor: no place of its slug brings the notch back', () => {
    const { receiver } = shippedReceiver('video-solid-45m');
    const trap = receiver.adjusters.find((a) => a.trapHz === 39750000)!;
    const fault: Fault = { kind: 'driftedCapacitor', element: 'C39a', factor: 1.6 };
    const sound = level(seen('video-solid-45m', fault).sound, 39750000);
    for (let turns = 0; turns <= trap.travelTurns; turns += 0.25) {
      expect(level(seen('video-solid-45m', fault, { [trap.id]: turns }).faulty, 39750000)).toBeGreaterThan(1.5 * sound);
    }
  });

  it('a shorted trap: no notch, wherever the core stands', () => {
    const { receiver } = shippedReceiver('video-valve-45m');
    const trap = receiver.adjusters.find((a) => a.id === 'A2')!;
    const fault: Fault = { kind: 'shortedTrap', slug: 'A2' };
    const sound = level(seen('video-valve-45m', fault).sound, 47250000);
    for (const turns of [0, nominalTurns(trap), trap.travelTurns]) {
      expect(level(seen('video-valve-45m', fault, { A2: turns }).faulty, 47250000)).toBeGreaterThan(3 * sound);
    }
  });

  it('an open cathode bypass: the gain falls to 1 / (1 + gm R), a little more as the diode loads a small carrier harder', () => {
    // V3 of the strip has 9 mS; with 111 ohm in its cathode it gives half. Its grid lets go of its loading, which gives a part of it back.
    const s = seen('video-valve-45m', { kind: 'openBypass', element: 'G3', ohms: 1 / 9e-3 });
    expect(s.peakDb).toBeLessThan(20 * Math.log10(0.5) + 1.8);
    expect(s.peakDb).toBeGreaterThan(20 * Math.log10(0.5) - 1.5);
  });

  it('an open decoupling: nearer to singing the curve rears up, and it leans', () => {
    const at = (ohms: number) =>
      seen('video-valve-45m', { kind: 'openDecoupling', first: 'Lp1', second: 'Lp2', ohms }).worstDb;
    expect(at(0.2)).toBeGreaterThan(0.5);
    expect(at(0.5)).toBeGreaterThan(at(0.2) + 1);
  });

  it('a trap with a shorted turn is tuned by what is left of its inductance, 1 / sqrt(1 - k^2) higher', () => {
    const { receiver, deck } = shippedReceiver('video-valve-45m');
    const fault: Fault = { kind: 'shortedTrap', slug: 'A2' };
    const edited = faultEffects(receiver, deck, [fault], []).deck;
    // The trap's own circuit, far from the tank that it hangs on.
    const alone = editDeck(edited, [
      { kind: 'remove', name: 'K47' },
      {
        kind: 'add',
        element: { kind: 'I', name: 'Iprobe', nodes: ['0', 't47'], value: 1, phaseDegrees: 0, dcAmps: 0 },
      },
    ]);
    const network = buildNetwork(alone, 'trap.cir');
    if (!network.ok) throw new Error(JSON.stringify(network.problems));
    const hz = Float64Array.from({ length: 601 }, (_, i) => 60e6 + 50e3 * i);
    const solver = createSolver(network.value, hz);
    solver.setDrive('Iprobe', 1);
    solver.solve();
    const [re, im] = [solver.real('t47'), solver.imag('t47')];
    const height = hz.map((_, i) => Math.hypot(re[i]!, im[i]!));
    const peak = hz[height.indexOf(height.reduce((a, b) => Math.max(a, b), 0))]!;
    expect(peak / (47.2e6 / Math.sqrt(1 - 0.8 ** 2))).toBeGreaterThan(0.99);
    expect(peak / (47.2e6 / Math.sqrt(1 - 0.8 ** 2))).toBeLessThan(1.01);
  });

  it('a broken winding: nothing passes', () => {
    expect(seen('fm-10m7', { kind: 'openWinding', slug: 'T2B' }).peakDb).toBeLessThan(-20);
  });

  it('a tuning capacitor that is open: its circuit is far off tune', () => {
    expect(seen('fm-10m7', { kind: 'openCapacitor', element: 'C2p', farads: 8e-12 }).peakDb).toBeLessThan(-10);
  });

  it('a leaky coupling capacitor: grid current loads the circuit before it', () => {
    const s = seen('video-valve-45m', { kind: 'leakyCoupling', element: 'G2', volts: 4.5 });
    expect(s.peakDb).toBeLessThan(-3);
  });

  it('a shorted diode: its load, with the capacitor across it, hangs on the last circuit', () => {
    expect(Math.abs(seen('video-valve-45m', { kind: 'shortedDiode', detector: 'video' }).worstDb)).toBeGreaterThan(3);
  });

  it('a load of a tenth: the diode, about half of its load to the circuit, damps the last hump', () => {
    const s = seen('video-valve-45m', { kind: 'wrongDetectorLoad', detector: 'video', ohms: 470 });
    expect(s.peakDb).toBeLessThan(-3);
  });

  it('an open coupling: little gets across', () => {
    expect(seen('fm-10m7', { kind: 'openCoupling', element: 'K2' }).peakDb).toBeLessThan(-20);
  });

  it('swapped capacitors of two traps: both notches are gone from their places', () => {
    const s = seen('video-solid-45m', { kind: 'swappedTraps', first: 'C39a', second: 'C47a' });
    for (const hz of [39750000, 47250000]) expect(level(s.faulty, hz)).toBeGreaterThan(3 * level(s.sound, hz));
  });

  it('a missing screen changes the curve', () => {
    const s = seen('video-solid-45m', { kind: 'missingShield', from: 'c3', to: 'b2', farads: 2e-13 });
    expect(Math.abs(s.worstDb)).toBeGreaterThan(1);
  });

  it('nothing wrong: nothing to be seen', () => {
    const { receiver, deck } = shippedReceiver('video-valve-45m');
    const response = receiver.responses[0]!;
    const { nominal } = createStatedResponse(receiver, deck, response);
    const s = symptomOf(nominal, nominal, response.specification.fromHz, response.specification.toHz);
    expect([s.peakDb, s.peakShiftHz, s.widthRatio, s.worstDb]).toEqual([0, 0, 1, 0]);
  });
});

describe('the parts tray', () => {
  it('holds no loss of a coil, no loading by a valve and no wiring', () => {
    const names = (id: string) => {
      const { receiver, deck } = shippedReceiver(id);
      return partsTray(receiver, deck).map(({ name }) => name);
    };
    expect(names('video-valve-45m')).toEqual([
      ...[
        'Lmix',
        'Rmix',
        'Lin',
        'Rin',
        'L39',
        'C39',
        'L47',
        'C47',
        'G1',
        'Lp1',
        'Rp1',
        'L41',
        'C41',
        'G2',
        'Lp2',
        'Rp2',
      ],
      ...[
        'G3',
        'Lp3',
        'Rp3',
        'Ldet',
        'video',
        'AGC',
        'coupling:G1',
        'coupling:G2',
        'bypass:G1',
        'bypass:G2',
        'bypass:G3',
      ],
      ...['decoupling:Lp2', 'decoupling:Lp3', 'shield'],
    ]);
    // Every resistor that the decks call a loss or a Q is of this sort, whatever the set.
    for (const { receiver, deck } of shippedLibrary().receivers.values()) {
      const text = shippedTexts()[`receivers/${receiver.id}/${receiver.deck}`]!;
      const losses = [...text.matchAll(/^(R\S+).*;\s*(?:.*\bloss\b|(?:trap )?Q(?: about)? \d)/gm)].map(
        (found) => found[1]!,
      );
      const tray = partsTray(receiver, deck).map(({ name }) => name);
      expect(
        losses.filter((name) => tray.includes(name)),
        receiver.id,
      ).toEqual([]);
    }
  });
});

describe('the faults that make sense at a receiver', () => {
  it.each([...shippedLibrary().receivers.values()].map((r) => [r.receiver.id, r] as const))(
    '%s: there are some, each is a circuit still, and each once',
    (_, { receiver, deck }) => {
      const faults = plausibleFaults(receiver, deck);
      expect(faults.length).toBeGreaterThan(1);
      expect(new Set(faults.map((f) => JSON.stringify(f))).size).toBe(faults.length);
      for (const fault of faults) {
        const edited = faultEffects(receiver, deck, [fault], []);
        for (const response of receiver.responses) {
          const { volts } = createStatedResponse(edited.receiver, edited.deck, response).nominal;
          expect([...volts].every(Number.isFinite), JSON.stringify(fault)).toBe(true);
        }
      }
    },
  );
});
