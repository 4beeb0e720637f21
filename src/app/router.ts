// Which screen: the part of the address after `#/`. A signal and one listener; a routing library was refused for six names.

import { signal } from '@preact/signals';

/** Screens that the navigation knows, in its order. */
export const screens = ['line', 'load', 'change', 'stock', 'log', 'plant'] as const;
/** Screens beside them, each with a door of its own. */
export const besideScreens = ['search', 'lines', 'wall'] as const;
export type NavScreen = (typeof screens)[number];
export type ScreenName = NavScreen | (typeof besideScreens)[number];

/** Where we are: a screen and what follows it. */
export interface Place {
  readonly screen: ScreenName;
  readonly rest: readonly string[];
}

/** A link by which a tablet joins its plant's server: `/#enrol=ABCDE-FGHJK`. */
const enrolLink = /^#enrol=([0-9A-Za-z-]+)$/;

function readPlace(): Place {
  const code = enrolLink.exec(location.hash)?.[1];
  if (code !== undefined) return { screen: 'plant', rest: ['server', code] };
  const [name, ...rest] = location.hash.replace(/^#\/?/, '').split('/').map(decodeURIComponent);
  const screen = [...screens, ...besideScreens].find((known) => known === name) ?? 'line';
  return { screen, rest: rest.filter((part) => part !== '') };
}

/** The place shown. */
export const place = signal<Place>(readPlace());

/** The place of the navigation that was shown last: the way back from a screen beside it. */
let last: Place = { screen: 'line', rest: [] };

/** Follows the address bar. */
export function followAddress(): void {
  addEventListener('hashchange', () => {
    const { screen } = place.value;
    if (screens.some((known) => known === screen)) last = place.value;
    place.value = readPlace();
  });
}

/** Goes back to where the screen beside the navigation was opened from. */
export function goBack(): void {
  goTo(last.screen, ...last.rest);
}

/** The address of a place, for links. */
export function address(screen: ScreenName, ...rest: readonly string[]): string {
  return `#/${[screen, ...rest].map(encodeURIComponent).join('/')}`;
}

/** Goes to a place. */
export function goTo(screen: ScreenName, ...rest: readonly string[]): void {
  location.hash = address(screen, ...rest);
}

/** A move for later, when what was asked here is written: who has gone elsewhere meanwhile is left there. */
export function fromHereTo(screen: ScreenName, ...rest: readonly string[]): () => void {
  const here = location.hash;
  return () => {
    if (location.hash === here) goTo(screen, ...rest);
  };
}

/** The address now is that of this place, and the one before is not kept: what it asked for is done. Nobody is told as by a move. */
export function settleAt(screen: ScreenName, ...rest: readonly string[]): void {
  history.replaceState(history.state, '', address(screen, ...rest));
  place.value = { screen, rest };
}
