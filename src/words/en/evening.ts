/** Words of the workshop's place for evening sheets. */
import { format } from './numbers.ts';

export const eveningWords = {
  tab: 'Evening sheet',
  title: 'A sheet for the evening',
  name: 'Title',
  author: 'Author (optional)',
  minutes: 'Minutes in all',
  minutesNote: (par: number, sealed: number): string =>
    [
      'Left empty, no time is stated.',
      ...(par > 0 ? [`Good runs of ${sealed > 0 ? 'the open' : 'these'} scenarios take ${par} minutes together.`] : []),
      ...(sealed > 0 ? [`The time limits of the sealed ones add up to ${sealed} minutes.`] : []),
    ].join(' '),
  minutesOf: (title: string): string => `Minutes for ${title} (optional)`,
  minutesShort: 'min',
  passMark: 'Pass mark (optional)',
  passMarkNote: (all: number): string =>
    `How many ${all === 0 ? 'scenarios' : `of the ${all}`} have to be passed. Left empty, the whole is neither passed nor failed.`,
  inOrder: 'Scenarios, in this order',
  none: 'No scenario has been chosen yet.',
  handle: (title: string, place: number, all: number): string =>
    `${title}, ${place} of ${all}. Drag it, or move it with the up and down arrow keys`,
  moved: (title: string, place: number, all: number): string => `${title} is now ${place} of ${all}.`,
  takeOut: 'Take out',
  takeOutNamed: (title: string): string => `Take out ${title}`,
  gone: (id: string): string => `${id} is no longer here`,
  addOne: 'Add one',
  choose: 'Choose a scenario',
  add: 'Add',
  full: (most: number): string => `A sheet has at most ${most} scenarios.`,
  order: 'Order',
  orders: { listed: 'As listed', any: 'In any order' },
  orderNotes: { listed: 'the next opens when one is signed off', any: 'all of them are open' },
  handOut: 'Hand it out',
  handOutNote:
    'The file holds every scenario whole. Whoever opens it on the course page needs nothing else, and no network.',
  lacks: {
    title: 'The sheet has no title yet.',
    scenarios: 'It has no scenario yet.',
    phrase: 'The phrase of the seal has fewer than 12 characters.',
    minutesEach:
      'The time for a scenario must be a whole number of minutes from 1 to 240 or left empty, no more than the scenario’s own limit, and together no more than the time in all.',
    passMark: 'The pass mark must be a whole number from 1 to the number of scenarios, or left empty.',
    minutes: 'The time must be a whole number of minutes from 5 to 480, or left empty.',
  },
  save: 'Save the file',
  saved: 'The file is in your downloads.',
  notKept: 'This browser is storing nothing just now: what you have chosen here is lost with the page.',
  slips: {
    count: 'Slips',
    print: 'Print slips',
    note: 'A slip for each candidate, to cut apart: title, file, time, and the number or a line for the name. Which scenarios there are is not on it, and neither is the phrase.',
    most: (most: number): string => `From 1 to ${most} slips.`,
    number: (no: number): string => `No. ${no}`,
    facts: (scenarios: number, minutes: number | null): string =>
      `${format.counted(scenarios, { one: 'scenario', other: 'scenarios' })}${minutes === null ? ', no time limit' : `, ${minutes} minutes in all`}.`,
    mark: (mark: number, all: number): string => `To pass: ${mark} of ${all}.`,
    times: (minutes: readonly (number | null)[]): string =>
      `Minutes for each, in order: ${minutes.map((one) => one ?? 'no limit').join(', ')}.`,
    page: 'Page',
    fromStick: 'haystack.html from the memory stick, or the address that your instructor gives',
    file: 'File',
    name: 'Name',
    how: 'Open the file on the course page by the button in "Your own". Sign off each job with the same name or number.',
    howSealed:
      'Open the file on the course page by the button in "Your own". The phrase is said aloud when everybody is seated; the clock starts when you open the seal. At the end press "Hand in" and give the saved file to your instructor.',
  },
  seen: {
    title: 'As the learner meets it',
    noTitle: 'No title yet',
    someName: 'Ines',
    opened: 'and once it is opened',
    empty: 'What you add to the sheet is shown here as the learner sees it.',
  },
  deals: {
    title: 'What each candidate is dealt',
    note: 'The number that each set is dealt from; it stands in the run file. Any change to the sheet changes the numbers.',
    candidate: 'No.',
    same: 'same for all',
    sameForAll: 'All candidates are given the same sets.',
    names: 'Candidates who give names are each dealt a set by the name that they type.',
    lacking: 'The numbers are shown when the sheet is complete.',
    working: 'Working out the numbers…',
  },
  exam: {
    title: 'Exam',
    seal: 'Seal the sheet by a phrase',
    phrase: 'The phrase, said aloud when everybody is seated',
    phraseNote:
      'It is not in the file: without it nobody opens the sheet, not even you. Write it down. Four words that do not belong together are harder to guess than a saying; capitals do not count.',
    names: 'Candidates give names (otherwise numbers)',
    several: 'Each scenario as often as time allows (otherwise once)',
    ownDeal: 'A different deal for each candidate',
    results: 'Show what each run was worth at once (otherwise when the exam is handed in)',
    dealt: (sealed: number, all: number): string =>
      `${sealed} of ${all} are sealed scenarios and can be dealt afresh; the others are the same for all.`,
    save: 'Save the sealed file',
    noCrypto:
      'This browser gives the page no cryptography here, so nothing can be sealed. Open the page over a secure address or from a file, or use another browser.',
  },
} as const;
