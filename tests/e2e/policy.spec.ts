/** The page brings its policy along: served by a server that says nothing of any, it still lets nobody in and talks to nobody, and nothing in it minds. */
import { createReadStream, existsSync } from 'node:fs';
import http from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { PAGE_POLICY } from '../../scripts/policy.mjs';
import { atHandWords, headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { test as base, begin, expect, openCard, shippedSetup } from './page.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

/** Any static host: files with a type, no other header. */
const test = base.extend({
  // biome-ignore lint/correctness/noEmptyPattern: a fixture says by this pattern that it needs no other
  baseURL: async ({}, use) => {
    const server = http.createServer(({ url = '/' }, response) => {
      const place = path.join('dist', path.normalize(url.split('?')[0]!));
      const file = url === '/' ? 'dist/index.html' : place;
      if (!existsSync(file)) return response.writeHead(404).end();
      response.writeHead(200, { 'Content-Type': TYPES[path.extname(file)] ?? 'application/octet-stream' });
      return createReadStream(file).pipe(response);
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    await use(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    server.closeAllConnections();
    server.close();
  },
});

test('on any static host the policy holds, and course, bench and report keep to it', async ({ page, watch }) => {
  await page.addInitScript(() => {
    const seen: string[] = [];
    Object.assign(window, { violations: seen });
    addEventListener('securitypolicyviolation', (event) =>
      seen.push(`${event.effectiveDirective} ${event.blockedURI}`),
    );
  });
  const violations = () => page.evaluate(() => (window as unknown as { violations: string[] }).violations);
  const setup = shippedSetup('vision-if', 'traps-astray');
  await openCard(page, setup);
  const answer = await page.request.get('/');
  expect(answer.headers()['content-security-policy']).toBeUndefined();
  await expect(page.locator('meta[http-equiv="Content-Security-Policy"]')).toHaveAttribute('content', PAGE_POLICY);
  await begin(page);
  await expect(page.locator('[data-slug][aria-valuenow]')).toHaveCount(setup.receiver.adjusters.length);
  const sounds = page.waitForResponse(/\.wav$/);
  await page.getByRole('button', { name: atHandWords.sound.off, exact: true }).click();
  expect((await sounds).ok()).toBe(true);
  await page.getByRole('button', { name: headerWords.signOff, exact: true }).click();
  await page.getByRole('dialog').getByRole('button', { name: dialogWords.signOff.sign, exact: true }).click();
  await expect(page.locator('.score-figure')).toBeVisible();
  expect(await violations()).toEqual([]);
  expect(watch.complaints).toEqual([]);

  // And it would be seen: a style in the markup, a script in the markup, a word to another machine.
  await page.evaluate(async () => {
    const place = document.createElement('div');
    place.innerHTML = '<p style="color: red">planted</p>';
    document.body.append(place);
    const script = document.createElement('script');
    script.textContent = 'void 0';
    document.body.append(script);
    await fetch('http://127.0.0.2:9/').catch(() => {});
  });
  const directives = async () => (await violations()).map((each) => each.split(' ')[0]).sort();
  await expect.poll(directives).toEqual(['connect-src', 'script-src-elem', 'style-src-attr']);
  // These were planted; all that was said of them has come before what is said last.
  await page.evaluate(() => console.warn('all said'));
  await expect.poll(() => watch.complaints.at(-1)).toBe('warning: all said');
  watch.complaints.length = 0;
});
