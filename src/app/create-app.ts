// Makes what screens use out of an open store: one for the plant's floor and, while practising, another for the floor practised on.

import { computed, type Signal, signal } from '@preact/signals';
import type { App, LabelWanted, Notice, Practice } from './app.ts';
import { afterPaint } from './device/after-paint.ts';
import { unlessAwaited } from './device/awaited.ts';
import type { Clock } from './device/clock.ts';
import { lineInHand, linesBeside } from './line-in-hand.ts';
import { sameList } from './same-list.ts';
import { createRawScans } from './scan/raw.ts';
import { createScanStream } from './scan/scan.ts';
import type { SkippedNext } from './skipped.ts';
import type { Preferences } from './store/preferences.ts';
import type { Store } from './store/store.ts';
import type { Connection } from './sync/connection.ts';
import type { SyncStatus } from './sync/ports.ts';

/** What an app is made of. */
export interface AppParts {
  readonly store: Store;
  readonly clock: Clock;
  /** What is wrong with the tablet's own clock, whatever floor is in hand. */
  readonly watch: Pick<App, 'clockSlip' | 'trustClock' | 'sawServerTime'>;
  readonly version: string;
  readonly preferences: Signal<Preferences>;
  readonly practice: Practice | null;
}

/** Makes the services of a floor; they follow its store and its clock. */
export function createApp(parts: AppParts): App {
  const { store, clock, watch, version, preferences, practice } = parts;
  const tick = signal(0);
  let tickWaits = false;
  store.onChange(() => {
    // A verdict is drawn before the lists under it; several entries in a row make one change of the screen.
    if (tickWaits) return;
    tickWaits = true;
    const change = () => {
      tickWaits = false;
      tick.value += 1;
    };
    afterPaint(() => unlessAwaited(change));
  });
  const nowMs = signal(clock.nowMs());
  const beat = () => {
    nowMs.value = clock.nowMs();
  };
  setInterval(() => {
    if (document.visibilityState === 'visible') unlessAwaited(beat);
  }, 1000);
  const line = computed(() => {
    tick.value;
    return lineInHand(preferences.value.line, store.floor().lines);
  });
  let beside: readonly string[] = [];
  const app: App = {
    store,
    clock,
    version,
    tick,
    nowMs,
    preferences,
    practice,
    isScreen: store.isScreen,
    clockSlip: watch.clockSlip,
    trustClock: watch.trustClock,
    sawServerTime: watch.sawServerTime,
    scans: createScanStream(),
    rawScans: createRawScans(),
    line,
    beside: computed(() => {
      tick.value;
      const { lines } = store.floor();
      // The same lines are no change: what follows them is not told at each entry.
      beside = sameList(beside, linesBeside(preferences.value.serves, line.value, lines));
      return beside;
    }),
    person: computed(() => {
      tick.value;
      return store.isScreen ? null : (store.floor().people.get(preferences.value.person ?? '') ?? null);
    }),
    write: (drafts) => store.append(drafts, app.person.value?.person ?? null),
    record: (drafts, { notice, next } = {}) => {
      app.write(drafts).then(
        () => {
          if (notice) app.notice.value = notice;
          next?.();
        },
        () => undefined, // shown by the fault screen
      );
    },
    openTasks: signal(0),
    lapses: signal(0),
    sync: signal<SyncStatus | null>(null),
    connection: signal<Connection | null>(null),
    notice: signal<Notice | null>(null),
    unreadLabel: signal<readonly string[] | null>(null),
    labelWanted: signal<LabelWanted | null>(null),
    skippedNext: signal<SkippedNext | null>(null),
  };
  return app;
}
