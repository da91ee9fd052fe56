/** The parts tray: every part that may be replaced, asked for once and then soldered in; a capacitor may be bridged with a good one first. */

import { useState } from 'preact/hooks';
import { canBeBridged } from '../../../bench/bridge.ts';
import { canBeMetered } from '../../../bench/partMeter.ts';
import { Modal } from '../../../kit/dialogs/Modal.tsx';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import type { Part, PartKind } from '../../../receiver/faults/partsTray.ts';
import { usePartActs } from './usePartActs.ts';
import './parts.css';
import './dialogs.css';

export function PartsTray({ port, onClose }: { readonly port: BenchPort; readonly onClose: () => void }) {
  const { dialogs: dialogWords, parts: say } = useWords();
  const { receiver } = port;
  const { tray, nameOf, hanging, said, ...acts } = usePartActs(port);
  const replaced = usePort(port, () => port.state().replaced);
  const powered = usePort(port, () => port.state().powered);
  const [asked, setAsked] = useState<Part | null>(null);
  const replace = (part: Part): void => {
    acts.replace(part);
    setAsked(null);
  };
  const bridge = (part: Part, on: boolean): void => {
    acts.bridge(part, on);
    setAsked(null);
  };
  const meter = (part: Part): void => {
    acts.meter(part);
    setAsked(null);
  };
  return (
    <Modal title={say.title} onCancel={onClose} wide>
      <p>{say.intro}</p>
      {receiver.mains !== null && powered ? <p class="parts-live">{say.live}</p> : null}
      <div class="parts">
        {(Object.keys(say.kinds) as PartKind[]).map((kind) => {
          const held = tray.filter((part) => part.kind === kind);
          if (held.length === 0) return null;
          return (
            <section key={kind} aria-label={say.kinds[kind]}>
              <h3 class="l">{say.kinds[kind]}</h3>
              <ul>
                {held.map((part) => (
                  <li key={part.name}>
                    <button type="button" aria-pressed={asked?.name === part.name} onClick={() => setAsked(part)}>
                      {nameOf(part)}
                    </button>
                    {replaced.includes(part.name) ? <b>{say.replaced}</b> : null}
                    {part === hanging ? <b>{say.bridged}</b> : null}
                  </li>
                ))}
              </ul>
            </section>
          );
        })}
      </div>
      <p class="parts-said" role="status">
        {asked !== null
          ? say.ask(nameOf(asked))
          : said !== '' || hanging === undefined
            ? said
            : say.bridgeOn(nameOf(hanging))}
      </p>
      <div class="modal-buttons">
        {asked === null ? (
          <>
            {hanging === undefined ? null : <Button onClick={() => bridge(hanging, false)}>{say.unbridge}</Button>}
            <Button onClick={onClose}>{dialogWords.close}</Button>
          </>
        ) : (
          <>
            <Button primary onClick={() => replace(asked)}>
              {say.replace}
            </Button>
            {canBeMetered(asked) ? <Button onClick={() => meter(asked)}>{say.meter}</Button> : null}
            {canBeBridged(asked) && asked !== hanging ? (
              <Button onClick={() => bridge(asked, true)}>{say.bridge}</Button>
            ) : null}
            {asked === hanging ? <Button onClick={() => bridge(asked, false)}>{say.unbridge}</Button> : null}
            <Button onClick={() => setAsked(null)}>{say.keep}</Button>
          </>
        )}
      </div>
    </Modal>
  );
}
