/** What a stage is called in short: the first word of what the receiver file says of its device. */
import type { Receiver } from '../../receiver/receiver.ts';

type ReceiverStage = Receiver['stages'][number];

export function stageOf({ stages }: Receiver, element: string): ReceiverStage | undefined {
  return stages.find((stage) => stage.element.toLowerCase() === element.toLowerCase());
}

export const calledOf = (device: string): string => device.split(/[\s,]/)[0]!;

/** By its element of the deck; by that name alone where the file says nothing of it. */
export const stageCalled = (receiver: Receiver, element: string): string =>
  calledOf(stageOf(receiver, element)?.device ?? element);
