/** Lets tone, beat and hum follow what the bench shows, as loud as was chosen last. */

import type { BenchPort } from '../present/ports.ts';
import type { BenchSounds, SoundLoudness } from '../rooms/bench/AtHand.tsx';
import type { SoundDesk } from '../services/sound/soundDesk.ts';
import type { ChoiceMemory } from '../services/store/choiceMemory.ts';

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
    const { toneVolts, beatHz, humDiv } = port.display();
    const here = port.session().stage === 'working';
    desk.setTone(here ? toneVolts / FULL_TONE_VOLTS : 0);
    desk.setBeat(here ? beatHz : null);
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

export const LOUDNESSES = ['off', 'low', 'full'] as const satisfies readonly SoundLoudness[];

const MASTER: Readonly<Record<SoundLoudness, number>> = { off: 0, low: 0.3, full: 1 };

/** The switch of the bench: its choice holds on every bench after this one. */
export function soundsRemembered(desk: SoundDesk, memory: ChoiceMemory<SoundLoudness>): BenchSounds {
  const set = (loudness: SoundLoudness): void => {
    desk.setMaster(MASTER[loudness]);
    desk.setEnabled(loudness !== 'off');
  };
  set(memory.read());
  return {
    status: () => desk.status(),
    loudness: () => memory.read(),
    answer: (sound) => desk.answer(sound),
    next() {
      const next = LOUDNESSES[(LOUDNESSES.indexOf(memory.read()) + 1) % LOUDNESSES.length]!;
      memory.write(next);
      set(next);
    },
  };
}
