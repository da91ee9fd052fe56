/** The menu: keys and help, the handbook, suspending, clearing the bench. */

import { useLayoutEffect, useRef } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';
import { place, px } from '../../kit/px.ts';
import { Short } from '../../kit/Short.tsx';
import { Frame } from '../../kit/theme/art.tsx';
import { handbookHash } from '../../present/handbook/address.ts';
import { MenuBars } from './BenchHeader.tsx';
import type { BenchLayout } from './layout.ts';

export type MenuChoice = 'help' | 'suspend' | 'clear';

interface BenchMenuProps {
  readonly layout: BenchLayout;
  readonly open: boolean;
  readonly onToggle: () => void;
  readonly onChoose: (choice: MenuChoice) => void;
  /** to the technician at the same job; null: nobody shows it */
  readonly onWatch: (() => void) | null;
  /** address of the papers of this job */
  readonly papers: string;
}

export function BenchMenu({ layout, open, onToggle, onChoose, onWatch, papers }: BenchMenuProps) {
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
        <Choices low={layout.menu !== null} top={layout.header.height} {...{ onToggle, onChoose, onWatch, papers }} />
      ) : null}
    </>
  );
}

interface ChoicesProps {
  readonly low: boolean;
  readonly top: number;
  readonly onToggle: () => void;
  readonly onChoose: (choice: MenuChoice) => void;
  readonly onWatch: (() => void) | null;
  readonly papers: string;
}

function Choices({ low, top, onToggle, onChoose, onWatch, papers }: ChoicesProps) {
  const { header: headerWords, shell, demonstration, papers: papersWords } = useWords();
  const list = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
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
      {item('help', headerWords.help)}
      <a role="menuitem" href={handbookHash()}>
        {shell.handbook}
      </a>
      <a role="menuitem" href={papers}>
        {papersWords.title}
      </a>
      {onWatch === null ? null : (
        <button type="button" role="menuitem" onClick={onWatch}>
          {demonstration.watch}
        </button>
      )}
      {item('suspend', headerWords.suspend)}
      {item('clear', headerWords.abandon)}
    </div>
  );
}
