/** A field with its name over it, for eyes; for ears the field has the name itself. */
import type { ComponentChildren } from 'preact';

export function Labelled({ name, children }: { readonly name: string; readonly children: ComponentChildren }) {
  return (
    <div class="made-labelled">
      <span class="ls" aria-hidden="true">
        {name}
      </span>
      {children}
    </div>
  );
}
