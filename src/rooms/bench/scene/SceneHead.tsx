/** The numbered heading of a part of the bench: dark disc and title. */
import { Disc } from '../../../kit/PlateTitle.tsx';
import { Short } from '../../../kit/Short.tsx';

export function SceneHead({
  no,
  children,
  hideTitle = false,
}: {
  readonly no: number;
  readonly children: string;
  /** the disc alone is seen; the title is still read out */
  readonly hideTitle?: boolean;
}) {
  return (
    <h2 class="scene-head">
      <Disc>{no}</Disc>
      {hideTitle ? <span class="unseen">{children}</span> : <Short class="h">{children}</Short>}
    </h2>
  );
}

export const placed = (r: { x: number; y: number; width: number; height: number }) => ({
  left: `${r.x}px`,
  top: `${r.y}px`,
  width: `${r.width}px`,
  height: `${r.height}px`,
});
