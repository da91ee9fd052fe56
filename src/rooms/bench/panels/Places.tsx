/** Controls where a panel's layout has them, and a place for every control of the panel that the layout does not name. */
import type { ControlId } from '../../../bench/benchEvent.ts';
import { CONTROLS } from '../../../bench/controls/controls.ts';
import type { ControlPanel, IdsOnPanel } from '../../../bench/controls/row.ts';
import type { CONTROL_ROWS } from '../../../bench/controls/rows.ts';
import { drawn, unplaced } from '../../../present/panelRows.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { PortControl, type PortLook } from '../portWidgets.tsx';

export interface PanelPlace<Control extends ControlId = ControlId> extends PortLook {
  readonly control: Control;
}

/** The same look for several controls. */
export const each = <Control extends ControlId>(
  controls: readonly Control[],
  look: PortLook = {},
): readonly PanelPlace<Control>[] => controls.map((control) => ({ control, ...look }));

interface PlacesProps {
  readonly port: BenchPort;
  readonly places: readonly PanelPlace[];
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

/** The controls whose rows stand on a panel: a layout that places another there does not compile. */
export type OnPanel<Panel extends ControlPanel> = readonly IdsOnPanel<typeof CONTROL_ROWS, Panel>[];

interface OthersProps<Panel extends ControlPanel> {
  readonly port: BenchPort;
  readonly panel: Panel;
  /** what stands on the panel already */
  readonly placed: OnPanel<Panel>;
  readonly look?: PortLook;
}

export function Others<Panel extends ControlPanel>({ port, panel, placed, look = {} }: OthersProps<Panel>) {
  return <Places port={port} places={each(unplaced(CONTROLS, port.receiver, panel, placed), look)} />;
}
