/**
 * Focus that stays with the work. Where the control that has it goes away or can no longer be used (a card is taken off, the last step is undone, another draft is laid out), whoever works by keys would
 * stand at the top of the page again. It goes to the same control drawn anew where there is one, else to a neighbour: one of the same kind first, the next before the one in front.
 */
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

const USABLE =
  'button:not(:disabled), input:not(:disabled, [type=file]), select:not(:disabled), textarea:not(:disabled), summary, a[href], [tabindex="0"]';

/** Where the focus was, as the page stood then. */
interface FocusPlace {
  readonly element: Element;
  readonly named: string;
  /** of those with the same name, which one */
  readonly nth: number;
  readonly parents: readonly Element[];
  readonly inOrder: readonly Element[];
}

/** Kept while the page is: the rooms of the workshop follow one another, and a tab is pressed in one and drawn by the next. */
let last: FocusPlace | null = null;

export function useFocusKept(container: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const root = container.current;
    if (root === null) return;
    const note = (): void => {
      const now = document.activeElement;
      last = now !== null && now !== root && root.contains(now) ? placeOf(now, root) : null;
    };
    const mend = (): void => {
      if (last === null || !isNowhere() || isUsable(last.element)) return;
      const next = anew(last, root) ?? neighbour(last, root);
      next?.focus();
    };
    const watch = new MutationObserver(mend);
    watch.observe(root, { subtree: true, childList: true, attributeFilter: ['disabled'] });
    root.addEventListener('focusin', note);
    // A hand that clicks where nothing takes the focus has left it.
    root.addEventListener('click', note, true);
    // From another room only a tab that was pressed there is come back to: a field would pull the page down to it.
    const isTab = last?.parents.some(({ tagName }) => tagName === 'NAV') ?? false;
    if (last !== null && isTab && isNowhere()) anew(last, root)?.focus();
    else last = null;
    return () => {
      watch.disconnect();
      root.removeEventListener('focusin', note);
      root.removeEventListener('click', note, true);
    };
  }, []);
}

/** A control that is disabled keeps the focus for a moment, but hears no key. */
function isNowhere(): boolean {
  const now = document.activeElement;
  return now === null || now === document.body || now.matches(':disabled');
}

const isUsable = (element: Element): boolean => element.isConnected && !element.matches(':disabled');

const usable = (root: Element): HTMLElement[] => [...root.querySelectorAll<HTMLElement>(USABLE)];

function placeOf(element: Element, root: HTMLElement): FocusPlace {
  const parents: Element[] = [];
  for (let at = element.parentElement; at !== null && root.contains(at); at = at.parentElement) parents.push(at);
  const inOrder = usable(root);
  const named = nameOf(element);
  const alike = inOrder.filter((one) => nameOf(one) === named);
  return { element, named, nth: alike.indexOf(element as HTMLElement), parents, inOrder };
}

function nameOf(element: Element): string {
  const label =
    element instanceof HTMLInputElement || element instanceof HTMLSelectElement ? element.labels?.[0] : null;
  const said = element.getAttribute('aria-label') ?? label?.querySelector('.l')?.textContent ?? element.textContent;
  return `${element.tagName} ${element.classList[0] ?? ''} ${said}`;
}

function anew({ named, nth }: FocusPlace, root: HTMLElement): HTMLElement | null {
  if (named.trim() === '') return null;
  const alike = usable(root).filter((one) => nameOf(one) === named);
  return alike[Math.min(Math.max(nth, 0), alike.length - 1)] ?? null;
}

function neighbour({ element, parents, inOrder }: FocusPlace, root: HTMLElement): HTMLElement | null {
  const at = inOrder.indexOf(element);
  const kind = (one: Element): boolean => one.tagName === element.tagName && one.className === element.className;
  const around = [...parents.filter((parent) => parent.isConnected && root.contains(parent)), root];
  for (const parent of around) {
    const there = usable(parent);
    if (there.length === 0) continue;
    const after = inOrder.slice(at + 1).filter((one) => there.includes(one as HTMLElement));
    const before = inOrder.slice(0, Math.max(at, 0)).filter((one) => there.includes(one as HTMLElement));
    const next = after.find(kind) ?? before.findLast(kind) ?? after[0] ?? before.at(-1) ?? there[0];
    if (next instanceof HTMLElement) return next;
  }
  return null;
}
