// Signs out whoever left the tablet alone, or has been signed in for a shift. Nothing in hand is thrown away: scans, drafts and open
// dialogs stay, but nobody acts in the name of who left.

import { effect } from '@preact/signals';
import { signOutLimits } from '../../../shared/floor/sign-out.ts';
import type { Person } from '../../../shared/floor/state.ts';
import type { App } from '../app.ts';
import { afterPaint } from '../device/after-paint.ts';
import { deviceClock, elapsedClock } from '../device/clock.ts';
import { createPresence, type KeptPresence } from '../device/presence.ts';
import { keep, readKept } from '../store/preferences.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { away } from './away.ts';
import { signOut } from './sign-in.ts';

const keptAs = 'presence';
/** Of the dozens of keys that a scanner sends one in so long counts. */
const USE_EVERY_MS = 500;
/** A touch is kept this much later at the latest: a crash costs no more. */
const KEEP_EVERY_MS = 60_000;

/** Follows touches, keys and scans. */
export async function startPresence(app: App): Promise<void> {
  let known = app.preferences.peek().signedInMs;
  const kept = await readKept<KeptPresence>(app.store.cache, keptAs);
  const presence = createPresence({ wall: deviceClock, steady: elapsedClock }, kept);
  let keptMs = Number.NEGATIVE_INFINITY;
  const keepNow = () => {
    keptMs = elapsedClock.nowMs();
    void keep(app.store.cache, keptAs, presence.kept());
  };
  const look = () => {
    const person = app.person.peek();
    if (!person) return;
    const floor = app.store.floor();
    const line = app.line.peek() ?? '';
    const limits = signOutLimits(floor.rules.get(line), floor.idles.get(line));
    const why = presence.ended(limits);
    if (why !== null) signOutAway(app, person, { why, minutes: Math.round(limits.idleMs / 60_000) });
  };
  let used = { wallMs: Number.NEGATIVE_INFINITY, atMs: Number.NEGATIVE_INFINITY };
  const use = () => {
    const [wallMs, atMs] = [deviceClock.nowMs(), elapsedClock.nowMs()];
    // By both clocks: the one may stand still while the tablet sleeps, the other be set back.
    if (Math.abs(wallMs - used.wallMs) < USE_EVERY_MS && atMs - used.atMs < USE_EVERY_MS) return;
    used = { wallMs, atMs };
    look(); // before it counts: a touch after hours is somebody else's
    presence.used();
    if (atMs - keptMs >= KEEP_EVERY_MS) keepNow();
  };
  effect(() => {
    const { person, signedInMs } = app.preferences.value;
    if (signedInMs === known) return;
    known = signedInMs;
    if (person === null) return;
    presence.signedIn();
    keepNow();
  });
  look();
  addEventListener('pointerdown', use, true);
  addEventListener('keydown', use, true);
  app.scans.subscribe(use);
  document.addEventListener('visibilitychange', look);
  setInterval(look, 1000);
}

function signOutAway(
  app: App,
  person: Person,
  { why, minutes }: { readonly why: 'idle' | 'shift'; readonly minutes: number },
): void {
  const words = say(shellWords);
  const isBusy = document.querySelector('dialog[open]') !== null;
  signOut(app, person, why);
  app.lapses.value += 1;
  // After what was open has asked for its own badge again: the newest taker of scans is the one on top.
  if (isBusy)
    afterPaint(() => {
      away.value = person;
    });
  const text = why === 'idle' ? words.leftAlone(person.name, minutes) : words.shiftOver(person.name);
  app.notice.value = { tone: 'plain', text };
}
