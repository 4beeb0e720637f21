// Joins appends that wait at the same time into one transaction: one flush to the disk for all of them. A plant of three
// hundred tablets then costs a few flushes a second instead of three hundred.

import { setTimeout as pause } from 'node:timers/promises';
import { chainId } from '../../shared/log/entry.ts';
import type { Appended, Checked, Store } from './stores/store.ts';
import { troubleOf } from './stores/trouble.ts';

/** Entries in one transaction at most: bounds how long a flush holds the others up. */
const ENTRIES_AT_ONCE = 2_000;
/** A page of this many entries is of a backlog, whose next pages come at once: a flush waits this long for them, ms. */
const BACKLOG_ENTRIES = 250;
const BACKLOG_MS = 2;
/** How long a page waits for the one before it, ms: pages of a backlog overtake each other on the way by less. */
const PARKED_MS = 400;
/**
 * While the database is away, pages are offered to it again so often and for so long, ms: what was taken in without an answer is known by its
 * hash and taken once. Less than a tablet waits for its answer.
 */
const AGAIN_MS = 200;
const AWAY_MOST_MS = 7_000;
/** Chains whose end is remembered. */
const CHAINS_KNOWN = 5_000;

interface Waiting {
  readonly sender: string;
  readonly entries: readonly Checked[];
  readonly resolve: (appended: Appended) => void;
  readonly reject: (error: unknown) => void;
}

export interface Appender {
  /** Resolves when the entries are durable. */
  readonly append: (sender: string, entries: readonly Checked[]) => Promise<Appended>;
  /** Resolves when nothing waits any more. */
  readonly drained: () => Promise<void>;
}

/** Pages on their way into the store. */
interface Queue {
  waiting: Waiting[];
  running: Promise<void> | null;
  /** Pages that came before their predecessor: appended now they would be a gap, and would travel again. */
  parked: Waiting[];
  /** Chain -> number up to which pages have come in here. A hint only: the store judges. */
  readonly ends: Map<string, number>;
  readonly store: Pick<Store, 'append' | 'marks'>;
  readonly nowMs: () => number;
}

/** The one door through which a process appends. */
export function createAppender(store: Pick<Store, 'append' | 'marks'>, nowMs: () => number): Appender {
  const queue: Queue = { waiting: [], running: null, parked: [], ends: new Map(), store, nowMs };
  return {
    append: (sender, entries) =>
      new Promise((resolve, reject) => {
        const next = { sender, entries, resolve, reject };
        const [first] = entries;
        if (first && (isEarly(queue, next) || !queue.ends.has(chainId(first)))) park(queue, next);
        else {
          put(queue, next);
          release(queue, (one) => !isEarly(queue, one));
        }
      }),
    drained: async () => {
      release(queue, () => true);
      while (queue.running) await queue.running;
    },
  };
}

function isEarly({ ends }: Queue, { entries: [first] }: Waiting): boolean {
  return first !== undefined && first.seq > (ends.get(chainId(first)) ?? 0) + 1;
}

function put(queue: Queue, next: Waiting): void {
  const { ends } = queue;
  const [first, last] = [next.entries[0], next.entries.at(-1)];
  const end = first && ends.get(chainId(first));
  if (first && last && end !== undefined && first.seq <= end + 1) {
    ends.set(chainId(first), Math.max(last.seq, end));
  }
  queue.waiting.push(next);
  queue.running ??= run(queue);
}

/** Takes out of the parked those that `isDue`, oldest first. */
function release(queue: Queue, isDue: (one: Waiting) => boolean): void {
  for (let next = queue.parked.find(isDue); next; next = queue.parked.find(isDue)) {
    const taken = next;
    queue.parked = queue.parked.filter((one) => one !== taken);
    put(queue, taken);
  }
}

function park(queue: Queue, next: Waiting): void {
  const { ends, store } = queue;
  queue.parked.push(next);
  queue.parked.sort((a, b) => (a.entries[0]?.seq ?? 0) - (b.entries[0]?.seq ?? 0));
  setTimeout(() => release(queue, (one) => one === next), PARKED_MS).unref();
  const [first] = next.entries;
  if (!first) return;
  // What came before may be in the store since an earlier life, or since another process took it in.
  store.marks([first]).then(
    ([mark]) => {
      if (mark) {
        if (ends.size >= CHAINS_KNOWN) ends.clear();
        ends.set(chainId(mark), Math.max(mark.seq, ends.get(chainId(mark)) ?? 0));
      }
      release(queue, (one) => !isEarly(queue, one));
    },
    () => undefined, // the append itself meets the same fault, and tells it
  );
}

function takeSome(queue: Queue): readonly Waiting[] {
  let count = 0;
  let entries = 0;
  for (const next of queue.waiting) {
    if (count > 0 && entries + next.entries.length > ENTRIES_AT_ONCE) break;
    entries += next.entries.length;
    count += 1;
  }
  const some = queue.waiting.slice(0, count);
  queue.waiting = queue.waiting.slice(count);
  return some;
}

async function run(queue: Queue): Promise<void> {
  while (queue.waiting.length > 0) {
    // Those who ask within the same turn go together; of a backlog, the pages that are being read just now too.
    const isBacklog = queue.waiting.some((one) => one.entries.length >= BACKLOG_ENTRIES);
    await new Promise<void>((resolve) =>
      isBacklog ? setTimeout(resolve, BACKLOG_MS) : setImmediate(resolve),
    );
    await write(queue, takeSome(queue));
  }
  queue.running = null;
}

/** What fails together is tried one by one: nobody waits for, or fails with, what somebody else brought. Where the database is away, all wait for it. */
async function write(queue: Queue, some: readonly Waiting[]): Promise<void> {
  try {
    const results = await appendSafely(queue, some);
    some.forEach((one, index) => {
      const result = results[index];
      if (result) one.resolve(result);
      else one.reject(new RangeError('Cannot answer an append as the store must answer each batch'));
    });
  } catch (error) {
    if (some.length === 1 || isAway(error)) for (const one of some) one.reject(error);
    else for (const one of some) await write(queue, [one]);
  }
}

function isAway(error: unknown): boolean {
  return troubleOf(error) === 'away';
}

/** Appends, again where the database fell away in the middle: an append is the same however often it is made. */
async function appendSafely(queue: Queue, some: readonly Waiting[]): Promise<readonly Appended[]> {
  const untilMs = performance.now() + AWAY_MOST_MS;
  for (;;) {
    try {
      return await queue.store.append(some, queue.nowMs());
    } catch (error) {
      if (!isAway(error) || performance.now() > untilMs) throw error;
      await pause(AGAIN_MS);
    }
  }
}
