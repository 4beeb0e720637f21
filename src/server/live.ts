// Live push: what is appended goes to every listening tablet as one server-sent event, made once for all of them.
// Events name where they go on from, so that a tablet that missed one sees it and asks; nothing is ever sent twice on
// purpose, and a listener too slow to keep up is cut off instead of buffered without end.

import type { ServerResponse } from 'node:http';
import { formatCursor } from '../../shared/wire/cursor.ts';
import type { LogHead, Signal, Store } from './stores/store.ts';

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

/** Starts watching the store. */
export function createLiveHub(options: LiveOptions): LiveHub {
  const { store, serverEpoch, onFault } = options;
  const listeners = new Set<Listener>();
  let last = options.start;
  let busy = false;
  let asked = false;
  let sentMs = 0;
  let timer: NodeJS.Timeout | null = null;
  let closed = false;

  const send = (text: string) => {
    const frame = Buffer.from(text);
    for (const listener of listeners) {
      if (listener.response.writableLength > BACKLOG_BYTES) listener.response.destroy();
      else listener.response.write(frame);
    }
  };

  const flush = async () => {
    if (busy) {
      asked = true;
      return;
    }
    busy = true;
    asked = false;
    sentMs = performance.now();
    try {
      const rows = await store.page(last.pos, ENTRIES_AT_ONCE + 1);
      const end = rows.at(-1);
      if (end) {
        const from = formatCursor(last);
        const size = rows.reduce((sum, row) => sum + row.text.length, 0);
        const whole = rows.length <= ENTRIES_AT_ONCE && size <= TEXT_AT_ONCE;
        last = whole ? { pos: end.pos, root: end.root } : await store.head();
        const entries = whole ? `[${rows.map((row) => row.text).join(',')}]` : 'null';
        const cursor = formatCursor(last);
        await endRevoked();
        send(
          `data: {"serverEpoch":"${serverEpoch}","from":"${from}","cursor":"${cursor}","entries":${entries}}\n\n`,
        );
      }
    } catch (error) {
      onFault(error as Error);
    }
    busy = false;
    if (asked) schedule();
  };

  const schedule = () => {
    if (timer) return;
    const waitMs = Math.max(0, sentMs + PACE_MS - performance.now());
    timer = setTimeout(() => {
      timer = null;
      void flush();
    }, waitMs);
  };

  const unwatch = store.watch((signal: Signal) => {
    if (signal.kind === 'appended') schedule();
    else endOf(signal.tablet);
  });
  /** Ends the streams of tablets that were revoked where no signal reaches, e.g. from a terminal. */
  const endRevoked = async () => {
    if (listeners.size === 0) return;
    for (const tablet of await store.revokedTablets()) endOf(tablet);
  };
  const endOf = (tablet: string) => {
    for (const listener of listeners) {
      if (listener.tablet !== tablet) continue;
      listeners.delete(listener);
      listener.response.end();
    }
  };
  const beat = setInterval(() => send(': beat\n\n'), BEAT_MS);
  beat.unref();
  const look = setInterval(() => void endRevoked().catch(onFault), LOOK_MS);
  look.unref();

  return {
    add: (tablet, response) => {
      // Asked for while the server stops: the tablet finds another process, or waits.
      if (closed) return void response.end();
      const listener = { tablet, response };
      const own = [...listeners].filter((one) => one.tablet === tablet);
      for (const one of own.slice(0, Math.max(0, own.length + 1 - STREAMS_MOST))) {
        listeners.delete(one);
        one.response.end();
      }
      listeners.add(listener);
      response.on('close', () => listeners.delete(listener));
      response.on('error', () => listeners.delete(listener));
      const cursor = formatCursor(last);
      response.write(
        `retry: 1000\ndata: {"serverEpoch":"${serverEpoch}","from":"${cursor}","cursor":"${cursor}","entries":null}\n\n`,
      );
    },
    count: () => listeners.size,
    close: () => {
      closed = true;
      unwatch();
      clearInterval(beat);
      clearInterval(look);
      if (timer) clearTimeout(timer);
      for (const listener of listeners) listener.response.end();
      listeners.clear();
    },
  };
}
