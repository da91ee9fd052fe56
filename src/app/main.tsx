/** The page: opens the logbook, reads the shipped library and shows the room that the address names. */
import { render } from 'preact';
import '../kit/theme/theme.css';
import { readShippedLibrary } from '../services/library/shippedLibrary.ts';
import { openLogbook } from '../services/store/logbook.ts';
import { Rooms } from './Rooms.tsx';

const root = document.getElementById('app');
if (root === null) throw new Error('the page has no #app');
const library = readShippedLibrary();
const logbook = await openLogbook();
render(<Rooms library={library} logbook={logbook} />, root);
