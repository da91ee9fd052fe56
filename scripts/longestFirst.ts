/** The order of the unit tests: those files first that alone take longer than many others together, so that no core is left with one of them at the end. */
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Longest first; those with ngspice's time runs and those that walk over the whole course. */
const LONG = [
  'grading/randomLearners',
  'cli/deck',
  'grading/shipped',
  'physics/ngspiceDetectors',
  'receiver/faults/symptoms',
  'certify/endless',
  'adversaries/oneDepth',
  'rooms/sceneLeads',
  'certify/dealSet',
];

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification): number => {
      const at = LONG.findIndex((name) => moduleId.endsWith(`/tests/${name}.test.ts`));
      return at < 0 ? LONG.length : at;
    };
    return (await super.sort(files)).toSorted((a, b) => place(a) - place(b));
  }
}
