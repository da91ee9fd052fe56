/** Addresses: what is written there is read back, and rubbish leads to the course. */
import { describe, expect, it } from 'vitest';
import { type Route, readRoute, routeHash } from '../../src/app/routes.ts';

describe('an address', () => {
  it.each<Route>([
    { page: 'course' },
    { page: 'drills', drill: null, series: null },
    { page: 'drills', drill: 'zero', series: null },
    { page: 'drills', drill: 'which-way', series: 'f3a97c12' },
    { page: 'handbook', pageId: null },
    { page: 'handbook', pageId: 'one-can' },
    { page: 'bench', scenarioId: 'first-curve' },
    { page: 'bench', scenarioId: 'first-curve', guided: true },
    { page: 'shown', scenarioId: 'first-curve' },
    { page: 'papers', scenarioId: null, paper: 'sheet' },
    { page: 'papers', scenarioId: 'first-curve', paper: 'transfer' },
    { page: 'bench', scenarioId: 'endless-2-gale' },
    { page: 'workshop', place: null },
    { page: 'workshop', place: null, on: 'my-set' },
    { page: 'workshop', place: 'receiver' },
    { page: 'workshop', place: 'evening' },
    { page: 'exam', exam: '0123456789abcdef' },
    { page: 'open', data: '1q1YqSyzKTE-_' },
    { page: 'class', fileNo: null },
    { page: 'class', fileNo: 12 },
    { page: 'report', runId: '0b6a2f0e-6d0c-4b0e-9d58-1c2f3a4b5c6d' },
  ])('is read back as it was written: %o', (route) => {
    expect(readRoute(routeHash(route))).toEqual(route);
  });

  it.each([
    '',
    '#',
    '#/',
    '#/nowhere',
    '#/bench',
    '#/bench/',
    '#/bench/../x',
    '#/bench/%00',
    '#/class/0',
    '#/class/1e9',
    '#/report/<b>',
    `#/report/${'a'.repeat(90)}`,
  ])('that means nothing leads to the course: %s', (hash) => {
    expect(readRoute(hash)).toEqual({ page: 'course' });
  });
});
