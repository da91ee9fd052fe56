/** Names of the acts that prove the picture. */

/** Acts at the bench that prove the picture; each is found by a watcher, never by a button. */
export type ProofId =
  | 'halveLevel'
  | 'markersOffOn'
  | 'touchEarth'
  | 'swingPhase'
  | 'skirts'
  | 'bias'
  | 'liftCrystal'
  | 'pipDown';
export const PROOFS: readonly ProofId[] = [
  'halveLevel',
  'markersOffOn',
  'touchEarth',
  'swingPhase',
  'skirts',
  'bias',
  'liftCrystal',
  'pipDown',
];

/** Watched for only where a scenario asks for them: the others stand in every bench's memory. */
export const WHERE_ASKED: readonly ProofId[] = ['bias', 'liftCrystal', 'pipDown'];
