/** Reads the events of a run one by one, keeping the good ones and a bounded list of what is wrong with the others. */
import * as v from 'valibot';
import type { Problem } from '../base/result.ts';
import { timedEventSchema } from './eventSchema.ts';
import type { TimedEvent } from './runFile.ts';
import { PROBLEMS_LISTED, problemsOf } from './schemaProblems.ts';

export interface EventReader {
  readonly events: readonly TimedEvent[];
  readonly problems: readonly Problem[];
  /** false as soon as there are more problems than are listed: nothing further need be read */
  take(item: unknown, index: number): boolean;
}

/** The shape of each event by its type, so that one is held against its own shape alone. */
const SHAPES: ReadonlyMap<unknown, v.GenericSchema<unknown, TimedEvent>> = new Map(
  timedEventSchema.options.map((shape) => [shape.entries.type.literal, shape]),
);

export function createEventReader(file: string): EventReader {
  const events: TimedEvent[] = [];
  const problems: Problem[] = [];
  return {
    events,
    problems,
    take(item, index) {
      const type = typeof item === 'object' && item !== null ? (item as { readonly type?: unknown }).type : undefined;
      const read = v.safeParse(SHAPES.get(type) ?? timedEventSchema, item);
      if (read.success) {
        if (problems.length === 0) events.push(read.output);
        return true;
      }
      for (const problem of problemsOf(read.issues, file)) {
        problems.push({ ...problem, place: `/events/${index}${problem.place}` });
      }
      return problems.length <= PROBLEMS_LISTED;
    },
  };
}
