/** Instrument 2: the tube's own controls. All at once where there is room, else a trace side and a face side. */

import { memo } from 'preact/compat';
import type { ControlId } from '../../../bench/benchEvent.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { Rect } from '../../../kit/px.ts';
import { Short } from '../../../kit/Short.tsx';
import { SmallSwitch, Switch } from '../../../kit/widgets/Switch.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import { useOffOn } from '../portWidgets.tsx';
import { Panel, SidedPanel } from './Panel.tsx';
import { each, type OnPanel, Others, Places } from './Places.tsx';
import './tubePanel.css';

export interface WaxSwitch {
  readonly allowed: boolean;
  readonly on: boolean;
  readonly set: (on: boolean) => void;
}

interface TubePanelProps {
  readonly port: BenchPort;
  /** null: on the shelf, all in one row */
  readonly rect: Rect | null;
  readonly wax: WaxSwitch;
}

const BEAM = ['yVoltsPerDiv', 'yPositionDiv', 'xGain', 'xPositionDiv'] as const;
const FACE = ['focus', 'brightness'] as const;
const PLACED: OnPanel<'tube'> = [
  ...BEAM,
  ...FACE,
  ...(['yCoupling', 'yInput', 'yInvert', 'ySmoothing', 'phosphor'] as const),
];

const Y_INPUT = { control: 'yInput', width: 92 } as const;

function TubePanelBase({ port, rect, wax }: TubePanelProps) {
  const { panels: panelWords } = useWords();
  const head = { id: 'panel-tube', no: 2, title: panelWords.tube, rect } as const;
  if (rect === null) {
    return (
      <Panel {...head}>
        <Places port={port} places={each(BEAM)} />
        <Places port={port} places={[...each(['yCoupling']), Y_INPUT, ...each(['yInvert', 'ySmoothing'])]} />
        <Places port={port} places={each([...FACE, 'phosphor'])} />
        <Others port={port} panel="tube" placed={PLACED} />
        <Wax wax={wax} />
      </Panel>
    );
  }
  const rail = rect.width < 190;
  const room = rect.height - 40;
  const r = rail ? (room < 420 ? 13 : 16) : rect.width > 250 && room > 330 ? 26 : 20;
  const cls = rail ? 'tube-panel rail' : 'tube-panel pairs';
  // Two columns: three rows of knobs and three of switches.
  if (!rail && room >= 3 * (2 * r + 59) + 3 * 76) {
    return (
      <Panel {...head} class={cls}>
        <Places port={port} places={each([...BEAM, ...FACE], { r })} />
        <Places port={port} places={[...each(['yCoupling']), Y_INPUT, ...each(['yInvert', 'ySmoothing'])]} />
        <Wax wax={wax} />
        <Places port={port} places={each(['phosphor'])} />
        <Others port={port} panel="tube" placed={PLACED} look={{ r }} />
      </Panel>
    );
  }
  const small = { look: 'small' } as const;
  const trace = () => (
    <>
      <Places port={port} places={BEAM.map((control) => ({ control, r, readout: !rail || !isPosition(control) }))} />
      {rail ? (
        <Places port={port} places={each(['yCoupling', 'ySmoothing'], small)} />
      ) : (
        <>
          <Places port={port} places={[...each(['yCoupling']), Y_INPUT]} />
          {room > 350 ? <Hint /> : null}
        </>
      )}
    </>
  );
  const face = () => (
    <>
      <Places port={port} places={each(FACE, { r })} />
      {rail ? (
        <>
          <Places port={port} places={each(['yInput', 'yInvert'], small)} />
          <Wax wax={wax} small />
          <Places port={port} places={each(['phosphor'], { look: 'row' })} />
        </>
      ) : (
        <>
          <Places port={port} places={each(['yInvert', 'ySmoothing'])} />
          <Wax wax={wax} />
          <Places port={port} places={each(['phosphor'])} />
        </>
      )}
      <Others port={port} panel="tube" placed={PLACED} look={{ r, ...(rail ? small : {}) }} />
    </>
  );
  return (
    <SidedPanel
      {...head}
      class={cls}
      corner={rail}
      sides={[
        { name: panelWords.traceSide, content: trace },
        { name: panelWords.faceSide, content: face },
      ]}
    />
  );
}

const isPosition = (control: ControlId): boolean => control === 'yPositionDiv' || control === 'xPositionDiv';

function Hint() {
  const { tubeControls: tubeControlWords } = useWords();
  return (
    <p class="s panel-hint">
      {tubeControlWords.hint.map((line) => (
        <Short key={line}>{line}</Short>
      ))}
    </p>
  );
}

/** Wax marks are the view's own: they are help on the glass, no control of the bench. */
function Wax({ wax, small = false }: { readonly wax: WaxSwitch; readonly small?: boolean }) {
  const { tubeControls: tubeControlWords } = useWords();
  const props = {
    label: tubeControlWords.wax,
    positions: useOffOn(),
    value: wax.on && wax.allowed,
    onChange: wax.set,
    disabled: !wax.allowed,
  } as const;
  return (
    <div {...(wax.allowed ? {} : { title: tubeControlWords.waxNote })}>
      {small ? <SmallSwitch {...props} /> : <Switch {...props} />}
    </div>
  );
}

export const TubePanel = memo(TubePanelBase);
