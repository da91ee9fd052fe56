/** The replay's timeline is made of the run's own events: spells at slugs, stops, phases. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TimedEvent } from '../../src/files/runFile.ts';
import {
  eventsBy,
  phaseProbes,
  phaseSpans,
  slugInHand,
  spells,
  stopAfter,
  stopBefore,
  stops,
} from '../../src/present/runTimeline.ts';
import { cursorArt, timelineArt, timelineX } from '../../src/rooms/report/timelineArt.ts';
import { PHASES } from '../../src/session/phase.ts';
import { reportWords } from '../../src/words/en/reportPage.ts';
import { phaseNames } from '../../src/words/en/shell.ts';

const turn = (seconds: number, slug: string, turns: number): TimedEvent => ({
  atMs: seconds * 1000,
  type: 'slugTurned',
  slug,
  turns,
});
const set = (seconds: number): TimedEvent => ({
  atMs: seconds * 1000,
  type: 'controlSet',
  control: 'levelDb',
  value: -40,
});

const RUN = [
  set(2),
  set(2.3),
  turn(10, 'T1', 0.25),
  turn(11, 'T1', 0.25),
  turn(12, 'A1', -0.5),
  turn(40, 'T1', -0.125),
  set(60),
];

describe('spells at a slug', () => {
  it('gather turns until a pause, each slug for itself', () => {
    expect(
      spells(RUN, []).map(({ slug, fromSeconds, toSeconds, turns }) => [slug, fromSeconds, toSeconds, turns]),
    ).toEqual([
      ['T1', 10, 11, 0.5],
      ['A1', 12, 12, -0.5],
      ['T1', 40, 40, -0.125],
    ]);
  });

  it('lose no turn', () => {
    const acts = fc.array(
      fc.tuple(fc.integer({ min: 0, max: 900 }), fc.constantFrom('T1', 'A1', 'A2'), fc.integer({ min: -8, max: 8 })),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(acts, (list) => {
        const events = list.sort((a, b) => a[0] - b[0]).map(([at, slug, eighths]) => turn(at, slug, eighths / 8));
        for (const slug of ['T1', 'A1', 'A2']) {
          const sent = events.reduce((sum, e) => (e.type === 'slugTurned' && e.slug === slug ? sum + e.turns : sum), 0);
          const kept = spells(events, []).reduce((sum, s) => (s.slug === slug ? sum + s.turns : sum), 0);
          expect(kept).toBe(sent);
        }
      }),
    );
  });

  it('know when something went wrong', () => {
    const found = spells(RUN, [{ kind: 'forcedStop', atSeconds: 11, subject: 'T1' }]);
    expect(found.map((s) => s.harmed)).toEqual([true, false, false]);
  });
});

describe('stops', () => {
  const list = stops(RUN, [{ kind: 'wrongHead', atSeconds: 30, subject: 'T1' }], 70);

  it('are the ends of spells, other acts, mishaps and both ends of the run, near ones taken together', () => {
    expect(list).toEqual([0, 2.3, 11, 12, 30, 40, 60, 70]);
  });

  it('lead forward and back through the whole run', () => {
    const forward = [0];
    while (forward.at(-1)! < 70) forward.push(stopAfter(list, forward.at(-1)!));
    expect(forward).toEqual(list);
    const back = [70];
    while (back.at(-1)! > 0) back.push(stopBefore(list, back.at(-1)!));
    expect(back.reverse()).toEqual(list);
    expect(stopAfter(list, 70)).toBe(70);
    expect(stopBefore(list, 0)).toBe(0);
  });
});

describe('moments', () => {
  it('count the events that have happened', () => {
    expect([0, 1.9, 2, 2.3, 12, 59.999, 60, 99].map((s) => eventsBy(RUN, s))).toEqual([0, 0, 1, 2, 5, 6, 7, 7]);
  });

  it('know the slug in hand', () => {
    expect([0, 2, 3, 4, 5, 6, 7].map((n) => slugInHand(RUN, n))).toEqual([null, null, 'T1', 'T1', 'A1', 'T1', 'T1']);
  });
});

describe('phases', () => {
  it('are asked for no more often than allowed, and at both ends', () => {
    const many = Array.from({ length: 5000 }, (_, i) => set(i));
    const probes = phaseProbes(many, 5000, 90);
    expect(probes.length).toBeLessThanOrEqual(91);
    expect(probes[0]).toBe(0);
    expect(probes.at(-1)).toBe(5000);
    expect(phaseProbes([], 10, 90)).toEqual([0, 10]);
  });

  it('fill the run without a gap, and glances aside go to their neighbour', () => {
    const answers = [
      { atSeconds: 0, phase: 'safe' },
      { atSeconds: 20, phase: 'setUp' },
      { atSeconds: 50, phase: 'align' },
      { atSeconds: 60, phase: 'prove' },
      { atSeconds: 61, phase: 'align' },
      { atSeconds: 90, phase: 'prove' },
      { atSeconds: 100, phase: 'prove' },
    ] as const;
    expect(phaseSpans(answers, 100)).toEqual([
      { phase: 'safe', fromSeconds: 0, toSeconds: 20 },
      { phase: 'setUp', fromSeconds: 20, toSeconds: 50 },
      { phase: 'align', fromSeconds: 50, toSeconds: 90 },
      { phase: 'prove', fromSeconds: 90, toSeconds: 100 },
    ]);
    const phase = fc.constantFrom(...PHASES);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 999 }), phase), { maxLength: 40 }),
        phase,
        (list, first) => {
          const probes = [
            { atSeconds: 0, phase: first },
            ...list.sort((a, b) => a[0] - b[0]).map(([atSeconds, p]) => ({ atSeconds, phase: p })),
          ];
          const spans = phaseSpans(probes, 1000);
          expect(spans[0]?.fromSeconds).toBe(0);
          expect(spans.at(-1)?.toSeconds).toBe(1000);
          spans.forEach((s, i) => {
            if (i === 0) return;
            expect(s.fromSeconds).toBe(spans[i - 1]!.toSeconds);
            expect(s.phase).not.toBe(spans[i - 1]!.phase);
          });
        },
      ),
    );
  });
});

describe('the drawing', () => {
  const words = {
    clock: reportWords.clock,
    turns: reportWords.turnsMark,
    phase: (p: (typeof PHASES)[number]) => phaseNames[p],
  };
  const timeline = {
    lengthSeconds: 70,
    slugs: [
      { id: 'T1', letter: 'A' },
      { id: 'A1', letter: 'B' },
    ],
    spells: spells(RUN, []),
    phases: [{ phase: 'align', fromSeconds: 0, toSeconds: 70 }] as const,
    incidents: [{ kind: 'forcedStop', atSeconds: 30, subject: 'T1' }] as const,
  };

  it('has a lane for each slug, the turns with their sign, the phase, and a flag for the mishap', () => {
    const svg = timelineArt(900, 240, timeline, words);
    for (const text of ['A', 'B', '+1/2', '−1/2', '−1/8', 'Align', '!', '00:00', '01:00'])
      expect(svg, text).toContain(`>${text}<`);
  });

  it('leaves out figures that would lie on their neighbour', () => {
    const crowded = {
      ...timeline,
      spells: [turn(10, 'T1', 0.5), turn(17, 'T1', 0.25)].flatMap((e) => spells([e], [])),
    };
    const figures = (w: number): number =>
      timelineArt(w, 240, crowded, words).split('size-14 weight-600 tracking-none').length - 1;
    expect(figures(900)).toBe(2);
    expect(figures(200)).toBeLessThan(2);
  });

  it('moves the cursor with time and marks the slug in hand', () => {
    const X = timelineX(900, 70);
    expect(X(70)).toBeGreaterThan(X(35));
    expect(X(999)).toBe(X(70));
    const svg = cursorArt(900, 240, timeline, { seconds: 35, slug: 1 }, words);
    expect(svg).toContain('>00:35<');
    expect(svg).toContain('>B<');
    expect(cursorArt(900, 240, timeline, { seconds: 35, slug: -1 }, words)).not.toContain('>B<');
  });
});
