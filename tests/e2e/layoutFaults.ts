/**
 * What is wrong with how a page lies, found in the page itself: text that is too small, cut off, beside its frame or on other text, targets too small to
 * hit, a page that scrolls sideways. Runs inside the browser, so it uses nothing from outside this one function.
 */

export interface LayoutFault {
  readonly kind: 'small text' | 'small target' | 'cut text' | 'outside' | 'overlap' | 'sideways';
  readonly what: string;
}

/** `within`: a selector; only what stands in the last element that it finds is looked at. Sizes in CSS pixels. */
export function layoutFaults(within: string): LayoutFault[] {
  // WCAG 2.2, success criterion 2.5.8 (target size, minimum): 24 by 24.
  const LEAST_TARGET = 24;
  // House rule: no lettering below 12.
  const LEAST_TEXT = 12;
  const SLACK = 2;
  const MOST_OVERLAP = 3;
  const AXES = [
    ['overflowX', 'left', 'right'],
    ['overflowY', 'top', 'bottom'],
  ] as const;

  interface Line {
    readonly text: string;
    readonly node: Node;
    readonly element: Element;
    /** where its letters are, roughly from the top of capitals to the foot line */
    readonly box: Box;
  }
  interface Box {
    left: number;
    right: number;
    top: number;
    bottom: number;
  }

  const was = [scrollX, scrollY] as const;
  const faults: LayoutFault[] = [];
  const told = new Set<string>();
  const add = (kind: LayoutFault['kind'], what: string): void => {
    if (told.has(kind + what)) return;
    told.add(kind + what);
    faults.push({ kind, what });
  };
  const root = [...document.querySelectorAll(within)].at(-1);
  if (root === undefined) throw new Error(`nothing is ${within}`);
  const named = (element: Element): string =>
    `${element.localName}.${[...(element.closest('[class]')?.classList ?? [])].join('.')}`;
  const clipped = (text: string): string => text.trim().replace(/\s+/g, ' ').slice(0, 60);
  const px = (box: Box): string => `${[box.left, box.top, box.right, box.bottom].map(Math.round).join(' ')}`;

  const styles = new Map<Element, CSSStyleDeclaration>();
  const styleOf = (element: Element): CSSStyleDeclaration => {
    const known = styles.get(element) ?? getComputedStyle(element);
    styles.set(element, known);
    return known;
  };
  /** Lines ask the same of the same boxes above them: each box is asked once. */
  const once = <T>(ask: (element: Element) => T): ((element: Element) => T) => {
    const known = new Map<Element, T>();
    return (element) => {
      if (!known.has(element)) known.set(element, ask(element));
      return known.get(element)!;
    };
  };
  const isForEars = once(
    (element): boolean =>
      styleOf(element).clipPath.startsWith('inset(50%') ||
      (element.parentElement !== null && isForEars(element.parentElement)),
  );
  /** For ears only, or not there. */
  const isSeen = once(
    (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && !isForEars(element),
  );
  const parentOf = (element: Element): Element | null => element.parentElement;
  const edgesOf = once((element) => element.getBoundingClientRect());
  /** What a box does to what stands in it. */
  const boxOf = once((element) => {
    const style = styleOf(element);
    const { display, overflowX, overflowY } = style;
    const isSvg = element instanceof SVGElement;
    const cuts =
      display !== 'inline' &&
      display !== 'contents' &&
      (!isSvg || element.localName === 'svg') &&
      (overflowX !== 'visible' || overflowY !== 'visible');
    return {
      cuts,
      overflowX,
      overflowY,
      isFixed: style.position === 'fixed' || element.localName === 'dialog',
      isBox: display !== 'inline' && display !== 'contents' && (!isSvg || element.localName === 'svg'),
      shortened:
        cuts &&
        (style.textOverflow === 'ellipsis' || style.webkitLineClamp !== 'none') &&
        element.closest('[title]') !== null,
    };
  });

  /** What of a box can be seen, and what may never be: cut at boxes that hide, hidden at boxes that scroll. Null: scrolled away. */
  function showing(line: Line): { readonly box: Box; readonly cutBy: Element | null } | null {
    const box = { ...line.box };
    let cutBy: Element | null = null;
    let fixed = false;
    for (let at: Element | null = line.element; at !== null && at !== document.body; at = parentOf(at)) {
      const { cuts, isFixed, isBox, shortened, ...how } = boxOf(at);
      if (isFixed) fixed = true;
      if (!isBox) continue;
      for (const [axis, low, high] of AXES) {
        if (!cuts || how[axis] === 'visible') continue;
        const edges = edgesOf(at);
        const over = Math.max(edges[low] - box[low], box[high] - edges[high]);
        const scrolls = how[axis] === 'auto' || how[axis] === 'scroll';
        if (!scrolls && !shortened && over > SLACK) cutBy ??= at;
        box[low] = Math.max(box[low], edges[low]);
        box[high] = Math.min(box[high], edges[high]);
      }
      if (box.right - box.left <= 1 || box.bottom - box.top <= 1) return cutBy === null ? null : { box, cutBy };
      if (fixed) break;
    }
    return { box, cutBy };
  }

  /** A drawing shows part of a scale through a window of its own: what slides past the window's edge is meant to. */
  function isClipped({ element, box }: Line): boolean {
    const svg = element.closest('[clip-path]')?.closest('svg');
    if (svg === null || svg === undefined) return false;
    const { left, right, top, bottom } = edgesOf(svg);
    return box.left < left || box.right > right || box.top < top || box.bottom > bottom;
  }

  function scaleOf(element: Element): number {
    if (element instanceof SVGGraphicsElement) {
      const matrix = element.getScreenCTM();
      return matrix === null ? 1 : Math.hypot(matrix.b, matrix.d);
    }
    return 1;
  }

  const lines: Line[] = [];
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const element = node.parentElement;
    if (element === null || node.textContent!.trim() === '') continue;
    if (['option', 'script', 'style', 'title', 'desc', 'defs'].includes(element.localName) || !isSeen(element))
      continue;
    const size = Number.parseFloat(styleOf(element).fontSize) * scaleOf(element);
    const text = clipped(node.textContent!);
    if (size < LEAST_TEXT - 0.05) add('small text', `${size.toFixed(1)}: “${text}” in ${named(element)}`);
    range.selectNodeContents(node);
    const drawn = element instanceof SVGElement ? [element.getBoundingClientRect()] : [...range.getClientRects()];
    for (const { left, right, top, bottom } of drawn) {
      if (right - left < 1) continue;
      const middle = (top + bottom) / 2;
      const turned = styleOf(element).writingMode !== 'horizontal-tb' || bottom - top > 2.2 * size;
      const half = turned ? (bottom - top) / 2 : Math.min((bottom - top) / 2, size * 0.36);
      lines.push({ text, node, element, box: { left, right, top: middle - half, bottom: middle + half } });
    }
  }

  /** The nearest thing about an element that has a frame of its own. */
  const sheetOf = once((element): Element | null => {
    if (element === document.body) return null;
    if (element.querySelector(':scope > .frame')?.checkVisibility()) return element;
    const parent = parentOf(element);
    return parent === null ? null : sheetOf(parent);
  });

  const seen: { readonly line: Line; readonly box: Box }[] = [];
  for (const line of lines) {
    const shown = showing(line);
    if (shown === null || isClipped(line)) continue;
    const { box, cutBy } = shown;
    const where = `“${line.text}” in ${named(line.element)} at ${px(line.box)}`;
    if (cutBy !== null) add('cut text', `${where}, by ${named(cutBy)}`);
    if (box.left < -SLACK || box.right > innerWidth + SLACK) add('outside', `${where}: beside the window`);
    const svg = line.element.closest('svg');
    if (svg !== null) {
      const edges = edgesOf(svg);
      const over = Math.max(edges.left - line.box.left, line.box.right - edges.right);
      const tall = Math.max(edges.top - line.box.top, line.box.bottom - edges.bottom);
      if (Math.max(over, tall) > SLACK) add('outside', `${where}: of its drawing ${named(svg)} ${px(edges)}`);
    }
    const sheet = sheetOf(line.element);
    if (sheet !== null) {
      const edges = edgesOf(sheet);
      const over = Math.max(edges.left - box.left, box.right - edges.right);
      const tall = Math.max(edges.top - box.top, box.bottom - edges.bottom);
      if (Math.max(over, tall) > SLACK) add('outside', `${where}: of its frame ${named(sheet)} ${px(edges)}`);
    }
    seen.push({ line, box });
  }

  // Words on words. What lies under something that is not to be seen through does not count.
  // Text and drawings that let the pointer through are made to stop it for as long as it takes.
  const sheets = [...document.adoptedStyleSheets];
  const letAllBeHit = (): void => {
    if (document.adoptedStyleSheets.length > sheets.length) return;
    const hittable = new CSSStyleSheet();
    hittable.replaceSync('* { pointer-events: auto !important; }');
    document.adoptedStyleSheets = [...sheets, hittable];
  };
  const isOpaque = (element: Element): boolean => {
    const { backgroundColor, opacity, fill, fillOpacity } = styleOf(element);
    if (Number(opacity) < 0.5) return false;
    if (element instanceof SVGGeometryElement) return fill.startsWith('rgb(') && Number(fillOpacity) > 0.9;
    const alpha = /rgba\(.*,\s*([\d.]+)\)/.exec(backgroundColor);
    return alpha === null ? backgroundColor.startsWith('rgb') : Number(alpha[1]) > 0.9;
  };
  const isCovered = (element: Element, x: number, y: number): boolean => {
    const now = (): number => y + was[1] - scrollY;
    if (now() < 0 || now() >= innerHeight) scrollBy(0, now() - innerHeight / 2);
    for (const over of document.elementsFromPoint(x, now())) {
      if (over === element || over.contains(element)) return false;
      if (
        isOpaque(over) ||
        (over.closest('.frame') !== null && !over.closest('.frame')!.parentElement!.contains(element))
      )
        return true;
    }
    return false;
  };
  const inOrder = seen.sort((a, b) => a.box.top - b.box.top);
  for (const [i, one] of inOrder.entries()) {
    for (let j = i + 1; j < inOrder.length && inOrder[j]!.box.top < one.box.bottom - MOST_OVERLAP; j++) {
      const other = inOrder[j]!;
      const left = Math.max(one.box.left, other.box.left);
      const right = Math.min(one.box.right, other.box.right);
      const top = Math.max(one.box.top, other.box.top);
      const bottom = Math.min(one.box.bottom, other.box.bottom);
      // A text that is cut short is drawn twice: whole, and as it is seen.
      if (one.line.node === other.line.node || right - left <= MOST_OVERLAP || bottom - top <= MOST_OVERLAP) continue;
      const x = (left + right) / 2;
      const y = (top + bottom) / 2;
      letAllBeHit();
      if (isCovered(one.line.element, x, y) || isCovered(other.line.element, x, y)) continue;
      const [a, b] = [one, other].map(({ line }) => `“${line.text}” in ${named(line.element)}`);
      add('overlap', `${a} and ${b} at ${px({ left, right, top, bottom })}`);
    }
  }
  if (document.adoptedStyleSheets.length > sheets.length) document.adoptedStyleSheets = sheets;

  // Targets: as large as their box, or as large as what lets itself be hit.
  for (const target of root.querySelectorAll(
    'button, input, select, summary, [role=button], [role=radio], [role=tab], [role=switch], a[href]',
  )) {
    if (target.localName === 'a' && styleOf(target).display === 'inline') continue;
    const label = target instanceof HTMLInputElement ? (target.labels?.[0] ?? null) : null;
    const holder = label ?? target;
    if (!target.checkVisibility({ visibilityProperty: true })) continue;
    if (label === null && (!isSeen(target) || styleOf(target).pointerEvents === 'none')) continue;
    const { width, height } = holder.getBoundingClientRect();
    if (Math.min(width, height) >= LEAST_TARGET - 0.5) continue;
    target.scrollIntoView({ block: 'center', inline: 'nearest' });
    const { left, right, top, bottom } = holder.getBoundingClientRect();
    const x = (left + right) / 2;
    const y = (top + bottom) / 2;
    const reach = LEAST_TARGET / 2 - 0.75;
    const isHit = ([dx, dy]: readonly [number, number]): boolean => {
      const hit = document.elementFromPoint(x + dx, y + dy);
      return (
        hit !== null && (holder.contains(hit) || (hit.contains(target) === false && hit.closest('label') === holder))
      );
    };
    const sides = [
      [width < LEAST_TARGET ? -reach : 0, 0],
      [width < LEAST_TARGET ? reach : 0, 0],
      [0, height < LEAST_TARGET ? -reach : 0],
      [0, height < LEAST_TARGET ? reach : 0],
    ] as const;
    if (!sides.every(isHit)) {
      add(
        'small target',
        `${width.toFixed(0)} x ${height.toFixed(0)}: “${clipped(target.textContent || (target.getAttribute('aria-label') ?? ''))}” ${named(target)}`,
      );
    }
  }
  scrollTo(...was);

  const { scrollWidth, clientWidth } = document.documentElement;
  if (scrollWidth > clientWidth) add('sideways', `${scrollWidth - clientWidth} px`);
  return faults;
}
