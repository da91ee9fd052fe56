/** Controls where a panel's layout has them, and a place for every control of the panel that the layout does not name. */
import type { ControlId } from '../../../bench/benchEvent.ts';
import { CONTROLS } from '../../../bench/controls/controls.ts';
import type { ControlPanel } from '../../../bench/controls/row.ts';
import { drawn, unplaced } from '../../../present/panelRows.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { type Look, PortControl } from '../parts.tsx';

export interface Place extends Look {
  readonly control: ControlId;
}

/** The same look for several controls. */
export const each = (controls: readonly ControlId[], look: Look = {}): readonly Place[] =>
  controls.map((control) => ({ control, ...look }));

interface PlacesProps {
  readonly port: BenchPort;
  readonly places: readonly Place[];
}

export function Places({ port, places }: PlacesProps) {
  return (
    <>
      {drawn(port.receiver, places).map((place) => (
        <PortControl key={place.control} port={port} {...place} />
      ))}
    </>
  );
}

interface OthersProps {
  readonly port: BenchPort;
  readonly panel: ControlPanel;
  /** what stands on the panel already */
  readonly placed: readonly ControlId[];
  readonly look?: Look;
}

export function Others({ port, panel, placed, look = {} }: OthersProps) {
  return <Places port={port} places={each(unplaced(CONTROLS, port.receiver, panel, placed), look)} />;
}
