/** Proving the picture: each act is done and undone, so that the bench stands as before. */
import { type Hands, set } from './hands.ts';
import type { PrintedSheet } from './sheet.ts';

export function prove(hands: Hands, sheet: PrintedSheet): void {
  for (const proof of sheet.proofs) {
    const knobs = hands.knobs();
    switch (proof) {
      case 'halveLevel':
        set(hands, 'levelDb', Math.max(knobs.levelDb - 6, hands.scale('levelDb').low));
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
        set(hands, 'yVoltsPerDiv', finer(hands, knobs.yVoltsPerDiv));
        set(hands, 'yVoltsPerDiv', knobs.yVoltsPerDiv);
        break;
    }
  }
}

/** At least ten decibels more gain, where the knob goes so far. */
function finer(hands: Hands, voltsPerDiv: number): number {
  const { clicks, low } = hands.scale('yVoltsPerDiv');
  return clicks.findLast((gain) => gain <= voltsPerDiv / 3.2) ?? low;
}
