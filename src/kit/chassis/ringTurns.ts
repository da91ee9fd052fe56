/**
 * The arithmetic of turning a slug by hand: angles of the ring to turns and back, and what the view shows while the hand is ahead of the log.
 * Clockwise drives the core in. 0 degrees is at the top of the ring, clockwise positive.
 */
import { clamp } from '../../base/rounding.ts';

export const EIGHTH = 1 / 8;
export const FINE = 1 / 32;

/** Direction of a point seen from the ring's middle, degrees in [0, 360). */
export function ringDegrees(dx: number, dy: number): number {
  const degrees = (Math.atan2(dx, -dy) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

/** Turns between two directions, the short way round, in (-1/2, 1/2]; positive is clockwise, core in. */
export function turnsBetween(fromDegrees: number, toDegrees: number): number {
  const turns = (toDegrees - fromDegrees) / 360;
  const short = turns - Math.round(turns);
  return short === -0.5 ? 0.5 : short;
}

/** The arc of the turn that is under way: 0 at the top, clockwise for turns in, anticlockwise for turns out; whole turns are left out. */
export function arcDegrees(turns: number): number {
  const rest = turns - Math.trunc(turns);
  return rest * 360 + 0;
}

/** Turns as they are read off the ring, to 1/32. */
export const readTurns = (turns: number): number => Math.round(turns * 32) / 32 + 0;

/** How far a wheel was turned, down or right above 0: with shift some browsers send it sideways. */
export function wheelTravel({ deltaX, deltaY, shiftKey }: Pick<WheelEvent, 'deltaX' | 'deltaY' | 'shiftKey'>): number {
  return deltaY === 0 && shiftKey ? deltaX : deltaY;
}

/** Gathers a wheel's travel into whole steps: 100 px, or 3 lines, make one. */
export class WheelSteps {
  private travel = 0;
  take(delta: number, mode: number): number {
    this.travel += mode === 0 ? delta / 100 : mode === 1 ? delta / 3 : delta;
    const steps = Math.trunc(this.travel + Math.sign(this.travel) * 1e-9);
    this.travel -= steps;
    return steps + 0;
  }
}

/**
 * While a hand turns, events go out some thirty times a second, but the drawing must keep up with the hand. The follower shows where the screw
 * will be once the log has caught up: base plus what the hand has asked for, held at the stops. A head that slips or a cracked core
 * does not follow: then the log's own figure stands.
 */
export class TurnFollower {
  private asked = 0;
  private base = 0;
  private travel = 0;
  private grips = false;
  private held = false;

  grasp(screwTurns: number, travelTurns: number, grips: boolean): void {
    this.base = screwTurns;
    this.travel = travelTurns;
    this.grips = grips;
    this.asked = 0;
    this.held = true;
  }

  turn(turns: number): void {
    // At a stop the hand goes on forcing, but the way back starts at the stop, not where the force ended.
    this.asked = clamp(this.base + this.asked + turns, 0, this.travel) - this.base;
  }

  letGo(): void {
    this.held = false;
  }

  /** A core that has cracked, or a tool that was changed, no longer follows. */
  slip(): void {
    this.grips = false;
  }

  shown(screwTurns: number): number {
    return this.held && this.grips ? this.base + this.asked : screwTurns;
  }
}
