/** The page: takes its language, opens the logbook, reads the shipped library and shows the room that the address names. */
import { render } from 'preact';
import '../kit/theme/theme.css';
import { readShippedLibrary } from '../services/library/shippedLibrary.ts';
import { openLogbook } from '../services/store/logbook.ts';
import { languageOf } from './language.ts';
import { Rooms } from './Rooms.tsx';

const root = document.getElementById('app');
if (root === null) throw new Error('the page has no #app');
const language = await languageOf(location.search);
document.documentElement.lang = language.first.language;
document.documentElement.dir = language.first.rightToLeft ? 'rtl' : 'ltr';
const library = readShippedLibrary();
const logbook = await openLogbook();
render(<Rooms language={language} library={library} logbook={logbook} />, root);
