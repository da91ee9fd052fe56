/** A small server for the built page: one folder, read only, this machine only, and a policy that lets the page talk to nobody else. */
import { createReadStream } from 'node:fs';
import { readFile, realpath, stat } from 'node:fs/promises';
import http from 'node:http';
import path from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { POLICY } from './policy.mjs';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.wav': 'audio/wav',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
  '.md': 'text/plain; charset=utf-8',
  '.cir': 'text/plain; charset=utf-8',
};

const COMPRESSIBLE = /^text\/|javascript|json|svg/;

/** Serves `root` on 127.0.0.1. `port` 0 takes any free one. Rejects when the port is taken. */
export async function serve(root, port = 0) {
  const squeezed = squeezer();
  const server = http.createServer((request, response) => {
    answer(root, squeezed, request, response).catch(() => {
      if (!response.headersSent) say(response, 500, 'The file could not be read.');
      else response.destroy();
    });
  });
  await new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const taken = server.address().port;
  return {
    port: taken,
    url: `http://127.0.0.1:${taken}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(resolve);
        server.closeAllConnections();
      }),
  };
}

async function answer(root, squeezed, request, response) {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return say(response, 405, 'Only reading is possible here.');
  }
  const file = await fileFor(root, request.url ?? '/');
  if (file === null) return say(response, 404, 'There is nothing at this address.');
  const type = TYPES[path.extname(file.path).toLowerCase()] ?? 'application/octet-stream';
  // Texts shrink to a third; fonts and pictures are compressed already.
  const body =
    COMPRESSIBLE.test(type) && /\bgzip\b/.test(request.headers['accept-encoding'] ?? '') ? await squeezed(file) : null;
  response.writeHead(200, {
    ...headersFor(file.place),
    'Content-Type': type,
    Vary: 'Accept-Encoding',
    'Content-Length': body === null ? file.size : body.length,
    ...(body !== null && { 'Content-Encoding': 'gzip' }),
  });
  if (request.method === 'HEAD') return response.end();
  if (body !== null) return response.end(body);
  const stream = createReadStream(file.path);
  stream.on('error', () => response.destroy());
  response.on('close', () => stream.destroy());
  stream.pipe(response);
}

/** Compresses each text once, for as long as it stays what it is: a page asks for some fifty, and they cost more than all else that is done here. */
function squeezer() {
  const kept = new Map();
  return async ({ path: name, size, mtimeMs }) => {
    const known = kept.get(name);
    if (known?.size === size && known.mtimeMs === mtimeMs) return known.body;
    const body = await promisify(gzip)(await readFile(name));
    kept.set(name, { size, mtimeMs, body });
    return body;
  };
}

/** The file that an address means, or null: never one outside the folder, not even through a link. */
async function fileFor(root, url) {
  let place;
  try {
    place = decodeURIComponent(url.split(/[?#]/, 1)[0]);
  } catch {
    return null;
  }
  if (!place.startsWith('/') || /[\0\\]/.test(place)) return null;
  if (place.endsWith('/')) place += 'index.html';
  try {
    const base = await realpath(root);
    const found = await realpath(path.join(base, place));
    if (!found.startsWith(base + path.sep)) return null;
    const stats = await stat(found);
    return stats.isFile() ? { path: found, size: stats.size, mtimeMs: stats.mtimeMs, place } : null;
  } catch {
    return null;
  }
}

function headersFor(place) {
  // The builder puts a hash of the contents into these names, so that a name never changes its meaning.
  const named = /^\/assets\/.*-[\w-]{8}\.\w+$/.test(place);
  return {
    'Cache-Control': named ? 'public, max-age=31536000, immutable' : 'no-store',
    'Content-Security-Policy': POLICY,
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
  };
}

function say(response, status, sentence) {
  response.writeHead(status, { ...headersFor(''), 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(`${sentence}\n`);
}
