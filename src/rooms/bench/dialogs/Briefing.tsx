/** Before a run: the story, the conditions, and on a mains set the cautions, which must be acknowledged. Opened again later it only shows them. */

import { useState } from 'preact/hooks';
import { Modal } from '../../../kit/dialogs/Modal.tsx';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Told } from '../../../kit/Told.tsx';
import { Button, Frac } from '../../../kit/theme/art.tsx';
import { cautionsOf } from '../../../present/cautions.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import { toldPar } from '../../../scenario/par.ts';
import type { Scenario } from '../../../scenario/scenario.ts';
import './dialogs.css';

export interface Helper {
  /** set-ups of this kind that the learner has passed without help */
  readonly shown: number;
  /** what his work counts for in the time of the run */
  readonly minutes: number;
  readonly come: () => void;
}

interface BriefingProps {
  readonly port: BenchPort;
  readonly helper: Helper | null;
  readonly onLeave: (() => void) | null;
}

export function Briefing({ port, helper, onLeave }: BriefingProps) {
  const all = useWords();
  const words = all.dialogs.briefing;
  const { receiver, scenario } = port;
  const mustRead = cautionsOf(all, receiver).length > 0;
  const [read, setRead] = useState(!mustRead);
  const begin = (): void => {
    port.begin();
    // Where a helper has made the set safe the bench has them ticked already; the reader has not.
    if (!port.state().cautionsAcknowledged) port.act({ type: 'cautionsAcknowledged' });
  };
  return (
    <Modal title={<Told of={scenario}>{scenario.title}</Told>} onCancel={onLeave} wide>
      <p class="modal-lead">
        <Told of={scenario}>{scenario.words.brief}</Told>
      </p>
      <p>
        <Told of={scenario}>{scenario.words.story}</Told>
      </p>
      <p class="si">{words.room}</p>
      <dl class="modal-facts">
        <dt>{words.lesson}</dt>
        <dd>
          <Told of={scenario}>{scenario.words.lesson}</Told>
        </dd>
        <dt>{words.conditions}</dt>
        <dd>
          <Conditions scenario={scenario} />
        </dd>
      </dl>
      {!mustRead ? null : (
        <fieldset class="caution">
          <div>
            <legend>
              <b class="h">{words.cautions}</b>
            </legend>
            <CautionList receiver={receiver} />
            <label class="acknowledge">
              <input type="checkbox" checked={read} onChange={(event) => setRead(event.currentTarget.checked)} />
              <span>{words.acknowledge}</span>
            </label>
          </div>
        </fieldset>
      )}
      {helper === null ? null : <p class="si">{words.helperOffer(helper.shown, helper.minutes)}</p>}
      <div class="modal-buttons">
        <Button primary disabled={!read} onClick={begin}>
          {words.begin}
        </Button>
        {helper === null ? null : (
          <Button
            disabled={!read}
            onClick={() => {
              begin();
              helper.come();
            }}
          >
            {words.helper}
          </Button>
        )}
        {read ? null : <span class="l2">{words.acknowledgeFirst}</span>}
      </div>
    </Modal>
  );
}

function Conditions({ scenario }: { readonly scenario: Scenario }) {
  const { dialogs, format } = useWords();
  const { clock, turnsLong } = format;
  const words = dialogs.briefing;
  const { timeLimitSeconds, sealed, aids } = scenario;
  const par = toldPar(scenario);
  return (
    <>
      {par === null ? null : <Frac>{words.par(turnsLong(par.turns), clock(par.seconds))}</Frac>}{' '}
      {timeLimitSeconds === null ? '' : `${words.limit(clock(timeLimitSeconds))} `}
      {sealed ? words.sealed : words.practice(aids.hints && scenario.hints.length > 0, aids.toleranceMarks)}
    </>
  );
}

function CautionList({ receiver }: { readonly receiver: Receiver }) {
  const words = useWords();
  return (
    <ul class="caution-list">
      {cautionsOf(words, receiver).map(({ text, lang }) => (
        <li key={text} lang={lang}>
          {text}
        </li>
      ))}
    </ul>
  );
}

/** The cautions alone; a set that was never begun by the briefing (taken over half prepared) can acknowledge them here. */
export function Cautions({ port, onClose }: { readonly port: BenchPort; readonly onClose: () => void }) {
  const { dialogs } = useWords();
  const words = dialogs.briefing;
  const open = !port.state().cautionsAcknowledged;
  const acknowledge = (): void => {
    port.act({ type: 'cautionsAcknowledged' });
    onClose();
  };
  return (
    <Modal title={words.cautions} onCancel={onClose} danger>
      <CautionList receiver={port.receiver} />
      <div class="modal-buttons">
        <Button primary onClick={open ? acknowledge : onClose}>
          {open ? words.acknowledge : dialogs.close}
        </Button>
      </div>
    </Modal>
  );
}
