/** The replay's clock: where it stands, whether it runs, how fast. Moves a dozen times a second; twice, in larger steps, for those who want no motion. */
import { useEffect, useRef, useState } from 'preact/hooks';

export const SPEEDS = [1, 4, 16, 60] as const;
export type Speed = (typeof SPEEDS)[number];

export interface Playback {
  readonly seconds: number;
  readonly playing: boolean;
  readonly speed: Speed;
  seek(seconds: number): void;
  toggle(): void;
  setSpeed(speed: Speed): void;
}

const STEP_MS = 80;
const STILL_STEP_MS = 500;

export function usePlayback(lengthSeconds: number, startSeconds: number): Playback {
  const [seconds, setSeconds] = useState(startSeconds);
  const [playing, setPlaying] = useState(false);
  const [speed, setSpeed] = useState<Speed>(4);
  // The clock's own hand: two acts in one frame must see one another.
  const now = useRef(startSeconds);
  const moveTo = (to: number): void => {
    now.current = Math.max(0, Math.min(lengthSeconds, to));
    setSeconds(now.current);
  };
  useEffect(() => {
    if (!playing) return;
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    let last = performance.now();
    const timer = setInterval(
      () => {
        const at = performance.now();
        moveTo(now.current + ((at - last) / 1000) * speed);
        last = at;
        if (now.current >= lengthSeconds) setPlaying(false);
      },
      still ? STILL_STEP_MS : STEP_MS,
    );
    return () => clearInterval(timer);
  }, [playing, speed, lengthSeconds]);
  return {
    seconds,
    playing,
    speed,
    seek: moveTo,
    toggle: () => {
      if (!playing && now.current >= lengthSeconds) moveTo(0);
      setPlaying(!playing);
    },
    setSpeed,
  };
}
