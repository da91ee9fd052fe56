/** Words about what is kept: storage that fails, runs set aside, one scenario in two tabs, a page that has failed. */
import { format } from './numbers.ts';

export const storeWords = {
  /** names the notices for screen readers */
  notices: 'About your stored runs',
  seen: 'Dismiss',
  trouble: {
    memoryOnly:
      'This browser will not store anything here, so your runs last only as long as this page is open. Export a run file to keep one.',
    full: 'Storage is full. What you do now is kept only while this page is open: export what you want to keep, or make room and try again.',
    failing:
      'The last save did not go through. What you do now is kept only while this page is open: export what you want to keep, or try again.',
    waiting:
      'An older version of this page is open in another tab and will not let go of your stored runs. Close that tab.',
    outdated:
      'A newer version of this page is open in another tab and looks after your stored runs now. Reload this page to go on.',
  },
  tryAgain: 'Try storing again',
  reload: 'Reload',
  newer:
    'A newer version of this page has been fetched. What is on the bench is kept, and is there again when the page has been reloaded.',
  takeNewer: 'Reload now',
  later: 'Later',
  aside: {
    unreadable: (runs: number): string =>
      `${format.plural(runs, {
        one: 'A stored run could not be read. It has been set aside',
        other: `${runs} stored runs could not be read. They have been set aside`,
      })}; the rest is as you left it.`,
    stopsShort: (runs: number): string =>
      format.plural(runs, {
        one: 'A run could be picked up only part of the way, and goes on from there. The whole record has been set aside.',
        other: `${runs} runs could be picked up only part of the way, and go on from there. The whole records have been set aside.`,
      }),
    doesNotStart: (runs: number): string =>
      format.plural(runs, {
        one: 'An open run could not be picked up on this bench. Its record has been set aside.',
        other: `${runs} open runs could not be picked up on this bench. Their records have been set aside.`,
      }),
    putAside: (runs: number): string =>
      format.plural(runs, {
        one: 'A run has been taken off its bench and set aside.',
        other: `${runs} runs have been taken off their benches and set aside.`,
      }),
  },
  saveAside: (runs: number): string => format.plural(runs, { one: 'Save the record', other: 'Save the records' }),
  removeAside: 'Remove from here',
  report: {
    notStored:
      'This run is signed off but not stored: it will be gone when this page closes. Export the run file, or make room and try again.',
    save: 'Export run file',
  },
  elsewhere: {
    title: 'This scenario is open in another tab',
    body: 'Only one tab at a time works at a bench. Close the other tab, or take the bench over: what was done there comes with it.',
    takeOver: 'Take over here',
    asking: 'Taking over\u2026',
  },
  lost: {
    title: 'The bench is in another tab now',
    body: 'The scenario was taken over in another tab, with everything that was done here. Nothing more is recorded in this tab.',
    takeBack: 'Take it back',
  },
  unguarded: 'This browser cannot tell whether the scenario is open in a second tab. Keep it open in one tab only.',
  toCourse: 'To the course',
  noText: 'The file of this run is missing from the storage of this browser.',
  badText: 'The file of this run can no longer be read. You can still save it as it is.',
  broken: {
    title: 'This page has failed',
    body: 'Something here could not be shown. What is stored is still where it was.',
    what: (message: string): string => `It says: ${message}`,
    saveRun: 'Save this run',
    saveAll: 'Save everything kept here',
    goOn: 'Go on',
    clearBench: 'Set this run aside and start afresh',
  },
} as const;
