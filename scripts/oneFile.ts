/**
 * `npm run build:single`: the whole page as one file, dist-single/haystack.html, that opens from a memory stick. Scripts, styles, letters, sounds, scenarios and the workers
 * stand inside it. Nothing may come from anywhere else: the file's own policy names its script and its styles by their hashes and allows no other source.
 */
import { createHash } from 'node:crypto';
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Plugin, type PluginOption, transformWithOxc } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { withPolicy } from './contentPolicy.ts';

export const SINGLE_FOLDER = 'dist-single';
export const SINGLE_FILE = 'haystack.html';

const SOURCES = fileURLToPath(new URL('../src/', import.meta.url)).replaceAll('\\', '/');
const WORKER = /new Worker\(new URL\('([^']+)', import\.meta\.url\), \{ type: 'module' \}\)/g;

export function oneFile(): PluginOption[] {
  return [inlineWorkers(), inlineIcon(), viteSingleFile(), sealed()];
}

/** A file that was opened from a disk may start no worker from another one, so each worker is carried along as text. */
function inlineWorkers(): Plugin {
  return {
    name: 'inline-workers',
    enforce: 'pre',
    async transform(code, id) {
      // Libraries and the inlined workers themselves start theirs from text already.
      const own = id.replaceAll('\\', '/').startsWith(SOURCES) && !id.includes('?');
      if (!own || !code.includes('new Worker(')) return null;
      const imports: string[] = [];
      const inlined = code.replace(WORKER, (_, place: string) => {
        imports.push(`import InlineWorker${imports.length} from '${place}?worker&inline';`);
        return `new InlineWorker${imports.length - 1}()`;
      });
      if (imports.length === 0) throw new Error(`${id} starts a worker in a way that one file cannot carry along`);
      return transformWithOxc(`${imports.join('\n')}\n${inlined}`, id);
    },
  };
}

function inlineIcon(): Plugin {
  return {
    name: 'inline-icon',
    transformIndexHtml: {
      order: 'pre',
      handler(html) {
        const icon = readFileSync(new URL('../assets/icon.svg', import.meta.url)).toString('base64');
        return html.replace(/href="[^"]*icon\.svg"/, `href="data:image/svg+xml;base64,${icon}"`);
      },
    },
  };
}

/** Last of all: names the file, and writes the policy over what now stands in it. */
function sealed(): Plugin {
  let folder = '';
  return {
    name: 'sealed-file',
    apply: 'build',
    configResolved(config) {
      folder = path.resolve(config.root, config.build.outDir);
    },
    writeBundle() {
      const built = path.join(folder, 'index.html');
      const html = readFileSync(built, 'utf8');
      writeFileSync(built, withPolicy(html, policyOf(html)));
      renameSync(built, path.join(folder, SINGLE_FILE));
    },
  };
}

function policyOf(html: string): string {
  const hashes = (tag: string): string =>
    [...html.matchAll(new RegExp(`<${tag}\\b[^>]*>([\\s\\S]*?)</${tag}>`, 'g'))]
      .map(([, text]) => `'sha256-${createHash('sha256').update(text!).digest('base64')}'`)
      .join(' ');
  const outside = [
    .../\b(?:src|href)="(?!data:|#)[^"]*"/g[Symbol.matchAll](
      html.replace(/<(script|style)\b[^>]*>[\s\S]*?<\/\1>/g, ''),
    ),
  ];
  if (outside.length > 0) throw new Error(`the one file still asks for ${outside.map(([text]) => text).join(', ')}`);
  return [
    "default-src 'none'",
    `script-src ${hashes('script')}`,
    'worker-src blob:',
    `style-src ${hashes('style')}`,
    'font-src data:',
    'img-src data:',
    'media-src data:',
    // Sounds and letters are read out of the file itself.
    'connect-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}
