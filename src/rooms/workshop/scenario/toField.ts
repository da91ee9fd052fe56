/** From what is said about the draft's file to the field where it is mended. */

/** Keys of the file that have a text field of their own on the form. */
const WITH_FIELD: ReadonlySet<string> = new Set([
  '/title',
  '/words/brief',
  '/words/story',
  '/words/lesson',
  '/id',
  '/code',
  '/track',
  '/author',
  '/language',
]);

export const hasField = (place: string): boolean => WITH_FIELD.has(place);

export function toField(place: string): void {
  const field = document.querySelector<HTMLElement>(`.form-panel [data-place="${place}"]`);
  field?.focus({ preventScroll: true });
  field?.scrollIntoView({ block: 'center' });
}
