/** A command line that the parser refuses, in the house's own words: which command, what was found, what is wanted. The parser has English alone. */
import type { Command, CommanderError } from 'commander';
import type { Terminal } from './terminal.ts';

/** null: it is no refusal, but help that was shown. */
export function wrongUse({ words }: Terminal, command: Command, { code, message }: CommanderError): string | null {
  const say = words.cli.program;
  const name = command.name();
  // The parser tells what it found in quotes, on its first line.
  const [, given = ''] = /'(.*)'/.exec(message.split('\n')[0]!) ?? [];
  const options = [...command.options.flatMap(({ long }) => (long ? [long] : [])), '--help'];
  const wanted = command.registeredArguments.map((argument) => argument.name());
  switch (code) {
    case 'commander.unknownCommand':
      return say.unknownCommand(given, [...command.commands.map((one) => one.name()), 'help']);
    case 'commander.unknownOption':
      return say.unknownOption(name, given, options);
    case 'commander.missingArgument':
      return say.missingArgument(name, given);
    case 'commander.optionMissingArgument':
      return say.bareOption(name, given);
    case 'commander.missingMandatoryOptionValue':
      return say.missingOption(name, given);
    case 'commander.excessArguments':
      return say.tooManyArguments(name, command.args.length, wanted);
    case 'commander.help':
    case 'commander.helpDisplayed':
      return null;
    default:
      return say.otherUse(message);
  }
}
