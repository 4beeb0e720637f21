// Text: nothing cut off, nothing over something else, nothing sticking out of its box, nothing that makes the page wider.

import {
  type Box,
  boxOf,
  type Cutter,
  common,
  cutterOf,
  cutters,
  inFront,
  inView,
  isShown,
  named,
  whileNothingMoves,
} from './shown.ts';

interface Text {
  readonly node: Text_;
  readonly element: Element;
  /** One for each line, uncut. */
  readonly lines: readonly Box[];
  readonly cutting: readonly Cutter[];
}
type Text_ = globalThis.Text;

/** Less than this is the rounding of a layout or the overhang of a letter, px. */
const SLACK_PX = 2;

/** Every piece of text that is drawn. */
export function textsOf(root: Element): readonly Text[] {
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  const shown = new Map<Element, readonly Cutter[] | null>();
  const found: Text[] = [];
  for (let node = walker.nextNode() as Text_ | null; node; node = walker.nextNode() as Text_ | null) {
    const element = node.parentElement;
    if (!element || !/\S/.test(node.data)) continue;
    if (element.closest('option, select, textarea, script, style, title, noscript')) continue;
    let cutting = shown.get(element);
    if (cutting === undefined) {
      cutting = isShown(element) ? [...ownCut(element), ...cutters(element)] : null;
      shown.set(element, cutting);
    }
    if (!cutting) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const lines = [...range.getClientRects()].map(boxOf).filter((box) => box.right - box.left > 1);
    if (lines.length > 0) found.push({ node, element, lines, cutting });
  }
  return found;
}

/** A text's own element may cut it too. */
function ownCut(element: Element): readonly Cutter[] {
  const probe = element.firstElementChild ?? null;
  if (probe && getComputedStyle(probe).position === 'static')
    return cutters(probe).filter((cutter) => cutter.element === element);
  const { overflowX, overflowY, display } = getComputedStyle(element);
  if (display === 'inline') return [];
  const cutter = cutterOf(element, overflowX, overflowY);
  return cutter ? [cutter] : [];
}

const quote = ({ node }: Text) => `"${node.data.replace(/\s+/g, ' ').trim().slice(0, 48)}"`;

/** Everything wrong with where the text stands. */
export function wrongTexts(root: Element): readonly string[] {
  return whileNothingMoves(() => wrongPlaces(root));
}

function wrongPlaces(root: Element): readonly string[] {
  const texts = textsOf(root);
  return [
    ...new Set([
      ...texts.flatMap(cutText),
      ...texts.flatMap(stickingOut),
      ...cutFields(root),
      ...overlapping(texts),
      ...texts.flatMap(covered),
      ...texts.flatMap(broken),
      ...toasts(texts),
      ...sideways(),
    ]),
  ];
}

/** A word that goes on in the next line, without a hyphen, for want of room. Codes and marked names break anywhere. */
function broken({ node, element, lines }: Text): readonly string[] {
  if (lines.length < 2 || element.closest('[translate=no], [data-raw], .code')) return [];
  const range = document.createRange();
  for (const { 0: word, index } of node.data.matchAll(/(?<![\p{L}\d._/-])\p{L}{3,}(?![\p{L}\d_/]|-\d)/gu)) {
    range.setStart(node, index);
    range.setEnd(node, index + word.length);
    const tops = [...range.getClientRects()].filter(({ width }) => width > 1).map(({ top }) => top);
    if (Math.max(...tops) - Math.min(...tops) > SLACK_PX) return [`broken: "${word}" in ${named(element)}`];
  }
  return [];
}

/** Text that a box cuts off and no finger brings into view. */
function cutText(text: Text): readonly string[] {
  // Each line where the boxes looked at so far let a finger bring it.
  let lines = text.lines;
  for (const cutter of text.cutting) {
    const ellipsis = getComputedStyle(cutter.element).textOverflow !== 'clip';
    for (const line of lines) {
      const over = Math.max(line.right - cutter.box.right, cutter.box.left - line.left);
      const tall = (line.bottom - line.top) * 0.3;
      const under = Math.max(line.bottom - cutter.box.bottom, cutter.box.top - line.top);
      const isCutX = cutter.cutsX && !cutter.scrollsX && over > SLACK_PX;
      const isCutY = cutter.cutsY && !cutter.scrollsY && under > tall;
      if (!isCutX && !isCutY) continue;
      if (ellipsis && isCutX && isTold(cutter.element, text)) continue;
      return [`cut off: ${quote(text)} by ${named(cutter.element)}, ${Math.round(Math.max(over, under))} px`];
    }
    lines = lines.map((line) => brought(line, cutter));
    if (
      cutter.element === text.element &&
      ellipsis &&
      isShortened(text.element) &&
      !isTold(text.element, text)
    )
      return [`cut off: ${quote(text)} ends in an ellipsis`];
  }
  return [];
}

/** Where a line stands once it is scrolled into the box around it, as far as that box scrolls. */
function brought(line: Box, { box, scrollsX, scrollsY }: Cutter): Box {
  const by = (from: number, to: number, least: number, most: number) =>
    Math.max(least - from, Math.min(0, most - to));
  const x = scrollsX ? by(line.left, line.right, box.left, box.right) : 0;
  const y = scrollsY ? by(line.top, line.bottom, box.top, box.bottom) : 0;
  return { left: line.left + x, right: line.right + x, top: line.top + y, bottom: line.bottom + y };
}

function isShortened(element: Element): boolean {
  return element.scrollWidth > element.clientWidth + 1;
}

/** True where the whole text is told another way that a person can get at. */
function isTold(element: Element, text: Text): boolean {
  return element.closest('[title]')?.getAttribute('title')?.includes(text.node.data.trim()) ?? false;
}

/** Fields whose example is longer than the field. What a person types scrolls, and a choice opens in full at a touch. */
function cutFields(root: Element): readonly string[] {
  const pen = document.createElement('canvas').getContext('2d');
  if (!pen) return [];
  return [...root.querySelectorAll<HTMLInputElement>('input[placeholder]')].flatMap((field) => {
    if (!isShown(field)) return [];
    const style = getComputedStyle(field);
    pen.font = style.font;
    const text = field.placeholder;
    const room =
      field.clientWidth - Number.parseFloat(style.paddingLeft) - Number.parseFloat(style.paddingRight);
    const over = pen.measureText(text).width - room;
    return over > SLACK_PX
      ? [`cut off: "${text.slice(0, 48)}" in ${named(field)}, ${Math.round(over)} px`]
      : [];
  });
}

/** Text that leaves its own drawn box, or the window with nothing to scroll. */
function stickingOut(text: Text): readonly string[] {
  const box = drawnBox(text.element);
  const scrolls = text.cutting.some(({ scrollsX }) => scrollsX);
  for (const line of text.lines) {
    if (box) {
      const limit = box.getBoundingClientRect();
      const over = Math.max(line.right - limit.right, limit.left - line.left);
      const between = text.cutting.some(({ element, cutsX }) => cutsX && box.contains(element));
      if (over > SLACK_PX && !between)
        return [`sticks out: ${quote(text)} of ${named(box)}, ${Math.round(over)} px`];
    }
    const out = Math.max(line.right - innerWidth, -line.left);
    if (out > SLACK_PX && !scrolls) return [`outside the window: ${quote(text)}, ${Math.round(out)} px`];
  }
  return [];
}

/** The nearest box around that has an edge or a ground of its own. */
function drawnBox(from: Element): Element | null {
  for (let each: Element | null = from; each && each !== document.body; each = each.parentElement) {
    if (each instanceof SVGElement) continue;
    const style = getComputedStyle(each);
    const hasEdge = style.borderLeftStyle !== 'none' && Number.parseFloat(style.borderLeftWidth) > 0;
    if (style.display !== 'inline' && (hasEdge || alpha(style.backgroundColor) > 0.05)) return each;
  }
  return null;
}

function alpha(colour: string): number {
  if (colour === 'transparent') return 0;
  const given = /[,/]\s*([\d.]+)\)$/.exec(/^rgba|\//.test(colour) ? colour : '')?.[1];
  return given === undefined ? 1 : Number(given);
}

/** Pairs of texts that are written over each other. */
function overlapping(texts: readonly Text[]): readonly string[] {
  const pieces = texts
    .flatMap((text) =>
      text.lines.flatMap((line) => {
        const seen = inView(line, text.cutting);
        if (!seen) return [];
        // The height of a line is more than that of its letters.
        const trim = (seen.bottom - seen.top) * 0.22;
        return [{ text, box: { ...seen, top: seen.top + trim, bottom: seen.bottom - trim } }];
      }),
    )
    .sort((a, b) => a.box.top - b.box.top);
  const found: string[] = [];
  for (const [index, a] of pieces.entries()) {
    for (let next = index + 1; next < pieces.length; next++) {
      const b = pieces[next];
      if (!b || b.box.top >= a.box.bottom) break;
      if (a.text === b.text) continue;
      const both = common(a.box, b.box);
      if (!both || both.right - both.left <= SLACK_PX || both.bottom - both.top <= SLACK_PX) continue;
      if (isLayered(a.text.element, b.text.element)) continue;
      found.push(
        `overlap: ${quote(a.text)} and ${quote(b.text)} in ${named(sharedOf(a.text.element, b.text.element))}`,
      );
    }
  }
  return found;
}

function sharedOf(a: Element, b: Element): Element {
  let each: Element | null = a;
  while (each && !each.contains(b)) each = each.parentElement;
  return each ?? document.body;
}

/** True where one of them stays in its place on purpose while the other scrolls under it, or floats over it for a moment. */
function isLayered(a: Element, b: Element): boolean {
  const shared = sharedOf(a, b);
  return [a, b].some((from) => {
    for (let each: Element | null = from; each && each !== shared; each = each.parentElement) {
      if (/sticky|fixed/.test(getComputedStyle(each).position)) return true;
    }
    return false;
  });
}

/** Less than this part of a line's height is no more than its edge. */
const EDGE_SHARE = 4;

/** Text with something else drawn over its middle. */
function covered(text: Text): readonly string[] {
  const { element } = text;
  if (element instanceof SVGElement || getComputedStyle(element).pointerEvents === 'none') return [];
  for (const line of text.lines) {
    const seen = inView(line, text.cutting);
    // Of a line scrolled out but for its edge nothing is read, and the edge lies within the room of what is beside it.
    if (!seen || seen.right - seen.left < 2) continue;
    if (seen.bottom - seen.top < Math.max(2, (line.bottom - line.top) / EDGE_SHARE)) continue;
    const hit = document.elementFromPoint((seen.left + seen.right) / 2, (seen.top + seen.bottom) / 2);
    if (!hit || hit.contains(element)) continue;
    if (element.contains(hit) && !isPlacedOver(hit, element)) continue;
    if (getComputedStyle(hit).opacity === '0' || isLayered(element, hit)) continue;
    if (hit.closest('label') && hit.closest('label') === element.closest('label')) continue;
    return [`covered: ${quote(text)} by ${named(hit)}`];
  }
  return [];
}

/** True for a part of an element that is taken out of its place and has a ground that hides what is below. */
function isPlacedOver(part: Element, element: Element): boolean {
  for (let each: Element | null = part; each && each !== element; each = each.parentElement) {
    const { position, backgroundColor } = getComputedStyle(each);
    if (position === 'absolute' && alpha(backgroundColor) > 0.5) return true;
  }
  return false;
}

/** Passing messages that lie over a warning, or over what no scrolling brings out. */
function toasts(texts: readonly Text[]): readonly string[] {
  return [...document.querySelectorAll('[role=status], .notice')].flatMap((toast) => {
    if (!isShown(toast) || getComputedStyle(toast).position !== 'fixed') return [];
    const over = boxOf(toast.getBoundingClientRect());
    return texts.flatMap((text) => {
      if (toast.contains(text.element)) return [];
      const isWarning = text.element.closest('.caution, [role=alert], .banner') !== null;
      const stays = !text.cutting.some(({ scrollsY }) => scrollsY);
      if (!isWarning && !stays) return [];
      const hidden = text.lines.some((line) => {
        const seen = inView(line, text.cutting);
        return seen !== null && common(seen, over) !== null;
      });
      return hidden ? [`under the toast: ${quote(text)}`] : [];
    });
  });
}

/** What makes a page scroll sideways: the document, the main area, a dialog, the curtain over all. */
function sideways(): readonly string[] {
  const root = document.scrollingElement ?? document.documentElement;
  const wide = [root, ...document.querySelectorAll('main, dialog:modal, .curtain')].filter(
    (each) => each.scrollWidth > each.clientWidth + 1 && (each === root || inFront().contains(each)),
  );
  return wide.map(
    (each) =>
      `sideways: ${each.localName} is ${each.scrollWidth - each.clientWidth} px too wide${widest(each)}`,
  );
}

/** Who reaches furthest out. */
function widest(root: Element): string {
  const isRtl = getComputedStyle(root).direction === 'rtl';
  const reach = (element: Element) => {
    const { left, right } = element.getBoundingClientRect();
    return isRtl ? -left : right;
  };
  const all = [...root.querySelectorAll('*')].filter(
    (each) => !cutters(each).some((cut) => root.contains(cut.element) && cut.element !== root),
  );
  const furthest = all.sort((a, b) => reach(b) - reach(a))[0];
  return furthest ? `: ${named(furthest)}` : '';
}
