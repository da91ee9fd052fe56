/** Puts a line on the sheet: what it asks for, and where. */
import { useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import { LINE_KINDS, type LineKind, type NewLine, OF_STRETCH } from '../../../making/sheetLines.ts';
import { hertzOf, kilohertz, numberOf } from './Field.tsx';

export function AddLine({ add, middleHz }: { readonly add: (line: NewLine) => void; readonly middleHz: number }) {
  const { ownReceiver } = useWords();
  const { response: say } = ownReceiver;
  const [kind, setKind] = useState<LineKind>('point');
  const [at, setAt] = useState(kilohertz(middleHz));
  const [to, setTo] = useState(kilohertz(middleHz));
  const [unread, setUnread] = useState(false);
  const ofLevel = kind === 'bandwidth';
  const submit = (): void => {
    const from = kind === 'peak' ? 0 : ofLevel ? numberOf(at) : hertzOf(at);
    const end = OF_STRETCH.has(kind) ? hertzOf(to) : 0;
    setUnread(from === null || end === null);
    if (from !== null && end !== null) add({ kind, at: from, to: end });
  };
  return (
    <form
      class="made-add"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <label class="made-labelled">
        <span class="ls">{say.ask}</span>
        <select
          class="written"
          value={kind}
          onChange={(event) => {
            const next = event.currentTarget.value as LineKind;
            if ((next === 'bandwidth') !== ofLevel) setAt(next === 'bandwidth' ? '-6' : kilohertz(middleHz));
            setKind(next);
          }}
        >
          {LINE_KINDS.map((one) => (
            <option key={one} value={one}>
              {say.kinds[one]}
            </option>
          ))}
        </select>
      </label>
      {kind === 'peak' ? null : (
        <label class="made-labelled">
          <span class="ls">{ofLevel ? say.level : OF_STRETCH.has(kind) ? say.from : say.at}</span>
          <input class="written figure" dir="ltr" value={at} onInput={(event) => setAt(event.currentTarget.value)} />
        </label>
      )}
      {OF_STRETCH.has(kind) ? (
        <label class="made-labelled">
          <span class="ls">{say.to}</span>
          <input class="written figure" dir="ltr" value={to} onInput={(event) => setTo(event.currentTarget.value)} />
        </label>
      ) : null}
      <Button onClick={submit}>{say.put}</Button>
      <span class="l2">{say.click}</span>
      {unread ? (
        <span class="made-why" role="alert">
          {say.unread}
        </span>
      ) : null}
    </form>
  );
}
