/** What must hold of a receiver's test points, bias lines and detectors beyond their shape: each names what is there, and what its role allows. */
import type { Phrase } from '../base/phrases.ts';
import { HOT_CORNER, TUBE_X } from '../bench/benchState.ts';
import type { Receiver, TestPoint } from '../receiver/receiver.ts';
import { type Complain, complainOfRepeats, oneOf } from './complaints.ts';
import { asFarAsKnown, eachKnown, picked } from './known.ts';
import { shown } from './schemaProblems.ts';

/** Ends of leads that are no test points: the tube's X input and the high-tension corner. */
const RESERVED_ENDS: readonly string[] = [TUBE_X, HOT_CORNER];

export function testPoints(receiver: Receiver, complain: Complain): void {
  complainOfRepeats(
    picked(
      () => receiver.testPoints,
      (p) => p.id,
    ),
    (i) => ['testPoints', i, 'id'],
    complain,
  );
  complainOfRepeats(
    picked(
      () => receiver.detectors,
      (d) => d.id,
    ),
    (i) => ['detectors', i, 'id'],
    complain,
  );
  asFarAsKnown(() => {
    const earths = receiver.testPoints.filter((p) => p.role === 'earth').length;
    if (earths !== 1) complain(['testPoints'], ['earths', earths], ['exactlyOne']);
  });
  eachKnown(
    () => receiver.testPoints,
    (p, i) => {
      const at = (key: keyof TestPoint) => ['testPoints', i, key];
      asFarAsKnown(() => {
        if (RESERVED_ENDS.includes(p.id)) complain(at('id'), ['named', p.id], ['reservedEnd']);
      });
      const heard = p.detector === null ? undefined : receiver.detectors.find((d) => d.id === p.detector);
      const ofPair = p.role === 'detector' && heard !== undefined && heard.kind !== 'envelope';
      const carries = (p.role === 'signal' || p.role === 'detector') && !ofPair;
      asFarAsKnown(() => {
        if (carries !== (p.node !== null)) {
          complain(
            at('node'),
            shown(p.node),
            carries ? ['deckNode'] : ofPair ? ['nullForFm'] : ['nullForRole', p.role],
          );
        }
      });
      asFarAsKnown(() => {
        if (p.tap === 'open' && heard?.kind !== 'ratio') {
          complain(at('tap'), ['named', 'open'], ['noReservoir']);
        }
      });
      asFarAsKnown(() => {
        if (p.tap !== undefined && !ofPair) complain(at('tap'), ['named', p.tap], ['fmPointsOnly']);
      });
      asFarAsKnown(() => {
        if (p.looseLoop !== undefined && p.role !== 'signal')
          complain(at('looseLoop'), ['written', 'true'], ['signalOnly']);
      });
      asFarAsKnown(() => {
        if (!carries && p.inject !== null) complain(at('inject'), ['wayIn'], ['nullForRole', p.role]);
      });
      asFarAsKnown(() => {
        if ((p.role === 'detector') !== (p.detector !== null)) {
          complain(
            at('detector'),
            shown(p.detector),
            p.role === 'detector' ? ['detectorName'] : ['nullForRole', p.role],
          );
        } else if (p.detector !== null && !receiver.detectors.some((d) => d.id === p.detector)) {
          complain(at('detector'), ['named', p.detector], oneOf(receiver.detectors.map((d) => d.id)));
        }
      });
    },
  );
  asFarAsKnown(() => {
    const { probeInDeck, testPoints: points } = receiver;
    if (probeInDeck === null) return;
    const signals = points.filter((p) => p.role === 'signal').map((p) => p.id);
    const { testPoint } = probeInDeck;
    if (!signals.includes(testPoint)) complain(['probeInDeck', 'testPoint'], ['named', testPoint], oneOf(signals));
  });
}

export function biasLines(receiver: Receiver, complain: Complain): void {
  const lines = (): string[] => receiver.testPoints.filter((p) => p.role === 'agc').map((p) => p.id);
  complainOfRepeats(
    picked(
      () => receiver.biasLines,
      (law) => law.at,
    ),
    (i) => ['biasLines', i, 'at'],
    complain,
  );
  eachKnown(
    () => receiver.biasLines,
    (law, i) => {
      asFarAsKnown(() => {
        if (!lines().includes(law.at)) complain(['biasLines', i, 'at'], ['named', law.at], oneOf(lines()));
        else if (!receiver.stages.some((s) => s.agc === law.at)) {
          complain(['biasLines', i], ['lawFor', law.at], ['stageOnLine']);
        }
      });
      asFarAsKnown(() => {
        if (law.referenceVolts === 0)
          complain(['biasLines', i, 'referenceVolts'], ['amount', 0, 'V'], ['voltsWithSign']);
      });
      const followed = receiver.detectors.filter((d) => d.kind === 'envelope').map((d) => d.id);
      asFarAsKnown(() => {
        if (law.follows !== null && !followed.includes(law.follows)) {
          complain(['biasLines', i, 'follows'], ['named', law.follows], oneOf(followed));
        }
      });
    },
  );
  asFarAsKnown(() => {
    for (const line of lines()) {
      if (!receiver.biasLines.some((law) => law.at === line))
        complain(['biasLines'], ['noLawFor', line], ['lawForEvery']);
    }
  });
  eachKnown(
    () => receiver.stages,
    (s, i) => {
      asFarAsKnown(() => {
        if (s.agc !== null && !lines().includes(s.agc))
          complain(['stages', i, 'agc'], ['named', s.agc], oneOf(lines()));
      });
    },
  );
}

export function detectorKinds(receiver: Receiver, complain: Complain): void {
  eachKnown(
    () => receiver.detectors,
    (d, i) => {
      if (d.kind === 'envelope' || (d.kind === 'ratio') === (d.reservoirFarads !== null)) return;
      const wanted: Phrase = d.kind === 'ratio' ? ['reservoir'] : ['noReservoirWanted'];
      complain(['detectors', i, 'reservoirFarads'], shown(d.reservoirFarads, 'F'), wanted);
    },
  );
  asFarAsKnown(() => {
    const feed = receiver.videoFeed;
    if (feed === null) return;
    const envelopes = receiver.detectors.filter((d) => d.kind === 'envelope').map((d) => d.id);
    if (envelopes.includes(feed.detector)) return;
    complain(['videoFeed', 'detector'], ['named', feed.detector], oneOf(envelopes));
  });
}
