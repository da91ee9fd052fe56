/** Why an act was impossible, as a sentence that names what was tried where that helps. */
import type { BenchEvent, Refusal } from '../bench/benchEvent.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { Words } from '../words/words.ts';
import { slugName, slugNameFirst } from './slugName.ts';

export function refusalSentence(
  words: Words,
  reason: Refusal,
  event: BenchEvent,
  receiver: Receiver | null = null,
): string {
  return withSubject(words, reason, event, receiver) ?? words.refusals[reason];
}

function withSubject(words: Words, reason: Refusal, event: BenchEvent, receiver: Receiver | null): string | null {
  const { refusalsOf: of, names } = words;
  const { frequency } = words.format;
  switch (event.type) {
    case 'leadConnected': {
      const lead = names.leads[event.lead];
      if (lead === undefined) return null;
      if (reason === 'pointRefusesLead') return of.pointRefusesLead(lead, event.to);
      if (reason === 'pointTaken') return of.pointTaken(event.to);
      return reason === 'alreadySo' ? of.leadAlreadyThere(lead, event.to) : null;
    }
    case 'leadRemoved': {
      const lead = names.leads[event.lead];
      return reason === 'leadNotConnected' && lead !== undefined ? of.leadNotConnected(lead) : null;
    }
    case 'toolTaken':
      return reason === 'alreadySo' && event.tool !== null ? of.toolAlreadyInHand(names.tools[event.tool]) : null;
    case 'crystalPlugged':
      if (reason === 'noSuchCrystal') return of.noSuchCrystal(frequency(event.hz));
      if (reason === 'crystalAlreadyIn') return of.crystalAlreadyIn(frequency(event.hz));
      return reason === 'rackFull' ? of.rackFull(frequency(event.hz)) : null;
    case 'crystalPulled':
      return reason === 'crystalNotIn' ? of.crystalNotIn(frequency(event.hz)) : null;
    case 'slugTurned':
      if (receiver === null) return null;
      if (reason === 'noToolInHand') return of.noToolInHand(slugName(words, receiver, event.slug));
      return reason === 'slugCracked' ? of.slugCracked(slugNameFirst(words, receiver, event.slug)) : null;
    case 'partBridged':
      if (event.element === null) return reason === 'alreadySo' ? of.nothingBridged : null;
      return reason === 'noSuchPart' ? of.noSuchPart(event.element) : null;
    case 'partMetered':
    case 'partReplaced':
      return reason === 'noSuchPart' ? of.noSuchPart(event.element) : null;
    default:
      return null;
  }
}
