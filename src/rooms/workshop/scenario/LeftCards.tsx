/** Cards of how the bench is left: knobs and switches that do not stand at rest, leads that do not stand where the sheet has them. */
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { ControlWords } from '../../../words/controlWords.ts';
import {
  type ControlId,
  type ControlValue,
  controlField,
  controlsLeft,
  controlsToLeave,
  LEFT_LEADS,
  type LeftLead,
  leadEnds,
  panelOf,
  usualControl,
  withControl,
  withLead,
} from '../../../workshop/leftCards.ts';
import { AmountInput } from './AmountInput.tsx';
import { Card, PlaceChoice } from './Card.tsx';
import { Chips } from './Chips.tsx';
import type { WorkshopPort } from './workshopPort.ts';

interface LeftProps {
  readonly port: WorkshopPort;
  readonly receiver: Receiver;
}

export function LeftCards({ port, receiver }: LeftProps) {
  const { workshop: say } = useWords();
  const { draft } = port;
  const controls = controlsLeft(draft);
  const leads = LEFT_LEADS.filter((lead) => draft.start.leads?.[lead] !== undefined);
  if (controls.length + leads.length === 0) return null;
  return (
    <>
      <h3 class="l">{say.asLeft}</h3>
      <ul class="wrong-cards">
        {leads.map((lead) => (
          <LeadCard key={lead} {...{ port, receiver, lead }} />
        ))}
        {controls.map((id) => (
          <ControlCard key={id} {...{ port, receiver, id }} />
        ))}
      </ul>
    </>
  );
}

/** What is not left in any way yet: leads as chips, knobs and switches in a list by panels. */
export function AddLeft({ port, receiver }: LeftProps) {
  const { workshop: say, panels, controls, names } = useWords();
  const { draft, change } = port;
  const named = controls as ControlWords;
  return (
    <fieldset>
      <legend class="l">{say.addAsLeft}</legend>
      <Chips
        of={say.addAsLeft}
        chips={LEFT_LEADS.filter(
          (lead) => draft.start.leads?.[lead] === undefined && leadEnds(receiver, lead).length > 0,
        ).map((lead) => ({
          key: lead,
          name: say.leadLeft(names.leads[lead]),
          act: () => change(withLead(draft, lead, null)),
        }))}
      />
      <label class="desk-field add-control">
        <span class="l">{say.addControl}</span>
        <select
          value=""
          onChange={({ currentTarget }) => {
            const id = currentTarget.value as ControlId;
            currentTarget.value = '';
            if (id !== ('' as ControlId)) change(withControl(draft, id, usualControl(receiver, id)));
          }}
        >
          <option value="">{say.chooseControl}</option>
          {controlsToLeave(receiver, draft).map(({ panel, ids }) => (
            <optgroup key={panel} label={panels[panel]}>
              {ids.map((id) => (
                <option key={id} value={id}>
                  {named[id]!.label}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
    </fieldset>
  );
}

function LeadCard({ port, receiver, lead }: LeftProps & { readonly lead: LeftLead }) {
  const { workshop: say, names } = useWords();
  const { draft } = port;
  const name = say.leadLeft(names.leads[lead]);
  return (
    <Card name={name} onOff={() => port.change(withLead(draft, lead, undefined))}>
      <PlaceChoice
        name={say.leftAt}
        of={name}
        value={draft.start.leads?.[lead] ?? ''}
        choices={[
          { value: '', name: say.inTray },
          ...leadEnds(receiver, lead).map((value) => ({ value, name: value })),
        ]}
        onValue={(value) => port.change(withLead(draft, lead, value === '' ? null : value))}
      />
    </Card>
  );
}

function ControlCard({ port, receiver, id }: LeftProps & { readonly id: ControlId }) {
  const { workshop: say, panels, controls, switches } = useWords();
  const { draft } = port;
  const { label, positions } = (controls as ControlWords)[id]!;
  const name = say.controlLeft(panels[panelOf(id)], label);
  const field = controlField(receiver, id);
  const value = draft.start.controls[id] as ControlValue;
  const called = (choice: ControlValue): string => {
    if (typeof choice === 'boolean') return choice ? switches.on : switches.off;
    if (typeof choice === 'number') return say.amount(choice, field.unit ?? '×');
    return positions?.[choice]?.word ?? choice;
  };
  return (
    <Card name={name} onOff={() => port.change(withControl(draft, id, null))}>
      {field.holds === 'amount' ? (
        <AmountInput
          name={say.leftAt}
          of={name}
          value={Number(value)}
          unit={field.unit}
          least={field.least}
          most={field.most}
          onValue={(next) => port.change(withControl(draft, id, next, field.step), `control ${id}`)}
          onLetGo={port.pause}
        />
      ) : (
        <PlaceChoice
          name={say.leftAt}
          of={name}
          value={String(value)}
          choices={field.choices.map((choice) => ({ value: String(choice), name: called(choice) }))}
          onValue={(text) => {
            const choice = field.choices.find((one) => String(one) === text);
            if (choice !== undefined) port.change(withControl(draft, id, choice));
          }}
        />
      )}
    </Card>
  );
}
