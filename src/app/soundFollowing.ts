/** Lets tone and hum follow what the bench shows. */

import type { BenchPort } from '../present/ports.ts';
import type { SoundDesk } from '../services/sound/soundDesk.ts';

export interface SoundSwitch {
  readonly desk: SoundDesk;
  close(): void;
}

/** Detector tone that is as loud as it gets, volts rms. */
const FULL_TONE_VOLTS = 0.3;
/** Hum on the trace that is as loud as it gets, divisions. */
const FULL_HUM_DIV = 2;

export function soundFollowing(port: BenchPort, desk: SoundDesk): SoundSwitch {
  const follow = (): void => {
    const { toneVolts, humDiv } = port.display();
    const here = port.session().stage === 'working';
    desk.setTone(here ? toneVolts / FULL_TONE_VOLTS : 0);
    desk.setHum(here ? humDiv / FULL_HUM_DIV : 0, port.scenario.bench.mainsHz);
  };
  const stop = port.subscribe(follow);
  follow();
  return {
    desk,
    close() {
      stop();
      desk.close();
    },
  };
}
