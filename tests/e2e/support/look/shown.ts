// What of a page is in front of a person: the part that answers touches, which boxes cut it off, and how to name it in a report.

/** A box in px of the window. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The part that can be used: the modal dialog on top, else the whole body. */
export function inFront(): Element {
  return [...document.querySelectorAll('dialog:modal')].at(-1) ?? document.body;
}

/** True where it is drawn, not put out of use, and no mere text for readers of the screen. */
export function isShown(element: Element): boolean {
  if (element.closest('[inert]')) return false;
  if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return false;
  return !isForReaders(element);
}

/** True for what is cut to one pixel on purpose, so that only readers of the screen meet it. */
export function isForReaders(element: Element): boolean {
  for (let each: Element | null = element; each; each = each.parentElement) {
    const { clipPath, position } = getComputedStyle(each);
    if (clipPath === 'inset(50%)') return true; // cut to nothing until the keyboard comes to it
    if (clipPath !== 'none' && position === 'absolute' && each.getBoundingClientRect().width <= 1.5)
      return true;
  }
  return false;
}

export function boxOf(rect: DOMRect): Box {
  return { left: rect.left, top: rect.top, right: rect.right, bottom: rect.bottom };
}

/** What two boxes have in common; null where nothing. */
export function common(a: Box, b: Box): Box | null {
  const box = {
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  };
  return box.right - box.left > 0.5 && box.bottom - box.top > 0.5 ? box : null;
}

/** A box that cuts off what stands in it. */
export interface Cutter {
  readonly element: Element;
  readonly box: Box;
  /** Can a finger bring the rest into view? By direction. */
  readonly scrollsX: boolean;
  readonly scrollsY: boolean;
  readonly cutsX: boolean;
  readonly cutsY: boolean;
}

/** What a box does to what stands in it. */
interface Holder {
  readonly position: string;
  readonly isMoved: boolean;
  /** Null where nothing is cut off. */
  readonly cutter: Cutter | null;
}

/** While nothing is moved, a box is asked once for all that stands in it. */
let known: Map<Element, Holder> | null = null;

/** Does a work in which nothing moves and nothing is scrolled: what boxes cut off is then remembered. */
export function whileNothingMoves<T>(work: () => T): T {
  known = new Map();
  try {
    return work();
  } finally {
    known = null;
  }
}

function holderOf(element: Element): Holder {
  const before = known?.get(element);
  if (before) return before;
  const { position, transform, overflowX, overflowY } = getComputedStyle(element);
  const holder = { position, isMoved: transform !== 'none', cutter: cutterOf(element, overflowX, overflowY) };
  known?.set(element, holder);
  return holder;
}

/** What an element with such an overflow cuts off; null where nothing. */
export function cutterOf(element: Element, overflowX: string, overflowY: string): Cutter | null {
  const cutsX = overflowX !== 'visible';
  const cutsY = overflowY !== 'visible';
  if (!cutsX && !cutsY) return null;
  const { left, top } = element.getBoundingClientRect();
  const x = left + element.clientLeft;
  const y = top + element.clientTop;
  return {
    element,
    box: { left: x, top: y, right: x + element.clientWidth, bottom: y + element.clientHeight },
    scrollsX: /auto|scroll/.test(overflowX),
    scrollsY: /auto|scroll/.test(overflowY),
    cutsX,
    cutsY,
  };
}

/** Every box that cuts an element off, the nearest first; the window is not among them. */
export function cutters(element: Element): readonly Cutter[] {
  const found: Cutter[] = [];
  let { position } = getComputedStyle(element);
  if (element.matches('dialog:modal')) return found;
  for (
    let each = element.parentElement;
    each && each !== document.documentElement;
    each = each.parentElement
  ) {
    const holder = holderOf(each);
    const holds = holder.position !== 'static' || holder.isMoved;
    const isPast = position === 'fixed' ? !holder.isMoved : position === 'absolute' && !holds;
    if (!isPast) {
      position = holder.position;
      if (holder.cutter) found.push(holder.cutter);
    }
    if (each.matches('dialog:modal')) break;
  }
  return found;
}

const far = 1e6;

/** The part of a box that is in view: inside the window and inside every box that cuts it. */
export function inView(box: Box, cutting: readonly Cutter[]): Box | null {
  let seen = common(box, { left: 0, top: 0, right: innerWidth, bottom: innerHeight });
  for (const { box: limit, cutsX, cutsY } of cutting) {
    if (!seen) return null;
    seen = common(seen, {
      left: cutsX ? limit.left : -far,
      right: cutsX ? limit.right : far,
      top: cutsY ? limit.top : -far,
      bottom: cutsY ? limit.bottom : far,
    });
  }
  return seen;
}

/** An element in a few words, for a report. */
export function named(element: Element): string {
  const id =
    element.getAttribute('data-testid') ?? element.closest('[data-testid]')?.getAttribute('data-testid');
  const kind = element.classList.length > 0 ? `.${[...element.classList].join('.')}` : '';
  const text = (element.getAttribute('aria-label') ?? element.textContent ?? '').replace(/\s+/g, ' ').trim();
  const own = element.hasAttribute('data-testid') ? `#${id}` : id ? ` in #${id}` : '';
  return `${element.localName}${kind}${own}${text ? ` "${text.slice(0, 48)}"` : ''}`;
}
