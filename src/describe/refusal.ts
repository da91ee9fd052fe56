/** Why an act was impossible, as a sentence that names what was tried where that helps. */
import type { BenchEvent, Refusal } from '../bench/benchEvent.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { frequency } from '../words/en/benchFigures.ts';
import { refusalWords } from '../words/en/benchTalk.ts';
import { leadNames, toolNames } from '../words/en/facts.ts';
import { refusalWithSubject as words } from '../words/en/refusals.ts';
import { slugName, slugNameFirst } from './slugName.ts';

export function refusalSentence(reason: Refusal, event: BenchEvent, receiver: Receiver | null = null): string {
  return withSubject(reason, event, receiver) ?? refusalWords[reason];
}

function withSubject(reason: Refusal, event: BenchEvent, receiver: Receiver | null): string | null {
  switch (event.type) {
    case 'leadConnected': {
      const lead = leadNames[event.lead];
      if (lead === undefined) return null;
      if (reason === 'pointRefusesLead') return words.pointRefusesLead(lead, event.to);
      if (reason === 'pointTaken') return words.pointTaken(event.to);
      return reason === 'alreadySo' ? words.leadAlreadyThere(lead, event.to) : null;
    }
    case 'leadRemoved': {
      const lead = leadNames[event.lead];
      return reason === 'leadNotConnected' && lead !== undefined ? words.leadNotConnected(lead) : null;
    }
    case 'toolTaken':
      return reason === 'alreadySo' && event.tool !== null ? words.toolAlreadyInHand(toolNames[event.tool]) : null;
    case 'crystalPlugged':
      if (reason === 'noSuchCrystal') return words.noSuchCrystal(frequency(event.hz));
      if (reason === 'crystalAlreadyIn') return words.crystalAlreadyIn(frequency(event.hz));
      return reason === 'rackFull' ? words.rackFull(frequency(event.hz)) : null;
    case 'crystalPulled':
      return reason === 'crystalNotIn' ? words.crystalNotIn(frequency(event.hz)) : null;
    case 'slugTurned':
      if (receiver === null) return null;
      if (reason === 'noToolInHand') return words.noToolInHand(slugName(receiver, event.slug));
      return reason === 'slugCracked' ? words.slugCracked(slugNameFirst(receiver, event.slug)) : null;
    case 'partReplaced':
      return reason === 'noSuchPart' ? words.noSuchPart(event.element) : null;
    default:
      return null;
  }
}
