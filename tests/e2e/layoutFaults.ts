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
  /** For ears only, or not there. */
  const isSeen = (element: Element): boolean => {
    if (!element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) return false;
    for (let at: Element | null = element; at !== null; at = at.parentElement) {
      if (styleOf(at).clipPath.startsWith('inset(50%')) return false;
    }
    return true;
  };
  const parentOf = (element: Element): Element | null => element.parentElement;

  /** What of a box can be seen, and what may never be: cut at boxes that hide, hidden at boxes that scroll. Null: scrolled away. */
  function showing(line: Line): { readonly box: Box; readonly cutBy: Element | null } | null {
    const box = { ...line.box };
    let cutBy: Element | null = null;
    let fixed = false;
    for (let at: Element | null = line.element; at !== null && at !== document.body; at = parentOf(at)) {
      const style = styleOf(at);
      if (style.position === 'fixed' || at.localName === 'dialog') fixed = true;
      if (style.display === 'inline' || style.display === 'contents') continue;
      const isSvg = at instanceof SVGElement;
      if (isSvg && at.localName !== 'svg') continue;
      const edges = at.getBoundingClientRect();
      const shortened =
        (style.textOverflow === 'ellipsis' || style.webkitLineClamp !== 'none') && at.closest('[title]') !== null;
      for (const [axis, low, high] of [
        ['overflowX', 'left', 'right'],
        ['overflowY', 'top', 'bottom'],
      ] as const) {
        const how = style[axis];
        if (how === 'visible') continue;
        const over = Math.max(edges[low] - box[low], box[high] - edges[high]);
        const scrolls = how === 'auto' || how === 'scroll';
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
    const { left, right, top, bottom } = svg.getBoundingClientRect();
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
      const edges = svg.getBoundingClientRect();
      const over = Math.max(edges.left - line.box.left, line.box.right - edges.right);
      const tall = Math.max(edges.top - line.box.top, line.box.bottom - edges.bottom);
      if (Math.max(over, tall) > SLACK) add('outside', `${where}: of its drawing ${named(svg)} ${px(edges)}`);
    }
    const sheet = [...ancestors(line.element)].find((one) => one.querySelector(':scope > .frame') !== null);
    if (sheet !== undefined) {
      const edges = sheet.getBoundingClientRect();
      const over = Math.max(edges.left - box.left, box.right - edges.right);
      const tall = Math.max(edges.top - box.top, box.bottom - edges.bottom);
      if (Math.max(over, tall) > SLACK) add('outside', `${where}: of its frame ${named(sheet)} ${px(edges)}`);
    }
    seen.push({ line, box });
  }

  function* ancestors(element: Element): Generator<Element> {
    for (let at: Element | null = element; at !== null && at !== document.body; at = parentOf(at)) yield at;
  }

  // Words on words. What lies under something that is not to be seen through does not count.
  // Text and drawings that let the pointer through are made to stop it for as long as it takes.
  const sheets = [...document.adoptedStyleSheets];
  const hittable = new CSSStyleSheet();
  hittable.replaceSync('* { pointer-events: auto !important; }');
  document.adoptedStyleSheets = [...sheets, hittable];
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
      if (isCovered(one.line.element, x, y) || isCovered(other.line.element, x, y)) continue;
      const [a, b] = [one, other].map(({ line }) => `“${line.text}” in ${named(line.element)}`);
      add('overlap', `${a} and ${b} at ${px({ left, right, top, bottom })}`);
    }
  }
  document.adoptedStyleSheets = sheets;

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
