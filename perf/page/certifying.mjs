/**
 * `npm run perf:certify [-- SCENARIO ...]`: certificates worked out by the page's worker in a real Chromium and by Node, by turns, in processor time: the worker's process and Node's
 * own, each warmed by one other scenario first. The least of three rounds of each counts. Says of each, too, whether both certificates are the same to the last byte, or but for the
 * last digits of the inductances that were dealt: Node and the browser are seldom of one version of the engine.
 */
import { readdirSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../../scripts/browser.mjs';
import { ensureBuilt } from '../../scripts/build.mjs';
import { serve } from '../../scripts/serve.mjs';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { certifyScenario } from '../../src/certify/certifyScenario.ts';
import { shippedLibrary } from '../../tests/files/shipped.ts';
import { processorSeconds } from './idle.ts';

const ROUNDS = 3;
const WARMING = 'both-ways';
/** A can, a radio IF, an FM tuner with its S-curve, a strip with traps, one with a failed part, a front end with its oscillator, and the way of colour. */
const USUAL = [
  'off-centre',
  'radio-sealed',
  'tuner-sealed',
  'from-cold',
  'out-of-reach',
  'gannet-sealed',
  'colour-sealed',
];

const asked = process.argv.slice(2);
const ids = asked.length === 0 ? USUAL : asked;
const executablePath = await findBrowser();
if (executablePath === null) throw new Error(NO_BROWSER);
await ensureBuilt({ quiet: true });
const dist = process.env.HAYSTACK_DIST ?? 'dist';
const workerFile = readdirSync(`${dist}/assets`).find((name) => name.startsWith('jobWorker'));
const server = await serve(dist);
const browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });

/** In the page: asks the worker for a job, in the words of the library by which both speak. */
async function inWorker({ url, scenario }) {
  window.certifier ??= new Worker(url, { type: 'module' });
  const { port1, port2 } = new MessageChannel();
  const id = crypto.randomUUID();
  const answered = new Promise((done) => {
    window.certifier.addEventListener('message', function hear({ data }) {
      if (data?.id !== id) return;
      window.certifier.removeEventListener('message', hear);
      done(data);
    });
  });
  const list = [
    { type: 'RAW', value: 'certify' },
    { type: 'RAW', value: { scenario } },
    { type: 'HANDLER', name: 'proxy', value: port2 },
  ];
  window.certifier.postMessage({ id, type: 'APPLY', path: ['run'], argumentList: list }, [port2]);
  const answer = await answered;
  port1.close();
  return JSON.stringify(answer.value);
}

/** With the inductances of the dealt set to twelve digits. */
const roundly = (text) =>
  JSON.stringify(JSON.parse(text), (key, value) =>
    key === 'henries' ? Object.values(value).map((one) => one.toPrecision(12)) : value,
  );

/** Where two texts part, with what stands about there in each. */
function parting(a, b) {
  let at = 0;
  while (a[at] === b[at] && at < a.length) at++;
  return [a, b].map((text) => text.slice(Math.max(0, at - 60), at + 40)).join(' | ');
}

const { scenarios, receivers } = shippedLibrary();
const scenarioOf = (id) => {
  const scenario = scenarios.find((one) => one.id === id);
  if (scenario === undefined) throw new Error(`no scenario ${id}`);
  return scenario;
};

const inNode = (scenario) => {
  const setup = benchSetup(receivers.get(scenario.receiver), scenario);
  if (!setup.ok) throw new Error(scenario.id);
  return JSON.stringify(certifyScenario(setup.value));
};

try {
  const page = await browser.newPage();
  await page.goto(`${server.url}#/course`);
  // A browser just started builds its own windows for some seconds.
  await page.waitForTimeout(6000);
  const session = await browser.newBrowserCDPSession();
  const url = `${server.url}assets/${workerFile}`;
  const byWorker = async (scenario) => {
    const before = await processorSeconds(session);
    const text = await page.evaluate(inWorker, { url, scenario });
    const after = await processorSeconds(session);
    return { text, seconds: after.page - before.page };
  };
  const byNode = (scenario) => {
    const before = process.cpuUsage();
    const text = inNode(scenario);
    const { user, system } = process.cpuUsage(before);
    return { text, seconds: (user + system) / 1e6 };
  };
  await byWorker(scenarioOf(WARMING));
  byNode(scenarioOf(WARMING));
  for (const id of ids) {
    const scenario = scenarioOf(id);
    const rounds = [];
    for (let i = 0; i < ROUNDS; i++) rounds.push({ worker: await byWorker(scenario), node: byNode(scenario) });
    const least = (of) => Math.min(...rounds.map((round) => round[of].seconds));
    const alike = (of) => rounds.every(({ worker, node }) => of(worker.text) === of(node.text));
    const [a, b] = [rounds[0].worker.text, rounds[0].node.text];
    const same = alike((text) => text)
      ? `the same ${b.length} bytes`
      : alike(roundly)
        ? 'the same but for the last digits of the dealt inductances'
        : `NOT the same: ${parting(roundly(a), roundly(b))}`;
    const [worker, node] = [least('worker'), least('node')];
    process.stdout.write(
      `${id.padEnd(16)} page ${worker.toFixed(2)} s, node ${node.toFixed(2)} s, ratio ${(worker / node).toFixed(2)}, ${JSON.parse(rounds[0].node.text).ok ? 'certified' : 'refused'}, ${same}\n`,
    );
  }
} finally {
  await browser.close();
  await server.close();
}
