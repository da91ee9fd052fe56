/** What the desk asks of a player, and which sprite stands for which happening at the bench; the names are those of assets/sounds/sprites.json. */
import { unreachable } from '../../base/never.ts';
import type { BenchSound } from '../../bench/benchEvent.ts';
import type { AnswerSound } from '../../present/answers.ts';

export type LoopName = 'tone' | 'hum';
export type ShortName =
  | Exclude<BenchSound['kind'], 'detent' | 'proof'>
  | 'detent'
  | 'detentNearStop'
  | 'proof'
  | AnswerSound;

/** `howlSprites.ts` is the real one. A number names one sounding of a sprite. */
export interface Sprites {
  play(sprite: ShortName | LoopName): number;
  /** of all that sounds, 0 to 1 */
  setMaster(volume: number): void;
  setVolume(sounding: number, volume: number): void;
  setRate(sounding: number, rate: number): void;
  stop(sounding: number): void;
  /** `loading`: not yet read; `waiting`: the browser holds sound back until the next click or key; `failed`: nothing will ever sound */
  state(): 'loading' | 'waiting' | 'ready' | 'failed';
  close(): void;
}

export function spriteOf(sound: BenchSound): ShortName {
  switch (sound.kind) {
    case 'detent':
      return sound.nearStop ? 'detentNearStop' : 'detent';
    case 'switch':
    case 'relay':
    case 'clip':
    case 'unclip':
    case 'crystal':
    case 'blade':
    case 'stop':
    case 'crack':
    case 'slip':
    case 'unsafe':
    case 'sign':
    case 'proof':
      return sound.kind;
    default:
      return unreachable(sound);
  }
}
