/** The parts tray: every part that may be replaced, asked for once and then soldered in. */
import { useMemo, useState } from 'preact/hooks';
import { refusalSentence } from '../../../describe/sentence.ts';
import { Modal } from '../../../kit/dialogs/Modal.tsx';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { Button } from '../../../kit/theme/art.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import { type Part, type PartKind, partsTray } from '../../../receiver/faults/partsTray.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';
import { dialogWords } from '../../../words/en/benchTalk.ts';
import { partsWords as words } from '../../../words/en/parts.ts';

const KINDS = Object.keys(words.kinds) as PartKind[];

export function PartsTray({ port, onClose }: { readonly port: BenchPort; readonly onClose: () => void }) {
  const { receiver, setup } = port;
  const tray = useMemo(() => partsTray(receiver, setup.deck), [receiver, setup]);
  const letters = useMemo(() => slugLetters(receiver), [receiver]);
  const replaced = usePort(port, () => port.state().replaced);
  const powered = usePort(port, () => port.state().powered);
  const [asked, setAsked] = useState<Part | null>(null);
  const [said, setSaid] = useState('');
  const nameOf = (part: Part): string => words.name(part, part.slug === null ? null : (letters.get(part.slug) ?? null));
  const replace = (part: Part): void => {
    const event = { type: 'partReplaced', element: part.name } as const;
    const applied = port.act(event);
    setSaid(applied.ok ? words.done(nameOf(part)) : refusalSentence(applied.reason, event, receiver));
    setAsked(null);
  };
  return (
    <Modal title={words.title} onCancel={onClose} wide>
      <p>{words.intro}</p>
      {receiver.mains !== null && powered ? <p class="parts-live">{words.live}</p> : null}
      <div class="parts">
        {KINDS.map((kind) => {
          const held = tray.filter((part) => part.kind === kind);
          if (held.length === 0) return null;
          return (
            <section key={kind} aria-label={words.kinds[kind]}>
              <h3 class="l">{words.kinds[kind]}</h3>
              <ul>
                {held.map((part) => (
                  <li key={part.name}>
                    <button type="button" aria-pressed={asked?.name === part.name} onClick={() => setAsked(part)}>
                      {nameOf(part)}
                    </button>
                    {replaced.includes(part.name) ? <b>{words.replaced}</b> : null}
                  </li>
                ))}
              </ul>
            </section>
          );
        })}
      </div>
      <p class="parts-said" role="status">
        {asked === null ? said : words.ask(nameOf(asked))}
      </p>
      <div class="modal-buttons">
        {asked === null ? (
          <Button onClick={onClose}>{dialogWords.close}</Button>
        ) : (
          <>
            <Button primary onClick={() => replace(asked)}>
              {words.replace}
            </Button>
            <Button onClick={() => setAsked(null)}>{words.keep}</Button>
          </>
        )}
      </div>
    </Modal>
  );
}
