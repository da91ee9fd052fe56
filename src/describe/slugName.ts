/** How a slug is called in a sentence: its letter, and what it is. */
import type { Receiver } from '../receiver/receiver.ts';
import { slugLetters } from '../receiver/slugLetters.ts';
import type { Words } from '../words/words.ts';

/** `slug F (T3)`, `trap B (A2)`; an id that the receiver has not is given as it is. */
export function slugName(words: Words, receiver: Receiver, id: string): string {
  const { slugs } = words.names;
  const adjuster = receiver.adjusters.find((a) => a.id === id);
  const letter = slugLetters(receiver).get(id);
  if (adjuster === undefined || letter === undefined) return id;
  return adjuster.kind === 'trap' ? slugs.trap(letter, id) : slugs.slug(letter, id);
}

/** The same at the beginning of a sentence. */
export function slugNameFirst(words: Words, receiver: Receiver, id: string): string {
  const name = slugName(words, receiver, id);
  return name.charAt(0).toUpperCase() + name.slice(1);
}
