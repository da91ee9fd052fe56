/** How a curve from an intermediate stage is described: its peaks, and the dips between them. */
export interface Turning {
  readonly hz: number;
  /** as a share of the highest, linear; without sign */
  readonly level: number;
}

export interface StageCurve {
  /** where the sweep goes in */
  readonly at: string;
  readonly peaks: readonly Turning[];
  /** between two peaks; an S-curve's are not told */
  readonly dips: readonly Turning[];
  /** of a curve with one top, which may be broad: where it stands half way up, if it comes down so far */
  readonly halfWayHz: readonly [number, number] | null;
}
