/** Refusals that can name what was tried; for the rest the bench's short words serve. */
export const refusalWithSubject = {
  pointRefusesLead: (lead: string, point: string): string => `The ${lead} does not go to ${point}.`,
  pointTaken: (point: string): string => `The other bias output is on ${point} already; two outputs would fight.`,
  leadNotConnected: (lead: string): string => `The ${lead} is in the tray already.`,
  leadAlreadyThere: (lead: string, point: string): string => `The ${lead} is on ${point} already.`,
  toolAlreadyInHand: (tool: string): string => `The ${tool} is in your hand already.`,
  noSuchCrystal: (frequency: string): string => `There is no ${frequency} crystal in the box.`,
  crystalAlreadyIn: (frequency: string): string => `The ${frequency} crystal is in its socket already.`,
  crystalNotIn: (frequency: string): string => `The ${frequency} crystal is not in the rack.`,
  rackFull: (frequency: string): string => `All eight sockets are taken. Lift a crystal before ${frequency} goes in.`,
  noToolInHand: (slug: string): string => `Take a trimming tool before you turn ${slug}.`,
  slugCracked: (slug: string): string => `${slug} is cracked and no longer turns.`,
  nothingBridged: 'No capacitor is clipped across a part.',
  noSuchPart: (part: string): string => `There is no spare for ${part} in the parts tray.`,
} as const;
