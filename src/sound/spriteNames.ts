/** Which sprite stands for which happening at the bench. The names are those of assets/sounds/sprites.json. */
import { unreachable } from '../base/never.ts';
import type { BenchSound } from '../bench/benchEvent.ts';

export type LoopName = 'tone' | 'hum';
export type ShortName = Exclude<BenchSound['kind'], 'detent' | 'proof'> | 'detent' | 'detentNearStop' | 'proof';

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
