/** What is wrong: faults of the set, flaws of the bench and how it is left, as cards; and all those that may be added. */

import { useMemo, useState } from 'preact/hooks';
import { slugName } from '../../../describe/slugName.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import type { FaultKind } from '../../../receiver/faults/fault.ts';
import type { FaultySet } from '../../../receiver/faults/faultPlaces.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { ControlWords } from '../../../words/controlWords.ts';
import { type Draft, withFault } from '../../../workshop/draft.ts';
import { cardFields, kindsThatFit, newFault, type PlaceField, withField } from '../../../workshop/faultCards.ts';
import { FLAWS, type FlawId, flawRow, isStilled, usualFlaw } from '../../../workshop/flaws.ts';
import { controlsLeft, LEFT_LEADS, panelOf } from '../../../workshop/leftCards.ts';
import { AmountInput } from './AmountInput.tsx';
import { Card, PlaceChoice } from './Card.tsx';
import { Chips } from './Chips.tsx';
import { AddLeft, LeftCards } from './LeftCards.tsx';
import type { WorkshopPort } from './workshopPort.ts';

/** A scenario may have so many. */
const MOST_FAULTS = 8;

export function CardsPanel({ port }: { readonly port: WorkshopPort }) {
  const { workshop: say } = useWords();
  const { draft, standing } = port;
  const set = standing.kind === 'stands' ? (standing.set.design ?? standing.set) : null;
  const flaws = FLAWS.filter((id) => flawRow(id).read(draft) !== null);
  return (
    <section class="cards-panel" aria-labelledby="cards-panel-title">
      <PlateTitle id="cards-panel-title" no={2}>
        {say.wrongTitle}
      </PlateTitle>
      <CardsTold draft={draft} />
      {draft.faults.length === 0 || set === null ? null : (
        <>
          <h3 class="l">{say.inSet}</h3>
          <ul class="wrong-cards">
            {draft.faults.map((_, at) => (
              <FaultCard key={at} port={port} set={set} at={at} />
            ))}
          </ul>
        </>
      )}
      {flaws.length === 0 ? null : (
        <>
          <h3 class="l">{say.inBench}</h3>
          <ul class="wrong-cards">
            {flaws.map((id) => (
              <FlawCard key={id} port={port} id={id} receiver={set?.receiver ?? null} />
            ))}
          </ul>
        </>
      )}
      {set === null ? null : <LeftCards port={port} receiver={set.receiver} />}
      {set === null ? null : <AddCards port={port} set={set} there={flaws} />}
    </section>
  );
}

/** What there is of cards, heard as they come and go; seen only where there is none, for else the cards say it. */
function CardsTold({ draft }: { readonly draft: Draft }) {
  const { workshop: say, names, panels, controls, format } = useWords();
  const named = controls as ControlWords;
  const cards = [
    ...draft.faults.map(({ kind }) => say.faults[kind]),
    ...FLAWS.filter((id) => flawRow(id).read(draft) !== null).map((id) => say.flaws[id].name),
    ...LEFT_LEADS.filter((lead) => draft.start.leads?.[lead] !== undefined).map((lead) =>
      say.leadLeft(names.leads[lead]),
    ),
    ...controlsLeft(draft).map((id) => say.controlLeft(panels[panelOf(id)], named[id]!.label)),
  ];
  return (
    <p class={cards.length === 0 ? 'desk-note' : 'unseen'} aria-live="polite">
      {cards.length === 0 ? say.nothingWrong : say.cardsNow(format.list(cards))}
    </p>
  );
}

function FaultCard({ port, set, at }: { readonly port: WorkshopPort; readonly set: FaultySet; readonly at: number }) {
  const words = useWords();
  const { workshop: say } = words;
  const { draft } = port;
  const fault = draft.faults[at]!;
  const name = say.faults[fault.kind];
  const fields = cardFields(fault, set);
  const put = (key: string, value: string | number, mark?: string): void =>
    port.change(withFault(draft, at, withField(fault, key, value)), mark);
  const called = (holds: PlaceField['holds'], place: string): string =>
    holds === 'slug' ? slugName(words, set.receiver, place) : place;
  return (
    <Card name={name} no={at + 1} onOff={() => port.change(withFault(draft, at, null))}>
      {fields.map((field) =>
        field.holds === 'number' ? (
          <AmountInput
            key={field.key}
            name={say.fields[field.key] ?? field.key}
            of={name}
            value={field.value}
            unit={field.unit}
            least={field.least}
            most={field.most}
            onValue={(value) => put(field.key, value, `fault ${at} ${field.key}`)}
            onLetGo={port.pause}
          />
        ) : (
          <PlaceChoice
            key={field.key}
            name={say.fields[field.key] ?? field.key}
            of={name}
            value={field.value}
            choices={field.choices.map((value) => ({ value, name: called(field.holds, value) }))}
            onValue={(value) => put(field.key, value)}
          />
        ),
      )}
    </Card>
  );
}

interface FlawCardProps {
  readonly port: WorkshopPort;
  readonly id: FlawId;
  readonly receiver: Receiver | null;
}

function FlawCard({ port, id, receiver }: FlawCardProps) {
  const words = useWords();
  const { workshop: say } = words;
  const { draft } = port;
  const { name, amount } = say.flaws[id];
  const row = flawRow(id);
  const value = row.read(draft);
  const off = (): void => port.change(row.write(draft, null));
  if (row.holds === 'yes') return <Card name={name} onOff={off} />;
  return (
    <Card name={name} onOff={off}>
      {row.holds === 'number' ? (
        <AmountInput
          name={amount}
          of={name}
          value={Number(value)}
          unit={row.unit}
          least={row.bounds.least}
          most={row.bounds.most}
          onValue={(next) => port.change(row.write(draft, next), `flaw ${id}`)}
          onLetGo={port.pause}
        />
      ) : (
        <PlaceChoice
          name={amount}
          of={name}
          value={String(value)}
          choices={(receiver?.adjusters ?? []).map((a) => ({ value: a.id, name: slugName(words, receiver!, a.id) }))}
          onValue={(next) => port.change(row.write(draft, next))}
        />
      )}
      {isStilled(id, draft) ? <p class="desk-note">{say.stilled}</p> : null}
    </Card>
  );
}

interface AddCardsProps {
  readonly port: WorkshopPort;
  readonly set: FaultySet;
  readonly there: readonly FlawId[];
}

function AddCards({ port, set, there }: AddCardsProps) {
  const { workshop: say } = useWords();
  const { draft } = port;
  const [none, setNone] = useState<FaultKind | null>(null);
  const kinds = useMemo(() => kindsThatFit(set), [set]);
  const more = FLAWS.filter((id) => !there.includes(id));
  const add = (kind: FaultKind): void => {
    const fault = newFault(kind, set, draft.faults);
    setNone(fault === null ? kind : null);
    if (fault !== null) port.change(withFault(draft, draft.faults.length, fault));
  };
  return (
    <div class="add-cards">
      <h3>{say.addCard}</h3>
      {draft.faults.length >= MOST_FAULTS ? (
        <p class="desk-note">{say.mostFaults(MOST_FAULTS)}</p>
      ) : (
        <fieldset>
          <legend class="l">{say.addToSet}</legend>
          <Chips
            of={say.addToSet}
            chips={kinds.map((kind) => ({ key: kind, name: say.faults[kind], act: () => add(kind) }))}
          />
        </fieldset>
      )}
      {none === null ? null : (
        <p class="desk-note" role="alert">
          {say.noPlace(say.faults[none])}
        </p>
      )}
      {more.length === 0 ? null : (
        <fieldset>
          <legend class="l">{say.addToBench}</legend>
          <Chips
            of={say.addToBench}
            chips={more.map((id) => ({
              key: id,
              name: say.flaws[id].name,
              act: () => {
                const slugs = set.receiver.adjusters.map((a) => a.id);
                port.change(flawRow(id).write(draft, usualFlaw(id, slugs)));
              },
            }))}
          />
        </fieldset>
      )}
      <AddLeft port={port} receiver={set.receiver} />
    </div>
  );
}
