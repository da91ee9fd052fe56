/** The player: one file of sprites through howler. */
import { Howl, Howler, type SoundSpriteDefinitions } from 'howler';
import spriteMap from '../../assets/sounds/sprites.json';
import spriteUrl from '../../assets/sounds/sprites.wav?url';
import type { Sprites } from './soundDesk.ts';

/** Short sounds a shade under full, so that several at once do not clip. */
const VOLUME = 0.6;

export function openSprites(): Sprites {
  const howl = new Howl({
    src: [spriteUrl],
    format: ['wav'],
    sprite: spriteMap as unknown as SoundSpriteDefinitions,
    volume: VOLUME,
    pool: 8,
  });
  return {
    play: (sprite) => howl.play(sprite),
    setVolume: (sounding, volume) => void howl.volume(volume, sounding),
    setRate: (sounding, rate) => void howl.rate(rate, sounding),
    stop: (sounding) => void howl.stop(sounding),
    waiting: () => Howler.ctx?.state === 'suspended',
    close: () => void howl.unload(),
  };
}
