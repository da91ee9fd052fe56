/** Receivers and scenarios as the page tells them: in its own language where the file has it, otherwise in the file's, marked as such. Pure. */
import type { Receiver } from '../receiver/receiver.ts';
import { receiverIn } from '../receiver/receiverIn.ts';
import { readEndlessId } from '../scenario/endlessId.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { scenarioIn } from '../scenario/scenarioIn.ts';
import type { FirstWords } from '../words/words.ts';
import { isStandingCaution } from './cautions.ts';
import type { BenchPort, ReportPort } from './ports.ts';

export function toldReceiver({ language }: FirstWords, receiver: Receiver): Receiver {
  const told = receiverIn(language, receiver);
  if (told === receiver) return receiver;
  // The standing cautions are known by the sentences of the file itself, and said in the words of the page.
  const cautions = receiver.cautions.map((own, i) => (isStandingCaution(receiver, own) ? own : told.cautions[i]!));
  return { ...told, cautions };
}

/** A scenario of the endless track has no author: the page's own words stand for those of its file. */
export function toldScenario({ language, endless }: FirstWords, scenario: Scenario, receiver: Receiver): Scenario {
  const made = readEndlessId(scenario.id);
  if (made === null) return scenarioIn(language, scenario);
  const { difficulty, seed } = made;
  return {
    ...scenario,
    language,
    title: endless.title(receiver, seed),
    words: endless.words(receiver, difficulty),
  };
}

/** The same bench, told in the language of the page. */
export function toldBench(words: FirstWords, port: BenchPort): BenchPort {
  const receiver = toldReceiver(words, port.receiver);
  const scenario = toldScenario(words, port.scenario, receiver);
  if (receiver === port.receiver && scenario === port.scenario) return port;
  return { ...port, receiver, scenario, setup: { ...port.setup, receiver, scenario } };
}

/** The same report, told in the language of the page; the run that is handed out stays as it is. */
export function toldReport(words: FirstWords, port: ReportPort): ReportPort {
  const receiver = toldReceiver(words, port.receiver);
  return { ...port, receiver, run: { ...port.run, scenario: toldScenario(words, port.run.scenario, receiver) } };
}
