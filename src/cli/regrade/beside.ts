/**
 * What was handed out and is not of the project: receivers, scenarios and evening sheets that are laid beside the runs, as on the page of a class. Files, and folders with all that lies
 * in them and below.
 */
import { bad, good, type Problem, type Result } from '../../base/result.ts';
import { readEvening } from '../../files/evening.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import { readReceiverPair } from '../../files/readReceiverPair.ts';
import { scenarioToFile } from '../../files/scenarioFile.ts';
import { readSealedEvening } from '../../files/sealedEvening.ts';
import { createWorkedOut, designIn, type HandedOut, heldOnOwn } from '../../judge/handedOut.ts';
import type { FoundBench } from '../../judge/judgeRun.ts';
import type { OwnVersion } from '../../judge/ownHeld.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { readDocument, scenarioOf } from '../document.ts';
import { filesIn, isFolder } from '../folders.ts';
import { pairFromFile } from '../shelf.ts';
import { type Terminal, worded } from '../terminal.ts';
import { openSealed } from './openSealed.ts';

export interface Beside {
  receiver(id: string): LoadedReceiver | null;
  /** What a run on a scenario that is not of the project is held against; null: nothing of that name lies there. `shelved`: the project's receivers. */
  held(run: Scenario, shelved: (id: string) => LoadedReceiver | null): FoundBench | null;
}

/** `phrases`: what sealed sheets among them are opened by. */
export function readBeside(
  terminal: Terminal,
  names: readonly string[],
  phrases: readonly string[] = [],
): Result<Beside> {
  const problems: Problem[] = [];
  const receivers = new Map<string, LoadedReceiver>();
  const handedOut: HandedOut[] = [];
  const takeSheet = (text: string, file: string): void => {
    const read = readEvening(text, file);
    if (!read.ok) {
      problems.push(...read.problems);
      return;
    }
    const brought = new Map(read.value.receivers.map((one) => [one.receiver.id, one.texts]));
    for (const scenario of read.value.scenarios) {
      const own = JSON.stringify(scenarioToFile(scenario));
      handedOut.push({ id: scenario.id, text: own, receiver: brought.get(scenario.receiver) ?? null });
    }
  };
  const files = names.flatMap((name) => (isFolder(name) ? filesIn(name, /\.json$/i) : [name]));
  for (const file of files) {
    const document = readDocument(terminal, file);
    if (!document.ok) {
      problems.push(...document.problems);
      continue;
    }
    switch (document.value.kind) {
      case 'receiver': {
        const pair = pairFromFile(terminal, file);
        const read = pair.ok ? readReceiverPair(pair.value) : pair;
        if (read.ok) receivers.set(read.value.receiver.id, read.value);
        else problems.push(...read.problems);
        break;
      }
      case 'scenario': {
        const read = scenarioOf(document.value, file);
        if (read.ok) handedOut.push({ id: read.value.id, text: document.value.text, receiver: null });
        else problems.push(...read.problems);
        break;
      }
      case 'evening':
        takeSheet(document.value.text, file);
        break;
      case 'sealed-evening': {
        const sealed = readSealedEvening(document.value.text, file);
        if (!sealed.ok) {
          problems.push(...sealed.problems);
          break;
        }
        const text = openSealed(sealed.value, phrases);
        if (text !== null) takeSheet(text, file);
        else {
          const { sealedSheet, wrongPhrase, phraseWanted } = terminal.words.cli.regrade;
          const found = phrases.length === 0 ? sealedSheet : wrongPhrase;
          problems.push(worded({ file, place: '', found, wanted: phraseWanted }));
        }
        break;
      }
      default: {
        // In a folder lie other things, too.
        if (!names.includes(file)) break;
        const { notBeside, beside } = terminal.words.cli.regrade;
        problems.push(worded({ file, place: '', found: notBeside, wanted: beside }));
      }
    }
  }
  if (problems.length > 0) return bad(...problems);
  const worked = createWorkedOut();
  return good({
    receiver: (id) => receivers.get(id) ?? null,
    held(run, shelved) {
      const versions = handedOut.flatMap(({ id, text, receiver }): OwnVersion[] => {
        if (id !== run.id) return [];
        const own = receiver === null ? null : designIn(receiver, worked);
        const design = own ?? receivers.get(run.receiver) ?? shelved(run.receiver);
        return design === null ? [] : [{ text, par: null, design }];
      });
      return versions.length === 0 ? null : heldOnOwn(versions, run, worked);
    },
  });
}
