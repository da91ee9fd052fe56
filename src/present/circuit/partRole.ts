/** What a symbol of the circuit is there for, as far as its kind, its place and its row in the parts tray tell. Pure. */
import type { Part } from '../../receiver/faults/partsTray.ts';
import type { PartRole } from '../../words/partRole.ts';
import type { CircuitSymbol } from './circuitTypes.ts';

/** `held`: its row in the tray, where it has one; null: a sign of which there is nothing to say */
export function partRole(
  { kind, lying, slug }: Pick<CircuitSymbol, 'kind' | 'lying' | 'slug'>,
  held: Part | undefined,
): PartRole | null {
  switch (held?.kind) {
    case 'bypass':
    case 'decoupling':
    case 'coupling':
    case 'shield':
    case 'line':
      return held.kind;
    case undefined:
    case 'resistor':
    case 'capacitor':
    case 'coil':
    case 'stage':
    case 'diode':
      break;
  }
  switch (kind) {
    case 'resistor':
      return lying ? 'seriesResistor' : 'shuntResistor';
    case 'capacitor':
      return lying ? 'seriesCapacitor' : 'shuntCapacitor';
    case 'coil':
      return slug === null ? 'coil' : 'slug';
    case 'valve':
    case 'transistor':
      return 'stage';
    case 'diode':
    case 'fmDetector':
      return 'detector';
    case 'biasFeed':
      return 'line';
    case 'shield':
    case 'point':
    case 'source':
      return kind;
    case 'earth':
    case 'supply':
      return null;
  }
}
