// The tasks of a page's main thread, from the browser's own trace: how long each took by the clock, and of that on a processor.

import type { Browser, Page } from 'playwright-core';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  /** How long it lasted and how much of that the thread was on a processor, µs: the rest was other work on the machine. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** One task of the page's main thread, ms: by the clock, and on a processor. */
export interface Task {
  readonly clock: number;
  readonly busy: number;
}

/** The tasks of the page's main thread while something goes on, from the browser's trace. */
export async function tasksWhile(
  browser: Browser,
  page: Page,
  work: () => Promise<void>,
): Promise<readonly Task[]> {
  await browser.startTracing(page, { categories: ['disabled-by-default-devtools.timeline', '__metadata'] });
  await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: TraceEvent[];
  };
  const threadOf = ({ pid, tid }: TraceEvent) => `${pid} ${tid}`;
  const mains = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(threadOf),
  );
  const threads = new Map<string, Task[]>();
  for (const event of traceEvents) {
    if (event.name !== 'RunTask' || event.ph !== 'X' || !mains.has(threadOf(event))) continue;
    const task = { clock: (event.dur ?? 0) / 1000, busy: (event.tdur ?? event.dur ?? 0) / 1000 };
    const tasks = threads.get(threadOf(event));
    if (tasks) tasks.push(task);
    else threads.set(threadOf(event), [task]);
  }
  // A spare page of the browser has a main thread too; ours is the one that works.
  return [...threads.values()].sort((a, b) => b.length - a.length)[0] ?? [];
}

/** Prints how long tasks lasted and how many were long. */
export function printTasks(name: string, tasks: readonly Task[]): void {
  const told = (['busy', 'clock'] as const).map((by) => {
    const sorted = tasks.map((task) => task[by]).sort((a, b) => a - b);
    const at = (share: number) => (sorted[Math.floor((sorted.length - 1) * share)] ?? 0).toFixed(1);
    const above = (most: number) => sorted.filter((ms) => ms > most).length;
    const mean = sorted.reduce((sum, ms) => sum + ms, 0) / 1000;
    return `${by === 'busy' ? 'processor' : 'clock'}: p99 ${at(0.99)}, longest ${at(1)} ms, ${above(16)} above 16 and ${above(50)} above 50 ms, ${mean.toFixed(2)} s in all`;
  });
  console.log(`${name.padEnd(32)} ${String(tasks.length).padStart(5)} tasks   ${told.join('   ')}`);
}
