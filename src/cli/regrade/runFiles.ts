/** The run files that were named: files as they are, and every .json file in and below folders, in order. */
import { bad, good, type Problem, type Result } from '../../base/result.ts';
import { filesIn, isFolder } from '../folders.ts';
import { type Terminal, worded } from '../terminal.ts';

export function runFilesIn(terminal: Terminal, names: readonly string[]): Result<readonly string[]> {
  const problems: Problem[] = [];
  const files = names.flatMap((name) => {
    if (!isFolder(name)) return [name];
    const inside = filesIn(name, /\.json$/i);
    const { noRuns, runs } = terminal.words.cli.regrade;
    if (inside.length === 0) problems.push(worded({ file: name, place: '', found: noRuns, wanted: runs }));
    return inside;
  });
  return problems.length > 0 ? bad(...problems) : good([...new Set(files)]);
}
