/** A paper slip: something is told, and what can be done about it stands below. In a page, over a page, or alone where there is no page to be shown. */
import type { ComponentChildren } from 'preact';
import { Frame, Header } from '../theme/art.tsx';
import './slip.css';

export interface SlipProps {
  /** left out: the text speaks for itself */
  readonly title?: string;
  readonly children: ComponentChildren;
  readonly buttons?: ComponentChildren;
  /** something may be lost: said at once, and drawn in rust */
  readonly urgent?: boolean;
}

export function Slip({ title, children, buttons, urgent = false }: SlipProps) {
  return (
    <section class={urgent ? 'slip urgent' : 'slip'} role={urgent ? 'alert' : 'status'}>
      <Frame kind="card" />
      <div class="slip-text">
        {title === undefined ? null : <h2>{title}</h2>}
        {children}
      </div>
      {buttons === undefined ? null : <div class="slip-buttons">{buttons}</div>}
    </section>
  );
}

/** Slips over a page, at its lower edge. */
export function SlipStack({ name, children }: { readonly name: string; readonly children: ComponentChildren }) {
  return (
    <aside class="slip-stack" aria-label={name}>
      {children}
    </aside>
  );
}

export interface SlipPageProps extends Omit<SlipProps, 'children' | 'urgent'> {
  readonly product: string;
  /** what it is for: the page's heading */
  readonly title: string;
  readonly busy?: boolean;
  readonly children?: ComponentChildren;
}

export function SlipPage({ product, title, busy = false, children, buttons }: SlipPageProps) {
  return (
    <div class="slip-page">
      <Header product={product} />
      <main aria-busy={busy}>
        <section class="slip" role="status">
          <Frame kind="card" />
          <div class="slip-text">
            <h1>{title}</h1>
            {children}
          </div>
          {buttons === undefined ? null : <div class="slip-buttons">{buttons}</div>}
        </section>
      </main>
    </div>
  );
}
