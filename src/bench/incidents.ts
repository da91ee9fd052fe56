/** Things that cost points, written down with the second at which they happened. */
import type { BenchState, IncidentKind } from './benchState.ts';

/** Repeated tries within this time of the last entry count as one. */
const CLUSTER_SECONDS = 10;

/** With this many of a kind no more points can be lost by them, and a run of nothing else must not grow slow. */
export const MOST_OF_A_KIND = 200;

export function withIncident(state: BenchState, kind: IncidentKind, subject: string): BenchState {
  if (state.incidents.filter((incident) => incident.kind === kind).length >= MOST_OF_A_KIND) return state;
  return { ...state, incidents: [...state.incidents, { kind, atSeconds: state.seconds, subject }] };
}

/** The same, but a repeat for the same thing within ten seconds is not written down again. */
export function withClusteredIncident(state: BenchState, kind: IncidentKind, subject: string): BenchState {
  const again = state.incidents.some(
    (i) => i.kind === kind && i.subject === subject && state.seconds - i.atSeconds < CLUSTER_SECONDS,
  );
  return again ? state : withIncident(state, kind, subject);
}
