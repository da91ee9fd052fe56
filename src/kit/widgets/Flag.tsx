/**
 * The dark flag that says, on hover, what a click or drag would do. For mouse eyes only: the twin control says the same to the rest, and the words are drawn by
 * the style sheet, so that they do not count as part of the control's name.
 */
export function Flag({ words }: { readonly words: string }) {
  return <span class="flag" aria-hidden="true" data-word={words} />;
}
