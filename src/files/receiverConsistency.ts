/** What must hold inside a receiver file beyond its shape: names that refer to each other, limits that enclose their nominal, a sheet that can be followed. */

import type { Phrase } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { SLUG_LETTERS } from '../receiver/slugLetters.ts';
import { type Complain, complainOfRepeats, complaints } from './complaints.ts';
import { asFarAsKnown, eachKnown, picked } from './known.ts';
import { planConsistency } from './planConsistency.ts';
import { biasLines, detectorKinds, testPoints } from './pointsConsistency.ts';
import { shown } from './schemaProblems.ts';
import { oscillators, procedure, responses } from './sheetConsistency.ts';
import { receiverTranslations } from './translationConsistency.ts';

export function receiverConsistency(receiver: Receiver, file: string): Problem[] {
  const { problems, complain } = complaints(file);
  adjusters(receiver, complain);
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
function names(receiver: Receiver, complain: Complain): void {
  const texts = [
    {
      key: 'adjusters',
      field: 'label',
      all: picked(
        () => receiver.adjusters,
        (a) => a.label,
      ),
    },
    {
      key: 'responses',
      field: 'title',
      all: picked(
        () => receiver.responses,
        (r) => r.title,
      ),
    },
  ];
  for (const { key, field, all } of texts) complainOfRepeats(all, (i) => [key, i, field], complain);
  const ids = [
    {
      key: 'adjusters',
      all: picked(
        () => receiver.adjusters,
        (a) => a.id,
      ),
    },
    {
      key: 'testPoints',
      all: picked(
        () => receiver.testPoints,
        (p) => p.id,
      ),
    },
  ];
  for (const { key, all } of ids) {
    all.forEach((id, i) => {
      if (id === undefined) return;
      const before = all.slice(0, i).find((other) => other !== id && other?.toLowerCase() === id.toLowerCase());
      if (before !== undefined) complain([key, i, 'id'], ['beside', id, before], ['moreThanCapitals']);
    });
  }
}

function adjusters(receiver: Receiver, complain: Complain): void {
  complainOfRepeats(
    picked(
      () => receiver.adjusters,
      (a) => a.id,
    ),
    (i) => ['adjusters', i, 'id'],
    complain,
  );
  asFarAsKnown(() => {
    if (receiver.adjusters.length > SLUG_LETTERS.length) {
      complain(['adjusters'], ['slugs', receiver.adjusters.length], ['slugsForLetters', SLUG_LETTERS.length]);
    }
  });
  const seen = new Set<string>();
  eachKnown(
    () => receiver.adjusters,
    (a, i) => {
      asFarAsKnown(() => {
        if (!(a.minHenries < a.nominalHenries && a.nominalHenries < a.maxHenries)) {
          const found: Phrase = ['threeHenries', a.minHenries, a.nominalHenries, a.maxHenries];
          complain(['adjusters', i, 'nominalHenries'], found, ['nominalBetween']);
        }
      });
      asFarAsKnown(() => {
        if ((a.kind === 'trap') !== (a.trapHz !== null)) {
          complain(
            ['adjusters', i, 'trapHz'],
            shown(a.trapHz, 'Hz'),
            a.kind === 'trap' ? ['trapFrequency'] : ['noTrap'],
          );
        }
      });
      asFarAsKnown(() => {
        for (const element of [a.element, ...a.ganged]) {
          if (seen.has(element.toLowerCase())) {
            complain(['adjusters', i], ['windingTwice', element], ['windingOnce']);
          }
          seen.add(element.toLowerCase());
        }
      });
    },
  );
}
