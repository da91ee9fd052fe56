/** How the bench stands for the response: centre, span, level, markers. */
import { useWords } from '../../../kit/hooks/useWords.ts';
import { putSetUp } from '../../../making/edits.ts';
import type { DeskProps } from './DeckPanel.tsx';
import { Field, hertzOf, kilohertz, numberOf } from './Field.tsx';
import { Labelled } from './Labelled.tsx';

export function Stands({ port, making }: DeskProps) {
  const { ownReceiver } = useWords();
  const { response: say } = ownReceiver;
  const { setUp } = making.draft.responses[0]!;
  const hertz = (key: 'centreHz' | 'spanHz') => (text: string) => {
    const value = hertzOf(text);
    if (value === null || value <= 0) return say.unread;
    port.change(putSetUp(making.draft, key, value));
    return null;
  };
  const markers = (setUp.markersHz ?? []) as readonly number[];
  return (
    <fieldset class="made-list">
      <legend class="l">{say.stands}</legend>
      <div class="made-grid">
        <Named name={say.centre} value={kilohertz(Number(setUp.centreHz))} take={hertz('centreHz')} />
        <Named name={say.span} value={kilohertz(Number(setUp.spanHz))} take={hertz('spanHz')} />
        <Named
          name={say.levelDb}
          value={String(setUp.levelDb ?? '')}
          take={(text) => {
            const value = numberOf(text);
            if (value === null) return say.unread;
            port.change(putSetUp(making.draft, 'levelDb', value));
            return null;
          }}
        />
        <Named
          name={say.markers}
          class="wide"
          value={markers.map(kilohertz).join(' ')}
          take={(text) => {
            const all = text
              .split(/[;\s]+/)
              .filter((one) => one !== '')
              .map(hertzOf);
            const known = all.filter((hz) => hz !== null);
            if (known.length < all.length || known.length === 0) return say.unread;
            port.change(putSetUp(making.draft, 'markersHz', known));
            return null;
          }}
        />
      </div>
    </fieldset>
  );
}

interface NamedProps {
  readonly name: string;
  readonly value: string;
  readonly class?: string;
  readonly take: (typed: string) => string | null;
}

function Named({ name, ...field }: NamedProps) {
  return (
    <Labelled name={name}>
      <Field plain label={name} {...field} />
    </Labelled>
  );
}
