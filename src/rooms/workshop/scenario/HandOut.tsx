/** Ways to hand out what has been certified: its file, a link with all of it inside, a place on the evening sheet; and the hash by which certificate and scenario belong together. */
import { useMemo, useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import type { OnSheet } from './provingPort.ts';
import type { WorkshopPort } from './workshopPort.ts';

export function HandOut({ port }: { readonly port: WorkshopPort }) {
  const { workshop } = useWords();
  const say = workshop.proof.handOut;
  const { handing } = port;
  const [link, setLink] = useState<{ readonly address: string; readonly long: boolean } | null>(null);
  const [told, setTold] = useState<OnSheet | null>(null);
  const hash = useMemo(handing.hash, [port.draft]);
  return (
    <div class="hand-out">
      <h3 class="l">{say.title}</h3>
      <div class="hand-buttons">
        <Button onClick={port.saveFile}>{say.file}</Button>
        <Button onClick={() => void handing.link().then(setLink)}>{say.link}</Button>
        <Button onClick={() => void handing.toEvening().then(setTold)}>{say.evening}</Button>
      </div>
      {link === null ? null : (
        <label class="hand-link">
          <span class="desk-note">{link.long ? say.linkLong : say.linkReady}</span>
          <input
            type="text"
            class="written"
            readOnly
            dir="ltr"
            value={link.address}
            onFocus={({ currentTarget }) => currentTarget.select()}
          />
        </label>
      )}
      <div role="status">
        {link === null ? null : <p class="unseen">{link.long ? say.linkLong : say.linkReady}</p>}
        {link !== null && handing.needsReceiver ? <p class="desk-note">{say.needsReceiver}</p> : null}
        {told === null ? null : <p class="desk-note">{say.told[told]}</p>}
      </div>
      <p class="desk-note">
        {say.hash} <span class="ms hand-hash">{hash}</span>
      </p>
    </div>
  );
}
