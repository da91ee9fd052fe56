/** The numbered heading of a part of the bench: dark disc and title. */
import type { ComponentChildren } from 'preact';

export function SceneHead({
  no,
  children,
  hideTitle = false,
}: {
  readonly no: number;
  readonly children: ComponentChildren;
  /** the disc alone is seen; the title is still read out */
  readonly hideTitle?: boolean;
}) {
  return (
    <h2 class="scene-head">
      <span class="disc" aria-hidden="true">
        {no}
      </span>
      <span class={hideTitle ? 'unseen' : 'h'}>{children}</span>
    </h2>
  );
}

export const placed = (r: { x: number; y: number; width: number; height: number }) => ({
  left: `${r.x}px`,
  top: `${r.y}px`,
  width: `${r.width}px`,
  height: `${r.height}px`,
});
