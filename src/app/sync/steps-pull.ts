// Pulling: what the server's log holds beyond here, live events, and the history that a snapshot stood in for.

import { formatCursor, parseCursor, startCursor } from '../../../shared/wire/cursor.ts';
import { pageEntries } from '../../../shared/wire/limits.ts';
import { type Live, pulledSchema } from '../../../shared/wire/messages.ts';
import { checkPulled } from './check.ts';
import { meetEpoch, offerHeads, remember, type SyncContext, tellRollback } from './context.ts';
import type { CallFailure } from './http.ts';
import { askPlantKeys } from './plant-keys.ts';
import { giveSnapshot, takeSnapshot } from './snapshot.ts';
import { pushAll } from './steps-push.ts';

/** Entries of the history written down in one go: the page gets its turn in between. */
const HISTORY_AT_ONCE = 100;
const TIMEOUT_MS = 30_000;

const askFor = (context: SyncContext, after: string) =>
  context.caller.call(`/api/pull?after=${after}`, pulledSchema, { timeoutMs: TIMEOUT_MS });

/** Pulls up to the end of the server's log, from a snapshot where nothing was pulled yet. */
export async function pullAll(context: SyncContext): Promise<CallFailure | null> {
  const { log, caller } = context;
  if (context.memory.cursor === null) {
    // Which state can be gone on from depends on whose tickets count. No answer: the log itself is asked for all the same.
    await askPlantKeys(context);
    const started = await takeSnapshot({ log, caller });
    if (started !== null) {
      const untilPos = parseCursor(started)?.pos ?? 0;
      await remember(context, { cursor: started, history: { at: formatCursor(startCursor), untilPos } });
    }
  }
  for (;;) {
    const pulled = await askFor(context, context.memory.cursor ?? formatCursor(startCursor));
    if (!pulled.ok) return pulled.error.code === 'epoch-changed' ? beginAnew(context) : pulled.error;
    await meetEpoch(context, pulled.value.serverEpoch);
    await takeEntries(context, pulled.value.entries, pulled.value.serverMs);
    await remember(context, { cursor: pulled.value.cursor });
    if (!pulled.value.more) break;
  }
  if (context.isSnapshotWanted) {
    context.isSnapshotWanted = false;
    await giveSnapshot({ log, caller, cursor: context.memory.cursor });
  }
  return null;
}

/** The server's log does not hold this place any more: begin anew, and offer what is here. */
async function beginAnew(context: SyncContext): Promise<CallFailure | null> {
  context.receipts.length = 0;
  await remember(context, { cursor: null, history: null, acked: {}, head: null });
  await tellRollback(context);
  return (await offerHeads(context)) ?? (await pushAll(context)) ?? (await pullAgain(context));
}

/** Once only: a server that forgets its place twice in a row is left for the next start. */
async function pullAgain(context: SyncContext): Promise<CallFailure | null> {
  const pulled = await askFor(context, formatCursor(startCursor));
  if (!pulled.ok) return pulled.error;
  await takeEntries(context, pulled.value.entries, pulled.value.serverMs);
  await remember(context, { cursor: pulled.value.cursor });
  return pulled.value.more ? pullAll(context) : null;
}

/** Takes in a live event; false where it does not go on from here, and a pull is due. */
export async function takeLive(context: SyncContext, live: Live): Promise<boolean> {
  const { cursor, serverEpoch } = context.memory;
  if (live.serverEpoch !== serverEpoch || live.from !== cursor) {
    // An event that was pulled already is no gap.
    return live.serverEpoch === serverEpoch && isBehind(live.cursor, cursor);
  }
  if (live.entries === null) return live.cursor === cursor;
  await takeEntries(context, live.entries, context.world.nowMs() + context.caller.clockOffMs());
  await remember(context, { cursor: live.cursor });
  return true;
}

/** Pulls one page of the history that a snapshot stood in for; `done` where there is none left. */
export async function pullHistory(context: SyncContext): Promise<CallFailure | 'done' | null> {
  if (context.memory.history === null) return 'done';
  const { at, untilPos } = context.memory.history;
  const pulled = await askFor(context, at);
  if (!pulled.ok) return pulled.error;
  const { entries, serverMs, cursor, more } = pulled.value;
  await takeEntries(context, entries, serverMs, HISTORY_AT_ONCE);
  const done = !more || (parseCursor(cursor)?.pos ?? untilPos) >= untilPos;
  await remember(context, { history: done ? null : { at: cursor, untilPos } });
  return done ? 'done' : null;
}

/** Takes in what is part of the log, and quarantines the rest: one entry harms no other. */
async function takeEntries(
  { log, status }: SyncContext,
  values: readonly unknown[],
  serverMs: number,
  atOnce = pageEntries,
): Promise<void> {
  const { entries, quarantined } = await checkPulled(values, { log, serverMs });
  for (let from = 0; from < entries.length; from += atOnce)
    await log.takeIn(entries.slice(from, from + atOnce));
  if (quarantined.length > 0)
    status({ quarantinedHere: (await log.quarantine?.(quarantined)) ?? quarantined.length });
}

function isBehind(cursor: string, held: string | null): boolean {
  const pos = parseCursor(cursor)?.pos;
  const heldPos = held === null ? undefined : parseCursor(held)?.pos;
  return pos !== undefined && heldPos !== undefined && pos <= heldPos;
}
