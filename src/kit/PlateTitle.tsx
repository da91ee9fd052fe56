/** Heads of the parts of a page: a number in a disc, for eyes alone, and the title. */
import type { ComponentChildren } from 'preact';

interface DiscProps {
  readonly children: ComponentChildren;
  readonly class?: string;
}

export function Disc({ children, class: kind = '' }: DiscProps) {
  return (
    <span class={`disc ${kind}`.trimEnd()} aria-hidden="true">
      {children}
    </span>
  );
}

interface PlateTitleProps {
  /** by which the part names itself */
  readonly id: string;
  readonly no: number;
  readonly children: ComponentChildren;
}

export function PlateTitle({ id, no, children }: PlateTitleProps) {
  return (
    <h2 class="plate-title" id={id}>
      <Disc>{no}</Disc>
      {children}
    </h2>
  );
}
