/** What is written and spoken on the right half of the bench: chassis, leads, magnified slug, tools. */
import type { LeadId, ToolId } from '../../bench/benchState.ts';
import type { ToolHead } from '../../receiver/receiver.ts';
import { leadWords } from './bench.ts';
import { format } from './numbers.ts';

const LEAD_NAMES = leadWords.names;

const JACK_NAMES: Readonly<Record<LeadId | 'xIn', string>> = {
  rf: 'RF out',
  y: 'Y in',
  x: 'X out',
  xIn: 'X in',
  earth: 'Earth',
  biasA: 'Bias A',
  biasB: 'Bias B',
  meter: 'Meter',
};

const TOOL_NAMES: Readonly<Record<ToolId, string>> = { hex: 'Hexagon', blade: 'Blade', steel: 'Steel blade' };
const TOOL_NOTES: Readonly<Record<ToolId, string>> = { hex: 'plastic', blade: 'plastic', steel: 'metal' };
const HEADS: Readonly<Record<ToolHead, string>> = { hex: 'a hexagon', blade: 'a blade' };
export const sceneWords = {
  // chassis
  chassisTitle: 'Chassis, seen from above',
  chassisName: (set: string) => `Chassis of ${set}, seen from above`,
  touched: (n: number, of: number) => `${n} of ${of} slugs touched`,
  live: (volts: number) => `Live: ${volts} V`,
  keepOut: 'keep out',

  // slugs
  slugName: (letter: string, label: string, trap: boolean) => `${trap ? 'Trap' : 'Slug'} ${letter}: ${label}`,
  bottomCore: 'the lower core',
  slugTurned: (turned: string, cracked: boolean) => `${turned}${cracked ? '; cracked' : ''}`,
  slugSpoken: (turned: string, deepTurns: number, ofTurns: number, cracked: boolean) =>
    `${turned}; core ${deepTurns} of ${ofTurns} turns deep${cracked ? '; cracked' : ''}`,

  missed: (lead: LeadId) => `${leadWords.names[lead]}: no point there takes it. It is back where it was.`,

  // magnified slug
  coreIn: (twoPeaks: boolean) =>
    twoPeaks ? 'Core in lowers the frequency, as far as the middle' : 'Core in lowers the frequency',
  /** `1 3/8 turns in`, `1/8 turn out`, `as found` */
  turned: (turns: number) =>
    Math.round(turns * 32) === 0 ? 'as found' : `${format.turnsFineLong(turns)} ${turns > 0 ? 'in' : 'out'}`,
  /** for narrow places: `1 3/8 in`, `0 turns` */
  turnedShort: (turns: number) =>
    Math.round(turns * 32) === 0 ? '0 turns' : `${format.turnsFine(turns)} ${turns > 0 ? 'in' : 'out'}`,
  slugTitle: (letter: string) => `Slug ${letter}`,
  noSlug: 'Slug',
  chooseSlug: (first: string, last: string) =>
    first === last
      ? `Choose the slug on the chassis, or press ${first}.`
      : `Choose a slug on the chassis, or press ${first} to ${last}.`,
  ringHint: '[ and ] turn it, shift for 1/32',
  out: (step: string) => `${step} out`,
  in: (step: string) => `${step} in`,
  outSpoken: (step: string, letter: string) => `Turn slug ${letter} ${step} out`,
  inSpoken: (step: string, letter: string) => `Turn slug ${letter} ${step} in`,
  fine: 'Fine',
  fineSpoken: 'Fine steps, 1/32 of a turn',
  setIn: 'Put the tool in',
  liftOut: 'Take the tool out',
  handEmpty: 'No tool in hand',
  cracked: 'Cracked: it no longer turns',
  atStop: { out: 'At the outer stop', in: 'At the inner stop' },
  slips: (head: ToolHead) => `It slips: this core takes ${HEADS[head]}`,
  steelIn: 'Steel in the coil shifts the curve',

  // tools
  toolsTitle: 'Tools',
  toolName: (tool: ToolId) => TOOL_NAMES[tool],
  toolNote: (tool: ToolId) => TOOL_NOTES[tool],
  toolSpoken: (tool: ToolId, inHand: boolean) =>
    `${TOOL_NAMES[tool]}, ${TOOL_NOTES[tool]}${inHand ? ', in hand; press again to put it down' : ''}`,

  // leads
  leads: 'Leads',
  leadsTitle: 'Leads and where they go',
  leadsHint: 'Drag an end on the bench, or choose here.',
  close: 'Close',
  leadName: (lead: LeadId) => LEAD_NAMES[lead],
  jackName: (jack: LeadId | 'xIn') => JACK_NAMES[jack],
  leadOn: (lead: LeadId, point: string) => `${LEAD_NAMES[lead]}, on ${point}`,
  leadLoose: (lead: LeadId) => `${LEAD_NAMES[lead]}, in the tray`,
  leadHow: 'Return lifts the end, Delete takes it off.',
  tubeX: 'the tube’s X input',
  loose: 'In the tray',
  takeFirst: (point: string) => `Take the end of a lead in hand first, then press ${point}.`,
  takeThisFirst: (lead: LeadId, point: string) =>
    `Take the end of the lead in hand first: ${LEAD_NAMES[lead]}. Then press ${point}.`,
  carry: (lead: LeadId) =>
    `${LEAD_NAMES[lead]} in hand. Tab or arrows choose a point, Return puts it there, Escape puts it back.`,
  carryShort: (lead: LeadId) => `${LEAD_NAMES[lead]} in hand: choose a point`,
  carryNowhere: (lead: LeadId) => `${LEAD_NAMES[lead]}: there is nowhere on this chassis for it`,
  putOn: (point: string) => `Put it on ${point}`,
  layDown: 'Put it in the tray',
  landed: (lead: LeadId, point: string) => `${LEAD_NAMES[lead]} is on ${point}.`,
  laidDown: (lead: LeadId) => `${LEAD_NAMES[lead]} is in the tray.`,
  putBack: (lead: LeadId) => `${LEAD_NAMES[lead]} is back where it was.`,
  pointName: (id: string, label: string) => (label === '' || label === id ? id : `${id}, ${label}`),
} as const;
