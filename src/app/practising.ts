// Practising: a floor of its own in a store of its own, beside the real one, which goes on. No screen of this window has the real store in
// hand, so nothing that is done in practice can reach the plant's log, its state, its exports, its trace or its server; only the watch
// over the real lines runs on, and breaks through. Refused: marking practice entries in the real log, where each fold, sum and export
// would have to remember to leave them out.

import { effect, signal } from '@preact/signals';
import { copyForPractice, inventPractice } from '../../shared/floor/practice-copy.ts';
import type { App } from './app.ts';
import { createApp } from './create-app.ts';
import { createAlarm } from './device/alarm.ts';
import { deviceClock } from './device/clock.ts';
import { mayCallHere } from './may-call.ts';
import { watchBeside } from './outlook/beside.ts';
import { openOn } from './outlook/open-warnings.ts';
import { createWarner } from './outlook/warn.ts';
import { startWatch } from './outlook/watch.ts';
import { forgetPractice, holdPractice, practiceSince, practiceStoreName } from './practice.ts';
import { realLineTold } from './real-line-told.ts';
import type { Preferences } from './store/preferences.ts';
import { openStore, type Store } from './store/store.ts';
import { throwAwayStore } from './store/throw-away.ts';
import { practiceMark } from './ui/PracticeMark.tsx';
import { practiceWords } from './words/practice.ts';
import { say } from './words/words.ts';

/** How often it is looked whether the practice is over by itself. */
const LOOK_EVERY_MS = 60_000;

/** Opens the floor to practise on; null where another window of this tablet practises already. */
export async function startPractising(real: App): Promise<App | null> {
  if (!(await holdPractice())) {
    forgetPractice();
    real.notice.value = { tone: 'care', text: say(practiceWords).taken };
    return null;
  }
  // What an earlier practice left is not this one's: a reload goes on, a new start does not.
  const since = practiceSince(deviceClock.nowMs());
  if (sessionStorage.getItem(startedKey) !== String(since)) await throwAwayStore(practiceStoreName);
  const store = await openStore({
    clock: real.clock,
    appVersion: real.version,
    tabletName: say(practiceWords).word,
    name: practiceStoreName,
    isPassing: true,
  });
  await seed(store, real);
  sessionStorage.setItem(startedKey, String(since));
  const practice = { real, end: () => endPractice(store) };
  const preferences = signal<Preferences>({ ...real.preferences.peek() });
  const app = createApp({
    store,
    clock: real.clock,
    watch: real,
    version: real.version,
    preferences,
    practice,
  });
  const alarm = createAlarm(mayCallHere(real));
  // The real line in hand and those beside it, as when nobody practises.
  const memory = { warner: createWarner(real, alarm), remembered: new Map() };
  const watch = startWatch(real, memory);
  const beside = watchBeside(real, memory);
  effect(() => {
    document.title = `${say(practiceWords).word} · Reelward`;
  });
  effect(() => {
    practiceMark.value = {
      told: realLineTold(real, openOn([watch, ...beside.value.map((each) => each.watch)])),
    };
  });
  setInterval(() => {
    if (practiceSince(deviceClock.nowMs()) === null) void practice.end();
  }, LOOK_EVERY_MS);
  return app;
}

const startedKey = 'reelward-practice-started';

/** Tells the floor as it is now to a store that has none yet: all in one, so that no half of it is ever there. */
async function seed(store: Store, real: App): Promise<void> {
  if (store.floor().lines.size > 0) return;
  const line = real.line.peek();
  const told =
    line === null
      ? inventPractice(say(practiceWords).names, Intl.DateTimeFormat().resolvedOptions().timeZone)
      : copyForPractice(real.store.floor(), line);
  await store.append(told, null);
}

/** Ends the practice: its store is thrown away and the page starts anew on the real floor. */
async function endPractice(store: Store): Promise<void> {
  forgetPractice();
  sessionStorage.removeItem(startedKey);
  await store.close();
  await throwAwayStore(practiceStoreName).catch(() => undefined); // left over, it goes at the next start
  location.hash = '#/line';
  location.reload();
}
