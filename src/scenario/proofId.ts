/** Names of the acts that prove the picture. */

/** Acts at the bench that prove the picture; each is found by a watcher, never by a button. */
export type ProofId = 'halveLevel' | 'markersOffOn' | 'touchEarth' | 'swingPhase' | 'skirts';
export const PROOFS: readonly ProofId[] = ['halveLevel', 'markersOffOn', 'touchEarth', 'swingPhase', 'skirts'];
