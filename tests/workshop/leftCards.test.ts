/** Cards of how the bench is left, against the readers of files that the command line has. */
import { describe, expect, it } from 'vitest';
import { CONTROLS } from '../../src/bench/controls/controls.ts';
import { newDraft } from '../../src/workshop/draft.ts';
import { draftFromText, draftProblems, draftText } from '../../src/workshop/draftFile.ts';
import { draftOfRecord } from '../../src/workshop/draftRecord.ts';
import {
  controlField,
  controlsLeft,
  controlsToLeave,
  LEFT_LEADS,
  leadEnds,
  usualControl,
  withControl,
  withLead,
} from '../../src/workshop/leftCards.ts';
import { shippedLibrary } from '../files/shipped.ts';

const RECEIVERS = [...shippedLibrary().receivers.values()];
const NONE = { ids: new Set<string>(), codes: new Set<string>() };
const written = (receiver: string) => ({
  ...newDraft(receiver, 1),
  title: 'Left so',
  words: { brief: 'It was left so.', story: 'Nobody says who.', lesson: 'Look first.' },
});

describe.each(RECEIVERS.map((set) => ({ id: set.receiver.id, set })))('the bench before $id', ({ id, set }) => {
  const { receiver } = set;

  it('may be left with every control that has a card, each elsewhere than at rest', () => {
    let draft = written(id);
    for (const control of controlsToLeave(receiver, draft).flatMap(({ ids }) => ids)) {
      const usual = usualControl(receiver, control);
      expect(CONTROLS.check(receiver, control, usual), control).toBeNull();
      expect(usual, control).not.toBe(CONTROLS.resting[control]);
      draft = withControl(draft, control, usual);
    }
    expect(controlsToLeave(receiver, draft)).toEqual([]);
    expect(controlsLeft(draft).length).toBeGreaterThan(20);
    expect(draftProblems(draft, set, NONE)).toEqual([]);
    expect(draftFromText(draftText(draft), 'x.json')).toEqual({ ok: true, value: draft });
    expect(draftOfRecord(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
    for (const control of controlsLeft(draft)) draft = withControl(draft, control, null);
    expect(draft).toEqual(written(id));
  });

  it('lets every end of a figure and every choice pass the check of the file', () => {
    for (const control of CONTROLS.ids) {
      const field = controlField(receiver, control);
      const values = field.holds === 'amount' ? [field.least, field.most] : field.choices;
      for (const value of values) expect(CONTROLS.check(receiver, control, value), `${control} ${value}`).toBeNull();
    }
  });

  it('may have each lead in the tray or at any point that takes it', () => {
    for (const lead of LEFT_LEADS) {
      for (const end of [null, ...leadEnds(receiver, lead)]) {
        const draft = withLead(written(id), lead, end);
        expect(draft.start.leads).toEqual({ [lead]: end });
        expect(draftProblems(draft, set, NONE), `${lead} ${end}`).toEqual([]);
        expect(withLead(draft, lead, undefined)).toEqual(written(id));
      }
    }
  });
});

describe('figures of controls', () => {
  it('of whole steps take the nearest', () => {
    const draft = withControl(written('video-valve-45m'), 'levelDb', -31.4, 1);
    expect(draft.start.controls).toEqual({ levelDb: -31 });
  });
});

describe('what a store gives back', () => {
  it('keeps author and whole translations, and leaves out controls of a wrong kind', () => {
    const text = { title: 'Links', words: { brief: 'a', story: 'b', lesson: 'c' }, hints: ['d'] };
    const draft = { ...written('video-valve-45m'), author: 'Harbour club', translations: { de: text } };
    const record = JSON.parse(JSON.stringify(draft)) as typeof draft;
    expect(draftOfRecord(record)).toEqual(draft);
    const rubbish = {
      ...record,
      translations: { de: text, fr: { title: 3 } },
      start: { ...record.start, controls: { levelDb: 'loud', mirror: true, knob: 4 } },
    };
    expect(draftOfRecord(rubbish)).toEqual({
      ...draft,
      start: { ...draft.start, controls: { mirror: true } },
    });
  });
});
