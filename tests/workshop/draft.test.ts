/** Drafts as data: changes, cards, file, record, all against the readers of files that the command line has. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type LoadedReceiver, loadReceiver } from '../../src/files/library.ts';
import { numberBounds } from '../../src/files/numberBounds.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { FAULT_KINDS } from '../../src/receiver/faults/fault.ts';
import { en } from '../../src/words/en/index.ts';
import { duplicated, newDraft, onReceiver, withFault, withSet, withSlug } from '../../src/workshop/draft.ts';
import {
  draftFromText,
  draftHash,
  draftProblems,
  draftText,
  problemsBeside,
  receiverNamedIn,
} from '../../src/workshop/draftFile.ts';
import { draftOfRecord } from '../../src/workshop/draftRecord.ts';
import { cardFields, kindsThatFit, newFault, withField } from '../../src/workshop/faultCards.ts';
import { FLAWS, flawRow, isStilled, usualFlaw } from '../../src/workshop/flaws.ts';
import { unwritten, withPlainTexts } from '../../src/workshop/unwritten.ts';

const design = (id: string): LoadedReceiver => {
  const named = (name: string) => {
    const file = `scenarios/receivers/${id}/${name}`;
    return { file, text: readFileSync(file, 'utf8') };
  };
  const loaded = loadReceiver(named('receiver.json'), named('network.cir'));
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  return loaded.value;
};
const VALVE = design('video-valve-45m');
const CAN = design('loose-can-10m7');
const NONE = { ids: new Set<string>(), codes: new Set<string>() };
const written = (draft = newDraft('video-valve-45m', 3)) => ({
  ...draft,
  title: 'The night shift\u2019s set',
  words: { brief: 'It was left on all night.', story: 'Nobody says who.', lesson: 'Look first.' },
});

// Common practice, no source: what cannot be had is refused with its place, whatever is added to whatever.
describe('two faults of one part', () => {
  it('are both taken, or the second is refused; a diode that is a piece of wire does not leak as well', () => {
    for (const set of [VALVE, design('am-455k')])
      for (const kind of FAULT_KINDS)
        for (const other of FAULT_KINDS) {
          const first = newFault(kind, set, []);
          const second = first === null ? null : newFault(other, set, [first]);
          if (second === null) continue;
          const draft = { ...written(newDraft(set.receiver.id, 1)), faults: [first!, second] };
          expect(draftProblems(draft, set, NONE), `${kind}, ${other}`).toEqual([]);
        }
    const [leaks, wire] = [newFault('leakyDiode', VALVE, [])!, newFault('shortedDiode', VALVE, [])!];
    const places = draftProblems({ ...written(), faults: [leaks, wire] }, VALVE, NONE).map(({ place }) => place);
    expect(places).toEqual(['/faults/1']);
  });
});

describe('a draft', () => {
  it('begins with nothing but its texts to write, and then passes every check', () => {
    const places = draftProblems(newDraft('video-valve-45m', 3), VALVE, NONE).map(({ place }) => place);
    expect(places).toEqual(['/title', '/words/brief', '/words/story', '/words/lesson']);
    expect(draftProblems(written(), VALVE, NONE)).toEqual([]);
  });

  it('tells which texts are still to be written, and plain ones stand in for those alone', () => {
    const bare = newDraft('video-valve-45m', 3);
    expect(unwritten(bare)).toEqual(['/title', '/words/brief', '/words/story', '/words/lesson']);
    expect(unwritten({ ...bare, title: '  ', words: { ...written().words, lesson: '' } })).toEqual([
      '/title',
      '/words/lesson',
    ]);
    const plain = en.workshop.proof.plainTexts('Skerry Point table television');
    const begun = withPlainTexts({ ...bare, title: 'Mine' }, plain);
    expect(begun.title).toBe('Mine');
    expect(begun.words.story).toBe(plain.story);
    expect(unwritten(begun)).toEqual([]);
    expect(draftProblems(withPlainTexts(bare, plain), VALVE, NONE)).toEqual([]);
  });

  it('tells names that are taken, and problems with line and column', () => {
    const taken = { ids: new Set(['own-scenario-3']), codes: new Set(['W-03']) };
    expect(draftProblems(written(), VALVE, taken).map(({ place }) => place)).toEqual(['/id', '/code']);
    const [far] = draftProblems(withSlug(written(), 'T4', 59), VALVE, NONE);
    expect(far).toMatchObject({ place: '/start/slugs/T4' });
    expect(far?.at?.line).toBeGreaterThan(1);
  });

  it('comes back from its file as it was, by the reader that the command line has', () => {
    const draft = withSet(withSlug(written(), 'T4', -2.375), 7);
    const read = draftFromText(draftText(draft), 'x.json');
    expect(read).toEqual({ ok: true, value: draft });
    expect(parseScenario(JSON.parse(draftText(draft)), 'x.json')).toEqual({ ok: true, value: draft });
    expect(draftHash(withSlug(draft, 'T4', 1))).not.toBe(draftHash(draft));
    expect(draftText(draft).endsWith('}\n')).toBe(true);
    expect(draftFromText('{', 'x.json').ok).toBe(false);
  });

  it('names a slug that is right only where a scatter would move it', () => {
    const draft = written();
    expect(withSlug(draft, 'T4', 0)).toBe(draft);
    expect(withSlug(withSlug(draft, 'T4', 1), 'T4', 0).start.slugs).toEqual({});
    const scattered = { ...draft, start: { ...draft.start, randomTurns: 1 } };
    expect(withSlug(scattered, 'T4', 0).start.slugs).toEqual({ T4: 0 });
    expect(withSlug(withSlug(scattered, 'T4', 0), 'T4', null).start.slugs).toEqual({});
  });

  it('goes to another receiver without what names parts of the old one', () => {
    const fault = newFault('openResistor', VALVE, [])!;
    const moved = onReceiver(withFault(withSlug(written(), 'T4', 1), 0, fault), CAN.receiver);
    expect(draftProblems(moved, CAN, NONE)).toEqual([]);
    expect(moved.title).toBe(written().title);
  });

  it('made of a shipped scenario has a name and a card of its own', () => {
    const text = readFileSync('scenarios/vision-if/flat-top.json', 'utf8');
    const shipped = draftFromText(text, 'flat-top.json');
    if (!shipped.ok) throw new Error('flat-top');
    const draft = duplicated(shipped.value, 12);
    expect(draft).toMatchObject({ id: 'own-scenario-12', code: 'W-12', track: 'own', recommendedAfter: [] });
    expect(draft.start).toEqual(shipped.value.start);
    expect(draftProblems(draft, VALVE, NONE)).toEqual([]);
  });
});

describe('the cards of a draft', () => {
  it('of every kind that fits is one that the check of files lets pass', () => {
    for (const set of [VALVE, CAN, design('fm-10m7')]) {
      const kinds = kindsThatFit(set);
      expect(kinds.length).toBeGreaterThan(8);
      for (const kind of kinds) {
        const fault = newFault(kind, set, []);
        expect(fault, `${set.receiver.id} ${kind}`).not.toBeNull();
        const draft = withFault(written(newDraft(set.receiver.id, 1)), 0, fault!);
        expect(draftProblems(draft, set, NONE), kind).toEqual([]);
      }
    }
  });

  it('have every kind of fault that the format knows between two receivers', () => {
    const all = new Set([VALVE, design('fm-10m7'), design('video-solid-45m')].flatMap(kindsThatFit));
    expect(FAULT_KINDS.filter((kind) => !all.has(kind))).toEqual([]);
  });

  it('offer only parts that the check takes, and keep to the figures of the row', () => {
    const fault = newFault('wrongLoad', VALVE, [])!;
    const [part, ohms] = cardFields(fault, VALVE);
    expect(ohms).toMatchObject({ key: 'ohms', unit: '\u03a9', least: 1e-3, most: 1e9 });
    if (part?.holds !== 'element') throw new Error('a part');
    expect(part.choices.length).toBeGreaterThan(3);
    for (const choice of part.choices) {
      const draft = withFault(written(), 0, withField(fault, 'element', choice));
      expect(draftProblems(draft, VALVE, NONE), choice).toEqual([]);
    }
    expect(part.choices).not.toContain('RQ1');
  });

  it('may be two of one kind at two places, and change places', () => {
    const first = newFault('openResistor', VALVE, [])!;
    const second = newFault('openResistor', VALVE, [first])!;
    expect(second).not.toEqual(first);
    const draft = withFault(withFault(written(), 0, first), 1, second);
    expect(withFault(draft, 0, null).faults).toEqual([second]);
  });

  it('of the bench pass the check, are read back, and go without a trace', () => {
    const bare = written();
    for (const id of FLAWS) {
      const value = usualFlaw(id, ['T4']);
      const draft = flawRow(id).write(bare, value);
      expect(flawRow(id).read(draft), id).toBe(value);
      expect(draftProblems(draft, VALVE, NONE), id).toEqual([]);
      expect(flawRow(id).write(draft, null), id).toEqual(bare);
    }
  });

  it('have the bounds of the published schema', () => {
    const schema = JSON.stringify(JSON.parse(readFileSync('scenarios/schema/scenario.schema.json', 'utf8')));
    expect(numberBounds('bench', 'phaseLagDegrees')).toEqual({ least: -85, most: 85 });
    expect(schema).toContain('"minimum":-85,"maximum":85');
    expect(numberBounds('title')).toEqual({ least: 1, most: 60 });
    expect(() => numberBounds('bench', 'xSwapped')).toThrow();
    expect(() => numberBounds('nothing')).toThrow();
  });
});

describe('a draft out of a store', () => {
  it('is as it was put there', () => {
    let draft = withSet(withSlug(written(), 'T4', 1), 3);
    draft = withFault(draft, 0, newFault('weakStage', VALVE, [])!);
    for (const id of FLAWS) draft = flawRow(id).write(draft, usualFlaw(id, ['T4']));
    const whole = { ...draft, timeLimitSeconds: 900, responses: ['vision'], slugsRight: true as const };
    expect(draftOfRecord(JSON.parse(JSON.stringify(whole)))).toEqual(whole);
  });

  it('is none where it is something else, and loses only what is spoilt', () => {
    for (const none of [null, 7, 'x', [], {}, { format: 'haystack-run', receiver: 'x' }])
      expect(draftOfRecord(none)).toBeNull();
    const spoilt = { ...written(), words: { brief: 3, story: 'kept' }, seed: 'x', faults: [{ kind: 'no' }, 3], par: 1 };
    const read = draftOfRecord(spoilt);
    expect(read?.words).toEqual({ brief: '', story: 'kept', lesson: '' });
    expect(read).toMatchObject({ seed: 1, faults: [], title: written().title });
  });
});

// Common practice, no source: what is refused is told beside the receiver that it names.
describe('a text that is no draft', () => {
  const spoilt = (change: (json: { start: { slugs: object }; receiver: unknown; title: unknown }) => void): string => {
    const json = JSON.parse(draftText(written()));
    change(json);
    return JSON.stringify(json);
  };

  it('is told by its receiver how far a slug may stand off, and what else is wrong', () => {
    const text = spoilt((json) => {
      json.start.slugs = { T1: 999, T9: 1 };
      json.title = 7;
    });
    expect(draftFromText(text, 'a.json').ok).toBe(false);
    expect(receiverNamedIn(text, 'a.json')).toBe('video-valve-45m');
    const problems = problemsBeside(text, 'a.json', VALVE);
    expect(problems.map(({ place }) => place).sort()).toEqual(['/start/slugs/T1', '/start/slugs/T9', '/title']);
    const far = problems.find(({ place }) => place.endsWith('T1'))!;
    expect(far.wanted).toEqual(['insideTravel', expect.closeTo(-9.3, 1), expect.closeTo(10.7, 1)]);
    expect(far.at).toBeDefined();
  });

  it('names no receiver where none can be read', () => {
    for (const text of ['', '[]', spoilt((json) => (json.receiver = 7)), spoilt((json) => delete json.receiver)])
      expect(receiverNamedIn(text, 'a.json')).toBeNull();
  });
});

// Common practice, no source: what a usual bench has a little of may be taken away by a card.
it('a card at nought says so where a usual bench has a little, and nowhere else', () => {
  const at = (value: number | boolean) =>
    FLAWS.filter((id) => isStilled(id, flawRow(id).write(newDraft('am-455k', 1), value)));
  expect(at(0)).toEqual(expect.arrayContaining(['noise', 'drift', 'biasHum', 'supplyHum', 'uneven', 'hand']));
  for (const id of ['phaseLag', 'dialError', 'yGain', 'cold', 'steelIn'] as const) expect(at(0)).not.toContain(id);
  expect(at(1e-3)).toEqual([]);
  expect(FLAWS.filter((id) => isStilled(id, newDraft('am-455k', 1)))).toEqual([]);
});
