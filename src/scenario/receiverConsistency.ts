/** What must hold inside a receiver file beyond its shape: names that refer to each other, limits that enclose their nominal, a sheet that can be followed. */
import type { Problem } from '../base/result.ts';
import type { Adjuster, Receiver, TestPoint } from '../receiver/receiver.ts';
import { SLUG_LETTERS } from '../receiver/slugLetters.ts';
import { type Complain, complainOfRepeats, complaints, oneOfThese } from './complaints.ts';
import { planConsistency } from './planConsistency.ts';
import { specificationConsistency } from './specificationConsistency.ts';

/** Ends of leads that are no test points: the tube's X input and the high-tension corner. */
const RESERVED_ENDS = ['tube', 'hot'];

export function receiverConsistency(receiver: Receiver, file: string): Problem[] {
  const { problems, complain } = complaints(file);
  adjusters(receiver.adjusters, complain);
  testPoints(receiver, complain);
  bias(receiver, complain);
  setUp(receiver, complain);
  specificationConsistency(receiver.specification, complain);
  procedure(receiver, complain);
  planConsistency(receiver, complain);
  return problems;
}

function adjusters(list: readonly Adjuster[], complain: Complain): void {
  complainOfRepeats(
    list.map((a) => a.id),
    (i) => ['adjusters', i, 'id'],
    complain,
  );
  if (list.length > SLUG_LETTERS.length) {
    complain(['adjusters'], `${list.length} slugs`, `at most ${SLUG_LETTERS.length}: there are no more letters`);
  }
  const seen = new Set<string>();
  list.forEach((a, i) => {
    if (!(a.minHenries < a.nominalHenries && a.nominalHenries < a.maxHenries)) {
      const found = `${a.minHenries}, ${a.nominalHenries}, ${a.maxHenries}`;
      complain(['adjusters', i, 'nominalHenries'], found, 'minHenries below nominalHenries below maxHenries');
    }
    if ((a.kind === 'trap') !== (a.trapHz !== null)) {
      const wanted = a.kind === 'trap' ? 'the frequency that the trap takes out' : 'null, as this slug is no trap';
      complain(['adjusters', i, 'trapHz'], String(a.trapHz), wanted);
    }
    for (const element of [a.element, ...a.ganged]) {
      if (seen.has(element.toLowerCase())) {
        complain(['adjusters', i], `${element} on a second slug`, 'each winding on one slug only');
      }
      seen.add(element.toLowerCase());
    }
  });
}

function testPoints(receiver: Receiver, complain: Complain): void {
  const { testPoints: points, detectors, probeInDeck } = receiver;
  complainOfRepeats(
    points.map((p) => p.id),
    (i) => ['testPoints', i, 'id'],
    complain,
  );
  complainOfRepeats(
    detectors.map((d) => d.id),
    (i) => ['detectors', i, 'id'],
    complain,
  );
  const earths = points.filter((p) => p.role === 'earth').length;
  if (earths !== 1) complain(['testPoints'], `${earths} points of role earth`, 'exactly one');
  points.forEach((p, i) => {
    const at = (key: keyof TestPoint) => ['testPoints', i, key];
    if (RESERVED_ENDS.includes(p.id))
      complain(at('id'), `"${p.id}"`, 'another name: this one means an end of the bench');
    const carries = p.role === 'signal' || p.role === 'detector';
    if (carries !== (p.node !== null))
      complain(at('node'), String(p.node), carries ? 'the deck node' : `null for role ${p.role}`);
    if (!carries && p.inject !== null) complain(at('inject'), 'a way in for the RF lead', `null for role ${p.role}`);
    if ((p.role === 'detector') !== (p.detector !== null)) {
      complain(
        at('detector'),
        String(p.detector),
        p.role === 'detector' ? 'the name of a detector' : `null for role ${p.role}`,
      );
    } else if (p.detector !== null && !detectors.some((d) => d.id === p.detector)) {
      complain(at('detector'), `"${p.detector}"`, oneOfThese(detectors.map((d) => d.id)));
    }
  });
  if (probeInDeck !== null && !points.some((p) => p.id === probeInDeck.testPoint && p.role === 'signal')) {
    const signals = points.filter((p) => p.role === 'signal').map((p) => p.id);
    complain(['probeInDeck', 'testPoint'], `"${probeInDeck.testPoint}"`, oneOfThese(signals));
  }
}

function bias(receiver: Receiver, complain: Complain): void {
  const { biasLaw, setUp: sheet, stages, testPoints: points } = receiver;
  const lines = points.filter((p) => p.role === 'agc').map((p) => p.id);
  if (lines.length > 1) complain(['testPoints'], `${lines.length} points of role agc`, 'at most one');
  if (sheet.bias !== null && !lines.includes(sheet.bias.at)) {
    complain(['setUp', 'bias', 'at'], `"${sheet.bias.at}"`, oneOfThese(lines));
  }
  const controlled = stages.some((s) => s.agc);
  if (biasLaw === null) {
    if (controlled) complain(['biasLaw'], 'null', 'the law of the controlled stages');
    if (sheet.bias !== null) complain(['setUp', 'bias'], 'a bias', 'null, as there is no biasLaw');
    return;
  }
  if (!controlled) complain(['biasLaw'], 'a law', 'null, as no stage has agc true');
  if (lines.length === 0) complain(['testPoints'], 'no point of role agc', 'the line that biasLaw speaks of');
  if (biasLaw.referenceVolts === 0) complain(['biasLaw', 'referenceVolts'], '0', 'a voltage with a sign');
  if (sheet.bias !== null && sheet.bias.volts * biasLaw.referenceVolts <= 0) {
    complain(
      ['setUp', 'bias', 'volts'],
      String(sheet.bias.volts),
      `the sign of referenceVolts, ${biasLaw.referenceVolts}`,
    );
  }
}

function setUp(receiver: Receiver, complain: Complain): void {
  const { setUp: sheet, testPoints: points, detectors, specification, crystalsHz } = receiver;
  const inject = points.find((p) => p.id === sheet.injectAt);
  if (inject === undefined || inject.inject === null) {
    const wanted = oneOfThese(points.filter((p) => p.inject !== null).map((p) => p.id));
    complain(['setUp', 'injectAt'], `"${sheet.injectAt}"`, wanted);
  }
  const role = sheet.observeWith === 'probe' ? 'signal' : 'detector';
  const observe = points.find((p) => p.id === sheet.observeAt);
  if (observe === undefined || observe.role !== role) {
    const wanted = oneOfThese(points.filter((p) => p.role === role).map((p) => p.id));
    complain(['setUp', 'observeAt'], `"${sheet.observeAt}"`, wanted);
  } else {
    const node = role === 'signal' ? observe.node : detectors.find((d) => d.id === observe.detector)?.node;
    if (node !== undefined && node !== null && node.toLowerCase() !== specification.node.toLowerCase()) {
      complain(['specification', 'node'], `"${specification.node}"`, `"${node}", which ${sheet.observeAt} shows`);
    }
  }
  complainOfRepeats(crystalsHz, (i) => ['crystalsHz', i], complain);
  if (crystalsHz.some((hz, i) => i > 0 && hz < crystalsHz[i - 1]!)) {
    complain(['crystalsHz'], 'frequencies out of order', 'rising frequencies');
  }
  complainOfRepeats(sheet.markersHz, (i) => ['setUp', 'markersHz', i], complain);
  sheet.markersHz.forEach((hz, i) => {
    if (!crystalsHz.includes(hz)) complain(['setUp', 'markersHz', i], String(hz), oneOfThese(crystalsHz));
    if (Math.abs(hz - sheet.centreHz) >= sheet.spanHz / 2) {
      complain(['setUp', 'markersHz', i], String(hz), 'a frequency inside the sweep of the sheet');
    }
  });
}

function procedure(receiver: Receiver, complain: Complain): void {
  const known = receiver.adjusters.map((a) => a.id);
  const named = new Set<string>();
  receiver.procedure.forEach((step, i) => {
    step.slugs.forEach((slug, k) => {
      named.add(slug);
      if (!known.includes(slug)) complain(['procedure', i, 'slugs', k], `"${slug}"`, oneOfThese(known));
    });
  });
  const left = known.filter((id) => !named.has(id));
  if (left.length > 0) complain(['procedure'], `no step for ${left.join(', ')}`, 'every slug in a step');
}
