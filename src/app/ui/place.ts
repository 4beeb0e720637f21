// The place of a person at the keyboard. What is pressed is often gone once it has done its work, and a verdict covers the screen: the browser
// then gives the focus to nothing, and the way begins again at the top of the page. Here it goes to what is left around that place. Whoever uses a
// finger has no place, and is given none: a scanner's Enter must press nothing.

import { useLayoutEffect, useRef } from 'preact/hooks';

/** Places that a person may be brought back to: through a verdict and the questions over it. */
const PLACES_KEPT = 8;
/** Each with what is around it, innermost first. */
let places: (readonly HTMLElement[])[] = [];
let isAtKeys = false;

/** What has the focus; null where nothing has. */
const focused = (): HTMLElement | null =>
  document.activeElement instanceof HTMLElement && document.activeElement !== document.body
    ? document.activeElement
    : null;

/** What a person is at: a question, a verdict, or a part of the frame. Around it there is no place of its own. */
const REGIONS = 'dialog, .verdict, main, .dock, nav, .topbar, .notice';

/** An element and what is around it, up to its region. */
function pathOf(element: HTMLElement): readonly HTMLElement[] {
  const region = element.closest(REGIONS);
  const path: HTMLElement[] = [];
  for (let at: HTMLElement | null = element; at && at !== document.body; at = at.parentElement) {
    path.push(at);
    if (at === region) break;
  }
  return path;
}

/** True where it is drawn and takes the focus. */
const takesPlace = (element: HTMLElement): boolean =>
  element.isConnected && element.getClientRects().length > 0 && element.closest('[inert]') === null;

/** Focuses what stands, as a place of its own where it is no control. */
function goToPlace(element: HTMLElement): void {
  if (element.tabIndex < 0 && !element.hasAttribute('tabindex')) element.tabIndex = -1; // no stop of its own for Tab
  element.focus({ preventScroll: true });
}

function giveBack(): void {
  if (!isAtKeys || focused() !== null) return;
  for (let path = places.pop(); path; path = places.pop()) {
    const left = path.find(takesPlace);
    if (left) {
      goToPlace(left);
      return;
    }
  }
  const main = document.querySelector<HTMLElement>('main');
  if (main) goToPlace(main);
}

/** Follows where a person at the keyboard is, from now on. */
export function followPlace(): void {
  // What is taken away is looked for once what took it away is done: a dialog brings a person back by itself.
  const watch = new MutationObserver(() => {
    if (focused() === null) setTimeout(giveBack, 0);
  });
  const leaveKeys = () => {
    isAtKeys = false;
    places = [];
    watch.disconnect();
  };
  addEventListener('pointerdown', leaveKeys, { capture: true, passive: true });
  addEventListener('keydown', ({ key }) => {
    if (key !== 'Tab' || isAtKeys) return;
    isAtKeys = true;
    watch.observe(document.body, { childList: true, subtree: true });
  });
  addEventListener('focusin', ({ target }) => {
    if (!isAtKeys || !(target instanceof HTMLElement)) return;
    const path = pathOf(target);
    // Of each region the last place alone.
    places = [...places.filter((each) => each.at(-1) !== path.at(-1)), path].slice(-PLACES_KEPT);
  });
}

/** For what covers the screen: a person at the keyboard is taken to it as it comes, before what lies under it is shut off. */
export function useTakesPlace<E extends HTMLElement>() {
  const element = useRef<E>(null);
  useLayoutEffect(() => {
    if (isAtKeys && element.current && focused()?.closest('dialog') == null) goToPlace(element.current);
  }, []);
  return element;
}
