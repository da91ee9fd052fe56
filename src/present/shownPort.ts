/** What the bench page may ask of a demonstration: where it stands, what is said, and the few things that somebody who watches can do. */
import type { BenchEvent } from '../bench/benchEvent.ts';

export const SHOWN_SPEEDS = ['slow', 'plain', 'quick'] as const;
export type ShownSpeed = (typeof SHOWN_SPEEDS)[number];

export interface ShownView {
  /** what the technician says now */
  readonly caption: string;
  /** which of his sayings that is, from 1, and how many there are */
  readonly at: number;
  readonly of: number;
  readonly playing: boolean;
  /** nothing more is shown */
  readonly ended: boolean;
  readonly speed: ShownSpeed;
  /** the act that was shown last */
  readonly act: BenchEvent | null;
}

export interface ShownPort {
  /** the same object until something changes */
  view(): ShownView;
  toggle(): void;
  /** plays at once what belongs to the present saying, and says the next */
  step(): void;
  /** the bench as it stood when the present saying was said; from there to the one before */
  stepBack(): void;
  setSpeed(speed: ShownSpeed): void;
  /** the bench is the learner's from here on */
  takeOver(): void;
  /** the job from its start, with a mark */
  fromStart(): void;
  subscribe(listener: () => void): () => void;
}
