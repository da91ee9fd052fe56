/** Broken files of every kind: each tells all that is wrong with it at once, whatever else is wrong, by line, column and key, and in the words of any language. Common practice, no source. */
import { mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { serialiseRunFile } from '../../src/run/serialise.ts';
import { terminal } from '../../src/words/en/terminal.ts';
import { pseudoWords } from '../../src/words/pseudo.ts';
import type { TerminalWords } from '../../src/words/words.ts';
import { finishedFile } from '../run/runs.ts';
import { stripSetup } from '../session/setups.ts';
import { outsideBrackets } from '../words/strange.ts';
import { inside, insideSaying, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);
const strange = pseudoWords<TerminalWords>(terminal);

// biome-ignore lint/suspicious/noExplicitAny: tests break files on purpose, anywhere
type Json = any;
/** Changes the file, or its text. */
type Break = (json: Json) => unknown;

const SCENARIO = readFileSync('scenarios/vision-if/from-cold.json', 'utf8');
const RECEIVER = readFileSync('scenarios/receivers/am-455k/receiver.json', 'utf8');
const DECK = readFileSync('scenarios/receivers/am-455k/network.cir', 'utf8');
const CERTIFICATE = readFileSync('certificates/zero.json', 'utf8');
const RUN = serialiseRunFile(finishedFile(stripSetup()));

let count = 0;
function broken(text: string, change: Break): string {
  const json = JSON.parse(text);
  const other = change(json);
  const laidOut = typeof other === 'string' ? other : JSON.stringify(json, null, 2);
  mkdirSync(files.place(`f${++count}`));
  files.file(`f${count}/network.cir`, DECK);
  return files.file(`f${count}/receiver.json`, laidOut);
}

/** What is said of a file, without its name. */
function told(file: string): string[] {
  const { err, code } = inside('check', file);
  expect(code).toBe(1);
  return err
    .trimEnd()
    .split('\n')
    .map((line) => line.replace(`${file}, `, '').replace(`${file}: `, ''));
}

const TABLE: readonly (readonly [string, string, Break, readonly string[]])[] = [
  [
    'a scenario with a wrong type, an impossible value and a key that is not known',
    SCENARIO,
    (s) => Object.assign(s, { title: 7, order: -2, surprise: true }),
    [
      'line 6, column 12, /title: found 7, wanted text of 1 to 60 characters without control characters, not blank',
      'line 8, column 12, /order: found -2, wanted a whole number from 1 to 999',
      'line 57, column 3, /surprise: found the key "surprise", wanted only keys that the format has',
    ],
  ],
  [
    'a scenario with three keys too many in two places',
    SCENARIO,
    (s) => {
      Object.assign(s, { one: 1, two: 2 });
      s.bench.three = 3;
    },
    [
      'line 38, column 5, /bench/three: found the key "three", wanted no other keys here than phaseLagDegrees, xSwapped, mainsHz, dialErrorHz and centreErrorHz',
      'line 58, column 3, /one: found the key "one", wanted only keys that the format has',
      'line 59, column 3, /two: found the key "two", wanted only keys that the format has',
    ],
  ],
  [
    'a scenario wrong in its shape and in what its receiver allows',
    SCENARIO,
    (s) => {
      s.seed = 'x';
      s.start.slugs = { T1: 59, T9: 1 };
      s.start.steelIn = 'T77';
    },
    [
      'line 19, column 11, /seed: found "x", wanted a whole number from 0 to 2147483647',
      'line 23, column 13, /start/slugs/T1: found 59 turns, wanted from −9.3 to 10.7 turns, so that it stands inside its travel',
      'line 24, column 13, /start/slugs/T9: found "T9", wanted one of "T1", "T2", "A1", "A2", "T3", "A3", "T4", "T5P", "T5S"',
      'line 26, column 16, /start/steelIn: found "T77", wanted one of "T1", "T2", "A1", "A2", "T3", "A3", "T4", "T5P", "T5S"',
    ],
  ],
  [
    'a scenario with a slug that no receiver has room for',
    SCENARIO,
    (s) => {
      s.start.slugs = { T1: 999 };
    },
    [
      'line 23, column 13, /start/slugs/T1: found 999 turns, wanted from \u22129.3 to 10.7 turns, so that it stands inside its travel',
    ],
  ],
  [
    'a scenario wrong in its shape and in its sums',
    SCENARIO,
    (s) => {
      s.words.story = '';
      s.weights = { response: 50, truth: 20, proofs: 10, care: 10, economy: 11 };
      s.recommendedAfter = [s.id];
    },
    [
      'line 11, column 5, /recommendedAfter/0: found "from-cold", wanted scenarios other than itself',
      'line 16, column 14, /words/story: found "", wanted text of 1 to 800 characters without control characters, not blank',
      'line 57, column 14, /weights: found a sum of 101, wanted weights that sum to 100',
    ],
  ],
  [
    'a scenario whose faults are not, and another thing',
    SCENARIO,
    (s) => {
      s.faults = [{ kind: 'openResistor', part: 'R99' }, { kind: 'brokenDream' }];
      s.difficulty = 4;
    },
    [
      'line 9, column 17, /difficulty: found 4, wanted one of 1, 2, 3',
      'line 60, column 15, /faults/0/part: found "R99", wanted one of "RQmix", "Rmix", "RQin", "Rgin", "Rin", "R39", "R47", "RQp1", "Rgp1", "Rp1", "R41", "RQp2", "Rgp2", "Rp2", "RQp3", "Rp3", "RQdet"',
      'line 63, column 15, /faults/1/kind: found "brokenDream", wanted one of "openResistor", "wrongLoad", "driftedCapacitor", "openCapacitor", "shortedTrap", "openWin…',
    ],
  ],
  [
    'a scenario with faults of parts that are not, by figures that cannot be and with keys too many',
    SCENARIO,
    (s) => {
      s.faults = [
        { kind: 'driftedCapacitor', part: 'C99', factor: 200 },
        { kind: 'swappedTraps', parts: ['C47', 'R99'], turns: 3 },
        { kind: 'wrongLoad', part: 7, ohms: 0 },
      ];
      s.start.note = 7;
    },
    [
      'line 33, column 13, /start/note: found 7, wanted text, as a note is for people to read',
      'line 61, column 15, /faults/0/part: found "C99", wanted one of "Cmix", "Cin", "C39", "C47", "Cp1", "C41", "Cp2", "Cp3", "Cdet"',
      'line 62, column 17, /faults/0/factor: found 200, wanted a number from 0.01 to 100',
      'line 68, column 9, /faults/1/parts/1: found "R99", wanted one of "Cmix", "Cin", "C39", "C47", "Cp1", "C41", "Cp2", "Cp3", "Cdet"',
      'line 70, column 7, /faults/1/turns: found the key "turns", wanted no other keys here than kind and parts',
      'line 74, column 15, /faults/2/part: found 7, wanted the name of a deck element, such as "L1"',
      'line 75, column 15, /faults/2/ohms: found 0 Ω, wanted from 1 mΩ to 1 GΩ',
    ],
  ],
  [
    'a scenario without a story, a receiver or a language that is one',
    SCENARIO,
    (s) => {
      delete s.words.story;
      delete s.receiver;
      s.language = 'Pigeon!';
    },
    [
      'line 1, column 1, /receiver: found nothing, wanted a value for "receiver"',
      'line 13, column 12, /words/story: found nothing, wanted a value for "story"',
      'line 55, column 15, /language: found "Pigeon!", wanted the tag of a language, such as "en" or "pt-BR"',
    ],
  ],
  [
    'a scenario on a set that is not here',
    SCENARIO,
    (s) => {
      s.receiver = 'of-another-club';
      s.timeLimitSeconds = 5;
    },
    [
      'line 13, column 15, /receiver: found receiver "of-another-club", wanted one of those in scenarios/receivers: aft-45m75, am-455k, chroma-3m58, colour-overall, fm…',
      'line 42, column 23, /timeLimitSeconds: found 5 seconds, wanted a whole number from 60 to 14400 seconds',
    ],
  ],
  [
    'a scenario with figures out of bounds',
    SCENARIO,
    (s) => {
      s.life = { driftFarads: 1e-9, unevenDb: 40, biasOhms: -1 };
      s.bench.mainsHz = 55;
    },
    [
      'line 38, column 16, /bench/mainsHz: found 55, wanted one of 50, 60',
      'line 59, column 20, /life/driftFarads: found 1 nF, wanted from 0 F to 1 pF',
      'line 60, column 17, /life/unevenDb: found 40 dB, wanted from 0 to 6 dB',
      'line 61, column 17, /life/biasOhms: found −1 Ω, wanted from 0 Ω to 100 kΩ',
    ],
  ],
  [
    'a scenario with a key twice and a wrong value',
    SCENARIO,
    (s) => {
      s.order = 0;
      return JSON.stringify(s, null, 2).replace('"track"', '"code": "X-01",\n  "track"');
    },
    [
      'line 7, column 3: found the key "code" a second time, wanted each once',
      'line 9, column 12, /order: found 0, wanted a whole number from 1 to 999',
    ],
  ],
  [
    'a scenario whose text breaks off',
    SCENARIO,
    (s) => JSON.stringify(s, null, 2).slice(0, 300),
    ['line 15, column 28: found the end of the text, wanted the rest of a string and its closing quote'],
  ],
  [
    'a scenario with a comma too many',
    SCENARIO,
    () => '{\n  "format": "haystack-scenario",\n  "version": 2,\n}',
    ['line 4, column 1: found "}", wanted a key in double quotes'],
  ],
  [
    'a scenario of a newer bench',
    SCENARIO,
    (s) => {
      s.version = 9;
    },
    ['line 3, column 14, /version: found version 9, wanted version 2 or older; this file was made for a newer bench'],
  ],
  [
    'a receiver with a wrong type, an impossible value and a key that is not known',
    RECEIVER,
    (r) => {
      r.title = false;
      r.adjusters[0].nominalHenries = 2;
      r.adjusters[1].colour = 'red';
    },
    [
      'line 6, column 12, /title: found false, wanted text of 1 to 100 characters without control characters, not blank',
      'line 21, column 25, /adjusters/0/nominalHenries: found 2 H, wanted from 100 pH to 1 H',
      'line 66, column 7, /adjusters/1/colour: found the key "colour", wanted only keys that the format has',
    ],
  ],
  [
    'a receiver that its deck does not bear out',
    RECEIVER,
    (r) => {
      r.adjusters[0].element = 'L99';
      r.stages[0].gmSiemens = 0.5;
      r.cautions = [];
    },
    [
      'line 19, column 18, /adjusters/0/element: found "L99", wanted an inductor of the deck',
      'line 225, column 20, /stages/0/gmSiemens: found 500 mS, wanted 2 mS, the value of G1 in the deck',
      'line 486, column 15, /cautions: found a list of 0, wanted a list of 1 to 12',
    ],
  ],
  [
    'a receiver whose sheet cannot be',
    RECEIVER,
    (r) => {
      r.responses[0].specification.points[0].target = 3;
      r.responses[0].setUp.levelDb = 7;
      r.responses[0].setUp.injectAt = 'NOWHERE';
    },
    [
      'line 275, column 21, /responses/0/setUp/injectAt: found "NOWHERE", wanted one of "TP2", "TP3"',
      'line 278, column 20, /responses/0/setUp/levelDb: found 7 dB, wanted a whole number from −80 to 0 dB',
      'line 308, column 23, /responses/0/specification/points/0/target: found 3, wanted a target between low and high, from 0.95 to 1.04',
    ],
  ],
  [
    'a receiver with names twice and a step too few',
    RECEIVER,
    (r) => {
      r.adjusters[1].id = r.adjusters[0].id;
      r.crystalsHz.reverse();
      r.deck = '../x.cir';
    },
    [
      'line 8, column 11, /deck: found "../x.cir", wanted the name of a deck beside this file, such as "network.cir"',
      'line 42, column 13, /adjusters/1/id: found "T1B" a second time, wanted each once',
      'line 260, column 17, /crystalsHz: found frequencies out of order, wanted rising frequencies',
      'line 476, column 9, /procedure/6/slugs/0: found "T1T", wanted one of "T1B", "T1B", "T2B", "T2T"',
    ],
  ],
  [
    'a receiver with things drawn over one another',
    RECEIVER,
    (r) => {
      Object.assign(r.testPoints[0].plan, { x: 125, y: 290 });
      r.plan.width = 1;
    },
    [
      'line 134, column 15, /testPoints/0/plan: found the test point TP2 drawn over the can T1, wanted a place where nothing else is drawn',
      'line 493, column 14, /plan/width: found 1, wanted a number from 200 to 1000',
    ],
  ],
  [
    'a run with a wrong head, a wrong event and a scenario that cannot be',
    RUN,
    (r) => {
      r.learner = 5;
      r.events[2].type = 'danced';
      r.scenario.weights = { response: 1, truth: 1, proofs: 1, care: 1, economy: 1 };
      r.extra = 0;
    },
    [
      'line 6, column 14, /learner: found 5, wanted text of 1 to 80 characters without control characters, not blank',
      'line 57, column 16, /scenario/weights: found a sum of 5, wanted weights that sum to 100',
      'line 340, column 15, /events/2/type: found "danced", wanted one of "cautionsAcknowledged", "isolationSwitched", "powerSwitched", "leadConnected", "leadRemoved",…',
      'line 694, column 3, /extra: found the key "extra", wanted only keys that the format has',
    ],
  ],
  [
    'a run with an event of figures that no bench has',
    RUN,
    (r) => {
      r.events[0].atMs = -1;
      r.seal = 'none';
      r.day = 'yesterday';
    },
    [
      'line 7, column 10, /day: found "yesterday", wanted a day such as "2026-05-31"',
      'line 320, column 11, /seal: found "none", wanted a count and three hashes, joined by colons',
      'line 323, column 15, /events/0/atMs: found -1, wanted a whole number from 0 to 86400000',
    ],
  ],
  [
    'a run that is a list',
    RUN,
    () => '[]',
    [
      'line 1, column 1, /format: found no format, wanted haystack-receiver, haystack-scenario, haystack-run, haystack-runs, haystack-evening, haystack-sealed-evening or haystack-certificate',
    ],
  ],
  [
    'a certificate with a wrong hash, a wrong par and a key too many',
    CERTIFICATE,
    (c) => {
      c.scenarioHash = 'abc';
      c.par.seconds = 'an hour';
      c.stamp = 1;
    },
    [
      'line 5, column 19, /scenarioHash: found "abc", wanted 64 hexadecimal digits',
      'line 106, column 16, /par/seconds: found "an hour", wanted a whole number from 30 to 14400',
      'line 110, column 3, /stamp: found the key "stamp", wanted only keys that the format has',
    ],
  ],
  [
    'a certificate without a route',
    CERTIFICATE,
    (c) => {
      delete c.route;
      c.difficulty = 99;
      c.nominal[0].unit = 'furlong';
    },
    [
      'line 1, column 1, /route: found nothing, wanted a value for "route"',
      'line 26, column 15, /nominal/0/unit: found "furlong", wanted one of "ratio", "db", "hz"',
      'line 102, column 17, /difficulty: found 99, wanted a number from 0 to 10',
    ],
  ],
  [
    'a file of no kind',
    SCENARIO,
    (s) => {
      s.format = 'shopping-list';
    },
    [
      'line 2, column 13, /format: found format "shopping-list", wanted haystack-receiver, haystack-scenario, haystack-run, haystack-runs, haystack-evening, haystack-sealed-evening or haystack-certificate',
    ],
  ],
];

describe.each(TABLE)('%s', (_, text, change, expected) => {
  const file = broken(text, change);

  it('tells all that is wrong', () => {
    const lines = told(file);
    // A long list of choices is not said again here.
    const cut = expected.map((line) => (line.endsWith('\u2026') ? expect.stringContaining(line.slice(0, -1)) : line));
    expect(lines).toEqual(cut);
  });

  it('tells it in any language', () => {
    const { err } = insideSaying(strange, 'check', file);
    for (const line of err.trimEnd().split('\n')) {
      expect(line).toContain('\u27e6');
      expect(outsideBrackets(line, [file, path.basename(file)])).toBe('');
    }
  });
});

it('has files of every kind', () => {
  expect(TABLE.length).toBeGreaterThanOrEqual(20);
});
