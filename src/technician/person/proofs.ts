/** Proving the picture: each act is done and undone, so that the bench stands as before. */
import { type Hands, set } from './hands.ts';
import type { PrintedSheet } from './sheet.ts';

export function prove(hands: Hands, sheet: PrintedSheet): void {
  for (const proof of sheet.proofs) {
    const knobs = hands.knobs();
    switch (proof) {
      case 'halveLevel':
        set(hands, 'levelDb', Math.max(knobs.levelDb - 6, -80));
        set(hands, 'levelDb', knobs.levelDb);
        break;
      case 'markersOffOn':
        set(hands, 'pipHeightDiv', 0);
        set(hands, 'pipHeightDiv', knobs.pipHeightDiv);
        break;
      case 'touchEarth': {
        const earth = sheet.testPoints.find((p) => p.role === 'earth');
        if (earth === undefined) break;
        hands.act({ type: 'leadRemoved', lead: 'earth' });
        hands.act({ type: 'leadConnected', lead: 'earth', to: earth.id });
        break;
      }
      case 'swingPhase': {
        const away = knobs.phasingDegrees > 0 ? -15 : 15;
        set(hands, 'phasingDegrees', knobs.phasingDegrees + away);
        set(hands, 'phasingDegrees', knobs.phasingDegrees);
        break;
      }
      case 'skirts':
        set(hands, 'yVoltsPerDiv', finer(knobs.yVoltsPerDiv));
        set(hands, 'yVoltsPerDiv', knobs.yVoltsPerDiv);
        break;
    }
  }
}

const GAINS = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5];

/** At least ten decibels more gain, where the knob goes so far. */
function finer(voltsPerDiv: number): number {
  return GAINS.findLast((gain) => gain <= voltsPerDiv / 3.2) ?? GAINS[0]!;
}
