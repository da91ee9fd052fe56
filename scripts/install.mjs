/** Makes a fresh clone ready: looks at the Node version, and fetches the packages that the lock file names where any is missing. */
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const PROJECT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const MIN_NODE = [20, 19];

/** A sentence for the person where Node is too old, else null. */
export function nodeProblem(version = process.versions.node) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const recent = major > MIN_NODE[0] || (major === MIN_NODE[0] && minor >= MIN_NODE[1]);
  return recent
    ? null
    : `Haystack needs Node ${MIN_NODE.join('.')} or newer; this is Node ${version}. Install a newer Node and try again.`;
}

/** Installs what is missing. Resolves to null when all is there, else to a sentence that says what to do. */
export async function ensureInstalled(project = PROJECT) {
  const missing = missingPackages(project);
  if (missing.length === 0) return null;
  const what = missing.length === 1 ? missing[0] : `${missing.length} packages`;
  console.log(`Fetching ${what} with npm ci (once; needs the network) ...`);
  const { code, errors } = await npm(project, [
    'ci',
    '--prefer-offline',
    '--no-audit',
    '--no-fund',
    // The builder and the test tools are development packages; a machine set to "production" would leave them out.
    '--include=dev',
  ]);
  if (code === 0) return null;
  if (/ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|ENOTCACHED/.test(errors)) {
    return 'The package registry cannot be reached. Connect once and run this again; afterwards Haystack works without a network.';
  }
  return `npm ci failed with code ${code}; its message stands above.`;
}

/**
 * Packages of the lock file that node_modules lacks or holds in another version. Contents are compared, not file times: a checkout touches
 * the lock file without changing it, and a needless npm ci would empty a working folder.
 */
export function missingPackages(project = PROJECT) {
  const wanted = readPackages(path.join(project, 'package-lock.json'));
  const present = readPackages(path.join(project, 'node_modules', '.package-lock.json')) ?? {};
  if (wanted === null) return ['package-lock.json'];
  return Object.entries(wanted)
    .filter(([place, entry]) => place !== '' && !entry.optional && !entry.link)
    .filter(
      ([place, entry]) =>
        present[place]?.version !== entry.version || !existsSync(path.join(project, place, 'package.json')),
    )
    .map(([place]) => place.replace(/^.*node_modules\//, ''));
}

function readPackages(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages ?? null;
  } catch {
    return null;
  }
}

function npm(project, args) {
  // npm is a script on Windows, which only a shell can start.
  const windows = process.platform === 'win32';
  const child = spawn(windows ? 'npm.cmd' : 'npm', args, {
    cwd: project,
    stdio: ['ignore', 'inherit', 'pipe'],
    shell: windows,
  });
  let errors = '';
  child.stderr.on('data', (chunk) => {
    errors += chunk;
    process.stderr.write(chunk);
  });
  return new Promise((resolve) => {
    child.on('error', (error) => resolve({ code: 1, errors: `${errors}${error.message}` }));
    child.on('close', (code) => resolve({ code: code ?? 1, errors }));
  });
}
