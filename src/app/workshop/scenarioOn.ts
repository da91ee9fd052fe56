/** Which receiver the next scenario is wanted on: said in the place for receivers, heard by the desk for scenarios when it opens. */
let wanted: string | null = null;

export function wantScenarioOn(receiver: string): void {
  wanted = receiver;
}

/** Once: null where nobody has asked since. */
export function takeWantedReceiver(): string | null {
  const taken = wanted;
  wanted = null;
  return taken;
}
