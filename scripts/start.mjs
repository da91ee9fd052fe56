/** `npm start`: installs what is missing, builds, serves the page on this machine, says where, and opens a browser where there is one. */
import { spawn } from 'node:child_process';
import path from 'node:path';
import { ensureBuilt } from './build.mjs';
import { ensureInstalled, nodeProblem, PROJECT } from './install.mjs';
import { serve } from './serve.mjs';

/**
 * The usual port. It stays the same from day to day because the browser keeps the logbook by address: another port would
 * show an empty one.
 */
const USUAL_PORT = 4575;
const USAGE = `npm start [-- --port N] [-- --no-open]

  --port N     serve on this port (1 to 65535) instead of ${USUAL_PORT}
  --no-open    do not open a browser (so do CI=true and HAYSTACK_NO_OPEN=1)
`;

await main(process.argv.slice(2));

async function main(args) {
  const options = readOptions(args);
  if (typeof options === 'string') return stop(2, `${options}\n\n${USAGE}`);
  if (options.help) return console.log(USAGE);
  const problem = nodeProblem() ?? (await ensureInstalled());
  if (problem !== null) return stop(1, problem);
  try {
    await ensureBuilt();
  } catch (error) {
    return stop(1, `The page could not be built:\n${error instanceof Error ? error.message : error}`);
  }
  const server = await openServer(options.port);
  if (typeof server === 'string') return stop(1, server);
  console.log(`\nHaystack is at ${server.url}\nPress Ctrl-C to stop.`);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) {
    process.once(signal, () => server.close().then(() => process.exit(0)));
  }
  if (options.open && mayOpen()) openInBrowser(server.url);
}

function readOptions(args) {
  const options = { port: null, open: true, help: false };
  for (let i = 0; i < args.length; i++) {
    const [name, inline] = args[i].split('=', 2);
    if (name === '--help' || name === '-h') options.help = true;
    else if (name === '--no-open') options.open = false;
    else if (name === '--port') {
      const text = inline ?? args[++i] ?? '';
      options.port = Number(text);
      if (!/^\d{1,5}$/.test(text) || options.port < 1 || options.port > 65535)
        return `--port wants a number from 1 to 65535, not "${text}".`;
    } else return `There is no option "${args[i]}".`;
  }
  return options;
}

/** The server, or a sentence that says why there is none. */
async function openServer(port) {
  const dist = path.join(PROJECT, 'dist');
  try {
    return await serve(dist, port ?? USUAL_PORT);
  } catch (error) {
    if (error.code === 'EACCES') return `Port ${port ?? USUAL_PORT} may not be used by this account.`;
    if (error.code !== 'EADDRINUSE') return `No server could be started: ${error.message}`;
    if (port !== null) return `Port ${port} is taken by another program.`;
  }
  console.log(
    `Port ${USUAL_PORT} is taken, perhaps by a Haystack that already runs. The logbook belongs to that address; this one has its own.`,
  );
  return serve(dist, 0);
}

function mayOpen() {
  if (process.env.CI || process.env.HAYSTACK_NO_OPEN) return false;
  if (process.platform === 'win32' || process.platform === 'darwin') return true;
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

function openInBrowser(url) {
  const [command, ...args] =
    process.platform === 'win32'
      ? ['cmd', '/c', 'start', '', url]
      : [process.platform === 'darwin' ? 'open' : 'xdg-open', url];
  const child = spawn(command, args, { stdio: 'ignore', detached: true });
  // Without an opener the printed address is enough.
  child.on('error', () => {});
  child.unref();
}

function stop(code, sentence) {
  console.error(sentence);
  process.exitCode = code;
}
