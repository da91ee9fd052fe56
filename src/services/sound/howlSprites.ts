/** The player: one file of sprites through howler. */
import { Howl, Howler, type SoundSpriteDefinitions } from 'howler';
import spriteMap from '../../../assets/sounds/sprites.json';
import spriteUrl from '../../../assets/sounds/sprites.wav?url';
import type { Sprites } from './sprites.ts';

/** Short sounds a shade under full, so that several at once do not clip. */
const VOLUME = 0.6;

export function openSprites(): Sprites {
  let failed = Howler.noAudio;
  let hasSounded = false;
  const howl = new Howl({
    src: [spriteUrl],
    format: ['wav'],
    sprite: spriteMap as unknown as SoundSpriteDefinitions,
    volume: VOLUME,
    pool: 8,
    onloaderror: () => {
      failed = true;
    },
    onunlock: () => {
      hasSounded = true;
    },
  });
  // A context that ran once may be put to rest by howler to save power; it then wakes by itself.
  const mayNotSound = (): boolean => {
    if (!hasSounded && Howler.ctx?.state === 'running') hasSounded = true;
    return !hasSounded && Howler.usingWebAudio;
  };
  return {
    play: (sprite) => howl.play(sprite),
    setMaster: (volume) => void Howler.volume(volume),
    setVolume: (sounding, volume) => void howl.volume(volume, sounding),
    setRate: (sounding, rate) => void howl.rate(rate, sounding),
    stop: (sounding) => void howl.stop(sounding),
    state: () => (failed ? 'failed' : howl.state() !== 'loaded' ? 'loading' : mayNotSound() ? 'waiting' : 'ready'),
    close: () => void howl.unload(),
  };
}
