/** Makes the built page installable and able to work without a line: the manifest, and the service worker with the list of all files of this build. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'vite';

const WORKER = fileURLToPath(new URL('../src/services/offline/serviceWorker.ts', import.meta.url));
export const WORKER_FILE = 'serviceWorker.js';
/** A file whose name changes with its contents needs no print beside it. */
const NAMED_BY_CONTENTS = /^assets\/.+-[\w-]{8}\.\w+$/;

const MANIFEST = {
  name: 'Haystack',
  short_name: 'Haystack',
  description: 'A bench in the browser for practising sweep alignment of analog-era receivers.',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: '#f4ecd9',
  theme_color: '#f4ecd9',
  icons: [{ src: './icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
};

export function offline(): Plugin {
  let folder = '';
  return {
    name: 'offline',
    apply: 'build',
    configResolved({ root, build }) {
      folder = path.resolve(root, build.outDir);
    },
    transformIndexHtml: () => [
      { tag: 'link', attrs: { rel: 'manifest', href: './haystack.webmanifest' }, injectTo: 'head' },
    ],
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: 'haystack.webmanifest', source: JSON.stringify(MANIFEST, null, 2) });
      const icon = readFileSync(new URL('../assets/icon.svg', import.meta.url));
      this.emitFile({ type: 'asset', fileName: 'icon.svg', source: icon });
    },
    async writeBundle() {
      await build({
        configFile: false,
        logLevel: 'warn',
        define: { FILES: JSON.stringify(filesOf(folder)), 'process.env.NODE_ENV': '"production"' },
        build: {
          target: 'es2022',
          outDir: folder,
          emptyOutDir: false,
          minify: true,
          lib: { entry: WORKER, formats: ['iife'], name: 'serviceWorker', fileName: () => WORKER_FILE },
        },
      });
    },
  };
}

export interface KeptFile {
  readonly url: string;
  readonly revision: string | null;
}

/** Every file of the built page, the licences' texts apart: nobody needs them without a line. */
export function filesOf(folder: string): readonly KeptFile[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .filter((name) => name !== WORKER_FILE && !name.startsWith('licences/'))
    .sort()
    .map((url) => ({
      url,
      revision: NAMED_BY_CONTENTS.test(url)
        ? null
        : createHash('sha256')
            .update(readFileSync(path.join(folder, url)))
            .digest('hex')
            .slice(0, 16),
    }));
}
