/** Whether a receiver file and its deck fit each other: every name that the file uses is in the deck, is of the right kind, and has the value that the file says. */
import type { Problem } from '../base/result.ts';
import { type Deck, type DeckElement, findElement, nodeKey } from '../physics/deck.ts';
import { UNITS } from '../physics/deckProblems.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { type Complain, complaints, type Path } from './complaints.ts';
import { asFarAsKnown, eachKnown } from './known.ts';
import { shown } from './schemaProblems.ts';

const SAME_VALUE = 1e-6;

export function checkReceiver(receiver: Receiver, deck: Deck, file: string): Problem[] {
  const { problems, complain } = complaints(file);
  const find = finder(deck, complain);
  const nodes = new Set(deck.elements.flatMap((e) => (e.kind === 'K' ? [] : e.nodes.map(nodeKey))));
  const node = (name: string, path: Path): void => {
    if (nodeKey(name) === '0') complain(path, ['ground', name], ['notGround']);
    else if (!nodes.has(nodeKey(name))) complain(path, ['named', name], ['nodeOf', receiver.deck]);
  };

  eachKnown(
    () => receiver.adjusters,
    (a, i) => {
      asFarAsKnown(() => {
        const coil = find(a.element, 'L', ['adjusters', i, 'element']);
        same(a.nominalHenries, coil, ['adjusters', i, 'nominalHenries'], complain);
      });
      eachKnown(
        () => a.ganged,
        (name, k) => {
          find(name, 'L', ['adjusters', i, 'ganged', k]);
        },
      );
      asFarAsKnown(() => {
        if (a.twoPeaks !== undefined) checkTwoPeaks(receiver, deck, i, complain);
      });
    },
  );
  eachKnown(
    () => receiver.testPoints,
    (p, i) => {
      asFarAsKnown(() => {
        if (p.node !== null) node(p.node, ['testPoints', i, 'node']);
      });
      asFarAsKnown(() => {
        if (p.inject?.kind === 'deckSource') find(p.inject.element, 'I', ['testPoints', i, 'inject', 'element']);
      });
    },
  );
  eachKnown(
    () => receiver.detectors,
    (d, i) => {
      asFarAsKnown(() => {
        if (d.kind === 'envelope') node(d.node, ['detectors', i, 'node']);
        else {
          asFarAsKnown(() => node(d.plus, ['detectors', i, 'plus']));
          asFarAsKnown(() => node(d.minus, ['detectors', i, 'minus']));
        }
      });
    },
  );
  eachKnown(
    () => receiver.responses,
    ({ quantity }, i) => {
      const names = quantity.kind === 'carrier' ? (['node'] as const) : (['plus', 'minus', 'per'] as const);
      asFarAsKnown(() => {
        for (const key of names) {
          const at = ['responses', i, 'quantity', key];
          asFarAsKnown(() => node((quantity as Readonly<Record<string, string>>)[key]!, at));
        }
      });
    },
  );
  mixers(receiver, node, find);
  eachKnown(
    () => receiver.probeInDeck?.elements ?? [],
    (name, i) => {
      const path = ['probeInDeck', 'elements', i];
      const probeNode = receiver.testPoints.find((p) => p.id === receiver.probeInDeck?.testPoint)?.node;
      const element = findElement(deck, name);
      asFarAsKnown(() => {
        if (element === undefined || (element.kind !== 'R' && element.kind !== 'C')) {
          complain(path, ['named', name], ['partOfDeck']);
        } else if (probeNode && !element.nodes.some((n) => nodeKey(n) === nodeKey(probeNode))) {
          complain(path, ['named', name], ['elementAtNode', probeNode]);
        }
      });
    },
  );
  eachKnown(
    () => receiver.notParts ?? [],
    (name, i) => {
      const kind = findElement(deck, name)?.kind;
      if (kind === 'R' || kind === 'C') return;
      complain(['notParts', i], ['named', name], ['partOfDeck']);
    },
  );
  stages(receiver, deck, find, complain);
  return problems;
}

/** Parts of the deck that no element joins, and what joins them. */
function mixers(receiver: Receiver, node: (name: string, path: Path) => void, find: Find): void {
  const rules: readonly (() => void)[] = [
    () => receiver.converter && node(receiver.converter.from, ['converter', 'from']),
    () => receiver.converter && find(receiver.converter.into, 'I', ['converter', 'into']),
    () => receiver.converter && node(receiver.converter.oscillator.node, ['converter', 'oscillator', 'node']),
    () => receiver.converter && find(receiver.converter.oscillator.drive, 'I', ['converter', 'oscillator', 'drive']),
    () => receiver.oscillator && node(receiver.oscillator.node, ['oscillator', 'node']),
    () => receiver.oscillator && find(receiver.oscillator.drive, 'I', ['oscillator', 'drive']),
    () => receiver.oscillator && find(receiver.oscillator.capacitor, 'C', ['oscillator', 'capacitor']),
    () => receiver.videoFeed && find(receiver.videoFeed.into, 'I', ['videoFeed', 'into']),
  ];
  for (const rule of rules) asFarAsKnown(rule);
}

type Find = (name: string, kind: DeckElement['kind'], path: Path) => DeckElement | undefined;

function finder(deck: Deck, complain: Complain): Find {
  return (name, kind, path) => {
    const element = findElement(deck, name);
    if (element === undefined) complain(path, ['named', name], ['ofDeck', kind]);
    else if (element.kind !== kind) complain(path, ['namedKind', name, element.kind], ['ofDeck', kind]);
    else return element;
    return undefined;
  };
}

function stages(receiver: Receiver, deck: Deck, find: Find, complain: Complain): void {
  eachKnown(
    () => receiver.stages,
    (s, i) => {
      const device = find(s.element, 'G', ['stages', i, 'element']);
      asFarAsKnown(() => same(s.gmSiemens, device, ['stages', i, 'gmSiemens'], complain));
      const control = device?.kind === 'G' ? device.control.map(nodeKey) : [];
      const atControl = (name: string | null, kind: 'R' | 'C', path: Path): void => {
        if (name === null) return;
        const element = find(name, kind, path);
        if (element === undefined || element.kind === 'K' || device === undefined) return;
        if (!element.nodes.some((n) => nodeKey(n) !== '0' && control.includes(nodeKey(n)))) {
          complain(path, ['named', name], ['atControlOf', s.element]);
        }
        const change = receiver.biasLines.find((law) => law.at === s.agc)?.capacitanceFarads ?? 0;
        if (kind === 'C' && element.value <= change) {
          complain(path, ['namedValue', name, element.value, 'F'], ['moreThanBias', change]);
        }
      };
      asFarAsKnown(() => atControl(s.inputCapacitor, 'C', ['stages', i, 'inputCapacitor']));
      asFarAsKnown(() => atControl(s.inputResistor, 'R', ['stages', i, 'inputResistor']));
    },
  );
  asFarAsKnown(() => {
    const known = new Set(receiver.stages.map((s) => s.element.toLowerCase()));
    for (const element of deck.elements) {
      if (element.kind !== 'G' || known.has(element.name.toLowerCase())) continue;
      complain(['stages'], ['nothingAbout', element.name], ['stageForEvery']);
    }
  });
}

function same(value: number, element: DeckElement | undefined, path: Path, complain: Complain): void {
  if (element === undefined || Math.abs(value - element.value) <= SAME_VALUE * Math.abs(element.value)) return;
  complain(path, shown(value, UNITS[element.kind]), ['valueInDeck', element.value, UNITS[element.kind], element.name]);
}

/** The coupling that a core moves is one of its own winding, is moved by no other core, and stays a coupling at its strongest. */
function checkTwoPeaks({ adjusters }: Receiver, deck: Deck, i: number, complain: Complain): void {
  const { element, twoPeaks } = adjusters[i]!;
  const { coupling, share } = twoPeaks!;
  const path: Path = ['adjusters', i, 'twoPeaks'];
  const found = findElement(deck, coupling);
  if (found?.kind !== 'K' || !found.coils.some((coil) => coil.toLowerCase() === element.toLowerCase())) {
    complain([...path, 'coupling'], ['named', coupling], ['couplingOf', element]);
    return;
  }
  const twice = adjusters.findIndex((a) => a.twoPeaks?.coupling.toLowerCase() === coupling.toLowerCase());
  if (twice < i) complain([...path, 'coupling'], ['named', coupling], ['ownCoupling']);
  const strongest = Math.abs(found.value) * (1 + share);
  if (strongest >= 1) complain([...path, 'share'], shown(share), ['shareBelowOne', coupling]);
}
