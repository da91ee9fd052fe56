/** Before anything has been brought: what this place is for, where files go, and the receivers that are kept here. */
import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { Modal } from '../../../kit/dialogs/Modal.tsx';
import { FilesField } from '../../../kit/FilesField.tsx';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button, Frame } from '../../../kit/theme/art.tsx';
import { Refused } from './Refused.tsx';
import type { ReceiverPort } from './receiverPort.ts';

/** Two of one name are told apart by the beginning of their hash. */
const HASH_SHOWN = 8;

export function BeginPanel({ port }: { readonly port: ReceiverPort }) {
  const { ownReceiver: say } = useWords();
  return (
    <div class="made-begin">
      <section class="paper made-card" aria-labelledby="made-begin">
        <Frame kind="sheet" />
        <h2 class="plate-title" id="made-begin">
          {say.begin.title}
        </h2>
        <p>{say.begin.what}</p>
        <div class="made-place">
          <p>{say.begin.drop}</p>
          <div class="made-row">
            <FilesButton port={port} primary />
            <Button onClick={port.beginExample}>{say.begin.example}</Button>
          </div>
        </div>
        <Refused lines={port.refused} />
      </section>
      {port.makings.length === 0 ? null : <InTheMaking port={port} />}
      <KeptList port={port} />
      {port.brought.length === 0 ? null : <BroughtList port={port} />}
    </div>
  );
}

export function FilesButton({ port, primary = false }: { readonly port: ReceiverPort; readonly primary?: boolean }) {
  const { ownReceiver: say } = useWords();
  const field = useRef<HTMLInputElement>(null);
  return (
    <>
      <FilesField
        innerRef={field}
        multiple
        accept=".cir,.ckt,.sp,.net,.txt,.json"
        picks="receiver"
        onFiles={(files) => port.bring(files)}
      />
      <Button primary={primary} onClick={() => field.current?.click()}>
        {say.begin.open}
      </Button>
    </>
  );
}

interface ListCardProps {
  readonly id: string;
  readonly title: string;
  readonly children: ComponentChildren;
}

function ListCard({ id, title, children }: ListCardProps) {
  return (
    <section class="paper made-card" aria-labelledby={id}>
      <Frame kind="card" />
      <h2 class="plate-title" id={id}>
        {title}
      </h2>
      {children}
    </section>
  );
}

function InTheMaking({ port }: { readonly port: ReceiverPort }) {
  const { ownReceiver: say } = useWords();
  return (
    <ListCard id="made-making" title={say.begin.making}>
      <ul class="made-kept">
        {port.makings.map(({ key, name }) => (
          <li key={key}>
            <b>{name}</b>
            <Button label={say.begin.goOnLong(name)} onClick={() => port.choose(key)}>
              {say.begin.goOn}
            </Button>
          </li>
        ))}
      </ul>
    </ListCard>
  );
}

function KeptList({ port }: { readonly port: ReceiverPort }) {
  const { ownReceiver: say } = useWords();
  return (
    <ListCard id="made-kept" title={say.begin.kept}>
      {port.kept.length === 0 ? <p>{say.begin.none}</p> : null}
      <ul class="made-kept">
        {port.kept.map(({ id, setName }) => (
          <li key={id}>
            <span>
              <b>{setName}</b> <span class="m">{id}</span>
            </span>
            <span class="made-row">
              <Button label={say.begin.editLong(setName)} onClick={() => port.openKept(id)}>
                {say.begin.edit}
              </Button>
              <Button label={say.begin.dropLong(setName)} onClick={() => port.dropKept(id)}>
                {say.begin.drop1}
              </Button>
            </span>
          </li>
        ))}
      </ul>
      <p role="status">{port.told}</p>
    </ListCard>
  );
}

/** Receivers that evening sheets have brought: they stay for the runs on them, until they are thrown away here. */
function BroughtList({ port }: { readonly port: ReceiverPort }) {
  const { ownReceiver: say, workshop } = useWords();
  const [asked, setAsked] = useState<ReceiverPort['brought'][number] | null>(null);
  return (
    <ListCard id="made-brought" title={say.begin.brought}>
      <p class="l2">{say.begin.broughtWhy}</p>
      <ul class="made-kept">
        {port.brought.map((one) => (
          <li key={one.hash}>
            <span>
              <b>{one.setName}</b> <span class="m">{`${one.id} ${one.hash.slice(0, HASH_SHOWN)}`}</span>
            </span>
            <span class="made-row">
              <Button label={say.begin.copyLong(one.setName)} onClick={() => port.openBrought(one.id, one.hash)}>
                {say.begin.copy}
              </Button>
              <Button label={say.begin.dropLong(one.setName)} onClick={() => setAsked(one)}>
                {say.begin.drop1}
              </Button>
            </span>
          </li>
        ))}
      </ul>
      {asked === null ? null : (
        <Modal title={say.begin.dropLong(asked.setName)} onCancel={() => setAsked(null)}>
          <p>{say.begin.dropAsk}</p>
          <div class="modal-buttons">
            <Button
              onClick={() => {
                setAsked(null);
                port.dropBrought(asked.id, asked.hash);
              }}
            >
              {workshop.remove}
            </Button>
            <Button primary onClick={() => setAsked(null)}>
              {workshop.keepIt}
            </Button>
          </div>
        </Modal>
      )}
    </ListCard>
  );
}
