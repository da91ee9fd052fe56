/** What may be wanted in the middle of the work, always in sight: hints, the parts tray, the circuit, and how loud the bench is. */
import type { ComponentChildren } from 'preact';
import { memo } from 'preact/compat';
import { useState } from 'preact/hooks';
import { usePort } from '../../kit/hooks/usePort.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { place, type Rect } from '../../kit/px.ts';
import { Short } from '../../kit/Short.tsx';
import type { AnswerSound } from '../../present/answers.ts';
import type { BenchPort } from '../../present/ports.ts';
import { offersParts } from '../../scenario/diagnosis.ts';
import { aidsWithin } from '../../session/session.ts';
import './atHand.css';

/** off; on; on but held back by the browser until the next click or key; on, but this machine cannot play */
export type SoundStatus = 'off' | 'on' | 'waiting' | 'silent';
export type SoundLoudness = 'off' | 'low' | 'full';

export interface BenchSounds {
  readonly status: () => SoundStatus;
  readonly loudness: () => SoundLoudness;
  /** off, low, full, and off again */
  readonly next: () => void;
  /** what the page answers, heard */
  readonly answer: (sound: AnswerSound) => void;
}

export type AtHandChoice = 'hints' | 'parts' | 'circuit';

interface AtHandProps {
  readonly port: BenchPort;
  /** a place of its own, one under the other; null: one beside the other in the header */
  readonly rect: Rect | null;
  readonly onChoose: (choice: AtHandChoice) => void;
  /** null where there is no sound to switch */
  readonly sound: BenchSounds | null;
}

function AtHandBase({ port, rect, onChoose, sound }: AtHandProps) {
  const { atHand: say } = useWords();
  const { scenario } = port;
  const hints = aidsWithin(scenario).hints && scenario.hints.length > 0;
  const bridged = usePort(port, () => port.state().bridged !== null);
  const choice = (id: AtHandChoice, drawing: ComponentChildren, called: string = say[id]) => (
    <button type="button" data-choice={id} onClick={() => onChoose(id)}>
      <svg width="24" height="20" viewBox="0 0 24 20" aria-hidden="true" class="ink">
        {drawing}
      </svg>
      <Short>{called}</Short>
    </button>
  );
  return (
    <nav
      class={`at-hand${rect === null ? '' : ' placed upended'}`}
      style={rect === null ? {} : place(rect)}
      aria-label={say.name}
    >
      {hints ? choice('hints', <path d="M12 2a5.5 5.5 0 0 1 3 10v3h-6v-3a5.5 5.5 0 0 1 3-10zM9.5 18.5h5" />) : null}
      {offersParts(scenario)
        ? choice(
            'parts',
            <path d="M2 10h4l1.5-4 3 8 3-8 3 8 1.5-4h4" stroke-linejoin="round" />,
            bridged ? say.bridged : say.parts,
          )
        : null}
      {choice('circuit', <path d="M1 5h7m8 0h7M8 1.5v7m4-7v7m4-7v7M4 5v10h5m4 0h7V5M9 12h4v6H9z" />)}
      {sound === null ? null : <Sound sound={sound} />}
    </nav>
  );
}

function Sound({ sound }: { readonly sound: BenchSounds }) {
  const { atHand: say } = useWords();
  const [loudness, setLoudness] = useState(sound.loudness);
  const status = sound.status();
  return (
    <button
      type="button"
      data-choice="sound"
      title={status === 'waiting' || status === 'silent' ? say.soundNote[status] : undefined}
      onClick={() => {
        sound.next();
        setLoudness(sound.loudness());
      }}
    >
      <svg width="24" height="20" viewBox="0 0 24 20" aria-hidden="true" class="ink">
        <path d="M2 7.5h4l5-4.5v14l-5-4.5h-4z" stroke-linejoin="round" />
        {loudness === 'off' ? <path d="M15 7l6 6m0-6l-6 6" /> : <path d="M14 7a4 4 0 0 1 0 6" />}
        {loudness === 'full' ? <path d="M17 4a8 8 0 0 1 0 12" /> : null}
      </svg>
      <Short>{say.sound[loudness]}</Short>
    </button>
  );
}

export const AtHand = memo(AtHandBase);
