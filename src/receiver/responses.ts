/** Finding one's way among the responses of a receiver's sheet. */
import type { Receiver, SheetResponse } from './receiver.ts';

/** The response that the receiver is known by: the first of its sheet. */
export function mainResponse({ id, responses }: Receiver): SheetResponse {
  const [first] = responses;
  if (first === undefined) throw new Error(`${id}: a sheet without a response`);
  return first;
}

export function responseById({ id, responses }: Receiver, name: string): SheetResponse {
  const found = responses.find((r) => r.id === name);
  if (found === undefined) throw new Error(`${id}: the sheet has no response ${name}`);
  return found;
}

/** The responses that a scenario is about, in the order of the sheet. */
export function workResponses(
  receiver: Receiver,
  scenario: { readonly responses?: readonly string[] },
): readonly SheetResponse[] {
  const { responses } = scenario;
  return responses === undefined ? receiver.responses : receiver.responses.filter((r) => responses.includes(r.id));
}
