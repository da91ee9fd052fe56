/** The address of the papers of a job, behind `#`. */

/** null: wherever they open */
export const papersHash = (scenarioId: string | null, paper = 'sheet'): string =>
  scenarioId === null ? '#/papers' : `#/papers/${scenarioId}/${paper}`;
