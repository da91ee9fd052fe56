/**
 * What is heard at the bench. Off until somebody turns it on; from then on each act has its short sound, and three loops follow the bench:
 * the 400 Hz tone of the detector, the note of a beat and the hum of a bench without its earth. Without an audio device everything is silent and nothing fails.
 */
import type { BenchSound } from '../../bench/benchEvent.ts';
import type { AnswerSound } from '../../present/answers.ts';
import { openSprites } from './howlSprites.ts';
import { type LoopName, type ShortName, type Sprites, spriteOf } from './sprites.ts';

/** `waiting`: on, but the browser lets nothing sound before a click or key. `silent`: on, but this machine cannot play. */
export type DeskStatus = 'off' | 'on' | 'waiting' | 'silent';

export interface SoundDesk {
  setEnabled(on: boolean): void;
  /** of all that sounds, 0 to 1 */
  setMaster(volume: number): void;
  status(): DeskStatus;
  play(sound: BenchSound): void;
  /** the short sound of an answer, or of a lead that fell */
  answer(sound: AnswerSound): void;
  /** 0 to 1: how loud the detector's tone is */
  setTone(level: number): void;
  /** the note of two carriers that beat, hertz; null: none, or too high to be one */
  setBeat(hz: number | null): void;
  /** 0 to 1: how strong the hum is, and of which mains */
  setHum(level: number, mainsHz?: 50 | 60): void;
  /** silence for good: the page goes elsewhere */
  close(): void;
}

interface Loop {
  readonly name: LoopName;
  readonly loudest: number;
  level: number;
  rate: number;
  sounding: number | null;
}

/** The loops stay under the short sounds: they last. */
const TONE_LOUDEST = 0.35;
const HUM_LOUDEST = 0.3;
const BEAT_LOUDEST = 0.25;
/** The tone is made for 400 Hz; a beat is the same, faster or slower. */
const TONE_MADE_FOR_HZ = 400;
/** Below it a loudspeaker gives nothing, and an ear hears nothing: zero beat is silence. */
const LOWEST_HEARD_HZ = 20;
/** The hum is made for 50 Hz. */
const HUM_MADE_FOR_HZ = 50;

export function createSoundDesk(open: () => Sprites = openSprites): SoundDesk {
  let enabled = false;
  let closed = false;
  let broken = false;
  let sprites: Sprites | null = null;
  let master = 1;
  const tone: Loop = { name: 'tone', loudest: TONE_LOUDEST, level: 0, rate: 1, sounding: null };
  const beat: Loop = { name: 'tone', loudest: BEAT_LOUDEST, level: 0, rate: 1, sounding: null };
  const hum: Loop = { name: 'hum', loudest: HUM_LOUDEST, level: 0, rate: 1, sounding: null };

  // Sound is an extra: whatever a player throws, the bench goes on in silence.
  const attempt = (job: (player: Sprites) => void): void => {
    if (!enabled || closed || broken) return;
    try {
      if (sprites === null) {
        sprites = open();
        sprites.setMaster(master);
      }
      job(sprites);
    } catch {
      broken = true;
    }
  };
  const follow = (loop: Loop): void =>
    attempt((player) => {
      if (loop.level === 0) {
        if (loop.sounding !== null) player.stop(loop.sounding);
        loop.sounding = null;
        return;
      }
      // Started once and left running: a loop that is started again clicks.
      loop.sounding ??= player.play(loop.name);
      player.setVolume(loop.sounding, loop.level * loop.loudest);
      player.setRate(loop.sounding, loop.rate);
    });
  const silence = (): void => {
    for (const loop of [tone, beat, hum]) {
      const { sounding } = loop;
      if (sounding !== null) attempt((player) => player.stop(sounding));
      loop.sounding = null;
    }
  };

  const short = (sprite: ShortName): void =>
    attempt((player) => {
      // What cannot sound now is dropped: a burst of old clicks afterwards would mean nothing.
      if (player.state() === 'ready') player.play(sprite);
    });

  return {
    setEnabled(on) {
      if (on === enabled) return;
      if (!on) silence();
      enabled = on;
      broken = false;
      // Opened at once, because the click that turns sound on is what makes the browser allow it.
      attempt(() => {});
      for (const loop of [tone, beat, hum]) follow(loop);
    },
    setMaster(volume) {
      master = unit(volume);
      attempt((player) => player.setMaster(master));
    },
    status() {
      if (!enabled || closed) return 'off';
      const state = broken ? 'failed' : (sprites?.state() ?? 'ready');
      if (state === 'failed') return 'silent';
      return state === 'waiting' ? 'waiting' : 'on';
    },
    play: (sound) => short(spriteOf(sound)),
    answer: short,
    setTone(level) {
      tone.level = unit(level);
      follow(tone);
    },
    setBeat(hz) {
      const heard = hz !== null && hz >= LOWEST_HEARD_HZ;
      beat.level = heard ? 1 : 0;
      if (heard) beat.rate = hz / TONE_MADE_FOR_HZ;
      follow(beat);
    },
    setHum(level, mainsHz = HUM_MADE_FOR_HZ) {
      hum.level = unit(level);
      hum.rate = mainsHz / HUM_MADE_FOR_HZ;
      follow(hum);
    },
    close() {
      silence();
      attempt((player) => player.close());
      closed = true;
      sprites = null;
    },
  };
}

function unit(level: number): number {
  return Number.isFinite(level) ? Math.min(1, Math.max(0, level)) : 0;
}
