// Composition root: builds the store, the clock, the stream of scans and the desk, and hands them down.

import { computed, effect, signal } from '@preact/signals';
import { render } from 'preact';
import * as z from 'zod/mini';
import { type App, AppContext, type Notice, type Preferences } from './app.ts';
import { demoStoreName, isDemo } from './demo/is-demo.ts';
import { afterPaint } from './device/after-paint.ts';
import { deviceClock } from './device/clock.ts';
import { later } from './device/later.ts';
import { askToKeep, readStorage, type StorageHealth } from './device/storage.ts';
import type { Connection } from './frame/connect.ts';
import { FaultCurtain } from './frame/FaultCurtain.tsx';
import { Root } from './frame/Root.tsx';
import { followAddress } from './router.ts';
import { createRawScans } from './scan/raw.ts';
import { createScanStream } from './scan/scan.ts';
import type { StoreFault } from './store/database.ts';
import { keepPreferences, readPreferences } from './store/preferences.ts';
import { openStore, StoreError } from './store/store.ts';
import type { SyncStatus } from './sync/ports.ts';
import { type Spoken, speak } from './words/speak.ts';
import type { Work } from './work.ts';
import './ui/theme.css';

declare const __APP_VERSION__: string;

// Checks of input are compiled from text otherwise, which the page's own policy forbids.
z.config({ jitless: true });

const root = document.getElementById('app') as HTMLElement; // in index.html

async function start(): Promise<void> {
  // Fetched while the log opens.
  const workModule = import('./work.ts');
  const play = isDemo() ? await import('./demo/play.ts') : null;
  const demo = play ? await play.readDemoState() : null;
  const clock = play ? play.demoClock(demo) : deviceClock;
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
  let tickWaits = false;
  store.onChange(() => {
    // A verdict is drawn before the lists under it; several entries in a row make one change of the screen.
    if (tickWaits) return;
    tickWaits = true;
    afterPaint(() => {
      tickWaits = false;
      tick.value += 1;
    });
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
    unreadLabel: signal<readonly string[] | null>(null),
  };
  followAddress();

  effect(() => {
    void keepPreferences(store.cache, preferences.value);
    speak(preferences.value, document.documentElement);
  });
  // The one way to the words that a layout is tried with: `dispatchEvent(new CustomEvent('reelward-speak', { detail: { pseudo: 'long' } }))`.
  addEventListener('reelward-speak', (event) => {
    const wanted = (event as CustomEvent<Partial<Spoken>>).detail;
    preferences.value = { ...preferences.value, ...wanted };
  });
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const showTheme = () => {
    const { theme } = preferences.value;
    document.documentElement.dataset['theme'] = theme === 'auto' ? (dark.matches ? 'dark' : 'light') : theme;
  };
  effect(showTheme);
  dark.addEventListener('change', showTheme);
  const storage = signal<StorageHealth>({ kept: null, usedBytes: null, quotaBytes: null });
  const lookAtStorage = async () => {
    storage.value = await readStorage();
  };
  void lookAtStorage();
  setInterval(() => void lookAtStorage(), 60_000);
  addEventListener('pointerdown', () => void askToKeep().then(lookAtStorage), { once: true });

  if (isDemo()) await (await import('./demo/demo.ts')).loadDemo(app, demo);
  const work = signal<Work | null>(null);
  render(
    <AppContext.Provider value={app}>
      <Root work={work} fault={fault} storage={storage} />
    </AppContext.Provider>,
    root,
  );
  work.value = (await workModule).startWork(app);
  document.documentElement.dataset['ready'] = 'true';
  later(() => {
    void import('./frame/connect.ts').then(async ({ connect }) => {
      app.connection.value = await connect(app);
    });
  });
}

start().catch((error: unknown) => {
  const fault = error instanceof StoreError ? error.fault : 'unknown';
  render(<FaultCurtain fault={fault} detail={String(error)} />, root);
});
