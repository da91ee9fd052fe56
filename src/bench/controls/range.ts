/** What a control may be set to, from its row: views draw from it, the reducer refuses by it. */
import type { Receiver } from '../../receiver/receiver.ts';
import { mainResponse } from '../../receiver/responses.ts';
import type { Refusal } from '../benchEvent.ts';
import type { ControlRow, ControlUnit, SetPart } from './row.ts';

export type ControlRange =
  | {
      readonly kind: 'number';
      readonly unit: ControlUnit;
      readonly min: number;
      readonly max: number;
      readonly step: number;
      readonly fineStep: number;
      /** only whole steps exist (an attenuator); the others may stand anywhere between the ends */
      readonly stepped: boolean;
    }
  | { readonly kind: 'choice'; readonly unit: ControlUnit | null; readonly choices: readonly (string | number)[] }
  | { readonly kind: 'switch' };

export function rangeOf(row: ControlRow, receiver: Receiver): ControlRange {
  switch (row.kind) {
    case 'switch':
      return { kind: 'switch' };
    case 'positions':
      return { kind: 'choice', unit: null, choices: row.choices };
    case 'clicks':
      return { kind: 'choice', unit: row.unit, choices: row.choices };
    case 'range': {
      const step = row.step === 'bySet' ? frequencyStepHz(mainResponse(receiver).setUp.centreHz) : row.step;
      const { unit, min, max, stepped = false } = row;
      const fineStep = row.fineStep ?? (stepped ? step : step / 10);
      return { kind: 'number', unit, min, max, step, fineStep, stepped };
    }
  }
}

/** Why a control cannot be set so on this receiver; null when it can. */
export function refusalOf(row: ControlRow, receiver: Receiver, value: unknown): Refusal | null {
  const range = rangeOf(row, receiver);
  switch (range.kind) {
    case 'switch':
      return typeof value === 'boolean' ? null : 'valueOutOfRange';
    case 'choice':
      if (!range.choices.some((choice) => choice === value)) return 'valueOutOfRange';
      return isOffered(row, receiver, value as string | number) ? null : 'notInThisScenario';
    case 'number': {
      if (typeof value !== 'number' || !Number.isFinite(value)) return 'valueOutOfRange';
      if (value < range.min || value > range.max) return 'valueOutOfRange';
      return range.stepped && !Number.isInteger(value / range.step) ? 'valueOutOfRange' : null;
    }
  }
}

/** Whether a control has anything to do on this receiver. */
export const isDrawn = (row: ControlRow, receiver: Receiver): boolean => hasPart(receiver, row.drawnWith);

/** A set without the part that a choice needs has no use for it. */
export function isOffered(row: ControlRow, receiver: Receiver, choice: string | number): boolean {
  return row.kind !== 'positions' || hasPart(receiver, row.needs?.[choice]);
}

const hasPart = (receiver: Receiver, part: SetPart | undefined): boolean =>
  part === undefined || (receiver[part] ?? null) !== null;

/** A knob's click is about a hundredth of what that part of the spectrum is swept over. */
function frequencyStepHz(centreHz: number): number {
  if (centreHz < 2e6) return 1e3;
  if (centreHz < 20e6) return 10e3;
  return centreHz < 100e6 ? 50e3 : 100e3;
}
