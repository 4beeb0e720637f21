// When each tablet was last heard of, and how far its clock was off: noted in memory and written down now and then, all in one
// transaction, since each write by itself would cost a flush to the disk before an answer.

import type { Seen, Store } from './stores/store.ts';

/** How often it is written down, ms. */
const WRITE_MS = 15_000;

export interface SeenBook {
  /** `clockOffMs`: null where this request did not tell. */
  readonly note: (tablet: string, seenMs: number, clockOffMs: number | null) => void;
  /** The tablet speaks this version of the wire. */
  readonly speaks: (tablet: string, wire: number) => void;
  /** Tablet -> the version of the wire that it spoke last, since this process began. */
  readonly wires: () => ReadonlyMap<string, number>;
  /** Writes down what was noted. */
  readonly write: () => Promise<void>;
  /** Writes down the rest and ends. */
  readonly stop: () => Promise<void>;
}

/** Starts the book. */
export function createSeenBook(
  store: Pick<Store, 'touchTablets'>,
  onFault: (error: Error) => void,
): SeenBook {
  let noted = new Map<string, Seen>();
  const wires = new Map<string, number>();
  const write = async () => {
    if (noted.size === 0) return;
    const some = [...noted.values()];
    noted = new Map();
    await store.touchTablets(some);
  };
  const timer = setInterval(() => void write().catch(onFault), WRITE_MS);
  timer.unref();
  return {
    note: (tablet, seenMs, clockOffMs) => {
      noted.set(tablet, { tablet, seenMs, clockOffMs: clockOffMs ?? noted.get(tablet)?.clockOffMs ?? null });
    },
    speaks: (tablet, wire) => {
      wires.set(tablet, wire);
    },
    wires: () => wires,
    write,
    stop: async () => {
      clearInterval(timer);
      await write();
    },
  };
}
