/** Builds the page into dist/, or as one file into dist-single/, where that is missing or no longer matches its sources. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { PROJECT } from './install.mjs';

/** Everything that the built page is made of. */
const SOURCES = [
  'index.html',
  'vite.config.ts',
  'scripts',
  'tsconfig.json',
  'package-lock.json',
  'src',
  'assets',
  'scenarios',
  'certificates',
  'public',
];

/** Resolves to true when the page had to be built. Throws the builder's own error when the sources do not build. */
export async function ensureBuilt({ project = PROJECT, force = false, quiet = false, single = false } = {}) {
  const stamp = path.join(project, '.cache', single ? 'single-stamp' : 'build-stamp');
  const built = single ? path.join('dist-single', 'haystack.html') : path.join('dist', 'index.html');
  // Taken before building: whatever changes meanwhile makes the next look find a difference.
  const now = sourcesPrint(project);
  if (!force && existsSync(path.join(project, built)) && readIfThere(stamp) === now) return false;
  rmSync(stamp, { force: true });
  const { build } = await import(pathToFileURL(path.join(project, 'node_modules', 'vite', 'dist', 'node', 'index.js')));
  await build({ root: project, logLevel: quiet ? 'warn' : 'info', ...(single ? { mode: 'single' } : {}) });
  mkdirSync(path.dirname(stamp), { recursive: true });
  writeFileSync(stamp, now);
  return true;
}

/** One hash over name, size and time of every source: it also changes when a file goes away or an older one comes back. */
export function sourcesPrint(project = PROJECT) {
  const hash = createHash('sha256');
  for (const source of SOURCES) addPrint(hash, project, source);
  return hash.digest('hex');
}

function addPrint(hash, project, name) {
  const stats = statSync(path.join(project, name), { throwIfNoEntry: false });
  if (stats === undefined) return;
  if (stats.isDirectory()) {
    for (const child of readdirSync(path.join(project, name)).sort()) addPrint(hash, project, `${name}/${child}`);
    return;
  }
  hash.update(`${name}\n${stats.size}\n${stats.mtimeMs}\n`);
}

function readIfThere(file) {
  return existsSync(file) ? readFileSync(file, 'utf8') : null;
}
