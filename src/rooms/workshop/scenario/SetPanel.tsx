/** The receiver, which set of it stands on the bench, and how far its slugs are off: by hand, or scattered from a seed. */

import { useMemo, useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Frame } from '../../../kit/theme/art.tsx';
import { MOST_SEED } from '../../../scenario/attempt.ts';
import { withScatter, withSet, withSlug } from '../../../workshop/draft.ts';
import { NumberField } from './NumberField.tsx';
import { SetPlan } from './SetPlan.tsx';
import { SlugRow } from './SlugRow.tsx';
import { stoodSlugs } from './stoodSlugs.ts';
import type { WorkshopPort } from './workshopPort.ts';

/** Scatters to choose from, turns. */
const SCATTERS = [0, 0.25, 0.5, 1, 1.5, 2, 3, 4] as const;

interface SetPanelProps {
  readonly port: WorkshopPort;
  /** for what shows nothing of the slugs */
  readonly resting: WorkshopPort;
}

export function SetPanel({ port, resting }: SetPanelProps) {
  const { workshop: say } = useWords();
  const { standing } = port;
  const receiver = useMemo(() => <ReceiverChoice port={resting} />, [resting]);
  const numbers = useMemo(() => <SetNumbers port={resting} />, [resting]);
  return (
    <section class="paper set-panel" aria-labelledby="set-panel-title">
      <Frame kind="sheet" />
      <PlateTitle id="set-panel-title" no={1}>
        {say.setTitle}
      </PlateTitle>
      {receiver}
      {standing.kind === 'stands' ? (
        <Slugs port={port} set={standing.set} />
      ) : (
        <p class="desk-note">{standing.kind === 'fetching' ? say.reading : say.cannotRead}</p>
      )}
      {numbers}
    </section>
  );
}

function ReceiverChoice({ port: { draft, receivers, toReceiver } }: { readonly port: WorkshopPort }) {
  const { workshop: say } = useWords();
  return (
    <div class="set-choices">
      <label class="desk-field wide">
        <span class="l">{say.receiverField}</span>
        <select value={draft.receiver} onChange={({ currentTarget: { value } }) => toReceiver(value)}>
          {receivers.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

/** Which set of the design stands there, and how its slugs are scattered. */
function SetNumbers({ port }: { readonly port: WorkshopPort }) {
  const { workshop: say, format } = useWords();
  const { draft } = port;
  const dealt = draft.set !== undefined;
  return (
    <div class="set-choices">
      <label class="desk-field">
        <span class="l">{say.setNumber}</span>
        <select
          value={dealt ? 'dealt' : 'design'}
          onChange={({ currentTarget: { value } }) =>
            port.change(withSet(draft, value === 'dealt' ? draft.seed : null))
          }
        >
          <option value="design">{say.setDesign}</option>
          <option value="dealt">{say.setDealt}</option>
        </select>
      </label>
      {draft.set === undefined ? null : (
        <NumberField
          label={say.setField}
          value={draft.set}
          least={0}
          most={MOST_SEED}
          onValue={(set) => port.change(withSet(draft, set), 'set')}
        />
      )}
      <label class="desk-field">
        <span class="l">{say.scatter}</span>
        <select
          value={String(draft.start.randomTurns)}
          onChange={({ currentTarget: { value } }) => port.change(withScatter(draft, Number(value)))}
        >
          {[...new Set([...SCATTERS, draft.start.randomTurns])].map((turns) => (
            <option key={turns} value={String(turns)}>
              {turns === 0 ? say.scatterNone : say.scatterTurns(format.turnsLong(turns))}
            </option>
          ))}
        </select>
      </label>
      <NumberField
        label={say.seed}
        value={draft.seed}
        least={0}
        most={MOST_SEED}
        onValue={(seed) => port.change({ ...draft, seed }, 'seed')}
      />
      <button
        type="button"
        class="small-button"
        onClick={() => port.change({ ...draft, seed: (draft.seed + 1) % (MOST_SEED + 1) }, 'seed')}
      >
        {say.anotherSeed}
      </button>
    </div>
  );
}

interface SlugsProps {
  readonly port: WorkshopPort;
  readonly set: Extract<WorkshopPort['standing'], { kind: 'stands' }>['set'];
}

/** Written down so finely; a hand on the plan asks for no more. */
const PARTS_OF_A_TURN = 32;

function Slugs({ port, set }: SlugsProps) {
  const { workshop: say } = useWords();
  const { draft } = port;
  const [asked, setAsked] = useState('');
  const stood = stoodSlugs(draft, set);
  const chosen = stood.find(({ id }) => id === asked) ?? stood[0];
  const turn = (id: string, turns: number | null): void => {
    const { least, most } = stood.find((one) => one.id === id)!;
    const held = turns === null ? null : Math.min(most, Math.max(least, turns));
    const fine = held === null ? null : Math.round(held * PARTS_OF_A_TURN) / PARTS_OF_A_TURN + 0;
    port.change(withSlug(draft, id, fine), `slug ${id}`);
  };
  return (
    <>
      <SetPlan
        set={set.design ?? set}
        faults={draft.faults}
        slugs={stood}
        chosen={chosen?.id ?? ''}
        onChoose={setAsked}
        onTurns={turn}
        onLetGo={port.pause}
      />
      <p class="set-how">{say.planHow}</p>
      {chosen === undefined ? null : (
        <SlugRow
          key={chosen.id}
          slug={chosen}
          named={Object.hasOwn(draft.start.slugs, chosen.id)}
          scattered={draft.start.randomTurns > 0}
          onTurns={(turns) => turn(chosen.id, turns)}
          onLetGo={port.pause}
        />
      )}
    </>
  );
}
