/** What a service sheet asks of the bench for one of its responses: leads, what is screwed to them, knobs and switches. */
import type { Receiver, SheetResponse, SheetSetUp } from '../receiver/receiver.ts';
import type { ControlId } from './benchEvent.ts';
import { type Controls, type LeadEnd, type LeadId, TUBE_X } from './benchState.ts';
import { BIAS_OUTPUTS, type BiasOutput, biasControls } from './biasOutputs.ts';

/** In the order in which a hand clips them on: the strap first. */
export function sheetLeads(
  { testPoints }: Receiver,
  { setUp }: SheetResponse,
): Readonly<Record<LeadId, LeadEnd | null>> {
  const biases = Object.fromEntries(BIAS_OUTPUTS.map(({ lead }, i) => [lead, setUp.biases[i]?.at ?? null]));
  return {
    earth: testPoints.find((p) => p.role === 'earth')?.id ?? null,
    rf: setUp.injectAt,
    y: setUp.observeAt,
    x: TUBE_X,
    ...(biases as Record<BiasOutput['lead'], LeadEnd | null>),
    meter: null,
  };
}

/** What belongs to the leads themselves: termination, capacitor, tip. */
export function sheetFittings({
  observeWith,
}: Pick<SheetSetUp, 'observeWith'>): Pick<Controls, 'rfTerminated' | 'rfCapacitor' | 'yTip'> {
  return { rfTerminated: true, rfCapacitor: true, yTip: observeWith === 'probe' ? 'probe' : 'resistor' };
}

/** Source and bias as the sheet's text says, in the order in which a hand sets them. */
export function sheetControls(setUp: SheetSetUp): Partial<Controls> {
  return {
    sourceMode: setUp.source,
    ...(setUp.carrierHz === null ? {} : { carrierHz: setUp.carrierHz }),
    centreHz: setUp.centreHz,
    spanHz: setUp.spanHz,
    slowSweep: setUp.slowSweep === true,
    levelDb: setUp.levelDb,
    ...Object.assign({}, ...setUp.biases.map(({ volts }, i) => biasControls(BIAS_OUTPUTS[i]!, volts))),
  };
}

/** The curve itself and nothing beside it, as every sheet takes for granted. */
export const PLAIN_PICTURE = {
  yInput: 'detected',
  yCoupling: 'DC',
  ySmoothing: false,
  markerRoute: 'added',
  tunableOn: false,
  comb: false,
  xGain: 1,
  xPositionDiv: 0,
  fineTuning: 0,
} as const satisfies Partial<Controls>;

export type Setting = readonly [control: ControlId, value: number | boolean | string];

/** Controls and where they are to stand, one after the other. */
export const settings = (controls: Partial<Controls>): readonly Setting[] => Object.entries(controls) as Setting[];
