/** What must hold of a receiver's sheet beyond its shape: leads, bias and markers that can be had, a curve that the leads show, steps that name what is there. */
import type { Phrase } from '../base/phrases.ts';
import type { Receiver, SheetResponse } from '../receiver/receiver.ts';
import { type Complain, complainOfRepeats, oneOf, type Path } from './complaints.ts';
import { asFarAsKnown, eachKnown, picked } from './known.ts';
import { shown } from './schemaProblems.ts';
import { specificationConsistency } from './specificationConsistency.ts';

export function responses(receiver: Receiver, complain: Complain): void {
  complainOfRepeats(
    picked(
      () => receiver.crystalsHz,
      (hz) => hz,
    ),
    (i) => ['crystalsHz', i],
    complain,
    'Hz',
  );
  asFarAsKnown(() => {
    if (receiver.crystalsHz.some((hz, i) => i > 0 && hz < receiver.crystalsHz[i - 1]!)) {
      complain(['crystalsHz'], ['outOfOrder'], ['rising']);
    }
  });
  complainOfRepeats(
    picked(
      () => receiver.responses,
      (r) => r.id,
    ),
    (i) => ['responses', i, 'id'],
    complain,
  );
  eachKnown(
    () => receiver.responses,
    (response, i) => {
      asFarAsKnown(() => setUp(receiver, response, ['responses', i, 'setUp'], complain));
      asFarAsKnown(() => observed(receiver, response, ['responses', i], complain));
      asFarAsKnown(() => specificationConsistency(response.specification, ['responses', i, 'specification'], complain));
      asFarAsKnown(() => {
        const isDifference = response.quantity.kind === 'difference';
        if (isDifference !== (response.specification.sCurve !== null)) {
          const at = ['responses', i, 'specification', 'sCurve'];
          if (isDifference) complain(at, ['written', 'null'], ['sCurveWanted']);
          else complain(at, ['sCurve'], ['noSign']);
        }
      });
    },
  );
}

function setUp(receiver: Receiver, { setUp: sheet }: SheetResponse, at: Path, complain: Complain): void {
  asFarAsKnown(() => {
    const points = receiver.testPoints;
    const inject = points.find((p) => p.id === sheet.injectAt);
    asFarAsKnown(() => {
      if (inject === undefined || inject.inject === null) {
        const wanted = oneOf(points.filter((p) => p.inject !== null).map((p) => p.id));
        complain([...at, 'injectAt'], ['named', sheet.injectAt], wanted);
      }
    });
  });
  complainOfRepeats(
    picked(
      () => sheet.biases,
      (b) => b.at,
    ),
    (i) => [...at, 'biases', i, 'at'],
    complain,
  );
  eachKnown(
    () => sheet.biases,
    (b, i) => {
      const law = receiver.biasLines.find((l) => l.at === b.at);
      asFarAsKnown(() => {
        if (law === undefined)
          complain([...at, 'biases', i, 'at'], ['named', b.at], oneOf(receiver.biasLines.map((l) => l.at)));
        else if (b.volts * law.referenceVolts <= 0) {
          complain([...at, 'biases', i, 'volts'], shown(b.volts, 'V'), ['signOf', law.referenceVolts]);
        }
      });
    },
  );
  asFarAsKnown(() => {
    if ((sheet.source === 'video') !== (sheet.carrierHz !== null)) {
      const wanted: Phrase = sheet.source === 'video' ? ['videoCarrier'] : ['nullForSweep'];
      complain([...at, 'carrierHz'], shown(sheet.carrierHz, 'Hz'), wanted);
    }
  });
  asFarAsKnown(() => {
    if (sheet.source === 'video' && receiver.videoFeed === null) {
      complain([...at, 'source'], ['named', 'video'], ['noVideoFeed']);
    }
  });
  complainOfRepeats(
    picked(
      () => sheet.markersHz,
      (hz) => hz,
    ),
    (i) => [...at, 'markersHz', i],
    complain,
    'Hz',
  );
  eachKnown(
    () => sheet.markersHz,
    (hz, i) => {
      asFarAsKnown(() => {
        if (!receiver.crystalsHz.includes(hz))
          complain([...at, 'markersHz', i], shown(hz, 'Hz'), oneOf(receiver.crystalsHz, 'Hz'));
      });
      asFarAsKnown(() => {
        if (Math.abs(hz - sheet.centreHz) >= sheet.spanHz / 2) {
          const half = sheet.spanHz / 2;
          complain([...at, 'markersHz', i], shown(hz, 'Hz'), [
            'insideSweep',
            sheet.centreHz - half,
            sheet.centreHz + half,
          ]);
        }
      });
    },
  );
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
export function oscillators(receiver: Receiver, complain: Complain): void {
  asFarAsKnown(() => {
    const { oscillator, converter } = receiver;
    const mixed = converter?.oscillator;
    if (oscillator !== undefined && mixed !== undefined) {
      for (const key of ['node', 'drive', 'fromHz', 'toHz'] as const) {
        if (oscillator[key] !== mixed[key]) {
          const wanted: Phrase = ['asConverter', { phrase: shown(mixed[key], 'Hz') }];
          complain(['oscillator', key], shown(oscillator[key], 'Hz'), wanted);
        }
      }
    }
  });
  eachKnown(
    () => receiver.responses,
    ({ quantity, specification }, i) => {
      eachKnown(
        () => specification.peaks,
        (peak, k) => {
          if (peak.oscillator === undefined) return;
          if (quantity.kind === 'carrier' && quantity.node.toLowerCase() === receiver.oscillator?.node.toLowerCase())
            return;
          complain(
            ['responses', i, 'specification', 'peaks', k, 'oscillator'],
            ['written', 'true'],
            ['oscillatorNodeOnly'],
          );
        },
      );
    },
  );
}

export function procedure(receiver: Receiver, complain: Complain): void {
  const known = (): string[] => receiver.adjusters.map((a) => a.id);
  eachKnown(
    () => receiver.procedure,
    (step, i) => {
      asFarAsKnown(() => {
        if (step.response === undefined) return;
        const measured = receiver.responses.map((r) => r.id);
        if (measured.includes(step.response)) return;
        complain(['procedure', i, 'response'], ['named', step.response], oneOf(measured));
      });
      asFarAsKnown(() => {
        if (step.at === undefined) return;
        const ways = receiver.testPoints.filter((p) => p.inject !== null).map((p) => p.id);
        if (!ways.includes(step.at)) complain(['procedure', i, 'at'], ['named', step.at], oneOf(ways));
      });
      eachKnown(
        () => step.slugs,
        (slug, k) => {
          if (!known().includes(slug)) complain(['procedure', i, 'slugs', k], ['named', slug], oneOf(known()));
        },
      );
    },
  );
  asFarAsKnown(() => {
    const named = receiver.procedure.flatMap((step) => step.slugs);
    const left = known().filter((id) => !named.includes(id));
    if (left.length > 0) complain(['procedure'], ['noStepFor', left], ['everySlug']);
  });
}
