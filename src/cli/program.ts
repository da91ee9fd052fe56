/** The commands, their arguments and options, as commander wants them told. */
import { Command, CommanderError } from 'commander';
import { certify } from './certify.ts';
import { check } from './check.ts';
import { curve } from './curve.ts';
import { demonstrate } from './demonstrate.ts';
import { regrade } from './regrade.ts';
import { response } from './response.ts';
import { EXIT, type ExitCode, type Terminal, UsageError } from './terminal.ts';
import {
  certifyWords,
  checkWords,
  curveWords,
  demonstrateWords,
  programWords,
  regradeWords,
  responseWords,
} from './words.ts';

export function buildProgram(terminal: Terminal): Command {
  const program = new Command('haystack');
  const output = { writeOut: (text: string) => terminal.out(text), writeErr: (text: string) => terminal.err(text) };
  program
    .description(programWords.summary)
    .helpOption('-h, --help', programWords.help)
    .helpCommand('help [command]', programWords.helpOf)
    .addHelpText('after', `\n${programWords.exitCodes}`);

  program
    .command('response')
    .summary(responseWords.summary)
    .description(responseWords.summary)
    .argument('<DECK.cir>', responseWords.deck)
    .requiredOption('--node <name>', responseWords.node)
    .option('--from <hz>', responseWords.from)
    .option('--to <hz>', responseWords.to)
    .option('--points <n>', responseWords.points)
    .action((deck, options) => run(terminal, () => response(terminal, deck, options)));
  program
    .command('check')
    .summary(checkWords.summary)
    .description(checkWords.summary)
    .argument('<FILE...>', checkWords.files)
    .action((files) => run(terminal, () => check(terminal, files)));
  program
    .command('regrade')
    .summary(regradeWords.summary)
    .description(regradeWords.summary)
    .argument('<RUN.json>', regradeWords.run)
    .option('--json', regradeWords.json)
    .option('--scenario <FILE>', regradeWords.scenario)
    .action((file, options) => run(terminal, () => regrade(terminal, file, options)));
  program
    .command('curve')
    .summary(curveWords.summary)
    .description(curveWords.summary)
    .argument('<FILE>', curveWords.file)
    .option('--response <ID>', curveWords.response)
    .option('--svg <FILE>', curveWords.svg)
    .option('--csv <FILE>', curveWords.csv)
    .action((file, options) => run(terminal, () => curve(terminal, file, options)));
  program
    .command('certify')
    .summary(certifyWords.summary)
    .description(certifyWords.summary)
    .argument('<SCENARIO.json...>', certifyWords.files)
    .option('--json', certifyWords.json)
    .option('--write', certifyWords.write)
    .action((files, options) => run(terminal, () => certify(terminal, files, options)));
  program
    .command('demonstrate')
    .summary(demonstrateWords.summary)
    .description(demonstrateWords.summary)
    .argument('<SCENARIO.json>', demonstrateWords.file)
    .option('--out <RUN.json>', demonstrateWords.out)
    .action((file, options) => run(terminal, () => demonstrate(terminal, file, options)));
  for (const command of [program, ...program.commands]) {
    command.exitOverride().configureOutput(output).helpOption('-h, --help', programWords.help);
  }
  return program;
}

/** Takes the words after the program's name. */
export function runProgram(terminal: Terminal, words: readonly string[]): void {
  const program = buildProgram(terminal);
  try {
    program.parse(words, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    // commander says 1 for every wrong use, and 0 for help that was asked for.
    terminal.exit(error.exitCode === 0 ? EXIT.good : EXIT.usage);
  }
}

function run(terminal: Terminal, command: () => ExitCode): void {
  try {
    terminal.exit(command());
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    terminal.err(`error: ${error.message}\n`);
    terminal.exit(EXIT.usage);
  }
}
