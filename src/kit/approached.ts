/** What an element has to hear so that whoever is about to press it is noticed. */
import type { Approach } from '../present/ports.ts';

export const approached = ({ near, reach }: Approach) => ({
  onPointerEnter: () => near(true),
  onPointerLeave: () => near(false),
  onPointerDown: reach,
  onFocus: reach,
});
