/** The commands, their arguments and options, as commander wants them told. */
import { existsSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { harmless } from '../base/harmless.ts';
import { certify } from './certify.ts';
import { check } from './check.ts';
import { curve } from './curve.ts';
import { deck } from './deck.ts';
import { demonstrate } from './demonstrate.ts';
import { placeOf } from './files.ts';
import { regrade } from './regrade/regrade.ts';
import { response } from './response.ts';
import { sheet } from './sheet.ts';
import { EXIT, type ExitCode, type Terminal, UsageError } from './terminal.ts';
import { upgrade } from './upgrade.ts';
import { wrongUse } from './wrongUse.ts';

/** An option that may be given several times. */
const each = (one: string, all: readonly string[] = []): readonly string[] => [...all, one];

export function buildProgram(terminal: Terminal): Command {
  const say = terminal.words.cli;
  const program = new Command('haystack');
  const output = {
    writeOut: (text: string) => terminal.out(text),
    writeErr: (text: string) => terminal.err(text),
    // What is wrong is told below.
    outputError: () => {},
  };
  program
    .description(say.program.summary)
    .helpOption('-h, --help', say.program.help)
    .helpCommand('help [command]', say.program.helpOf)
    .addHelpText('after', `\n${say.program.exitCodes}`);

  program
    .command('response')
    .summary(say.response.summary)
    .description(say.response.summary)
    .argument('<DECK.cir>', say.response.deck)
    .requiredOption('--node <name>', say.response.node)
    .option('--from <hz>', say.response.from)
    .option('--to <hz>', say.response.to)
    .option('--points <n>', say.response.points)
    .action((deck, options) => run(terminal, [deck], () => response(terminal, deck, options)));
  program
    .command('check')
    .summary(say.check.summary)
    .description(say.check.summary)
    .argument('<FILE...>', say.check.files)
    .action((files) => run(terminal, files, () => check(terminal, files)));
  program
    .command('sheet')
    .summary(say.sheet.summary)
    .description(say.sheet.summary)
    .argument('<DECK.cir>', say.sheet.deck)
    .option('--receiver <FILE>', say.sheet.receiver)
    .action((deck, options) => run(terminal, [deck, options.receiver], () => sheet(terminal, deck, options)));
  program
    .command('upgrade')
    .summary(say.upgrade.summary)
    .description(say.upgrade.summary)
    .argument('<SCENARIO.json...>', say.upgrade.files)
    .action((files) => run(terminal, files, () => upgrade(terminal, files)));
  program
    .command('regrade')
    .summary(say.regrade.summary)
    .description(say.regrade.summary)
    .argument('<FILE|FOLDER...>', say.regrade.run)
    .option('--csv', say.regrade.csv)
    .option('--jsonl', say.regrade.jsonl)
    .option('--json', say.regrade.json)
    .option('--scenario <FILE|ID>', say.regrade.scenario)
    .option('--beside <FILE|FOLDER>', say.regrade.besideOption, each)
    .option('--phrase <WORDS>', say.regrade.phraseOption, each)
    .option('--jobs <N>', say.regrade.jobs)
    .action((files, options) => run(terminal, [], () => regrade(terminal, files, options)));
  program
    .command('curve')
    .summary(say.curve.summary)
    .description(say.curve.summary)
    .argument('<FILE>', say.curve.file)
    .option('--response <ID>', say.curve.response)
    .option('--svg <FILE>', say.curve.svg)
    .option('--csv <FILE>', say.curve.csv)
    .option('--receiver <FILE>', say.files.receiverOption)
    .option('--volts', say.curve.volts)
    .option('--hz <LIST>', say.curve.voltsHz)
    .option('--seed <N>', say.deck.seed)
    .option('--standing <found|best>', say.deck.standing)
    .action((file, options) => run(terminal, [file], () => curve(terminal, file, options)));
  program
    .command('deck')
    .summary(say.deck.summary)
    .description(say.deck.summary)
    .argument('<SCENARIO.json>', say.deck.file)
    .option('--receiver <FILE>', say.files.receiverOption)
    .requiredOption('--hz <F>', say.deck.hz)
    .option('--seed <N>', say.deck.seed)
    .option('--standing <found|best>', say.deck.standing)
    .action((file, options) => run(terminal, [file], () => deck(terminal, file, options)));
  program
    .command('certify')
    .summary(say.certify.summary)
    .description(say.certify.summary)
    .argument('<SCENARIO.json...>', say.certify.files)
    .option('--receiver <FILE>', say.files.receiverOption)
    .option('--json', say.certify.json)
    .option('--write', say.certify.write)
    .action((files, options) => run(terminal, files, () => certify(terminal, files, options)));
  program
    .command('demonstrate')
    .summary(say.demonstrate.summary)
    .description(say.demonstrate.summary)
    .argument('<SCENARIO.json>', say.demonstrate.file)
    .option('--receiver <FILE>', say.files.receiverOption)
    .option('--out <RUN.json>', say.demonstrate.out)
    .action((file, options) => run(terminal, [file], () => demonstrate(terminal, file, options)));
  for (const command of [program, ...program.commands]) {
    const told = (error: CommanderError): never => {
      const wrong = wrongUse(terminal, command, error);
      if (wrong !== null) terminal.err(`${harmless(say.program.error(wrong))}\n`);
      throw error;
    };
    command.exitOverride(told).configureOutput(output).helpOption('-h, --help', say.program.help);
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

/** `names`: of files that were given; a name of nothing is wrong use. A run that is not there is a verdict of `regrade`, and no name of it stands here. */
function run(
  terminal: Terminal,
  names: readonly (string | undefined)[],
  command: () => ExitCode | Promise<ExitCode>,
): void {
  const astray = names.some((name) => name !== undefined && !existsSync(placeOf(name)));
  const exit = (code: ExitCode): void => terminal.exit(code === EXIT.bad && astray ? EXIT.usage : code);
  try {
    const code = command();
    if (typeof code === 'number') exit(code);
    else void code.then(exit);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    terminal.err(`${harmless(terminal.words.cli.program.error(error.message))}\n`);
    terminal.exit(EXIT.usage);
  }
}
