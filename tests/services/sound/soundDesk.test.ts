/** The sound desk against a player that only writes down what it is asked. */
import { describe, expect, it } from 'vitest';
import type { BenchSound } from '../../../src/bench/benchEvent.ts';
import { createSoundDesk } from '../../../src/services/sound/soundDesk.ts';
import type { Sprites } from '../../../src/services/sound/sprites.ts';

type PlayerState = ReturnType<Sprites['state']>;

function fakePlayer() {
  const asked: string[] = [];
  let next = 100;
  const player = {
    asked,
    state: 'ready' as PlayerState,
    opened: 0,
    masters: [] as number[],
    open(): Sprites {
      player.opened++;
      return {
        play: (sprite) => {
          asked.push(`play ${sprite} as ${++next}`);
          return next;
        },
        setMaster: (volume) => void player.masters.push(volume),
        setVolume: (sounding, volume) => void asked.push(`volume ${sounding} ${volume.toFixed(3)}`),
        setRate: (sounding, rate) => void asked.push(`rate ${sounding} ${rate}`),
        stop: (sounding) => void asked.push(`stop ${sounding}`),
        state: () => player.state,
        close: () => void asked.push('close'),
      };
    },
  };
  return player;
}

const CLICK: BenchSound = { kind: 'switch' };

describe('sound desk', () => {
  it('is off at first: nothing is opened, nothing sounds', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.play(CLICK);
    desk.setTone(1);
    desk.setHum(1);
    expect(player.opened).toBe(0);
    expect(desk.status()).toBe('off');
  });

  it('plays each happening by its sprite, near the stop by a lower one', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.setEnabled(true);
    const kinds = [
      'switch',
      'relay',
      'clip',
      'unclip',
      'crystal',
      'blade',
      'stop',
      'crack',
      'slip',
      'unsafe',
      'sign',
    ] as const;
    for (const kind of kinds) desk.play({ kind });
    desk.play({ kind: 'detent', slug: 'T1', nearStop: false });
    desk.play({ kind: 'detent', slug: 'T1', nearStop: true });
    desk.play({ kind: 'proof', proof: 'skirts' });
    const names = player.asked.map((line) => line.split(' ')[1]);
    expect(names).toEqual([...kinds, 'detent', 'detentNearStop', 'proof']);
  });

  it('starts a loop once and then only moves its volume', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.setEnabled(true);
    desk.setTone(1);
    desk.setTone(0.5);
    desk.setTone(0);
    desk.setTone(0);
    expect(player.asked).toEqual([
      'play tone as 101',
      'volume 101 0.350',
      'rate 101 1',
      'volume 101 0.175',
      'rate 101 1',
      'stop 101',
    ]);
  });

  it('is as loud as asked from its first sound on, and again when it is asked anew', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.setMaster(0.3);
    expect(player.opened).toBe(0);
    desk.setEnabled(true);
    desk.setMaster(7);
    expect(player.masters).toEqual([0.3, 1]);
  });

  it('hums as fast as the mains', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.setEnabled(true);
    desk.setHum(1, 60);
    expect(player.asked).toEqual(['play hum as 101', 'volume 101 0.300', 'rate 101 1.2']);
  });

  it('gives the note of a beat, and nothing at zero beat or where there is none', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.setEnabled(true);
    desk.setBeat(1000);
    desk.setBeat(100);
    // Nobody hears below some 20 Hz (common practice, no source).
    desk.setBeat(3);
    desk.setBeat(null);
    expect(player.asked).toEqual([
      'play tone as 101',
      'volume 101 0.250',
      'rate 101 2.5',
      'volume 101 0.250',
      'rate 101 0.25',
      'stop 101',
    ]);
  });

  it('takes up the loops of the moment when it is turned on, and stops them when it is turned off', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.setTone(0.4);
    desk.setEnabled(true);
    desk.setEnabled(false);
    desk.setTone(0.9);
    expect(player.asked).toEqual(['play tone as 101', 'volume 101 0.140', 'rate 101 1', 'stop 101']);
    desk.setEnabled(true);
    expect(player.asked.slice(4)).toEqual(['play tone as 102', 'volume 102 0.315', 'rate 102 1']);
  });

  it('keeps levels between silence and full, and takes a level that is no number for silence', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.setEnabled(true);
    desk.setTone(7);
    desk.setTone(Number.NaN);
    desk.setTone(-1);
    expect(player.asked).toEqual(['play tone as 101', 'volume 101 0.350', 'rate 101 1', 'stop 101']);
  });

  it('drops clicks that cannot sound yet, and says what it waits for', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.setEnabled(true);
    for (const state of ['loading', 'waiting', 'failed'] as const) {
      player.state = state;
      desk.play(CLICK);
    }
    expect(player.asked).toEqual([]);
    expect(desk.status()).toBe('silent');
    player.state = 'waiting';
    expect(desk.status()).toBe('waiting');
    player.state = 'ready';
    expect(desk.status()).toBe('on');
  });

  it('goes on in silence when there is no player at all', () => {
    const desk = createSoundDesk(() => {
      throw new Error('no audio device');
    });
    expect(() => {
      desk.setEnabled(true);
      desk.play(CLICK);
      desk.setTone(1);
      desk.setHum(1);
      desk.close();
    }).not.toThrow();
    expect(desk.status()).toBe('off');
  });

  it('goes on in silence when the player fails later, and tries again when it is turned on anew', () => {
    const player = fakePlayer();
    let failing = true;
    const desk = createSoundDesk(() => {
      const sprites = player.open();
      return { ...sprites, play: (sprite) => (failing ? explode() : sprites.play(sprite)) };
    });
    desk.setEnabled(true);
    desk.play(CLICK);
    expect(desk.status()).toBe('silent');
    failing = false;
    desk.setEnabled(false);
    desk.setEnabled(true);
    desk.play(CLICK);
    expect(desk.status()).toBe('on');
    expect(player.asked).toEqual(['play switch as 101']);
  });

  it('closes for good', () => {
    const player = fakePlayer();
    const desk = createSoundDesk(player.open);
    desk.setEnabled(true);
    desk.setHum(0.5);
    desk.close();
    desk.play(CLICK);
    desk.setHum(1);
    expect(player.asked.slice(3)).toEqual(['stop 101', 'close']);
    expect(desk.status()).toBe('off');
  });
});

function explode(): never {
  throw new Error('the device went away');
}
