/** The papers of a job. */
export const PAPERS = ['sheet', 'card', 'transfer'] as const;
export type PaperId = (typeof PAPERS)[number];
