/** What a scenario may set is what the bench's own controls allow. */
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import type { Controls } from '../../src/bench/benchState.ts';
import { checkControl, controlRange } from '../../src/bench/controlRange.ts';
import { RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { startControlsSchema } from '../../src/files/startControlsSchema.ts';
import { shippedLibrary } from './shipped.ts';

const { receivers, scenarios } = shippedLibrary();
const { receiver: strip, deck } = receivers.get('video-valve-45m')!;
// One that has a video part: what a scenario may set must not depend on the receiver's schema (checkScenario looks at that).
const receiver = { ...strip, videoFeed: { detector: 'video', into: 'Isig', siemens: 1e-4 } };
const setup = { receiver, deck, scenario: scenarios.at(-1)! };
const accepts = (control: string, value: unknown) => v.safeParse(startControlsSchema, { [control]: value }).success;

describe('the controls of a scenario', () => {
  it('are the controls of the bench', () => {
    expect(Object.keys(startControlsSchema.entries).sort()).toEqual(Object.keys(RESTING_CONTROLS).sort());
  });

  it.each(Object.keys(RESTING_CONTROLS) as (keyof Controls)[])('%s has the bench’s ends and choices', (control) => {
    const range = controlRange(setup, control);
    const values: unknown[] = [true, 'nothing of the kind', 'video', -1e12, 1e12, 0.4321];
    if (range.kind === 'number')
      values.push(range.min, range.max, range.min - 1e-3, range.max + 1e-3, (range.min + range.max) / 2 + 0.25);
    if (range.kind === 'choice') values.push(...range.choices);
    for (const value of values) {
      expect(accepts(control, value), `${control} ${String(value)}`).toBe(checkControl(setup, control, value) === null);
    }
  });

  it('stand so in every shipped scenario', () => {
    for (const scenario of scenarios) {
      for (const [control, value] of Object.entries(scenario.start.controls)) {
        expect(checkControl(setup, control, value), `${scenario.id} ${control}`).toBeNull();
      }
    }
  });
});
