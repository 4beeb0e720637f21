// Live: listens to the server's events and pushes own entries as they are written, until the stream ends or falls silent.

import { liveSchema } from '../../../shared/wire/messages.ts';
import { readEvents } from './events.ts';
import type { Caller, CallFailure } from './http.ts';
import type { SyncLog } from './ports.ts';
import type { SyncSteps } from './steps.ts';

/** The server beats every 15 s; a stream silent for longer is dead, whatever the socket says. */
const SILENT_MS = 40_000;
/** The log's heads, the plant's keys and what is missing are asked for this often while live, ms. */
const ASK_MS = 5 * 60_000;
/** Receipts wait for so long at most to be checked, ms: each on its own would double what is asked of the server. */
const RECEIPTS_MS = 30_000;

export interface LiveParts {
  readonly log: SyncLog;
  readonly steps: SyncSteps;
  readonly caller: Caller;
  readonly signal: AbortSignal;
  readonly onLive: () => void;
}

/** Returns the failure that ended it, or null where the stream just ended. */
export async function listen(parts: LiveParts): Promise<CallFailure | null> {
  const { steps } = parts;
  const ended = new AbortController();
  const end = () => ended.abort();
  parts.signal.addEventListener('abort', end);
  if (parts.signal.aborted) end();
  const opened = await parts.caller.open('/api/live', { signal: ended.signal });
  if (!opened.ok) return opened.error;
  const { body } = opened.value;
  if (!body) return { code: 'unreadable', facts: {}, retryAfterMs: null };

  let failure: CallFailure | null = null;
  const stopWith = (cause: CallFailure | null) => {
    if (cause === null) return;
    failure ??= cause;
    end();
  };
  // Steps run one after the other: two of them at once would write each other's memory over.
  let queue: Promise<void> = Promise.resolve();
  const inTurn = (step: () => Promise<CallFailure | null>) => {
    queue = queue.then(async () => {
      if (!ended.signal.aborted) stopWith(await step());
    });
    return queue;
  };
  const pushing = createOnce(() => inTurn(steps.push));
  // No answer to these is no reason to listen no more: what a server cannot prove, it can still take in.
  const aside = (step: () => Promise<CallFailure | null>) =>
    void inTurn(async () => {
      await step();
      return null;
    });
  const sending = createSending(steps, inTurn);
  const unwatch = parts.log.onAppend(() => {
    pushing();
    sending();
  });
  const prove = () => {
    aside(steps.heads);
    aside(steps.plantKeys);
  };
  const asking = setInterval(() => {
    prove();
    void inTurn(steps.ask);
  }, ASK_MS);
  const receipts = setInterval(() => aside(() => steps.heads(true)), RECEIPTS_MS);
  let silence = setTimeout(end, SILENT_MS);

  try {
    parts.onLive();
    prove();
    const nextHistory = () =>
      void inTurn(async () => {
        const got = await steps.history();
        if (got === null) nextHistory(); // in turn: what happens now goes before what happened once
        return got === 'done' ? null : got;
      });
    nextHistory();
    pushing(); // what was written between the last push and the watch
    sending();
    for await (const text of readEvents(body)) {
      clearTimeout(silence);
      silence = setTimeout(end, SILENT_MS);
      if (text !== '') await inTurn(() => takeEvent(text, steps));
      if (ended.signal.aborted) break;
    }
  } catch {
    // The stream broke: the loop begins anew.
  } finally {
    clearTimeout(silence);
    clearInterval(asking);
    clearInterval(receipts);
    unwatch();
    end();
    parts.signal.removeEventListener('abort', end);
    await queue;
  }
  return failure;
}

async function takeEvent(text: string, steps: SyncSteps): Promise<CallFailure | null> {
  const live = liveSchema.safeParse(readJson(text));
  if (!live.success) return { code: 'unreadable', facts: {}, retryAfterMs: null };
  return (await steps.takeLive(live.data)) ? null : steps.pull();
}

function readJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined; // no schema accepts it
  }
}

/** Sends pictures, a few in turn: what happens now goes before the next ones; a failure waits for the next entry. */
function createSending(
  steps: SyncSteps,
  inTurn: (step: () => Promise<CallFailure | null>) => Promise<void>,
): () => void {
  const sending = createOnce(() =>
    inTurn(async () => {
      if ((await steps.pictures()) === null) sending();
      return null;
    }),
  );
  return sending;
}

/** Many calls while one waits become one. */
function createOnce(run: () => Promise<void>): () => void {
  let waits = false;
  return () => {
    if (waits) return;
    waits = true;
    queueMicrotask(() => {
      waits = false;
      void run();
    });
  };
}
