// Composition root: builds the store, the clock, the stream of scans and the desk, and hands them down.

import { effect, type ReadonlySignal, signal } from '@preact/signals';
import { render } from 'preact';
import { type App, AppContext } from './app.ts';
import { createApp } from './create-app.ts';
import { demoStoreName, isDemo } from './demo/is-demo.ts';
import { createSteadyClock } from './device/clock.ts';
import { later } from './device/later.ts';
import { trustOwnScripts } from './device/trusted.ts';
import { FaultCurtain } from './frame/FaultCurtain.tsx';
import { NoWords } from './frame/NoWords.tsx';
import { Root } from './frame/Root.tsx';
import { forgetPractice, isPractised, practiceSince, practiceStoreName } from './practice.ts';
import { followAddress } from './router.ts';
import { followLanguage, speakAsBefore, wishedLanguage } from './spoken.ts';
import type { StoreFault } from './store/database.ts';
import { keepPreferences, type Preferences } from './store/preferences.ts';
import { openStore, type Store, StoreError } from './store/store.ts';
import { followTouches } from './ui/press.ts';
import { followFingers } from './ui/still.ts';
import { watchStorage } from './watch-storage.ts';
import { withWords, wordsHere } from './words/fetch.ts';
import { type Spoken, speak } from './words/speak.ts';
import type { Work } from './work.ts';
import './ui/theme.css';
import './ui/hands.css';

declare const __APP_VERSION__: string;

trustOwnScripts();

const root = document.getElementById('app') as HTMLElement; // in index.html

async function start(): Promise<void> {
  // Both are fetched while the log opens.
  speakAsBefore();
  const workModule = withWords(import('./work.ts'));
  workModule.catch(() => undefined); // told where it is waited for, or by what fails before
  const play = isDemo() ? await import('./demo/play.ts') : null;
  const demo = play ? await play.readDemoState() : null;
  const tabletClock = createSteadyClock();
  const clock = play ? play.demoClock(demo, tabletClock) : tabletClock;
  const store = await openStore({
    clock,
    appVersion: __APP_VERSION__,
    tabletName: navigator.platform || 'tablet',
    ...(isDemo() ? { name: demoStoreName } : {}),
  });
  // A play has a time of its own.
  if (clock === tabletClock) followEntries(tabletClock, store);
  const kept = store.preferences;
  const real = createApp({
    store,
    clock,
    version: __APP_VERSION__,
    practice: null,
    watch: {
      clockSlip: tabletClock.slip,
      trustClock: tabletClock.trust,
      sawServerTime: tabletClock.sawServer,
    },
    preferences: signal<Preferences>(kept),
  });
  await speak({ language: wishedLanguage(real), pseudo: kept.pseudo }, document.documentElement);
  if (isDemo()) await (await withWords(import('./demo/demo.ts'))).loadDemo(real, demo);
  const app = await inHand(real);
  const fault = faultOf([store, app.store]);
  followAddress();
  followTouches();
  followFingers();
  followPreferences(app);
  const work = signal<Work | null>(null);
  render(
    <AppContext.Provider value={app}>
      <Root work={work} fault={fault} storage={watchStorage(app)} />
    </AppContext.Provider>,
    root,
  );
  work.value = (await workModule).startWork(app);
  document.documentElement.dataset['ready'] = 'true';
  later(() => void import('./ui/place.ts').then(({ followPlace }) => followPlace()));
  later(() => {
    // The real floor alone keeps pictures.
    const isRuled = () => real.store.floor().pictureRules.size > 0;
    void import('./store/tidy-pictures.ts').then(({ keepTidy }) =>
      keepTidy({ isRuled, nowMs: () => real.clock.nowMs() }),
    );
  });
  later(() => {
    void import('./frame/connect.ts').then(async ({ connect }) => {
      // The real floor alone has a server.
      real.connection.value = await connect(real);
    });
  });
}

/** What was written tells the clock how late it is at least. */
function followEntries(clock: ReturnType<typeof createSteadyClock>, store: Store): void {
  const newest = store.position();
  if (newest) clock.sawEntry(newest.hlc.ms);
  store.onChange((entries) => {
    for (const entry of entries) clock.sawEntry(entry.hlc.ms);
  });
}

/** The last fault of any of the stores. */
function faultOf(stores: readonly Store[]): ReadonlySignal<StoreFault | null> {
  const fault = signal<StoreFault | null>(null);
  for (const each of new Set(stores)) {
    each.onFault((found) => {
      fault.value = found;
    });
  }
  return fault;
}

/** Keeps preferences, and speaks and shows the page as they say. */
function followPreferences(app: App): void {
  const { preferences } = app;
  effect(() => void keepPreferences(app.store.cache, preferences.value));
  followLanguage(app, document.documentElement);
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
  effect(() => {
    const { gloves, hand } = preferences.value;
    document.documentElement.toggleAttribute('data-gloves', gloves);
    document.documentElement.dataset['hand'] = hand ?? '';
  });
  dark.addEventListener('change', showTheme);
}

/** The app of this window: the plant's, or the one to practise with; what a practice left behind is thrown away. */
async function inHand(real: App): Promise<App> {
  if (practiceSince(real.clock.nowMs()) !== null) {
    const { startPractising } = await withWords(import('./practising.ts'));
    const practised = await startPractising(real).catch(() => null); // the real floor is never kept from anybody
    if (practised) return practised;
  }
  forgetPractice();
  later(() => {
    void isPractised().then(async (practised) => {
      if (!practised) await (await import('./store/throw-away.ts')).throwAwayStore(practiceStoreName);
    });
  });
  return real;
}

start().catch(async (error: unknown) => {
  const fault = error instanceof StoreError ? error.fault : 'unknown';
  const canSay = await wordsHere().then(
    () => true,
    () => false,
  );
  const detail = String(error);
  render(canSay ? <FaultCurtain fault={fault} detail={detail} /> : <NoWords detail={detail} />, root);
});
