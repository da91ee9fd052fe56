/** Words of the rules of how the work was done: proofs, care, economy, and breaches of safety that cap a run. */
import type { CAP_RULES, CONDUCT_RULES } from '../../grading/rules/conductRules.ts';
import type { ProofId } from '../../scenario/proofId.ts';
import type { Said, WordsOf } from '../ruleWords.ts';
import { incidentNames } from './reportPage.ts';

const times = (count: number): string => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`);

/** In the words of the job that nobody has certified there is no par, only what costs nothing. */
const againstPar = ({ at, limit, parKnown }: Said): string =>
  parKnown
    ? `${at}, par ${limit}.`
    : `${at}; this job had no certificate when it was opened, so up to ${limit} cost nothing.`;

const PROOFS: Readonly<Record<ProofId, { readonly done: (at: string) => string; readonly open: string }>> = {
  halveLevel: {
    done: (at) => `Level halved and put back at ${at}: the shape is the set\u2019s own.`,
    open: 'The level was not halved and put back after the last turn, so an overload would not have been noticed.',
  },
  markersOffOn: {
    done: (at) => `Pips off and on at ${at}: the markers do not distort the curve.`,
    open: 'The pips were not taken off and put back after the last turn, so a curve that they distort would not have been noticed.',
  },
  touchEarth: {
    done: (at) => `Earth strap lifted and put back at ${at}: the curve does not come from the leads.`,
    open: 'The earth strap was not lifted and put back after the last turn.',
  },
  swingPhase: {
    done: (at) => `Phasing swung and put back at ${at}: trace and retrace meet again.`,
    open: 'The phasing was not swung and put back after the last turn.',
  },
  skirts: {
    done: (at) => `Skirts looked at with more gain at ${at}.`,
    open: 'The skirts were not looked at with more gain after the last turn.',
  },
  bias: {
    done: (at) => `Bias metered at ${at}: the line holds what the sheet was drawn with.`,
    open: 'The bias line was not metered after the last turn, so a knob that gives something other than it says would not have been noticed.',
  },
  liftCrystal: {
    done: (at) => `One crystal pulled and plugged at ${at}: its pip is where it was taken to be.`,
    open: 'No crystal was pulled and plugged again after the last turn, so two pips mistaken for each other would not have been noticed.',
  },
  pipDown: {
    done: (at) => `The low pips looked at with more gain at ${at}.`,
    open: 'The low pips were not looked at with more gain after the last turn.',
  },
};
const proofOf = ({ subject }: Said): (typeof PROOFS)[ProofId] => PROOFS[subject as ProofId];

const SEEN: Readonly<Record<ProofId, string>> = {
  halveLevel: 'what the trace did when the level was halved, and how tall it stood',
  markersOffOn: 'what went with the pips, and how tall the curve stands at one of them',
  touchEarth: 'what the strap does to the trace, and how tall the hum stands without it',
  swingPhase: 'what the phasing does to the trace, and how far a pip moves with it',
  skirts: 'how the two skirts stand with more gain, and how tall the trace stands out there',
  bias: 'how many volts the bias line holds, and how that compares with the sheet',
  liftCrystal: 'which pip goes with the crystal, and how tall the curve stands there',
  pipDown: 'where on the curve a pip stands, and how many decibels down',
};
const seenOf = ({ subject }: Said): string => SEEN[subject as ProofId];

export const conductRuleWords: WordsOf<(typeof CONDUCT_RULES)[number] | (typeof CAP_RULES)[number]> = {
  G27: {
    label: 'Proofs',
    good: (s) => proofOf(s).done(s.when),
    bad: (s) => proofOf(s).open,
    advice: 'Do it and undo it again, after the last turn and before you sign.',
  },
  G64: {
    label: 'Findings',
    good: (s) => `Written down at ${s.when}: ${seenOf(s)}, as the tube showed it.`,
    bad: (s) => `No finding that fits the tube: ${seenOf(s)}. A proof that nobody watches proves nothing.`,
    advice: 'Do the act, watch the tube, read the figure off the graticule and write both down.',
  },
  G65: {
    label: 'Cause in the parts',
    good: 'What you named at signing among parts and leads is what was wrong with them.',
    bad: 'What you named at signing among parts and leads is not what was wrong with them. Name everything that had failed, and nothing that was good.',
    advice: 'Before you sign, say to yourself what was wrong and what on the tube told you so; do not guess at a part.',
  },
  G66: {
    label: 'Cause in the slugs',
    good: 'Every slug that was far out was named, and none that stood right.',
    bad: (s) => `Of the slugs, ${s.count} ${s.count === 1 ? 'was' : 'were'} left out or named without need.`,
    advice: 'Keep in mind which slugs took whole turns, and which hardly moved.',
  },
  G28: {
    label: 'Order of power',
    good: 'Leads, parts and isolation were changed only when it was safe to.',
    bad: (s) => `Leads, parts or isolation changed with the set on, ${times(s.count)}, first at ${s.when}.`,
    advice:
      'Switch the set off before you touch a part, the transformer, or the RF, Y or a bias lead. Only the RF lead, once clipped on, may be moved with the set on, behind the isolating transformer and through its capacitor.',
  },
  G29: {
    label: 'Live parts',
    good: 'Nothing live was touched.',
    bad: (s) => `At ${s.when} something live was touched. On a real set this can kill.`,
    advice: 'Isolating transformer first, one hand, and nothing on the fenced corner.',
  },
  G30: {
    label: 'Tools',
    good: 'Every slug was turned with the tool that fits.',
    bad: (s) => `A tool that does not fit, or steel in the coil, ${times(s.count)}, first in ${s.slug} at ${s.when}.`,
    advice: 'Look into the slug before you take a tool, and leave the steel in the drawer.',
  },
  G31: {
    label: 'Stops',
    good: 'No slug was forced.',
    bad: (s) => `A slug was forced past its stop ${times(s.count)}, first ${s.slug} at ${s.when}.`,
    advice: 'Stop when the slug binds, and come back a quarter turn.',
  },
  G32: {
    label: 'Cracked slugs',
    good: 'No slug was cracked.',
    bad: (s) => `${s.slug} cracked at ${s.when}. The next one may be the last of its kind.`,
    advice: 'Never turn against a stop; a slug at its stop means that something else is wrong.',
  },
  G33: {
    label: 'Good parts replaced',
    good: 'No good part was replaced.',
    bad: (s) => `A good part was replaced ${times(s.count)}, first at ${s.when}.`,
    advice: 'Measure before you replace: a part is bad when no slug makes up for it.',
  },
  G69: {
    label: 'Earth first',
    good: 'No other lead went on before the earth strap.',
    bad: (s) => `A lead clipped to the set before the earth strap, ${times(s.count)}, first at ${s.when}.`,
    advice: 'Clip the earth strap on first and take it off last.',
  },
  G34: {
    label: 'Turns',
    good: againstPar,
    bad: againstPar,
    advice: 'Turn once, look, and turn back by less; take the slugs in the order of the sheet.',
  },
  G35: {
    label: 'Time',
    good: (s) => againstPar({ ...s, at: `${s.at} on the bench` }),
    bad: (s) => againstPar({ ...s, at: `${s.at} on the bench` }),
    advice: 'Set up the whole picture first; a true picture saves going round again.',
  },
  G38: {
    label: 'Hot chassis',
    name: incidentNames.hotChassis,
    capped: (limit, at) =>
      `At ${at} power or a lead was put on a live chassis without the isolating transformer. Such a run is worth ${limit} at most.`,
  },
  G39: {
    label: 'High tension touched',
    name: incidentNames.hotTouch,
    capped: (limit, at) => `At ${at} a lead touched the high-tension corner. Such a run is worth ${limit} at most.`,
  },
};
