/** The order of the unit tests: those files first that alone take longer than many others together, so that no core is left with one of them at the end. */
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Longest first; those with ngspice's time runs, those that walk over the whole course, and those that deal and certify. */
const LONG = [
  'grading/shipped',
  'certify/dealSet',
  'grading/randomLearners',
  'session/practiceTicks',
  'certify/endless',
  'certify/lowestWorst',
  'technician/tracing',
  'adversaries/hands',
  'cli/deck',
  'cli/program',
  'certify/attempt',
  'rooms/sceneLeads',
  'physics/ngspiceDetectors',
  'cli/regradeMany',
  'files/shippedScenarios',
  'physics/limitCycle',
  'describe/strange',
  'receiver/faults/symptoms',
  'grading/rules',
  'adversaries/oneDepth',
  'app/benchStore',
  'present/oneThingWrong',
  'present/steps',
  'certify/certifier',
  'receiver/faults/ngspiceBench',
  'services/library',
  'rooms/reportFigure',
  'grading/slugsRight',
  'run/runLog',
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
