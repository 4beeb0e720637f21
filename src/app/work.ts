// What the first screen does not need to be drawn: the desk, the scanner, the watch over the line, the offline copy. A chunk of
// its own that is fetched while the log opens, so that the page shows itself early and works a moment later.

import { effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Unanswered } from '../../shared/outlook/unanswered.ts';
import type { App } from './app.ts';
import { createDesk, type DeskRun } from './desk/desk.ts';
import { keepDesk } from './desk/kept.ts';
import { type Alarm, createAlarm } from './device/alarm.ts';
import { somebodyWaits } from './device/awaited.ts';
import { later } from './device/later.ts';
import { type Offline, startOffline } from './device/offline.ts';
import type { Awake } from './device/wake.ts';
import { followMessages } from './follow-messages.ts';
import { tellMoves } from './line-in-hand.ts';
import { mayCallHere } from './may-call.ts';
import { type LineBeside, watchBeside } from './outlook/beside.ts';
import { callForBlocked } from './outlook/blocked-call.ts';
import { createWarner } from './outlook/warn.ts';
import { startWatch, type Watch } from './outlook/watch.ts';
import { startPresence } from './person/left-alone.ts';
import { signIn } from './person/sign-in.ts';
import { soundAtSignIn } from './person/sign-in-tone.ts';
import { goTo, place } from './router.ts';
import { DEFAULT_WEDGE_SETTINGS } from './scan/wedge.ts';
import { attachWedge } from './scan/wedge-dom.ts';
import { takePanel } from './take-panel.ts';
import { withWords } from './words/fetch.ts';

/** A part that was out of reach is asked for again after this long. */
const ASK_AGAIN_MS = 15_000;

/** The working parts of the page. */
export interface Work {
  readonly desk: DeskRun;
  readonly watch: Watch;
  /** The other lines that the tablet serves. */
  readonly beside: ReadonlySignal<readonly LineBeside[]>;
  readonly alarm: Alarm;
  readonly offline: Offline;
  /** How it stands with keeping the screen on. */
  readonly awake: ReadonlySignal<Awake>;
  /** Warnings of other lines that nobody answers, where somebody leads here. */
  readonly unanswered: ReadonlySignal<readonly Unanswered[]>;
}

/** Starts the working parts. */
export function startWork(app: App): Work {
  const desk = createDesk(app, {
    onTakeOut: (at, scan) =>
      void withWords(import('./desk/take-out.ts')).then(({ takeOut }) => takeOut(app, at, scan.via)),
    onBadge: (id) => {
      const person = app.store.floor().people.get(id);
      if (person) signIn(app, person, { how: 'badge', checked: 'tablet' });
    },
    onPanel: (run, serial, scan) => {
      takePanel(app, run, { serial, scan });
    },
  });
  app.scans.take((scan) => {
    // The form's name is looked for before what reads it is fetched.
    if (!scan.codes.some(({ text }) => text.startsWith('c2sp.org/tlog-proof@'))) return desk.take(scan);
    void withWords(import('./paper-scan.ts')).then(({ takePaper }) => takePaper(app, scan));
    return true;
  });
  attachWedge(window, app.scans, {
    nowMs: app.clock.nowMs,
    settings: () => ({ ...DEFAULT_WEDGE_SETTINGS, ...app.preferences.peek().scanner }),
    onRaw: (scan) => app.rawScans.push(scan),
    // Whoever takes the scan says by its end whether the answer is still to come.
    onKeys: somebodyWaits,
    onLone: (key) => {
      // A question and a verdict are answered first.
      const isAsked = document.querySelector('dialog[open]') !== null || desk.shown.peek() !== null;
      if (key === '/' && !isAsked) goTo('search');
    },
    onCut: ({ text }) => {
      desk.desk.value = { ...desk.desk.value, told: { tell: 'half-label', text, codes: [] } };
    },
  });
  startPresence(app).catch(() => undefined); // what it kept may be lost by its nature
  const isBusy: Signal<boolean> = signal(false);
  effect(() => {
    const { slot, reel, partial } = desk.desk.value;
    isBusy.value = slot !== null || reel !== null || partial !== null || desk.busy.value;
  });
  const offline = startOffline(() => app.openTasks.value + (isBusy.value ? 1 : 0));
  const alarm = createAlarm(mayCallHere(app));
  callForBlocked(app, alarm);
  followMessages(app);
  tellMoves(app);
  soundAtSignIn(app, alarm);
  void keepDesk(app, desk);
  // The first scan must not wait for its judge.
  later(() => {
    desk
      .getReady()
      .then(async () => {
        const { warmUp } = await import('./warm-up.ts');
        later(() => warmUp(app, desk));
        const { warmShelf } = await import('./warm-shelf.ts');
        warmShelf(app);
      })
      .catch(() => undefined); // asked again by the first scan
  });
  const memory = { warner: createWarner(app, alarm), remembered: new Map() };
  const watch = startWatch(app, memory);
  const beside = watchBeside(app, memory);
  const unanswered = signal<readonly Unanswered[]>([]);
  const awake = signal<Awake>('free');
  beginOnceItStands(app, { watch, beside, alarm, unanswered, awake });
  return { desk, alarm, offline, watch, beside, awake, unanswered };
}

/** True where the screen is to stay on: for whoever works here, a line that runs, and screens that hang where people look up to them. */
function isLookedAt(app: App, watch: Watch): boolean {
  const { wall, exit } = app.preferences.value;
  const isWatched =
    app.isScreen || wall || exit || place.value.screen === 'wall' || app.beside.value.length > 0;
  return isWatched || app.person.value !== null || watch.outlook.value !== null;
}

/** What is heard beside this line's run-outs and blocked reels, and what keeps the screen on: nobody is late for it by the moment in which it is fetched. */
function beginOnceItStands(
  app: App,
  to: {
    readonly watch: Watch;
    readonly beside: ReadonlySignal<readonly LineBeside[]>;
    readonly alarm: Alarm;
    readonly unanswered: Signal<readonly Unanswered[]>;
    readonly awake: Signal<Awake>;
  },
): void {
  later(() => {
    Promise.all([
      import('./outlook/other-calls.ts'),
      import('./outlook/unanswered-call.ts'),
      import('./outlook/push-call.ts'),
      import('./device/wake.ts'),
    ]).then(
      ([{ callForOthers }, { callForUnanswered }, { callByPush }, { keepAwake }]) => {
        callForOthers(app, to, to.alarm);
        callForUnanswered(app, to.alarm, to.unanswered);
        callByPush(app);
        keepAwake(to.awake, () => isLookedAt(app, to.watch));
      },
      () => setTimeout(() => beginOnceItStands(app, to), ASK_AGAIN_MS), // out of reach
    );
  });
}
