/** What a part of the circuit may be there for: each has its sentences. */
export type PartRole =
  | 'seriesResistor'
  | 'shuntResistor'
  | 'seriesCapacitor'
  | 'shuntCapacitor'
  | 'slug'
  | 'coil'
  | 'stage'
  | 'detector'
  | 'bypass'
  | 'decoupling'
  | 'coupling'
  | 'shield'
  | 'line'
  | 'point'
  | 'source';
