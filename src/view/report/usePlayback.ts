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
  const now = useRef(seconds);
  now.current = seconds;
  useEffect(() => {
    if (!playing) return;
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    let last = performance.now();
    const timer = setInterval(
      () => {
        const at = performance.now();
        const next = Math.min(lengthSeconds, now.current + ((at - last) / 1000) * speed);
        last = at;
        setSeconds(next);
        if (next >= lengthSeconds) setPlaying(false);
      },
      still ? STILL_STEP_MS : STEP_MS,
    );
    return () => clearInterval(timer);
  }, [playing, speed, lengthSeconds]);
  return {
    seconds,
    playing,
    speed,
    seek: (to) => setSeconds(Math.max(0, Math.min(lengthSeconds, to))),
    toggle: () => {
      if (!playing && seconds >= lengthSeconds) setSeconds(0);
      setPlaying(!playing);
    },
    setSpeed,
  };
}
