/** The server behind `npm start`: gives out the built page and nothing else. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PAGE_POLICY, POLICY } from '../../scripts/policy.mjs';
import { type ServeModule, script } from './scriptModules.ts';

const { serve } = await script<ServeModule>('serve.mjs');
const folder = mkdtempSync(path.join(tmpdir(), 'haystack-'));
const root = path.join(folder, 'dist');
let server: Awaited<ReturnType<ServeModule['serve']>>;

beforeAll(async () => {
  mkdirSync(path.join(root, 'assets'), { recursive: true });
  writeFileSync(path.join(root, 'index.html'), '<!doctype html>page');
  writeFileSync(path.join(root, 'assets', 'main-Ab3_x-9Z.js'), 'export {};');
  writeFileSync(path.join(root, 'assets', 'plain.css'), 'a{}');
  writeFileSync(path.join(root, 'sound.wav'), 'RIFF');
  writeFileSync(path.join(folder, 'secret.txt'), 'secret');
  mkdirSync(path.join(folder, 'dist-beside'));
  writeFileSync(path.join(folder, 'dist-beside', 'x.txt'), 'secret');
  symlinkSync(path.join(folder, 'secret.txt'), path.join(root, 'link.txt'));
  server = await serve(root);
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** The address goes out as it is written: a client that tidies `..` away would test itself. */
function ask(place: string, method = 'GET'): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port: server.port, path: place, method }, (response) => {
      let body = '';
      response.on('data', (chunk) => {
        body += chunk;
      });
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
    });
    asked.on('error', reject);
    asked.end();
  });
}

describe('the server', () => {
  it('gives out the page under a policy that lets it talk to nobody else', async () => {
    const { status, headers, body } = await ask('/?still#/course');
    expect([status, body]).toEqual([200, '<!doctype html>page']);
    expect(headers['content-type']).toBe('text/html; charset=utf-8');
    expect(headers['content-security-policy']).toBe(POLICY);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(POLICY).toContain("default-src 'none'");
    expect(POLICY).not.toMatch(/https?:|\*|unsafe|blob:/);
    expect(POLICY).toBe(`${PAGE_POLICY}; frame-ancestors 'none'`);
  });

  it('squeezes texts for those who take it, and sounds for nobody', async () => {
    const get = (place: string) =>
      fetch(`http://127.0.0.1:${server.port}${place}`, { headers: { 'Accept-Encoding': 'gzip' } });
    const css = await get('/assets/plain.css');
    expect(css.headers.get('content-encoding')).toBe('gzip');
    expect(await css.text()).toBe('a{}');
    const sound = await get('/sound.wav');
    expect(sound.headers.get('content-encoding')).toBeNull();
    expect(await sound.text()).toBe('RIFF');
    expect((await ask('/assets/plain.css')).headers['content-encoding']).toBeUndefined();
  });

  it('knows the types, and keeps only what is named by its contents', async () => {
    const script = await ask('/assets/main-Ab3_x-9Z.js');
    expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect(script.headers['cache-control']).toContain('immutable');
    for (const [place, type] of [
      ['/assets/plain.css', 'text/css; charset=utf-8'],
      ['/sound.wav', 'audio/wav'],
      ['/', 'text/html; charset=utf-8'],
    ] as const) {
      const answer = await ask(place);
      expect(answer.headers['content-type'], place).toBe(type);
      expect(answer.headers['cache-control'], place).toBe('no-store');
    }
  });

  it.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/..\\secret.txt',
    '/..%5csecret.txt',
    '/link.txt',
    '/../dist-beside/x.txt',
    '//../secret.txt',
    '/%00',
    '/%',
    '/nothing',
    '/assets',
    '/assets/',
  ])('gives nothing for %s', async (place) => {
    const { status, body } = await ask(place);
    expect(status).toBe(404);
    expect(body).not.toContain('secret');
  });

  it('only reads', async () => {
    const head = await ask('/', 'HEAD');
    expect([head.status, head.body, head.headers['content-length']]).toEqual([200, '', '19']);
    for (const method of ['POST', 'PUT', 'DELETE']) expect((await ask('/', method)).status, method).toBe(405);
  });

  it('says when its port is taken', async () => {
    await expect(serve(root, server.port)).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});
