/** Words in a place that may be too narrow for them: they end in an ellipsis there, and the title says them whole. */
import './short.css';

export function Short({ children, class: cls }: { readonly children: string; readonly class?: string }) {
  return (
    <span class={cls === undefined ? 'short' : `short ${cls}`} title={children}>
      {children}
    </span>
  );
}
