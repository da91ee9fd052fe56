/** One scenario of the course done by the technician and graded: plain data in and out, so that a worker may run it. */
import { certifiedSet } from '../../scripts/makeCourseIndex.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { grade } from '../../src/grading/grade.ts';
import type { Diagnosis } from '../../src/scenario/diagnosis.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { shippedLibrary } from '../files/shipped.ts';

export interface Demonstrated {
  readonly id: string;
  readonly total: number;
  readonly passed: boolean;
  /** parts that were replaced, in order */
  readonly replaced: readonly string[];
  /** what was said to have been wrong; null: nothing was asked */
  readonly said: Diagnosis | null;
}

/** The bench of a shipped scenario, its set as its certificate has it; `dealt`: dealt anew. */
export function setupOf(id: string, dealt = false): BenchSetup {
  const library = shippedLibrary();
  const scenario = library.scenarios.find((s) => s.id === id);
  if (scenario === undefined) throw new Error(`no scenario ${id}`);
  const setup = benchSetup(library.receivers.get(scenario.receiver)!, scenario, dealt ? null : certifiedSet(id));
  if (!setup.ok) throw new Error(JSON.stringify(setup.problems));
  return setup.value;
}

export function demonstrated(id: string): Demonstrated {
  const setup = setupOf(id);
  const { events } = demonstrate(setup);
  const { total, passed } = grade(setup, events);
  const replaced = events.flatMap((event) => (event.type === 'partReplaced' ? [event.element] : []));
  const said = events.findLast((event) => event.type === 'diagnosisStated') ?? null;
  return { id, total, passed, replaced, said };
}
