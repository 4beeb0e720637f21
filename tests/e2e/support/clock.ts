// A tablet's clock in the test's hand: it runs as clocks do, can be moved on (what was to happen meanwhile happens, what comes again and
// again once, as after a tablet's sleep), and can be set to another hour of the day. A test that waits is as long as the wait and as sure as the machine is quick; a test
// that moves the clock is neither. Refused: the driver's own fake clock, which gives events the moment at which they were handled
// and so tells a scanner's pace wrong.

import type { BrowserContext, Page } from 'playwright-core';
import { expect } from 'vitest';

/** How far clocks are put ahead of the machine's, ms: `REELWARD_AT` as the runner read it. */
export const aheadMs = Number(process.env['REELWARD_AHEAD_MS'] ?? 0);

interface PageClock {
  /** Moves the clock on by ms. */
  readonly pass: (ms: number) => void;
  /** From here on no timer comes between what is handled, until `let`. */
  readonly hold: () => void;
  readonly let: () => void;
}

type Scope = Record<string, PageClock | undefined>;

interface Timer {
  readonly task: () => void;
  readonly everyMs: number | null;
  dueMs: number;
  native: number;
}

/** Runs in the page before anything of the app does. */
function installClock({ ahead, symbol }: { ahead: number; symbol: string }): void {
  const scope = globalThis as unknown as Record<string, unknown>;
  if (scope[symbol]) return;
  const wall = Date.now.bind(Date);
  const steady = performance.now.bind(performance);
  const [set, clear] = [setTimeout.bind(globalThis), clearTimeout.bind(globalThis)];
  const stampOf = Object.getOwnPropertyDescriptor(Event.prototype, 'timeStamp')?.get;
  const timers = new Map<number, Timer>();
  let passedMs = 0;
  let isHeld = false;
  let lastId = 1_000_000_000; // no number of a native timer

  Date.now = () => Math.floor(wall() + ahead + passedMs);
  scope['Date'] = new Proxy(Date, {
    construct: (date, args, target) =>
      Reflect.construct(date, args.length === 0 ? [Date.now()] : args, target),
  });
  performance.now = () => steady() + passedMs;
  Object.defineProperty(Event.prototype, 'timeStamp', {
    get(this: Event) {
      return stampOf?.call(this) + passedMs;
    },
  });

  const fire = (id: number) => {
    const timer = timers.get(id);
    if (!timer) return;
    if (isHeld) {
      timer.native = -1;
      return;
    }
    if (timer.everyMs === null) timers.delete(id);
    else {
      // Beats that were missed are not made up for, as after a tablet's sleep: three hundred looks at the same moment tell nothing new.
      const beats = Math.floor((performance.now() - timer.dueMs) / timer.everyMs) + 1;
      timer.dueMs += Math.max(1, beats) * timer.everyMs;
      arm(id, timer);
    }
    timer.task();
  };
  const arm = (id: number, timer: Timer) => {
    timer.native = set(() => fire(id), Math.max(0, timer.dueMs - performance.now())) as unknown as number;
  };
  const add = (task: () => void, ms: number, everyMs: number | null) => {
    const id = ++lastId;
    const timer = { task, everyMs, dueMs: performance.now() + ms, native: -1 };
    timers.set(id, timer);
    arm(id, timer);
    return id;
  };
  const drop = (id: number | undefined) => {
    const timer = id === undefined ? undefined : timers.get(id);
    if (timer) clear(timer.native);
    else clear(id);
    if (id !== undefined) timers.delete(id);
  };
  type Task = (...args: unknown[]) => void;
  scope['setTimeout'] = (task: Task, ms = 0, ...args: unknown[]) => add(() => task(...args), ms || 0, null);
  scope['setInterval'] = (task: Task, ms = 0, ...args: unknown[]) =>
    add(() => task(...args), ms || 0, Math.max(1, ms || 0));
  AbortSignal.timeout = (ms) => {
    const controller = new AbortController();
    add(() => controller.abort(new DOMException('signal timed out', 'TimeoutError')), ms, null);
    return controller.signal;
  };
  scope['clearTimeout'] = drop;
  scope['clearInterval'] = drop;
  /** Timers in the order in which they are due, as the page would have met them. */
  const armAgain = (which: (timer: Timer) => boolean) => {
    const found = [...timers].filter(([, timer]) => which(timer)).sort(([, a], [, b]) => a.dueMs - b.dueMs);
    for (const [id, timer] of found) {
      clear(timer.native);
      arm(id, timer);
    }
  };
  const clock: PageClock = {
    pass: (ms) => {
      passedMs += ms;
      armAgain(() => true);
    },
    hold: () => {
      isHeld = true;
    },
    let: () => {
      isHeld = false;
      armAgain(({ native }) => native === -1);
    },
  };
  scope[symbol] = clock;
}

const symbol = 'testClock';
/** What runs in pages opened later, by device; null = the clock was never moved. */
const given = new WeakMap<
  BrowserContext,
  { passedMs: number; later: { dispose: () => Promise<void> } | null }
>();

/** Gives a device a clock of its own. Before its pages are opened; a second time changes nothing. */
export async function giveClock(context: BrowserContext): Promise<void> {
  if (given.has(context)) return;
  given.set(context, { passedMs: 0, later: null });
  await context.addInitScript(installClock, { ahead: aheadMs, symbol });
}

/** Lets time go by on a device, in all its windows and in those that are opened later. */
export async function pass(page: Page, ms: number): Promise<void> {
  const context = page.context();
  const device = given.get(context);
  if (!device) throw new Error('Cannot move the clock as the device must have been given one');
  device.passedMs += ms;
  await device.later?.dispose();
  device.later = await context.addInitScript(([by, key]) => (globalThis as unknown as Scope)[key]?.pass(by), [
    device.passedMs,
    symbol,
  ] as const);
  await Promise.all(context.pages().map((each) => tell(each, 'pass', ms)));
}

/** Waits for something on a page whose clock goes on meanwhile, or until it is gone. */
export async function passUntilSeen(page: Page, testId: string, isSeen = true): Promise<void> {
  const look = async () => {
    await pass(page, 5_000);
    return page.getByTestId(testId).isVisible();
  };
  await expect.poll(look, { timeout: 60_000 }).toBe(isSeen);
}

/** Waits until what the last act did has been drawn, and what follows from it in the page has been done. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(async () => {
    if (document.visibilityState !== 'visible') return; // a window behind others draws nothing
    for (let frame = 0; frame < 2; frame++) {
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
    }
  });
}

/** Does something that is quicker than any timer of the page, however busy the machine is. */
export async function withoutTimers<T>(page: Page, act: () => Promise<T>): Promise<T> {
  await tell(page, 'hold');
  try {
    return await act();
  } finally {
    await tell(page, 'let');
  }
}

/** A page without a clock of the test's keeps its own time. */
function tell(page: Page, act: keyof PageClock, ms = 0): Promise<void> {
  return page.evaluate(([name, by, key]) => (globalThis as unknown as Scope)[key]?.[name](by), [
    act,
    ms,
    symbol,
  ] as const);
}
