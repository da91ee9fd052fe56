/** The questions and notices of a session's stages: signing, suspended, stopped; and those of the menu: help, hints, clearing. */

import { useLayoutEffect, useState } from 'preact/hooks';
import { missingSentence, refusalSentence } from '../../../describe/sentence.ts';
import { Modal } from '../../../kit/dialogs/Modal.tsx';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Told } from '../../../kit/Told.tsx';
import { Button } from '../../../kit/theme/art.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import { asksDiagnosis, type Diagnosis } from '../../../scenario/diagnosis.ts';
import { PHASES } from '../../../session/phase.ts';
import { partsAreOpen } from '../../../session/session.ts';
import { DiagnosisForm, DiagnosisSaid } from './DiagnosisForm.tsx';
import './dialogs.css';

/** The name that runs are handed in under, for the field that asks for it. */
export interface LearnerField {
  read(): string | null;
  write(typed: string): void;
  /** characters */
  readonly longest: number;
}

export function SignOff({ port, learner }: { readonly port: BenchPort; readonly learner: LearnerField }) {
  const all = useWords();
  const { dialogs: dialogWords, phases: phaseNames } = all;
  const words = dialogWords.signOff;
  const session = port.session();
  const timeUp = session.timeUp === true;
  // A sealed job says nothing before the signature.
  const { sealed } = port.scenario;
  const asked = asksDiagnosis(port.scenario);
  const [said, say] = useState<Diagnosis | null>(null);
  // The bench's own note of a refusal lies behind this dialog.
  const [refused, setRefused] = useState('');
  useLayoutEffect(
    () => port.onRefused((reason, event) => setRefused(refusalSentence(all, reason, event, port.receiver))),
    [port, all],
  );
  const sign = (): void => {
    if (said !== null) port.act({ type: 'diagnosisStated', ...said });
    port.sign();
  };
  const open = sealed ? [] : PHASES.filter((phase) => session.missing[phase].length > 0);
  return (
    <Modal title={words.title} onCancel={timeUp ? null : () => port.keepWorking()} wide={asked}>
      <p>{timeUp ? words.timeUp : sealed ? words.sealed : open.length === 0 ? words.ready : words.missing}</p>
      {timeUp && sealed ? <p>{words.sealed}</p> : null}
      {partsAreOpen(port.scenario) ? <p>{words.parts}</p> : null}
      {/* Before what is missing, which may be longer than the screen. */}
      <label class="signature">
        <span>{words.learner}</span>
        <input
          class="written"
          type="text"
          autocomplete="name"
          maxLength={learner.longest}
          defaultValue={learner.read() ?? ''}
          onInput={(event) => learner.write(event.currentTarget.value)}
        />
      </label>
      {open.length === 0 ? null : (
        <dl class="missing">
          {open.map((phase) => (
            <div key={phase}>
              <dt>{phaseNames[phase]}</dt>
              <dd>
                <ul>
                  {session.missing[phase].map((code) => (
                    <li key={code}>{missingSentence(all, code)}</li>
                  ))}
                </ul>
              </dd>
            </div>
          ))}
        </dl>
      )}
      {asked ? <DiagnosisForm port={port} said={said} onSay={say} /> : null}
      <div class="modal-buttons">
        {/* In sight as long as the buttons are: a button that does nothing and does not say why seems broken. */}
        <p class="refused" role="alert">
          {refused}
        </p>
        {asked ? <DiagnosisSaid said={said} /> : null}
        <Button primary onClick={sign}>
          {words.sign}
        </Button>
        {/* With the time up and nothing done there is no other way out. */}
        {timeUp && refused !== '' ? <Button onClick={() => port.abandon()}>{dialogWords.abandon.yes}</Button> : null}
        {timeUp ? null : <Button onClick={() => port.keepWorking()}>{words.keep}</Button>}
      </div>
    </Modal>
  );
}

export function Suspended({ port, onLeave }: { readonly port: BenchPort; readonly onLeave: (() => void) | null }) {
  const { dialogs: dialogWords } = useWords();
  const words = dialogWords.suspended;
  return (
    <Modal title={words.title} onCancel={null}>
      <p>{words.body}</p>
      <div class="modal-buttons">
        <Button primary onClick={() => port.resume()}>
          {words.resume}
        </Button>
        {onLeave === null ? null : <Button onClick={onLeave}>{words.leave}</Button>}
      </div>
    </Modal>
  );
}

export function Stopped({ port }: { readonly port: BenchPort }) {
  const { dialogs: dialogWords } = useWords();
  const words = dialogWords.stopped;
  return (
    <Modal title={words.title} onCancel={null} danger>
      <p>{words.body}</p>
      <p>
        <b>{words.next}</b>
      </p>
      <div class="modal-buttons">
        <Button primary onClick={() => port.sign()}>
          {words.again}
        </Button>
      </div>
    </Modal>
  );
}

/** Whether single letters act, and the way to change it. */
export interface SingleKeys {
  readonly act: () => boolean;
  readonly let: (on: boolean) => void;
}

interface HelpProps {
  readonly keys: SingleKeys | null;
  readonly onClose: () => void;
}

export function Help({ keys, onClose }: HelpProps) {
  const { dialogs: dialogWords } = useWords();
  const words = dialogWords.help;
  return (
    <Modal title={words.title} onCancel={onClose} wide>
      <p>{words.intro}</p>
      <dl class="keys">
        {words.keys.map(([key, does]) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <p>{words.mouse}</p>
      {keys === null ? null : (
        <label class="acknowledge">
          <input
            type="checkbox"
            defaultChecked={keys.act()}
            onChange={(event) => keys.let(event.currentTarget.checked)}
          />
          <span>{words.singleKeys}</span>
        </label>
      )}
      <div class="modal-buttons">
        <Button primary onClick={onClose}>
          {dialogWords.close}
        </Button>
      </div>
    </Modal>
  );
}

export function Hints({ port, onClose }: { readonly port: BenchPort; readonly onClose: () => void }) {
  const { dialogs: dialogWords } = useWords();
  const words = dialogWords.hints;
  const taken = usePort(port, () => port.state().hintsTaken);
  const all = port.scenario.hints;
  return (
    <Modal title={words.title} onCancel={onClose}>
      {taken === 0 ? <p>{words.none}</p> : null}
      <ol class="hint-list">
        {all.slice(0, taken).map((hint, i) => (
          <li key={hint}>
            <b>{words.number(i + 1)}</b> <Told of={port.scenario}>{hint}</Told>
          </li>
        ))}
      </ol>
      <p class="si">{taken < all.length ? words.cost : words.last}</p>
      <div class="modal-buttons">
        {taken < all.length ? (
          <Button primary onClick={() => port.act({ type: 'hintAsked', index: taken })}>
            {words.take}
          </Button>
        ) : null}
        <Button onClick={onClose}>{dialogWords.close}</Button>
      </div>
    </Modal>
  );
}

export function Clear({ port, onClose }: { readonly port: BenchPort; readonly onClose: () => void }) {
  const { dialogs: dialogWords } = useWords();
  const words = dialogWords.abandon;
  return (
    <Modal title={words.title} onCancel={onClose} danger>
      <p>{words.body}</p>
      <div class="modal-buttons">
        <Button primary onClick={onClose}>
          {words.no}
        </Button>
        <Button
          onClick={() => {
            onClose();
            port.abandon();
          }}
        >
          {words.yes}
        </Button>
      </div>
    </Modal>
  );
}
