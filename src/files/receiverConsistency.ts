/** What must hold inside a receiver file beyond its shape: names that refer to each other, limits that enclose their nominal, a sheet that can be followed. */

import type { Phrase } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import { HOT_CORNER, TUBE_X } from '../bench/benchState.ts';
import type { Adjuster, Receiver, SheetResponse, TestPoint } from '../receiver/receiver.ts';
import { SLUG_LETTERS } from '../receiver/slugLetters.ts';
import { type Complain, complainOfRepeats, complaints, oneOf, type Path } from './complaints.ts';
import { planConsistency } from './planConsistency.ts';
import { shown } from './schemaProblems.ts';
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
      complain([key, i, 'id'], ['beside', id, before], ['moreThanCapitals']);
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
    complain(['adjusters'], ['slugs', list.length], ['slugsForLetters', SLUG_LETTERS.length]);
  }
  const seen = new Set<string>();
  list.forEach((a, i) => {
    if (!(a.minHenries < a.nominalHenries && a.nominalHenries < a.maxHenries)) {
      const found: Phrase = ['threeHenries', a.minHenries, a.nominalHenries, a.maxHenries];
      complain(['adjusters', i, 'nominalHenries'], found, ['nominalBetween']);
    }
    if ((a.kind === 'trap') !== (a.trapHz !== null)) {
      complain(['adjusters', i, 'trapHz'], shown(a.trapHz, 'Hz'), a.kind === 'trap' ? ['trapFrequency'] : ['noTrap']);
    }
    for (const element of [a.element, ...a.ganged]) {
      if (seen.has(element.toLowerCase())) {
        complain(['adjusters', i], ['windingTwice', element], ['windingOnce']);
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
  if (earths !== 1) complain(['testPoints'], ['earths', earths], ['exactlyOne']);
  points.forEach((p, i) => {
    const at = (key: keyof TestPoint) => ['testPoints', i, key];
    if (RESERVED_ENDS.includes(p.id)) complain(at('id'), ['named', p.id], ['reservedEnd']);
    const heard = detectors.find((d) => d.id === p.detector);
    const ofPair = p.role === 'detector' && heard !== undefined && heard.kind !== 'envelope';
    const carries = (p.role === 'signal' || p.role === 'detector') && !ofPair;
    if (carries !== (p.node !== null)) {
      complain(at('node'), shown(p.node), carries ? ['deckNode'] : ofPair ? ['nullForFm'] : ['nullForRole', p.role]);
    }
    if (p.tap === 'open' && heard?.kind !== 'ratio') {
      complain(at('tap'), ['named', 'open'], ['noReservoir']);
    }
    if (p.tap !== undefined && !ofPair) complain(at('tap'), ['named', p.tap], ['fmPointsOnly']);
    if (p.looseLoop !== undefined && p.role !== 'signal')
      complain(at('looseLoop'), ['written', 'true'], ['signalOnly']);
    if (!carries && p.inject !== null) complain(at('inject'), ['wayIn'], ['nullForRole', p.role]);
    if ((p.role === 'detector') !== (p.detector !== null)) {
      complain(at('detector'), shown(p.detector), p.role === 'detector' ? ['detectorName'] : ['nullForRole', p.role]);
    } else if (p.detector !== null && !detectors.some((d) => d.id === p.detector)) {
      complain(at('detector'), ['named', p.detector], oneOf(detectors.map((d) => d.id)));
    }
  });
  if (probeInDeck !== null && !points.some((p) => p.id === probeInDeck.testPoint && p.role === 'signal')) {
    const signals = points.filter((p) => p.role === 'signal').map((p) => p.id);
    complain(['probeInDeck', 'testPoint'], ['named', probeInDeck.testPoint], oneOf(signals));
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
    if (!lines.includes(law.at)) complain(['biasLines', i, 'at'], ['named', law.at], oneOf(lines));
    else if (!stages.some((s) => s.agc === law.at)) {
      complain(['biasLines', i], ['lawFor', law.at], ['stageOnLine']);
    }
    if (law.referenceVolts === 0) complain(['biasLines', i, 'referenceVolts'], ['figure', 0, 'V'], ['voltsWithSign']);
    const followed = detectors.filter((d) => d.kind === 'envelope').map((d) => d.id);
    if (law.follows !== null && !followed.includes(law.follows)) {
      complain(['biasLines', i, 'follows'], ['named', law.follows], oneOf(followed));
    }
  });
  for (const line of lines) {
    if (!laws.some((law) => law.at === line)) complain(['biasLines'], ['noLawFor', line], ['lawForEvery']);
  }
  stages.forEach((s, i) => {
    if (s.agc !== null && !lines.includes(s.agc)) complain(['stages', i, 'agc'], ['named', s.agc], oneOf(lines));
  });
}

function responses(receiver: Receiver, complain: Complain): void {
  const { responses: list, crystalsHz } = receiver;
  complainOfRepeats(crystalsHz, (i) => ['crystalsHz', i], complain, 'Hz');
  if (crystalsHz.some((hz, i) => i > 0 && hz < crystalsHz[i - 1]!)) {
    complain(['crystalsHz'], ['outOfOrder'], ['rising']);
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
      const at = ['responses', i, 'specification', 'sCurve'];
      if (isDifference) complain(at, ['written', 'null'], ['sCurveWanted']);
      else complain(at, ['sCurve'], ['noSign']);
    }
  });
}

function setUp(receiver: Receiver, { setUp: sheet }: SheetResponse, at: Path, complain: Complain): void {
  const { testPoints: points, biasLines: laws, crystalsHz } = receiver;
  const inject = points.find((p) => p.id === sheet.injectAt);
  if (inject === undefined || inject.inject === null) {
    const wanted = oneOf(points.filter((p) => p.inject !== null).map((p) => p.id));
    complain([...at, 'injectAt'], ['named', sheet.injectAt], wanted);
  }
  complainOfRepeats(
    sheet.biases.map((b) => b.at),
    (i) => [...at, 'biases', i, 'at'],
    complain,
  );
  sheet.biases.forEach((b, i) => {
    const law = laws.find((l) => l.at === b.at);
    if (law === undefined) complain([...at, 'biases', i, 'at'], ['named', b.at], oneOf(laws.map((l) => l.at)));
    else if (b.volts * law.referenceVolts <= 0) {
      complain([...at, 'biases', i, 'volts'], shown(b.volts, 'V'), ['signOf', law.referenceVolts]);
    }
  });
  if ((sheet.source === 'video') !== (sheet.carrierHz !== null)) {
    const wanted: Phrase = sheet.source === 'video' ? ['videoCarrier'] : ['nullForSweep'];
    complain([...at, 'carrierHz'], shown(sheet.carrierHz, 'Hz'), wanted);
  }
  if (sheet.source === 'video' && receiver.videoFeed === null) {
    complain([...at, 'source'], ['named', 'video'], ['noVideoFeed']);
  }
  complainOfRepeats(sheet.markersHz, (i) => [...at, 'markersHz', i], complain, 'Hz');
  sheet.markersHz.forEach((hz, i) => {
    if (!crystalsHz.includes(hz)) complain([...at, 'markersHz', i], shown(hz, 'Hz'), oneOf(crystalsHz, 'Hz'));
    if (Math.abs(hz - sheet.centreHz) >= sheet.spanHz / 2) {
      const half = sheet.spanHz / 2;
      complain([...at, 'markersHz', i], shown(hz, 'Hz'), ['insideSweep', sheet.centreHz - half, sheet.centreHz + half]);
    }
  });
}

/** The Y lead must show what the quantity says. */
function observed(receiver: Receiver, { setUp: sheet, quantity }: SheetResponse, at: Path, complain: Complain): void {
  const { testPoints: points, detectors } = receiver;
  const role = sheet.observeWith === 'probe' ? 'signal' : 'detector';
  const point = points.find((p) => p.id === sheet.observeAt);
  if (point === undefined || point.role !== role) {
    const wanted = oneOf(points.filter((p) => p.role === role).map((p) => p.id));
    complain([...at, 'setUp', 'observeAt'], ['named', sheet.observeAt], wanted);
    return;
  }
  const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();
  const detector = detectors.find((d) => d.id === point.detector);
  if (quantity.kind === 'carrier') {
    const seen = role === 'signal' ? point.node : detector?.kind === 'envelope' ? detector.node : undefined;
    if (seen === undefined || seen === null || same(seen, quantity.node)) return;
    complain([...at, 'quantity', 'node'], ['named', quantity.node], ['showsNode', seen, sheet.observeAt]);
  } else if (
    detector === undefined ||
    detector.kind === 'envelope' ||
    point.tap === 'sum' ||
    !same(detector.plus, quantity.plus) ||
    !same(detector.minus, quantity.minus)
  ) {
    complain([...at, 'quantity'], ['lessNode', quantity.plus, quantity.minus], ['twoNodesOf', sheet.observeAt]);
  }
}

/** The mixer's oscillator is the one that runs, and what the sheet asks of one is asked where it is seen. */
function oscillators({ oscillator, converter, responses: list }: Receiver, complain: Complain): void {
  const mixed = converter?.oscillator;
  if (oscillator !== undefined && mixed !== undefined) {
    for (const key of ['node', 'drive', 'fromHz', 'toHz'] as const) {
      if (oscillator[key] !== mixed[key]) {
        const wanted: Phrase = ['asConverter', { phrase: shown(mixed[key], 'Hz') }];
        complain(['oscillator', key], shown(oscillator[key], 'Hz'), wanted);
      }
    }
  }
  list.forEach(({ quantity, specification }, i) => {
    specification.peaks.forEach((peak, k) => {
      if (peak.oscillator === undefined) return;
      if (quantity.kind === 'carrier' && quantity.node.toLowerCase() === oscillator?.node.toLowerCase()) return;
      complain(
        ['responses', i, 'specification', 'peaks', k, 'oscillator'],
        ['written', 'true'],
        ['oscillatorNodeOnly'],
      );
    });
  });
}

function detectorKinds(receiver: Receiver, complain: Complain): void {
  receiver.detectors.forEach((d, i) => {
    if (d.kind === 'envelope' || (d.kind === 'ratio') === (d.reservoirFarads !== null)) return;
    const wanted: Phrase = d.kind === 'ratio' ? ['reservoir'] : ['noReservoirWanted'];
    complain(['detectors', i, 'reservoirFarads'], shown(d.reservoirFarads, 'F'), wanted);
  });
  const feed = receiver.videoFeed;
  if (feed === null) return;
  const envelopes = receiver.detectors.filter((d) => d.kind === 'envelope').map((d) => d.id);
  if (!envelopes.includes(feed.detector)) {
    complain(['videoFeed', 'detector'], ['named', feed.detector], oneOf(envelopes));
  }
}

function procedure(receiver: Receiver, complain: Complain): void {
  const known = receiver.adjusters.map((a) => a.id);
  const measured = receiver.responses.map((r) => r.id);
  const named = new Set<string>();
  receiver.procedure.forEach((step, i) => {
    if (step.response !== undefined && !measured.includes(step.response)) {
      complain(['procedure', i, 'response'], ['named', step.response], oneOf(measured));
    }
    const ways = receiver.testPoints.filter((p) => p.inject !== null).map((p) => p.id);
    if (step.at !== undefined && !ways.includes(step.at)) {
      complain(['procedure', i, 'at'], ['named', step.at], oneOf(ways));
    }
    step.slugs.forEach((slug, k) => {
      named.add(slug);
      if (!known.includes(slug)) complain(['procedure', i, 'slugs', k], ['named', slug], oneOf(known));
    });
  });
  const left = known.filter((id) => !named.has(id));
  if (left.length > 0) complain(['procedure'], ['noStepFor', left], ['everySlug']);
}
