// Composition root: builds the store, the clock, the stream of scans and the desk, and hands them down.

import { computed, effect, signal } from '@preact/signals';
import { render } from 'preact';
import * as z from 'zod/mini';
import { type App, AppContext, type Notice, type Preferences } from './app.ts';
import { demoStoreName, isDemo, loadDemo } from './demo/demo.ts';
import { demoClock, readDemoState } from './demo/play.ts';
import { createDesk } from './desk/desk.ts';
import { createAlarm } from './device/alarm.ts';
import { startOffline } from './device/offline.ts';
import { askToKeep, readStorage, type StorageHealth } from './device/storage.ts';
import type { Connection } from './frame/connect.ts';
import { FaultCurtain } from './frame/FaultCurtain.tsx';
import { signIn } from './frame/PeopleDialogs.tsx';
import { Root } from './frame/Root.tsx';
import { startWatch } from './outlook/watch.ts';
import { followAddress } from './router.ts';
import { createRawScans } from './scan/raw.ts';
import { createScanStream } from './scan/scan.ts';
import { DEFAULT_WEDGE_SETTINGS } from './scan/wedge.ts';
import { attachWedge } from './scan/wedge-dom.ts';
import type { StoreFault } from './store/database.ts';
import { keepPreferences, readPreferences } from './store/preferences.ts';
import { openStore, StoreError } from './store/store.ts';
import type { SyncStatus } from './sync/ports.ts';
import { language } from './words/words.ts';
import './ui/theme.css';

declare const __APP_VERSION__: string;

// Checks of input are compiled from text otherwise, which the page's own policy forbids.
z.config({ jitless: true });

const root = document.getElementById('app') as HTMLElement; // in index.html

async function start(): Promise<void> {
  const demo = isDemo() ? await readDemoState() : null;
  const clock = demoClock(demo);
  const store = await openStore({
    clock,
    appVersion: __APP_VERSION__,
    tabletName: navigator.platform || 'tablet',
    ...(isDemo() ? { name: demoStoreName } : {}),
  });
  const preferences = signal<Preferences>(await readPreferences(store.cache));
  const fault = signal<StoreFault | null>(null);
  store.onFault((found) => {
    fault.value = found;
  });
  const tick = signal(0);
  store.onChange(() => {
    tick.value += 1;
  });
  const nowMs = signal(clock.nowMs());
  setInterval(() => {
    if (document.visibilityState === 'visible') nowMs.value = clock.nowMs();
  }, 1000);
  const openTasks = signal(0);
  const app: App = {
    store,
    scans: createScanStream(),
    rawScans: createRawScans(),
    clock,
    version: __APP_VERSION__,
    tick,
    nowMs,
    preferences,
    line: computed(() => {
      tick.value;
      const { lines } = store.floor();
      const wanted = preferences.value.line;
      return wanted !== null && lines.has(wanted) ? wanted : (lines.keys().next().value ?? null);
    }),
    person: computed(() => {
      tick.value;
      return store.floor().people.get(preferences.value.person ?? '') ?? null;
    }),
    write: (wishes) => store.append(wishes, app.person.value?.person ?? null),
    openTasks,
    sync: signal<SyncStatus | null>(null),
    connection: signal<Connection | null>(null),
    notice: signal<Notice | null>(null),
  };
  const desk = createDesk(app, {
    onTakeOut: (slot, scan) =>
      void import('./desk/take-out.ts').then(({ takeOut }) => takeOut(app, slot, scan.via)),
    onBadge: (id) => {
      const person = store.floor().people.get(id);
      if (person) signIn(app, person, { how: 'badge', checked: 'tablet' });
    },
    onPanel: (run, serial, scan) => {
      const line = app.line.value;
      if (line === null) return;
      const panels = (store.floor().runs.get(run)?.done ?? 0) + 1;
      app
        .write([{ kind: 'panels.counted', payload: { run, line, add: 1, panels, serial, via: scan.via } }])
        .catch(() => undefined); // shown by the fault screen
    },
  });
  app.scans.take((scan) => desk.take(scan));
  attachWedge(window, app.scans, {
    nowMs: clock.nowMs,
    settings: () => ({ ...DEFAULT_WEDGE_SETTINGS, ...preferences.peek().scanner }),
    onRaw: (scan) => app.rawScans.push(scan),
  });
  followAddress();

  effect(() => {
    void keepPreferences(store.cache, preferences.value);
    language.value = preferences.value.language;
    document.documentElement.lang = preferences.value.language;
  });
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const showTheme = () => {
    const { theme } = preferences.value;
    document.documentElement.dataset['theme'] = theme === 'auto' ? (dark.matches ? 'dark' : 'light') : theme;
  };
  effect(showTheme);
  dark.addEventListener('change', showTheme);
  effect(() => {
    const busy = desk.desk.value.slot !== null || desk.desk.value.reel !== null || desk.busy.value;
    deskOpen.value = busy ? 1 : 0;
  });
  const offline = startOffline(() => openTasks.value + deskOpen.value);
  const storage = signal<StorageHealth>({ kept: null, usedBytes: null, quotaBytes: null });
  const lookAtStorage = async () => {
    storage.value = await readStorage();
  };
  void lookAtStorage();
  setInterval(() => void lookAtStorage(), 60_000);
  addEventListener('pointerdown', () => void askToKeep().then(lookAtStorage), { once: true });

  await loadDemo(app, demo);
  const alarm = createAlarm(() => preferences.value.sound);
  const watch = startWatch(app, alarm);
  render(
    <AppContext.Provider value={app}>
      <Root desk={desk} offline={offline} fault={fault} storage={storage} watch={watch} alarm={alarm} />
    </AppContext.Provider>,
    root,
  );
  document.documentElement.dataset['ready'] = 'true';
  const { connect } = await import('./frame/connect.ts');
  app.connection.value = await connect(app);
}

const deskOpen = signal(0);

start().catch((error: unknown) => {
  const fault = error instanceof StoreError ? error.fault : 'unknown';
  render(<FaultCurtain fault={fault} detail={String(error)} />, root);
});
