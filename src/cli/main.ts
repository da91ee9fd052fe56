/** The command line as a program: `npm run --silent haystack -- --help`. */
import { terminalWords } from './language.ts';
import { runProgram } from './program.ts';
import { linesOf } from './regrade/lines.ts';

// A reader that has seen enough (`| head`) closes the pipe; that is no failure of ours.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(process.exitCode ?? 0);
  });
}

runProgram(
  {
    words: await terminalWords(process.env),
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    lines: () => linesOf(process.stdin),
    watched: process.stderr.isTTY,
    // Not process.exit: what was written must still leave through the pipe.
    exit: (code) => {
      process.exitCode = code;
    },
  },
  process.argv.slice(2),
);
