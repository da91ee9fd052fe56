/** The menu: keys and help, hints, the handbook, suspending, clearing the bench. */

import { useEffect, useRef } from 'preact/hooks';
import { usePort } from '../../kit/hooks/usePort.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { place, px } from '../../kit/px.ts';
import { Short } from '../../kit/Short.tsx';
import { Frame } from '../../kit/theme/art.tsx';
import { handbookHash } from '../../present/handbook/address.ts';
import type { BenchPort } from '../../present/ports.ts';
import { aidsWithin } from '../../session/session.ts';
import { MenuBars } from './BenchHeader.tsx';
import type { BenchLayout } from './layout.ts';

/** off; on; on but held back by the browser until the next click or key; on, but this machine cannot play */
export type SoundStatus = 'off' | 'on' | 'waiting' | 'silent';

export type MenuChoice = 'help' | 'hints' | 'parts' | 'circuit' | 'suspend' | 'clear' | 'sound';

interface BenchMenuProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  readonly open: boolean;
  readonly onToggle: () => void;
  readonly onChoose: (choice: MenuChoice) => void;
  /** how sound stands; null where there is none to switch */
  readonly sound: SoundStatus | null;
}

export function BenchMenu({ port, layout, open, onToggle, onChoose, sound }: BenchMenuProps) {
  const { header: headerWords } = useWords();
  return (
    <>
      {layout.menu === null ? null : (
        <button
          type="button"
          class="menu-corner placed"
          style={place(layout.menu)}
          aria-haspopup="true"
          aria-expanded={open}
          onClick={onToggle}
        >
          <MenuBars />
          <Short>{headerWords.menu}</Short>
        </button>
      )}
      {open ? (
        <Choices
          port={port}
          low={layout.menu !== null}
          top={layout.header.height}
          onToggle={onToggle}
          onChoose={onChoose}
          sound={sound}
        />
      ) : null}
    </>
  );
}

interface ChoicesProps {
  readonly port: BenchPort;
  readonly low: boolean;
  readonly top: number;
  readonly onToggle: () => void;
  readonly onChoose: (choice: MenuChoice) => void;
  readonly sound: SoundStatus | null;
}

function Choices({ port, low, top, onToggle, onChoose, sound }: ChoicesProps) {
  const { circuit, header: headerWords, parts: partsWords, shell } = useWords();
  const list = useRef<HTMLDivElement>(null);
  const taken = usePort(port, () => port.state().hintsTaken);
  const hints = aidsWithin(port.scenario).hints && port.scenario.hints.length > 0;
  useEffect(() => {
    const before = document.activeElement as HTMLElement | null;
    list.current?.querySelector('button')?.focus();
    const outside = (event: PointerEvent): void => {
      if (!list.current?.contains(event.target as Node) && !before?.contains(event.target as Node)) onToggle();
    };
    addEventListener('pointerdown', outside);
    return () => {
      removeEventListener('pointerdown', outside);
      before?.focus();
    };
  }, []);
  const key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') {
      event.stopPropagation();
      onToggle();
    }
    const move = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (move === 0) return;
    event.preventDefault();
    const buttons = [...(list.current?.querySelectorAll<HTMLElement>('button, a') ?? [])];
    const at = buttons.indexOf(document.activeElement as HTMLElement);
    buttons[(at + move + buttons.length) % buttons.length]?.focus();
  };
  const item = (choice: MenuChoice, words: string) => (
    <button type="button" role="menuitem" data-choice={choice} onClick={() => onChoose(choice)}>
      {words}
    </button>
  );
  return (
    <div
      class={low ? 'menu low' : 'menu'}
      style={low ? {} : { top: px(top) }}
      role="menu"
      aria-label={headerWords.menu}
      ref={list}
      onKeyDown={key}
    >
      <Frame kind="card" />
      {hints ? item('hints', headerWords.hints(Math.max(0, port.scenario.hints.length - taken))) : null}
      {port.scenario.faults.length > 0 ? item('parts', partsWords.menu) : null}
      {item('circuit', circuit.menu)}
      {item('help', headerWords.help)}
      <a role="menuitem" href={handbookHash()}>
        {shell.handbook}
      </a>
      {sound === null ? null : item('sound', headerWords.sound[sound])}
      {item('suspend', headerWords.suspend)}
      {item('clear', headerWords.abandon)}
    </div>
  );
}
