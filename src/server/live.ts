// Live push: what is appended goes to every listening tablet as one server-sent event, made once for all of them.
// Events name where they go on from, so that a tablet that missed one sees it and asks; nothing is ever sent twice on
// purpose, and a listener too slow to keep up is cut off instead of buffered without end.

import type { ServerResponse } from 'node:http';
import { formatCursor } from '../../shared/wire/cursor.ts';
import { createPaced } from './paced.ts';
import type { LogHead, Signal, Store, StoredEntry } from './stores/store.ts';

/** Least time between two events, ms: many appends become one event. */
const PACE_MS = 80;
/** Behind by more than this many entries, listeners are told to ask for pages instead. */
const ENTRIES_AT_ONCE = 200;
const TEXT_AT_ONCE = 256 * 1024;
const BEAT_MS = 15_000;
/** How often streams of tablets that were shut out elsewhere are looked for, ms; before anything is sent, they are too. */
const LOOK_MS = 1_000;
/** Unsent bytes after which a listener is cut off. */
const BACKLOG_BYTES = 2 * 1024 * 1024;
/** Streams of one tablet: one window listens, and one that broke may not have ended here yet. The oldest end. */
const STREAMS_MOST = 4;

interface Listener {
  readonly tablet: string;
  readonly response: ServerResponse;
}

type Listeners = Set<Listener>;

export interface LiveHub {
  /** Takes over an answer whose head is written. */
  readonly add: (tablet: string, response: ServerResponse) => void;
  readonly count: () => number;
  readonly close: () => void;
}

export interface LiveOptions {
  readonly store: Store;
  readonly serverEpoch: string;
  readonly start: LogHead;
  readonly onFault: (error: Error) => void;
}

function sendAll(listeners: Listeners, text: string): void {
  const frame = Buffer.from(text);
  for (const { response } of listeners) {
    if (response.writableLength > BACKLOG_BYTES) response.destroy();
    else response.write(frame);
  }
}

function endOf(listeners: Listeners, tablet: string): void {
  for (const listener of listeners) {
    if (listener.tablet !== tablet) continue;
    listeners.delete(listener);
    listener.response.end();
  }
}

/** Makes room for one more stream of a tablet. */
function endOldest(listeners: Listeners, tablet: string): void {
  const own = [...listeners].filter((one) => one.tablet === tablet);
  for (const one of own.slice(0, Math.max(0, own.length + 1 - STREAMS_MOST))) {
    listeners.delete(one);
    one.response.end();
  }
}

/** Entries as a JSON array; null where they are too many or too long for one event. */
function entriesText(rows: readonly StoredEntry[]): string | null {
  const size = rows.reduce((sum, row) => sum + row.text.length, 0);
  const isWhole = rows.length <= ENTRIES_AT_ONCE && size <= TEXT_AT_ONCE;
  return isWhole ? `[${rows.map((row) => row.text).join(',')}]` : null;
}

/** Starts watching the store. */
export function createLiveHub({ store, serverEpoch, start, onFault }: LiveOptions): LiveHub {
  const listeners: Listeners = new Set();
  let last = start;

  const eventText = (from: LogHead, entries: string | null) =>
    `data: {"serverEpoch":"${serverEpoch}","from":"${formatCursor(from)}","cursor":"${formatCursor(last)}","entries":${entries}}\n\n`;

  const flush = async () => {
    const head = await store.head();
    if (head.pos <= last.pos) return;
    // Of a backlog that comes in nothing is read: it is not sent.
    const isSent = listeners.size > 0 && head.pos - last.pos <= ENTRIES_AT_ONCE;
    const rows = isSent ? await store.page(last.pos, ENTRIES_AT_ONCE + 1) : [];
    const end = rows.at(-1);
    const from = last;
    const entries = end ? entriesText(rows) : null;
    last = end && entries !== null ? { pos: end.pos, root: end.root } : head;
    const text = eventText(from, entries);
    await endRevoked();
    sendAll(listeners, text);
  };
  /** Ends the streams of tablets that were revoked where no signal reaches, e.g. from a terminal. */
  const endRevoked = async () => {
    if (listeners.size === 0) return;
    for (const tablet of await store.revokedTablets()) endOf(listeners, tablet);
  };

  const paced = createPaced({ work: flush, onFault, pauseMs: 0, latestMs: 0, apartMs: PACE_MS });
  const unwatch = store.watch((signal: Signal) => {
    if (signal.kind === 'appended') paced.ask();
    else if (signal.kind === 'revoked') endOf(listeners, signal.tablet);
  });
  const beat = setInterval(() => sendAll(listeners, ': beat\n\n'), BEAT_MS);
  beat.unref();
  const look = setInterval(() => void endRevoked().catch(onFault), LOOK_MS);
  look.unref();

  return {
    add: (tablet, response) => {
      // Asked for while the server stops: the tablet finds another process, or waits.
      if (paced.isStopped()) return void response.end();
      const listener = { tablet, response };
      endOldest(listeners, tablet);
      listeners.add(listener);
      response.on('close', () => listeners.delete(listener));
      response.on('error', () => listeners.delete(listener));
      response.write(`retry: 1000\n${eventText(last, null)}`);
    },
    count: () => listeners.size,
    close: () => {
      void paced.stop();
      unwatch();
      clearInterval(beat);
      clearInterval(look);
      for (const listener of listeners) listener.response.end();
      listeners.clear();
    },
  };
}
