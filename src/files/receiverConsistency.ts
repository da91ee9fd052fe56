/** What must hold inside a receiver file beyond its shape: names that refer to each other, limits that enclose their nominal, a sheet that can be followed. */

import type { Problem } from '../base/result.ts';
import { HOT_CORNER, TUBE_X } from '../bench/benchState.ts';
import type { Adjuster, Receiver, SheetResponse, TestPoint } from '../receiver/receiver.ts';
import { SLUG_LETTERS } from '../receiver/slugLetters.ts';
import { type Complain, complainOfRepeats, complaints, oneOfThese, type Path } from './complaints.ts';
import { planConsistency } from './planConsistency.ts';
import { specificationConsistency } from './specificationConsistency.ts';
import { receiverTranslations } from './translationConsistency.ts';

/** Ends of leads that are no test points: the tube's X input and the high-tension corner. */
const RESERVED_ENDS: readonly string[] = [TUBE_X, HOT_CORNER];

export function receiverConsistency(receiver: Receiver, file: string): Problem[] {
  const { problems, complain } = complaints(file);
  adjusters(receiver.adjusters, complain);
  testPoints(receiver, complain);
  detectorKinds(receiver, complain);
  oscillators(receiver, complain);
  biasLines(receiver, complain);
  responses(receiver, complain);
  procedure(receiver, complain);
  planConsistency(receiver, complain);
  receiverTranslations(receiver, complain);
  names(receiver, complain);
  return problems;
}

/** Two things that people know by one name; an id in other letters' case is read aloud as the same. */
function names({ adjusters: slugs, testPoints: points, responses: list }: Receiver, complain: Complain): void {
  const each: readonly [string, string, readonly string[]][] = [
    ['adjusters', 'label', slugs.map((a) => a.label)],
    ['responses', 'title', list.map((r) => r.title)],
  ];
  for (const [key, field, texts] of each) complainOfRepeats(texts, (i) => [key, i, field], complain);
  const ids: readonly [string, readonly string[]][] = [
    ['adjusters', slugs.map((a) => a.id)],
    ['testPoints', points.map((p) => p.id)],
  ];
  for (const [key, all] of ids) {
    all.forEach((id, i) => {
      const before = all.slice(0, i).find((other) => other !== id && other.toLowerCase() === id.toLowerCase());
      if (before === undefined) return;
      complain([key, i, 'id'], `"${id}" beside "${before}"`, 'names that differ in more than capitals');
    });
  }
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
    const shown = detectors.find((d) => d.id === p.detector);
    const ofPair = p.role === 'detector' && shown !== undefined && shown.kind !== 'envelope';
    const carries = (p.role === 'signal' || p.role === 'detector') && !ofPair;
    if (carries !== (p.node !== null)) {
      const wanted = carries ? 'the deck node' : ofPair ? 'null, as an FM detector has two' : `null for role ${p.role}`;
      complain(at('node'), String(p.node), wanted);
    }
    if (p.tap === 'open' && shown?.kind !== 'ratio') {
      complain(at('tap'), '"open"', '"output" or "sum", as no reservoir is there to open');
    }
    if (p.tap !== undefined && !ofPair)
      complain(at('tap'), `"${p.tap}"`, 'nothing: it is for the points of FM detectors');
    if (p.looseLoop !== undefined && p.role !== 'signal')
      complain(at('looseLoop'), 'true', 'nothing, save for role signal');
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

function biasLines(receiver: Receiver, complain: Complain): void {
  const { biasLines: laws, stages, testPoints: points, detectors } = receiver;
  const lines = points.filter((p) => p.role === 'agc').map((p) => p.id);
  complainOfRepeats(
    laws.map((law) => law.at),
    (i) => ['biasLines', i, 'at'],
    complain,
  );
  laws.forEach((law, i) => {
    if (!lines.includes(law.at)) complain(['biasLines', i, 'at'], `"${law.at}"`, oneOfThese(lines));
    else if (!stages.some((s) => s.agc === law.at)) {
      complain(['biasLines', i], `a law for ${law.at}`, 'at least one stage whose agc names it');
    }
    if (law.referenceVolts === 0) complain(['biasLines', i, 'referenceVolts'], '0', 'a voltage with a sign');
    const followed = detectors.filter((d) => d.kind === 'envelope').map((d) => d.id);
    if (law.follows !== null && !followed.includes(law.follows)) {
      complain(['biasLines', i, 'follows'], `"${law.follows}"`, oneOfThese(followed));
    }
  });
  for (const line of lines) {
    if (!laws.some((law) => law.at === line)) complain(['biasLines'], `no law for ${line}`, 'one for every line');
  }
  stages.forEach((s, i) => {
    if (s.agc !== null && !lines.includes(s.agc)) complain(['stages', i, 'agc'], `"${s.agc}"`, oneOfThese(lines));
  });
}

function responses(receiver: Receiver, complain: Complain): void {
  const { responses: list, crystalsHz } = receiver;
  complainOfRepeats(crystalsHz, (i) => ['crystalsHz', i], complain);
  if (crystalsHz.some((hz, i) => i > 0 && hz < crystalsHz[i - 1]!)) {
    complain(['crystalsHz'], 'frequencies out of order', 'rising frequencies');
  }
  complainOfRepeats(
    list.map((r) => r.id),
    (i) => ['responses', i, 'id'],
    complain,
  );
  list.forEach((response, i) => {
    setUp(receiver, response, ['responses', i, 'setUp'], complain);
    observed(receiver, response, ['responses', i], complain);
    specificationConsistency(response.specification, ['responses', i, 'specification'], complain);
    const isDifference = response.quantity.kind === 'difference';
    if (isDifference !== (response.specification.sCurve !== null)) {
      const wanted = isDifference ? 'an S-curve, as the quantity is a difference' : 'null, as the quantity has no sign';
      complain(['responses', i, 'specification', 'sCurve'], isDifference ? 'null' : 'an S-curve', wanted);
    }
  });
}

function setUp(receiver: Receiver, { setUp: sheet }: SheetResponse, at: Path, complain: Complain): void {
  const { testPoints: points, biasLines: laws, crystalsHz } = receiver;
  const inject = points.find((p) => p.id === sheet.injectAt);
  if (inject === undefined || inject.inject === null) {
    const wanted = oneOfThese(points.filter((p) => p.inject !== null).map((p) => p.id));
    complain([...at, 'injectAt'], `"${sheet.injectAt}"`, wanted);
  }
  complainOfRepeats(
    sheet.biases.map((b) => b.at),
    (i) => [...at, 'biases', i, 'at'],
    complain,
  );
  sheet.biases.forEach((b, i) => {
    const law = laws.find((l) => l.at === b.at);
    if (law === undefined) complain([...at, 'biases', i, 'at'], `"${b.at}"`, oneOfThese(laws.map((l) => l.at)));
    else if (b.volts * law.referenceVolts <= 0) {
      const wanted = `the sign of referenceVolts, ${law.referenceVolts}`;
      complain([...at, 'biases', i, 'volts'], String(b.volts), wanted);
    }
  });
  if ((sheet.source === 'video') !== (sheet.carrierHz !== null)) {
    const wanted = sheet.source === 'video' ? 'the carrier that the video sweep modulates' : 'null for source sweep';
    complain([...at, 'carrierHz'], String(sheet.carrierHz), wanted);
  }
  if (sheet.source === 'video' && receiver.videoFeed === null) {
    complain([...at, 'source'], '"video"', '"sweep", as there is no videoFeed');
  }
  complainOfRepeats(sheet.markersHz, (i) => [...at, 'markersHz', i], complain);
  sheet.markersHz.forEach((hz, i) => {
    if (!crystalsHz.includes(hz)) complain([...at, 'markersHz', i], String(hz), oneOfThese(crystalsHz));
    if (Math.abs(hz - sheet.centreHz) >= sheet.spanHz / 2) {
      complain([...at, 'markersHz', i], String(hz), 'a frequency inside the sweep of the sheet');
    }
  });
}

/** The Y lead must show what the quantity says. */
function observed(receiver: Receiver, { setUp: sheet, quantity }: SheetResponse, at: Path, complain: Complain): void {
  const { testPoints: points, detectors } = receiver;
  const role = sheet.observeWith === 'probe' ? 'signal' : 'detector';
  const point = points.find((p) => p.id === sheet.observeAt);
  if (point === undefined || point.role !== role) {
    const wanted = oneOfThese(points.filter((p) => p.role === role).map((p) => p.id));
    complain([...at, 'setUp', 'observeAt'], `"${sheet.observeAt}"`, wanted);
    return;
  }
  const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();
  const detector = detectors.find((d) => d.id === point.detector);
  if (quantity.kind === 'carrier') {
    const shown = role === 'signal' ? point.node : detector?.kind === 'envelope' ? detector.node : undefined;
    if (shown === undefined || shown === null || same(shown, quantity.node)) return;
    complain([...at, 'quantity', 'node'], `"${quantity.node}"`, `"${shown}", which ${sheet.observeAt} shows`);
  } else if (
    detector === undefined ||
    detector.kind === 'envelope' ||
    point.tap === 'sum' ||
    !same(detector.plus, quantity.plus) ||
    !same(detector.minus, quantity.minus)
  ) {
    const found = `${quantity.plus} less ${quantity.minus}`;
    complain([...at, 'quantity'], found, `the two nodes of the FM detector whose output ${sheet.observeAt} shows`);
  }
}

/** The mixer's oscillator is the one that runs, and what the sheet asks of one is asked where it is seen. */
function oscillators({ oscillator, converter, responses: list }: Receiver, complain: Complain): void {
  const mixed = converter?.oscillator;
  if (oscillator !== undefined && mixed !== undefined) {
    for (const key of ['node', 'drive', 'fromHz', 'toHz'] as const) {
      if (oscillator[key] !== mixed[key])
        complain(['oscillator', key], String(oscillator[key]), `${mixed[key]}, as converter.oscillator says`);
    }
  }
  list.forEach(({ quantity, specification }, i) => {
    specification.peaks.forEach((peak, k) => {
      if (peak.oscillator === undefined) return;
      if (quantity.kind === 'carrier' && quantity.node.toLowerCase() === oscillator?.node.toLowerCase()) return;
      const wanted = "nothing, save where the quantity is the carrier at the node of the set's oscillator";
      complain(['responses', i, 'specification', 'peaks', k, 'oscillator'], 'true', wanted);
    });
  });
}

function detectorKinds(receiver: Receiver, complain: Complain): void {
  receiver.detectors.forEach((d, i) => {
    if (d.kind === 'envelope' || (d.kind === 'ratio') === (d.reservoirFarads !== null)) return;
    const wanted = d.kind === 'ratio' ? 'the capacitor that holds the sum' : 'null for a discriminator';
    complain(['detectors', i, 'reservoirFarads'], String(d.reservoirFarads), wanted);
  });
  const feed = receiver.videoFeed;
  if (feed === null) return;
  const envelopes = receiver.detectors.filter((d) => d.kind === 'envelope').map((d) => d.id);
  if (!envelopes.includes(feed.detector)) {
    complain(['videoFeed', 'detector'], `"${feed.detector}"`, oneOfThese(envelopes));
  }
}

function procedure(receiver: Receiver, complain: Complain): void {
  const known = receiver.adjusters.map((a) => a.id);
  const measured = receiver.responses.map((r) => r.id);
  const named = new Set<string>();
  receiver.procedure.forEach((step, i) => {
    if (step.response !== undefined && !measured.includes(step.response)) {
      complain(['procedure', i, 'response'], `"${step.response}"`, oneOfThese(measured));
    }
    const ways = receiver.testPoints.filter((p) => p.inject !== null).map((p) => p.id);
    if (step.at !== undefined && !ways.includes(step.at)) {
      complain(['procedure', i, 'at'], `"${step.at}"`, oneOfThese(ways));
    }
    step.slugs.forEach((slug, k) => {
      named.add(slug);
      if (!known.includes(slug)) complain(['procedure', i, 'slugs', k], `"${slug}"`, oneOfThese(known));
    });
  });
  const left = known.filter((id) => !named.has(id));
  if (left.length > 0) complain(['procedure'], `no step for ${left.join(', ')}`, 'every slug in a step');
}
