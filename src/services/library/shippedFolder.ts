/** The whole of the shipped folder at once, for whoever makes or judges scenarios: what the jobs need, the page does without it. */
import { problemLine } from '../../base/result.ts';
import { loadScenarioFolder, type ScenarioFolder } from '../../files/library.ts';
import { SHIPPED_PATHS, shippedText } from './shippedTexts.ts';

/** Throws with every problem: a page built with a broken file is a programmer's error. */
export async function readShippedFolder(): Promise<ScenarioFolder> {
  const texts = await Promise.all(SHIPPED_PATHS.map(shippedText));
  const folder = loadScenarioFolder(Object.fromEntries(texts.map((one) => [one!.file, one!.text])));
  if (!folder.ok) throw new Error(folder.problems.map(problemLine).join('\n'));
  return folder.value;
}
