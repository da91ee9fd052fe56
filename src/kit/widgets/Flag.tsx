/** The dark flag that says, on hover, what a click or drag would do. For mouse eyes only: the twin control says the same to the rest. */
export function Flag({ words }: { readonly words: string }) {
  return (
    <span class="flag" aria-hidden="true">
      {words}
    </span>
  );
}
