/** The page: takes its language, sets the logbook opening and shows the room that the address names. */
import { render } from 'preact';
import '../kit/theme/theme.css';
import '../kit/theme/fonts.css';
import { letSingleKeysAct } from '../kit/singleKeys.ts';
import { pageLibrary } from '../services/library/pageLibrary.ts';
import type { ClaimGiven } from '../services/store/benchClaims.ts';
import { createChoiceMemory } from '../services/store/choiceMemory.ts';
import { freshId } from '../services/store/freshId.ts';
import { createLearnerMemory } from '../services/store/learnerMemory.ts';
import { openLogbook } from '../services/store/openLogbook.ts';
import { openOwnShelf } from '../services/store/ownShelf.ts';
import { openTabChannel } from '../services/store/tabChannel.ts';
import { after } from './after.ts';
import { languageOf } from './language.ts';
import { pageDealsAhead } from './pageDealsAhead.ts';
import { Rooms } from './Rooms.tsx';
import { readRoute } from './routes.ts';
import { LOUDNESSES } from './soundFollowing.ts';
import { keepStrayDrops } from './strayDrops.ts';

const root = document.getElementById('app');
if (root === null) throw new Error('the page has no #app');
const language = await languageOf(location.search, navigator.languages);
document.documentElement.lang = language.first.language;
document.documentElement.dir = language.first.rightToLeft ? 'rtl' : 'ltr';
const channel = openTabChannel('haystack');
const own = openOwnShelf({ name: 'haystack-own', channel });
const library = pageLibrary(own);
const logbook = openLogbook({
  name: 'haystack',
  storage: () => localStorage,
  now: () => Date.now(),
  newId: () => freshId(),
  channel,
});
const claims: ClaimGiven = {
  // Some browsers have it only for pages that came over a safe way.
  locks: (navigator as Partial<Navigator>).locks ?? null,
  channel,
  after,
};
const ahead = pageDealsAhead({ library, own, logbook, language });
const learner = createLearnerMemory(() => localStorage);
const loudness = createChoiceMemory(() => localStorage, 'haystack.sound', LOUDNESSES);
const singleKeys = createChoiceMemory(() => localStorage, 'haystack.keys', ['on', 'off']);
letSingleKeysAct(singleKeys.read() === 'on');
keepStrayDrops(window);
const first = readRoute(location.hash);
if (first.page === 'bench') ahead.headFor(first.scenarioId);
// Running the scripts is one piece of work, drawing the page the next: neither is long, both together would be.
await new Promise((resolve) => setTimeout(resolve));
render(<Rooms {...{ language, library, ahead, own, logbook, claims, learner, loudness, singleKeys }} />, root);
