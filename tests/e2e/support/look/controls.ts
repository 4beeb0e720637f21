// Controls: each can be touched where it is drawn (topmost at its centre, inside the window or its scroller), is large enough
// for a gloved finger, and says what it is.

import { type Box, boxOf, cutters, inView, isShown, named } from './shown.ts';

const selector =
  'button, a[href], input:not([type=hidden]), select, textarea, summary, label:has(input), ' +
  ['button', 'link', 'tab', 'checkbox', 'radio', 'switch', 'menuitem', 'option', 'slider']
    .map((role) => `[role=${role}]`)
    .join(', ');

/** Side of the smallest target, and of the smallest for gloves, px; half a px is the rounding of a layout. */
const LEAST_PX = 48 - 0.5;
const LEAST_GLOVES_PX = 72 - 0.5;

/** Everything wrong with the controls of a part of the page. */
export function wrongControls(root: Element): readonly string[] {
  const found: string[] = [];
  const leastPx = document.documentElement.hasAttribute('data-gloves') ? LEAST_GLOVES_PX : LEAST_PX;
  for (const element of root.querySelectorAll(selector)) {
    // The sink takes a scanner's keys on tablets that show a keyboard otherwise; it is no control.
    if (element.matches('[data-scan-sink]')) continue;
    const target = targetOf(element);
    if (!target || !isShown(target)) continue;
    const { width, height } = target.getBoundingClientRect();
    if (width === 0 && height === 0 && element.matches('label')) continue;
    const what = named(target);
    if (element === target || !element.matches('label')) {
      if (nameOf(element) === '') found.push(`no name: ${what} ${outer(element)}`);
    }
    if (width < leastPx || height < leastPx)
      found.push(`small: ${Math.round(width)} × ${Math.round(height)} px, ${what}`);
    const why = unreachable(target);
    if (why) found.push(`out of reach: ${what} ${why}`);
  }
  return [...new Set(found)];
}

function outer(element: Element): string {
  return element.outerHTML.replace(/\s+/g, ' ').slice(0, 100);
}

/** What the finger goes for: a choice or a file field is touched by its label. Null where another entry stands for it. */
function targetOf(element: Element): Element | null {
  if (element instanceof HTMLLabelElement) {
    return element.control?.matches('[type=checkbox], [type=radio], [type=file]') ? element : null;
  }
  if (element.matches('input[type=checkbox], input[type=radio], input[type=file]')) {
    return [...((element as HTMLInputElement).labels ?? [])].at(0) ?? element;
  }
  return element;
}

/** The accessible name, near enough to tell one from none; axe knows the rest of the rule. */
function nameOf(element: Element): string {
  const by = (element.getAttribute('aria-labelledby') ?? '')
    .split(/\s+/)
    .map((id) => document.getElementById(id)?.textContent ?? '')
    .join(' ');
  const labels = 'labels' in element ? [...((element as HTMLInputElement).labels ?? [])] : [];
  const pictures = [...element.querySelectorAll('img[alt], svg[aria-label], svg title')];
  const isField = element.matches('input, select, textarea');
  return [
    by,
    element.getAttribute('aria-label'),
    ...labels.map((label) => textBeside(label, element)),
    isField ? null : element.textContent,
    element.getAttribute('title'),
    ...pictures.map(
      (each) => each.getAttribute('alt') ?? each.getAttribute('aria-label') ?? each.textContent,
    ),
  ]
    .join('')
    .trim();
}

/** A label's text without that of the field in it, e.g. the options of a choice. */
function textBeside(label: Element, field: Element): string {
  const copy = label.cloneNode(true) as Element;
  if (label.contains(field))
    for (const each of copy.querySelectorAll('input, select, textarea')) each.remove();
  return copy.textContent ?? '';
}

/** Why no touch at its centre reaches it; null where one does. */
function unreachable(element: Element): string | null {
  const now = touch(element);
  if (now === null) return null;
  const scrollers = cutters(element).map(({ element: each }) => each);
  const all = document.scrollingElement ? [...scrollers, document.scrollingElement] : scrollers;
  const before = all.map((each) => [each, each.scrollLeft, each.scrollTop] as const);
  element.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
  const then = touch(element);
  // A script may move what is cut off for good; a finger may not.
  const forced = before.find(([each, left, top]) => {
    const { overflowX, overflowY } = getComputedStyle(each);
    const isRoot = each === document.scrollingElement;
    const scrolls = (overflow: string) => /auto|scroll/.test(overflow) || (isRoot && overflow === 'visible');
    return (
      (each.scrollLeft !== left && !scrolls(overflowX)) || (each.scrollTop !== top && !scrolls(overflowY))
    );
  })?.[0];
  for (const [each, left, top] of before) each.scrollTo({ left, top, behavior: 'instant' });
  if (forced) return `is cut off by ${named(forced)}`;
  return then;
}

/** What is touched at its centre instead of it; null where it is touched itself. */
function touch(element: Element): string | null {
  const rects = [...element.getClientRects()];
  const largest = rects.sort((a, b) => b.width * b.height - a.width * a.height)[0];
  if (!largest || largest.width === 0 || largest.height === 0) return 'has no size';
  const box: Box = boxOf(largest);
  const x = (box.left + box.right) / 2;
  const y = (box.top + box.bottom) / 2;
  const middle: Box = { left: x - 1, top: y - 1, right: x + 1, bottom: y + 1 };
  if (!inView(middle, cutters(element)))
    return `lies outside (${Math.round(x)}, ${Math.round(y)} in ${innerWidth} × ${innerHeight})`;
  const hit = document.elementFromPoint(x, y);
  if (!hit) return `is not met at ${Math.round(x)}, ${Math.round(y)}`;
  if (hit === element || element.contains(hit)) return null;
  const label = hit.closest('label');
  if (label && 'labels' in element && [...((element as HTMLInputElement).labels ?? [])].includes(label))
    return null;
  return `lies under ${named(hit)}`;
}
