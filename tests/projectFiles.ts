/** Every file that belongs to the project: what stands in its folder, without what is installed, built, cached or left by a run. */
import { readdirSync, readFileSync } from 'node:fs';

const LEFT_OUT = new Set([
  'node_modules',
  'dist',
  'dist-single',
  '.git',
  '.cache',
  'test-results',
  'playwright-report',
]);

/** Paths from the root of the project, with forward slashes, sorted. */
export function projectFiles(folder = '.'): string[] {
  const files = readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (LEFT_OUT.has(entry.name) || entry.name.endsWith('.log')) return [];
    const place = folder === '.' ? entry.name : `${folder}/${entry.name}`;
    return entry.isDirectory() ? projectFiles(place) : [place];
  });
  return files.sort();
}

/** The text of a file, or null when it is not text. */
export function textOf(file: string): string | null {
  const bytes = readFileSync(file);
  return bytes.includes(0) ? null : bytes.toString('utf8');
}
