/** The papers of a job, and their addresses behind `#`. */
export const PAPERS = ['sheet', 'card', 'transfer'] as const;
export type PaperId = (typeof PAPERS)[number];

/** null: wherever they open */
export const papersHash = (scenarioId: string | null, paper: PaperId = 'sheet'): string =>
  scenarioId === null ? '#/papers' : `#/papers/${scenarioId}/${paper}`;
