/** Whether the difficulty that a scenario's file says of it can stand beside the figure of its certificate. The bands are wide, for a certificate counts work and not thought: they are contradicted only plainly. */
import type { Problem } from '../base/result.ts';
import { PAR_NOT_KNOWN } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { scenarioHash } from './scenarioFile.ts';

type Level = Scenario['difficulty'];

interface Band {
  readonly level: Level;
  /** what a certificate may say of such a scenario, of 10 */
  readonly least: number;
  readonly most: number;
}

/** Made so that the shipped course lies inside: there level 1 has 1 to 5.8, level 2 has 0.5 to 3.8, level 3 has 1.2 to 6.5. */
const DIFFICULTY_BANDS: readonly Band[] = [
  { level: 1, least: 0, most: 6 },
  { level: 2, least: 0, most: 8 },
  { level: 3, least: 1, most: 10 },
];

export interface CertifiedDifficulty {
  readonly scenarioHash: string;
  readonly difficulty: number;
}

/** The difficulties that go with a certificate where the scenario's own does not. null: it does, or the certificate is of another scenario. */
export function levelsBeside(scenario: Scenario, certificate: CertifiedDifficulty): readonly Level[] | null {
  if (!isOf(scenario, certificate)) return null;
  const figure = certificate.difficulty;
  const fits = ({ least, most }: Band): boolean => {
    // Where nothing is to be turned the figure of work says nothing of how hard that is to see.
    const lowest = scenario.slugsRight === true ? 0 : least;
    return figure >= lowest && figure <= most;
  };
  const fitting = DIFFICULTY_BANDS.filter(fits).map((band) => band.level);
  return fitting.includes(scenario.difficulty) ? null : fitting;
}

/** null: they go together, or the certificate is of another scenario. */
export function difficultyProblem(scenario: Scenario, certificate: CertifiedDifficulty, file: string): Problem | null {
  const fitting = levelsBeside(scenario, certificate);
  if (fitting === null) return null;
  const { level, least, most } = DIFFICULTY_BANDS.find((band) => band.level === scenario.difficulty)!;
  return {
    ...{ file, place: '/difficulty' },
    found: ['difficultyBeside', level, least, most, certificate.difficulty],
    wanted: ['oneOf', fitting, ''],
  };
}

/** The certifier looks at all but the difficulty: the file may have another since. */
function isOf(scenario: Scenario, { scenarioHash: certified }: CertifiedDifficulty): boolean {
  return DIFFICULTY_BANDS.some(
    ({ level }) => scenarioHash({ ...scenario, difficulty: level, par: PAR_NOT_KNOWN }) === certified,
  );
}
