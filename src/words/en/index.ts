/** English: everything that the pages say. */

import type { RuleWords } from '../ruleWords.ts';
import { asFoundWords } from './asFound.ts';
import {
  atHandWords,
  controlWords,
  dialWords,
  headerWords,
  knobWords,
  leadWords,
  meterWords,
  narrowWords,
  panelWords,
  rackWords,
  safeWords,
  switchWords,
  tubeControlWords,
} from './bench.ts';
import { answerWords, dialogWords, liveWords, refusalWords, tubeTalk } from './benchTalk.ts';
import { circuitWords } from './circuit.ts';
import { classroomWords } from './classroom.ts';
import { conductRuleWords } from './conductRules.ts';
import { curveWords } from './curve.ts';
import { demonstrationWords } from './demonstration.ts';
import { diagnosisWords } from './diagnosis.ts';
import { drillsWords } from './drills.ts';
import { examWords } from './exam.ts';
import { leadNames, slugNames, toolNames } from './facts.ts';
import { findingCardWords } from './finding.ts';
import { first } from './first.ts';
import { glossaryWords } from './glossary.ts';
import { causeWords, faultWords, findingWords, heldWords, limitWords } from './grading.ts';
import { guideWords } from './guide.ts';
import { judgingWords, textFileWords } from './judging.ts';
import { makerWords } from './maker.ts';
import { ownReceiverWords } from './ownReceiver.ts';
import { papersWords } from './papers.ts';
import { partsWords } from './parts.ts';
import { phraseWords } from './phrases.ts';
import { actNames, badTimeInFile, verdictSentences, verdictTitles } from './problems.ts';
import { refusalWithSubject } from './refusals.ts';
import { blockNames, reportWords } from './reportPage.ts';
import { sceneWords } from './scene.ts';
import { lineAdvice, missingAt, missingSentences } from './session.ts';
import { setUpRuleWords } from './setUpRules.ts';
import { sheetWords } from './sheet.ts';
import { sheetRuleWords } from './sheetRules.ts';
import { tubeWords } from './shell.ts';
import { slugPartWords } from './slugPart.ts';
import { workshopWords } from './workshop.ts';

export const en = {
  ...first,

  // widgets and panels
  knob: knobWords,
  switches: switchWords,
  panels: panelWords,
  slugPart: slugPartWords,
  controls: controlWords,
  tubeControls: tubeControlWords,
  rack: rackWords,
  dial: dialWords,
  meter: meterWords,
  leads: leadWords,
  safe: safeWords,

  // the bench page
  atHand: atHandWords,
  header: headerWords,
  sheet: sheetWords,
  narrow: narrowWords,
  dialogs: dialogWords,
  finding: findingCardWords,
  asFound: asFoundWords,
  diagnosis: diagnosisWords,
  guide: guideWords,
  demonstration: demonstrationWords,
  live: liveWords,
  answers: answerWords,
  tubeTags: tubeWords,
  tubeTalk,
  scene: sceneWords,
  parts: partsWords,
  circuit: circuitWords,

  // trade words and what they mean
  glossary: glossaryWords,

  // what is told of acts, the tube and the phases
  refusals: refusalWords,
  refusalsOf: refusalWithSubject,
  missing: missingSentences,
  missingAt,
  lineAdvice,
  curve: curveWords,
  names: { slugs: slugNames, leads: leadNames, tools: toolNames },

  // score, report and run files
  rules: { ...sheetRuleWords, ...setUpRuleWords, ...conductRuleWords } satisfies RuleWords,
  grading: { faults: faultWords, limits: limitWords, causes: causeWords, held: heldWords, findings: findingWords },
  drills: drillsWords,
  blocks: blockNames,
  report: reportWords,
  papers: papersWords,
  phrases: phraseWords,
  maker: makerWords,
  ownReceiver: ownReceiverWords,
  workshop: workshopWords,
  exam: examWords,
  classroom: classroomWords,
  judging: judgingWords,
  textFiles: textFileWords,
  verdicts: { titles: verdictTitles, sentences: verdictSentences, acts: actNames, badTimeInFile },
} as const;

export default en;
