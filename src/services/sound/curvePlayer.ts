/** Plays a curve by its pitches, and after a rest another one; a second call while it plays only stops it. */

export interface PitchedCurve {
  /** one after the other, all equally long, hertz */
  readonly pitchesHz: readonly number[];
  /** where it clicks, as a share of the whole, 0 to 1 */
  readonly clicks: readonly number[];
  /** the curve that the sheet asks for: in a reedier tone, so that nobody takes it for the one on the tube */
  readonly wanted?: true;
}

export interface CurvePlayer {
  play(curves: readonly PitchedCurve[]): void;
  close(): void;
}

const SECONDS = 2.6;
const REST = 0.6;
const LOUD = 0.12;
const CLICK_HZ = 2400;
const CLICK_SECONDS = 0.025;

/** `open` makes the browser's own player; where there is none nothing sounds. */
export function createCurvePlayer(open: () => AudioContext = () => new AudioContext()): CurvePlayer {
  let context: AudioContext | null = null;
  let sounding: OscillatorNode[] = [];
  const stop = (): void => {
    for (const each of sounding) each.stop();
    sounding = [];
  };
  const tone = (player: AudioContext, type: OscillatorType, from: number, seconds: number, hz: Float32Array): void => {
    const voice = player.createOscillator();
    const loud = player.createGain();
    voice.type = type;
    voice.frequency.setValueCurveAtTime(hz, from, seconds);
    // Up and down within 20 ms, so that no edge clicks but those of the pips.
    const edge = Math.min(0.02, seconds / 4);
    loud.gain.setValueAtTime(0, from);
    loud.gain.linearRampToValueAtTime(LOUD, from + edge);
    loud.gain.setValueAtTime(LOUD, from + seconds - edge);
    loud.gain.linearRampToValueAtTime(0, from + seconds);
    voice.connect(loud).connect(player.destination);
    voice.start(from);
    voice.stop(from + seconds);
    sounding.push(voice);
    voice.onended = () => {
      sounding = sounding.filter((one) => one !== voice);
    };
  };
  return {
    play(curves) {
      if (sounding.length > 0) return stop();
      try {
        context ??= open();
        void context.resume();
        let from = context.currentTime + 0.05;
        for (const { pitchesHz, clicks, wanted } of curves) {
          tone(context, wanted ? 'sawtooth' : 'sine', from, SECONDS, Float32Array.from(pitchesHz));
          for (const at of clicks)
            tone(context, 'square', from + at * SECONDS, CLICK_SECONDS, Float32Array.of(CLICK_HZ, CLICK_HZ));
          from += SECONDS + REST;
        }
      } catch {
        // Sound is an extra: without a player the figures are in the table.
        stop();
      }
    },
    close() {
      stop();
      void context?.close().catch(() => {});
      context = null;
    },
  };
}
