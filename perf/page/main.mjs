/**
 * `npm run perf:page [-- word ...]`: the built page in a real Chromium. How many pictures a second the tube shows while a slug is turned, at full speed and on
 * a machine that has been slowed down, and what a bench costs that nobody touches. By hand only: figures of the wall clock are for reading, never for
 * passing or failing. With `--profile` the slowed turning leaves a profile of the page's own thread for each case in `.cache/`.
 */
import { mkdirSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../../scripts/browser.mjs';
import { ensureBuilt } from '../../scripts/build.mjs';
import { serve } from '../../scripts/serve.mjs';
import { idleShare } from './idle.ts';
import { readyBench } from './readyBench.ts';
import { turning } from './turning.ts';

const SLOWED = 4;

const CASES = [
  { id: 'strip', track: 'vision-if', scenario: 'from-cold', phosphor: 'P31', slug: 'T1' },
  { id: 'strip-p7', track: 'vision-if', scenario: 'from-cold', phosphor: 'P7', slug: 'T1' },
  { id: 'can', track: 'first-sweep', scenario: 'off-centre', phosphor: 'P31', slug: 'T1B' },
];

const percent = (share) => `${(100 * share).toFixed(1)} %`;
const told = ({ pictures, frames, lateMs, longestMs }) =>
  `${pictures.toFixed(1)} pictures and ${frames.toFixed(1)} frames a second, one frame in twenty later than ${lateMs.toFixed(0)} ms, the longest ${longestMs.toFixed(0)} ms`;

async function measure(browser, url, one, profile) {
  const { page, close } = await readyBench(browser, url, one);
  const still = await idleShare(browser);
  const full = await turning(page, 1);
  const slowed = await turning(page, SLOWED, profile ? `.cache/${one.id}.cpuprofile` : null);
  await close();
  process.stdout.write(
    `${one.id}\n  at rest: ${percent(still.total)} of a core, the page itself ${percent(still.page)}\n  turning: ${told(full)}\n  ${SLOWED} times slower: ${told(slowed)}\n`,
  );
}

const words = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const profile = process.argv.includes('--profile');
if (profile) mkdirSync('.cache', { recursive: true });
const executablePath = await findBrowser();
if (executablePath === null) throw new Error(NO_BROWSER);
await ensureBuilt({ quiet: true });
const server = await serve('dist');
const browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });
try {
  for (const one of CASES)
    if (words.length === 0 || words.includes(one.id)) await measure(browser, server.url, one, profile);
} finally {
  await browser.close();
  await server.close();
}
