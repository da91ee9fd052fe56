/** Finds a Chromium for the browser tests, the same way for every script, and fetches one where there is none. */
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { PROJECT } from './install.mjs';

/** Of every window the browser draws two hidden lists of suggestions for its line of address, in a process of their own that costs as much as the page under test. */
const LISTS_OF_SUGGESTIONS = ['WebUIOmniboxPopup', 'WebUIOmniboxAimPopup'];

/** What Playwright itself switches off. The last list that a browser is given is the one that holds, so they are named again. */
const OFF_ANYWAY = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'LensOverlay',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'TcpPortRandomizationWin',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
];

/** One fixed set of flags: pictures differ between rasterisers, so no graphics flag is given. */
export const BROWSER_ARGS = [
  `--disable-features=${[...OFF_ANYWAY, ...LISTS_OF_SUGGESTIONS].join(',')}`,
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const NO_BROWSER = `No Chromium was found for the browser tests. Any one of these will do:
  - install Chromium or Chrome so that it is in the PATH
  - set CHROMIUM_PATH to the program
  - run: npx playwright install chromium`;

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const OTHER_PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/** Path of a browser that starts, or null. A CHROMIUM_PATH that leads nowhere is an error: whoever sets it means it. */
export async function findBrowser() {
  const told = process.env.CHROMIUM_PATH;
  if (told) {
    if (!starts(told)) throw new Error(`CHROMIUM_PATH is ${told}, and no browser starts from there.`);
    return told;
  }
  for (const name of NAMES) {
    const found = inPath(name);
    if (found !== null && starts(found)) return found;
  }
  for (const place of OTHER_PLACES) if (existsSync(place)) return place;
  return fetchedBrowser();
}

/** Finds or fetches a browser. Resolves to its path; throws with instructions when there is no way. */
export async function ensureBrowser() {
  const found = await findBrowser();
  if (found !== null) return found;
  if (process.getuid?.() === 0 && isDebian()) {
    console.log('No Chromium here: installing the one of the distribution ...');
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    if (run('apt-get', ['update'], env)) run('apt-get', ['install', '-y', 'chromium'], env);
  }
  const installed = await findBrowser();
  if (installed !== null) return installed;
  console.log('Fetching a Chromium through playwright ...');
  run(
    process.execPath,
    [path.join(PROJECT, 'node_modules', 'playwright', 'cli.js'), 'install', 'chromium'],
    process.env,
  );
  const fetched = await findBrowser();
  if (fetched === null) throw new Error(NO_BROWSER);
  return fetched;
}

/** The copy that playwright keeps for itself, if it has been fetched. */
async function fetchedBrowser() {
  try {
    const { chromium } = await import('playwright');
    const place = chromium.executablePath();
    return existsSync(place) ? place : null;
  } catch {
    return null;
  }
}

function inPath(name) {
  for (const folder of (process.env.PATH ?? '').split(path.delimiter)) {
    const place = path.join(folder, name);
    try {
      accessSync(place, constants.X_OK);
      return place;
    } catch {
      // Not in this folder.
    }
  }
  return null;
}

/** Some distributions put a stub under the name that only explains how to install the real one. */
function starts(place) {
  if (process.platform === 'win32') return existsSync(place);
  const { status, stdout } = spawnSync(place, ['--version', '--no-sandbox'], { encoding: 'utf8', timeout: 20_000 });
  return status === 0 && /\d+\.\d+/.test(stdout ?? '');
}

function isDebian() {
  try {
    return /^ID=["']?debian/m.test(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false;
  }
}

function run(command, args, env) {
  return spawnSync(command, args, { stdio: ['ignore', 'inherit', 'inherit'], env }).status === 0;
}
