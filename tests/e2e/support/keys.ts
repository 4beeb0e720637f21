// A person at the keyboard: Tab and Shift+Tab to a control by what it is called, then Enter, Space or an arrow. No pointer, no test id. After
// every key the focus must be somewhere, drawn, within the window and not covered (WCAG 2.2: 2.1.1, 2.4.7, 2.4.11).

import { errors, type Page } from 'playwright-core';
import { drawn, pass } from './clock.ts';
import { typeByHand } from './floor.ts';

/** What has the focus. */
export interface Focus {
  /** Role or element, e.g. `button`. */
  readonly is: string;
  /** What it is called; blanks are one. */
  readonly name: string;
  /** True for a question, a part of the page: a place, and nothing to press. */
  readonly isPlace: boolean;
  /** What is wrong with how it is seen; empty where nothing is. */
  readonly faults: readonly string[];
}

/** What has the focus where nothing has. */
const NOTHING = 'nothing';

/** Reads what has the focus, and how it is seen. */
export function focusOf(page: Page): Promise<Focus> {
  return page.evaluate((nothing) => {
    const focused = document.activeElement as HTMLElement | null;
    if (!focused || focused === document.body || focused === document.documentElement)
      return { is: nothing, name: '', isPlace: true, faults: ['the focus is lost'] };
    const labels = 'labels' in focused ? [...((focused.labels as NodeListOf<HTMLElement> | null) ?? [])] : [];
    const [label] = labels.flatMap(
      ({ firstElementChild, textContent }) => firstElementChild?.textContent ?? textContent ?? [],
    );
    const called = focused.getAttribute('aria-labelledby');
    const name =
      focused.ariaLabel ??
      (called === null ? label : document.getElementById(called)?.textContent) ??
      focused.textContent ??
      '';
    const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(focused);
    const box = focused.getBoundingClientRect();
    const [x, y] = [
      Math.min(Math.max((box.left + box.right) / 2, 1), innerWidth - 2),
      Math.min(Math.max((box.top + box.bottom) / 2, 1), innerHeight - 2),
    ];
    const top = document.elementFromPoint(x, y);
    const isContainer = focused.tabIndex < 0;
    const isWithin =
      box.width > 0 &&
      box.height > 0 &&
      (isContainer
        ? box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth
        : box.top >= -1 && box.left >= -1 && box.bottom <= innerHeight + 1 && box.right <= innerWidth + 1);
    const faults = [
      outlineStyle === 'none' || Number.parseFloat(outlineWidth) < 2 || / 0\)$/.test(outlineColor)
        ? 'no outline'
        : '',
      isWithin ? '' : `outside the window: ${[box.left, box.top, box.right, box.bottom].map(Math.round)}`,
      // A container is what is left of a place: all that must be seen of it is its outline.
      isContainer || (top !== null && (focused.contains(top) || top.contains(focused)))
        ? ''
        : `covered by ${top?.tagName}.${top?.className}`,
    ].filter((each) => each !== '');
    return {
      is: focused.role ?? focused.tagName.toLowerCase(),
      name: name.replace(/\s+/g, ' ').trim(),
      isPlace: isContainer,
      faults,
    };
  }, NOTHING);
}

/** Where the focus is once the page is drawn, seen as it must be; throws with what is wrong with it. */
export async function seenFocus(page: Page, after: string): Promise<Focus> {
  await drawn(page);
  return looked(page, after);
}

/** The same without waiting for what is drawn: Tab moves the focus at once. */
async function looked(page: Page, after: string): Promise<Focus> {
  let focus = await focusOf(page);
  // Asked again after each wait: what has the focus may be taken away between the wait and the look.
  while (focus.is === NOTHING && (await comesBack(page))) focus = await focusOf(page);
  if (focus.faults.length > 0)
    throw new Error(`After ${after}, on ${focus.is} “${focus.name}”: ${focus.faults.join(', ')}`);
  return focus;
}

/** Waits for a focus that is lost: it comes back with what took it away, as a PIN that is being checked. False where it is lost for good. */
async function comesBack(page: Page): Promise<boolean> {
  try {
    await page.waitForFunction(() => document.activeElement !== document.body);
    return true;
  } catch (error) {
    if (!(error instanceof errors.TimeoutError)) throw error;
    return false;
  }
}

/** So long after a scan a Tab or Enter is still taken for its end; a hand is slower. */
const AFTER_SCAN_MS = 750;

/** How far away a control may be, in presses of Tab. */
const MOST_TABS = 80;

/** Presses Tab (or Shift+Tab) until the control with this name has the focus. */
export async function tabTo(
  page: Page,
  name: string | RegExp,
  key: 'Tab' | 'Shift+Tab' = 'Tab',
): Promise<Focus> {
  const isIt = ({ name: found, isPlace }: Focus) =>
    !isPlace && (typeof name === 'string' ? found === name : name.test(found));
  const passed: string[] = [];
  await pass(page, AFTER_SCAN_MS);
  for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
    await page.keyboard.press(key);
    const focus = await looked(page, `${key} from ${passed.at(-1) ?? 'the start'} on the way to ${name}`);
    if (isIt(focus)) return focus;
    passed.push(focus.name);
  }
  throw new Error(`${name} is further than ${MOST_TABS} tabs: ${passed.join(' | ')}`);
}

/** Presses a key where the focus is; afterwards it is still somewhere. */
export async function press(page: Page, key: string): Promise<Focus> {
  const { name } = await focusOf(page);
  await page.keyboard.press(key);
  return seenFocus(page, `${key} on “${name}”`);
}

/** Goes to a control and presses it. */
export async function act(
  page: Page,
  name: string | RegExp,
  key: 'Enter' | 'Space' = 'Enter',
): Promise<Focus> {
  await tabTo(page, name);
  return press(page, key);
}

/** Types into the field that has the focus, as a person does. */
export async function type(page: Page, text: string): Promise<void> {
  await typeByHand(page, text);
  await pass(page, AFTER_SCAN_MS);
  await seenFocus(page, `typing ${text}`);
}
