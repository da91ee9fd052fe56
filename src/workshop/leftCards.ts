/**
 * How a scenario leaves the bench, as cards: knobs and switches that stand elsewhere than at rest, and leads that stand elsewhere than the sheet has them. What may be
 * said of each comes from the table of controls and from the receiver's test points.
 */
import { CONTROLS } from '../bench/controls/controls.ts';
import { isOffered } from '../bench/controls/range.ts';
import type { ControlPanel, ControlRow, ControlUnit } from '../bench/controls/row.ts';
import { pointTakes } from '../receiver/leadEnds.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { Draft } from './draft.ts';
import type { CardUnit } from './faultCards.ts';

export type ControlId = (typeof CONTROLS.ids)[number];
export type ControlValue = number | boolean | string;

export const LEFT_LEADS = ['rf', 'y', 'earth', 'biasA', 'biasB'] as const;
export type LeftLead = (typeof LEFT_LEADS)[number];

export type ControlField =
  | { readonly holds: 'choice'; readonly choices: readonly ControlValue[]; readonly unit: CardUnit | null }
  | {
      readonly holds: 'amount';
      readonly unit: CardUnit;
      readonly least: number;
      readonly most: number;
      readonly step: number;
    };

const UNITS: Readonly<Record<ControlUnit, CardUnit>> = {
  hz: 'Hz',
  hzWide: 'Hz',
  hzOff: 'Hz',
  db: 'dB',
  degrees: '°',
  divisions: 'div',
  volts: 'V',
  unsignedVolts: 'V',
  voltsPerDiv: 'V',
  times: '×',
  share: 'share',
};

const rowOf = (id: ControlId): ControlRow => CONTROLS.rows[id];

/** Controls that have something to do at this receiver and have no card yet, panel by panel. */
export function controlsToLeave(
  receiver: Receiver,
  draft: Draft,
): readonly { readonly panel: ControlPanel; readonly ids: readonly ControlId[] }[] {
  const panels = [...new Set(CONTROLS.ids.map((id) => rowOf(id).panel))];
  return panels
    .map((panel) => ({
      panel,
      ids: CONTROLS.onPanel(receiver, panel).filter((id) => !Object.hasOwn(draft.start.controls, id)),
    }))
    .filter(({ ids }) => ids.length > 0);
}

/** In the order of the panels, whatever the order of the file; names that the table has not are left to the check of the file. */
export const controlsLeft = ({ start }: Draft): readonly ControlId[] =>
  CONTROLS.ids.filter((id) => Object.hasOwn(start.controls, id));

export const panelOf = (id: ControlId): ControlPanel => rowOf(id).panel;

export function controlField(receiver: Receiver, id: ControlId): ControlField {
  const range = CONTROLS.range(receiver, id);
  switch (range.kind) {
    case 'switch':
      return { holds: 'choice', choices: [false, true], unit: null };
    case 'choice': {
      const choices = range.choices.filter((choice) => isOffered(rowOf(id), receiver, choice));
      return { holds: 'choice', choices, unit: range.unit === null ? null : UNITS[range.unit] };
    }
    case 'number': {
      const { min: least, max: most, unit, stepped, step } = range;
      return { holds: 'amount', unit: UNITS[unit], least, most, step: stepped ? step : 0 };
    }
  }
}

/** Where a new card begins: elsewhere than at rest, for a card that changes nothing says nothing. */
export function usualControl(receiver: Receiver, id: ControlId): ControlValue {
  const { resting } = rowOf(id);
  const field = controlField(receiver, id);
  if (field.holds === 'choice') return field.choices.find((choice) => choice !== resting) ?? resting;
  const row = rowOf(id);
  const example = row.kind === 'range' ? row.example : undefined;
  if (example !== undefined && example !== resting) return example;
  const { centreHz, spanHz } = receiver.responses[0]!.setUp;
  // A dial left a little off what the sheet wants; any other knob half way down.
  if (field.unit === 'Hz') return id === 'spanHz' ? spanHz / 2 : Math.min(field.most, centreHz + spanHz / 10);
  return Number(((Number(resting) + field.least) / 2).toPrecision(2));
}

/** null: as at rest; the card goes. A control of whole steps takes the nearest. */
export function withControl(draft: Draft, id: ControlId, value: ControlValue | null, step = 0): Draft {
  const { [id]: _, ...others } = draft.start.controls as Readonly<Record<string, ControlValue>>;
  const put = typeof value === 'number' && step > 0 ? Math.round(value / step) * step : value;
  return { ...draft, start: { ...draft.start, controls: put === null ? others : { ...others, [id]: put } } };
}

/** Test points that a lead may be left on. */
export const leadEnds = ({ testPoints }: Receiver, lead: LeftLead): readonly string[] =>
  testPoints.filter((point) => pointTakes(lead, point)).map(({ id }) => id);

/** A test point, or null for the tray; undefined: as the sheet has it, or as it is prepared; the card goes. */
export function withLead(draft: Draft, lead: LeftLead, end: string | null | undefined): Draft {
  const { leads = {}, ...start } = draft.start;
  const { [lead]: _, ...others } = leads;
  const left = end === undefined ? others : { ...others, [lead]: end };
  return { ...draft, start: Object.keys(left).length === 0 ? start : { ...start, leads: left } };
}
