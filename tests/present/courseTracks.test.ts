/** What the course page works out from its cards: tracks, what is won, what comes next, where things stand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arrangeTracks,
  cardRows,
  cardsPerRow,
  isWon,
  leadsOnTo,
  nextCard,
  sealedInTurn,
  tracksOf,
} from '../../src/present/courseTracks.ts';
import type { CourseCard } from '../../src/present/ports.ts';
import { courseWords, trackWords } from '../../src/words/en/course.ts';
import { shippedLibrary } from '../files/shipped.ts';

const library = shippedLibrary();
const CURVE = { found: 'M0 1000l1000 0', wanted: 'M0 1000l1000 0', zero: 1000 };

function cards(state: Readonly<Record<string, Partial<CourseCard>>> = {}): CourseCard[] {
  return library.scenarios.map((scenario) => ({
    scenario: { ...scenario, brief: scenario.words.brief, receiverName: 'a set', curve: CURVE, translations: {} },
    best: null,
    onBench: null,
    early: false,
    passed: false,
    ...state[scenario.id],
  }));
}

describe('tracks', () => {
  it('hold every card once, in the order of the track', () => {
    const tracks = tracksOf(cards());
    expect(
      tracks
        .flatMap((t) => t.cards)
        .map((c) => c.scenario.id)
        .sort(),
    ).toEqual(library.scenarios.map((s) => s.id).sort());
    for (const { id, cards: held } of tracks) {
      expect(held.every((c) => c.scenario.track === id)).toBe(true);
      expect(held.map((c) => c.scenario.order)).toEqual(held.map((c) => c.scenario.order).sort((a, b) => a - b));
    }
  });

  it('of the shipped course all have words of their own', () => {
    for (const { id } of tracksOf(cards())) expect(trackWords(id).blurb, id).not.toBe('');
    expect(trackWords('harbour_radio')).toEqual({ letter: 'H', title: 'Harbour radio', blurb: '' });
  });

  it('count as won what a run has passed, and no number of points without a pass', () => {
    const [first] = cards();
    expect([69, 70, 100].map((best) => isWon({ ...first!, best }))).toEqual([false, false, false]);
    expect(isWon({ ...first!, best: 71, passed: true })).toBe(true);
  });
});

describe('next for you', () => {
  const first = tracksOf(cards())[0]!.cards[0]!.scenario.id;
  const second = tracksOf(cards())[0]!.cards[1]!.scenario.id;

  it('is what lies on the bench, else the first that is not won, else the poorest', () => {
    const all = cards();
    expect(nextCard(all)?.scenario.id).toBe(first);
    expect(nextCard(cards({ [first]: { best: 90, passed: true } }))?.scenario.id).toBe(second);
    expect(nextCard(cards({ [first]: { best: 90 } }))?.scenario.id).toBe(first);
    const last = library.scenarios.at(-1)!.id;
    expect(nextCard(cards({ [last]: { onBench: { turns: 1, seconds: 60 } } }))?.scenario.id).toBe(last);
    const won = all.map((c, i) => ({ ...c, passed: true, best: 100 - i / 4 }));
    expect(nextCard(won)?.best).toBe(100 - (won.length - 1) / 4);
  });

  it('is never a early card, and nothing where there is nothing', () => {
    expect(nextCard(cards({ [first]: { early: true } }))?.scenario.id).not.toBe(first);
    expect(nextCard([])).toBeNull();
  });

  it('leads on from a run that passed, and keeps who has not passed to the track', () => {
    const [{ cards: held }, { cards: others }] = tracksOf(cards()) as [
      ReturnType<typeof tracksOf>[number],
      ReturnType<typeof tracksOf>[number],
    ];
    const early = Object.fromEntries(held.slice(1).map(({ scenario }) => [scenario.id, { early: true }]));
    const elsewhere = others[0]!.scenario.id;
    // Nothing of the track is open but what has just been tried.
    expect(leadsOnTo(cards(early), first, false)).toBeNull();
    expect(leadsOnTo(cards(early), first, true)?.scenario.id).toBe(elsewhere);
    // A job that lies on the bench is led to all the same, and so is the next of the same track.
    const lying = { ...early, [elsewhere]: { onBench: { turns: 1, seconds: 60 } } };
    expect(leadsOnTo(cards(lying), first, false)?.scenario.id).toBe(elsewhere);
    expect(leadsOnTo(cards(), first, false)?.scenario.id).toBe(second);
  });
});

describe('sealed jobs', () => {
  const sealed = library.scenarios.filter((scenario) => scenario.sealed).map(({ id }) => id);

  it('are likely to be wanted where they can be done now, then the others; none that lies on the bench', () => {
    expect(sealed).toHaveLength(10);
    const all = sealedInTurn(cards());
    expect([...all].sort()).toEqual([...sealed].sort());
    const [first, second] = all;
    const early = Object.fromEntries(
      sealed.filter((id) => id !== all.at(-1)).map((id): [string, Partial<CourseCard>] => [id, { early: true }]),
    );
    const state = { ...early, [first!]: { onBench: { turns: 0, seconds: 5 } } };
    expect(sealedInTurn(cards(state))).toEqual([all.at(-1), second, ...all.slice(2, -1)]);
  });
});

describe('places', () => {
  const counts = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 8 });

  it('hold each track once and fill every row', () => {
    fc.assert(
      fc.property(counts, fc.integer({ min: 1, max: 3 }), (tracks, columns) => {
        const rows = arrangeTracks(tracks, columns);
        expect(
          rows
            .flat()
            .map((p) => p.track)
            .sort((a, b) => a - b),
        ).toEqual(tracks.map((_, i) => i));
        for (const row of rows) expect(row.reduce((sum, p) => sum + p.span, 0)).toBe(columns);
      }),
    );
  });

  it('put a short track beside another that leaves room', () => {
    expect(arrangeTracks([2, 3, 1], 3)).toEqual([
      [
        { track: 0, span: 2 },
        { track: 2, span: 1 },
      ],
      [{ track: 1, span: 3 }],
    ]);
  });

  it('make two and two of four, three of three, and lose no card', () => {
    expect([1, 2, 3, 4, 5, 6].map((n) => cardsPerRow(n, 3))).toEqual([1, 2, 3, 2, 3, 3]);
    expect(cardsPerRow(5, 1)).toBe(1);
    for (let n = 1; n < 20; n++) expect(cardRows(n, 3) * cardsPerRow(n, 3)).toBeGreaterThanOrEqual(n);
  });
});

describe('words', () => {
  it('say what a card says', () => {
    expect(courseWords.after(['V-01', 'S-02'])).toBe('Best after V-01 and S-02');
    expect(courseWords.par(courseWords.turns(1.625), courseWords.minutes(600))).toBe('par 1 5/8 turns, 10 min');
    expect(courseWords.intro(2).startsWith('Two tracks. ')).toBe(true);
    expect(courseWords.intro(1).startsWith('One track. ')).toBe(true);
  });
});
