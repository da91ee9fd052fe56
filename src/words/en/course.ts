/** Words of the course page. */
import { format } from './numbers.ts';

export interface TrackWords {
  readonly letter: string;
  readonly title: string;
  readonly blurb: string;
}

/** Tracks of the shipped course; a track from elsewhere is called by its own name. */
const TRACKS: Readonly<Record<string, TrackWords>> = {
  'first-sweep': {
    letter: 'S',
    title: 'First sweep',
    blurb: 'One can, two slugs, and a bench that has to be set up before it tells the truth.',
  },
  'vision-if': {
    letter: 'V',
    title: 'Vision IF',
    blurb: 'Staggered stages, traps at both edges, and one carrier half way up the slope.',
  },
  'sound-fm': { letter: 'F', title: 'Sound and FM', blurb: 'S-curves, limiters, and a trap that can be set by ear.' },
  am: { letter: 'A', title: 'AM', blurb: 'Circuits so narrow that the sweep has to slow down for them.' },
  colour: {
    letter: 'C',
    title: 'Colour',
    blurb: 'An amplifier whose slope makes up for that of the IF, seen with a swept carrier.',
  },
  'front-end': {
    letter: 'R',
    title: 'Front end',
    blurb: 'Tuner, oscillator and fine tuning, from the antenna onwards.',
  },
  'set-ups': {
    letter: 'D',
    title: 'Set-ups that deceive',
    blurb: 'One slug is off, but the bench shows something else.',
  },
  'fault-finding': {
    letter: 'X',
    title: 'Fault finding',
    blurb: 'What no slug can cure: find the part that has failed.',
  },
};

export function trackWords(track: string): TrackWords {
  const known = TRACKS[track];
  if (known !== undefined) return known;
  const title = track.replace(/[-_]+/g, ' ').replace(/^./, (c) => c.toUpperCase());
  return { letter: title.slice(0, 1), title, blurb: '' };
}

const COUNTS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine'];
const countWord = (n: number): string => COUNTS[n] ?? String(n);

export const courseWords = {
  contents: 'Contents',
  goTo: (title: string): string => `Go to the track ${title}`,
  title: 'Course of alignment',
  intro: (tracks: number): string =>
    `${countWord(tracks)} ${format.plural(tracks, { one: 'track', other: 'tracks' })}. Each card is a scenario: one job on one set. Put its curve right and the outline fills with hay: the closer the curve, the thicker the stack. Par is the turns and minutes of a good run.`,
  guide: {
    offer: 'Never seen a sweep? The guide goes through the first job with you, one act at a time.',
    begin: 'Begin with the guide',
    without: (code: string): string => `Open ${code} without the guide`,
    again: 'The guided first bench',
  },
  papers: 'Papers to print',
  nextForYou: 'Next for you',
  stacksWon: 'Stacks won',
  wanted: 'wanted',
  now: 'now',
  nextFigure: (title: string): string => `${title}: the curve as it is now, and the curve that the sheet asks for`,
  backToBench: 'Back to the bench',
  open: (code: string): string => `Open ${code}`,
  again: (code: string): string => `Try ${code} again`,
  started: (code: string, turns: string, par: string | null): string =>
    par === null ? `${code}, started, ${turns}` : `${code}, started, ${turns} of par ${par}`,
  notStarted: (code: string, par: string | null): string =>
    par === null ? `${code}, not tried yet` : `${code}, not tried yet, par ${par}`,
  bestOf: (code: string, best: number, par: string | null): string =>
    par === null ? `${code}, best ${best}` : `${code}, best ${best}, par ${par}`,
  allDone: 'Every stack is won. Any scenario may be done again for a thicker one.',
  done: (done: number, all: number): string => `${done} of ${all} done`,
  scenariosDone: (done: number, all: number): string => `${done} of ${all} scenarios done`,
  won: 'Won',
  best: (score: number, passed: boolean): string => (passed ? `Best ${score}` : `Best ${score}, not passed yet`),
  notTried: 'Not tried',
  onBench: 'On the bench',
  openHint: 'Open',
  soFar: (turns: string): string => `${turns} so far`,
  after: (codes: readonly string[]): string => `Best after ${format.list(codes)}`,
  /** in the place of par, where nobody has shown that the scenario can be done */
  uncertified: 'Not certified',
  /** in the place of par: it would tell what lies inside */
  sealed: 'Sealed',
  par: (turns: string, minutes: string): string => `par ${turns}, ${minutes}`,
  difficulty: (level: 1 | 2 | 3): string => ['', 'Gentle', 'Middling', 'Hard'][level] ?? '',
  turns: format.turnsLong,
  minutes: (seconds: number): string => `${Math.max(1, Math.round(seconds / 60))} min`,
  leftOut: (cards: readonly string[]): string =>
    format.plural(cards.length, {
      one: `One card could not be read and is left out: ${cards[0]}.`,
      other: `${cards.length} cards could not be read and are left out: ${format.list(cards)}.`,
    }),
  cards: (track: string): string => `Scenarios of the track ${track}`,
  own: {
    letter: 'O',
    title: 'Your own',
    blurb:
      'Scenarios and evening sheets from files that somebody gave you or that you wrote. They stay in this browser.',
    open: 'Open a file',
    reading: 'Reading…',
    taken: (titles: readonly string[]): string => `Opened: ${format.list(titles)}.`,
    refused: (file: string): string => (file === '' ? 'Not everything was opened' : `${file} was not opened`),
    tooMany: (files: number, most: number): string =>
      `There were ${files} files, and only the first ${most} were looked at.`,
    dismiss: 'Dismiss this note',
    notStored:
      'This browser is storing nothing just now: these cards are lost when the page is closed. Keep the files.',
    cards: 'Your own scenarios',
    marks: {
      certified: 'Your own, certified',
      refused: 'Your own, cannot be certified',
      notTried: 'Your own, not certified yet',
    },
    ownReceiver: (name: string): string => `Own receiver: ${name}`,
    evening: {
      eyebrow: 'Evening sheet',
      facts: (author: string | null, minutes: number | null): string =>
        [...(author === null ? [] : [author]), ...(minutes === null ? [] : [`${minutes} minutes in all`])].join(', '),
      done: (done: number, all: number): string => `${done} of ${all} signed off`,
      toPass: (mark: number, all: number): string => `(to pass: ${mark} of ${all})`,
      given: (minutes: number): string => `Time on the sheet: ${minutes} min`,
      cards: (title: string): string => `Scenarios of ${title}`,
      signed: 'Signed off',
      lies: 'Open',
      opensAfter: (code: string): string => `Opens when ${code} is signed off`,
      remove: 'Remove sheet',
      removeNamed: (title: string): string => `Remove the sheet ${title}`,
    },
    exam: {
      eyebrow: 'Exam',
      facts: (count: number, minutes: number | null): string =>
        `${format.counted(count, { one: 'scenario', other: 'scenarios' })}${minutes === null ? '' : `, ${minutes} minutes`}`,
      go: { sealed: 'Open the seal', goingOn: 'To the exam', handedIn: 'Handed in' },
      goNamed: (title: string): string => `To the exam ${title}`,
    },
    copyLink: 'Copy link',
    copyLinkNamed: (title: string): string => `Copy a link to ${title}`,
    linkCopied: (title: string): string => `The link to ${title} was copied. The whole scenario is in it.`,
    linkShown: 'This browser does not let the page copy. Take the link from here:',
    linkLong: (characters: number): string =>
      `The link has ${characters} characters; some mail programs break links as long as that. Hand out the file instead if it does not arrive.`,
    link: {
      name: 'The link',
      reading: 'Reading the link…',
      refused: 'This link cannot be opened',
      title: 'A scenario from a link',
      scenario: 'Scenario',
      set: 'Set',
      author: 'Author',
      noAuthor: 'The file names none.',
      certificate: 'Certificate',
      certifying: 'Being worked out on this machine…',
      certified: (par: string | null): string =>
        `It can be done${par === null ? '' : `: ${par}`}. Worked out on this machine.`,
      notCertified: 'None. This machine found no way to do the whole scenario.',
      notHere: 'None. It could not be worked out here.',
      note: 'Nothing has been opened or stored so far. Who sent it and who wrote it cannot be checked.',
      toBench: 'Open it on the bench',
      keep: 'Add it to your own',
    },
    remove: 'Remove',
    removeNamed: (title: string): string => `Remove ${title}`,
    removed: (title: string): string => `${title} was removed.`,
    putBack: 'Put it back',
  },
  cautionsTitle: 'Practice here, care there',
  cautions:
    'Nothing on this bench can hurt you; a real set can. Its chassis may be live, so an isolating transformer comes first. The picture tube and its supply keep a lethal charge after the set is switched off: discharge them, then check with a meter. High-voltage regulators can give off X-rays, and a picture tube can implode. Work with one hand and insulated tools, wear no jewellery, and have somebody within call. Work on real sets only under your local codes, and only if you are qualified or with somebody who is.',
} as const;
