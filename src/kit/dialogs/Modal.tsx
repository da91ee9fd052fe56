/** A question or a notice on paper over the bench: the browser's own dialog, so that focus stays in it and goes back where it was. */
import type { ComponentChildren } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { Frame } from '../theme/art.tsx';
import './modal.css';

export interface ModalProps {
  readonly title: ComponentChildren;
  readonly children: ComponentChildren;
  /** what escape does; null: it must be answered */
  readonly onCancel: (() => void) | null;
  /** keys of its own; no other key leaves it */
  readonly onKey?: (event: KeyboardEvent) => void;
  readonly wide?: boolean;
  readonly danger?: boolean;
}

export function Modal({ title, children, onCancel, onKey, wide = false, danger = false }: ModalProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useLayoutEffect(() => {
    const element = dialog.current;
    if (element === null || element.open) return;
    element.showModal();
    element.querySelector<HTMLElement>('h2')?.focus();
    return () => element.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      class={`modal${wide ? ' wide' : ''}${danger ? ' danger' : ''}`}
      aria-labelledby={heading}
      onCancel={(event) => {
        event.preventDefault();
        onCancel?.();
      }}
      onKeyDown={(event) => {
        event.stopPropagation();
        onKey?.(event);
      }}
    >
      <div class="modal-paper">
        <Frame kind="sheet" />
        <div class="modal-text">
          <h2 id={heading} tabIndex={-1}>
            {title}
          </h2>
          {children}
        </div>
      </div>
    </dialog>
  );
}
