/**
 * Puts the index of the shipped scenarios into the page: reads and checks the whole scenarios folder, draws the curve of every card, and gives the outcome in the place of
 * src/services/library/shippedIndex.ts. Building, `npm run dev` and the tests all go this way. A broken file ends it with every problem, one a line.
 */
import { fileURLToPath } from 'node:url';
import { tsImport } from 'tsx/esm/api';
import type { Plugin } from 'vite';

const at = (place: string): string => fileURLToPath(new URL(`../${place}`, import.meta.url)).replaceAll('\\', '/');
export const INDEX_FILE = at('src/services/library/shippedIndex.ts');
const FOLDER = at('scenarios/');
const CERTIFICATES = at('certificates/');
/** What the entries are made by: a change of any of these may change them. */
const MAKERS = ['base', 'physics', 'receiver', 'scenario', 'bench', 'files', 'certify', 'present'].map((room) =>
  at(`src/${room}/`),
);

export function courseIndex(folder = FOLDER): Plugin {
  return {
    name: 'course-index',
    enforce: 'pre',
    async load(id) {
      if (id.split('?', 1)[0] !== INDEX_FILE) return null;
      // Asked for anew each time, and not a part of the builder's own settings: a change of it does not start the builder again.
      const { makeCourseIndex } = (await tsImport(
        './makeCourseIndex.ts',
        import.meta.url,
      )) as typeof import('./makeCourseIndex.ts');
      const made = makeCourseIndex(folder);
      if (!made.ok) this.error(made.lines.join('\n'));
      // Read by the parser for data, which is quicker than the one for code.
      return `export const SHIPPED_INDEX = JSON.parse(${JSON.stringify(JSON.stringify(made.entries))});`;
    },
    configureServer({ watcher, moduleGraph, ws }) {
      watcher.on('all', (_, changed) => {
        const file = changed.replaceAll('\\', '/');
        if (![FOLDER, CERTIFICATES, ...MAKERS].some((folder) => file.startsWith(folder))) return;
        const index = moduleGraph.getModuleById(INDEX_FILE);
        if (index === undefined) return;
        moduleGraph.invalidateModule(index);
        if (file.startsWith(FOLDER)) ws.send({ type: 'full-reload' });
      });
    },
  };
}
