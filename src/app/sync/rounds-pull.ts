// Pulling: what the server's log holds beyond here, live events, and the history that a snapshot stood in for.

import { formatCursor, parseCursor, startCursor } from '../../../shared/wire/cursor.ts';
import { pageEntries } from '../../../shared/wire/limits.ts';
import { type Live, pulledSchema } from '../../../shared/wire/messages.ts';
import { checkPulled } from './check.ts';
import type { CallFailure } from './http.ts';
import { meetEpoch, offerHeads, type Round, remember, tellRollback } from './round.ts';
import { pushAll } from './rounds-push.ts';
import { giveSnapshot, takeSnapshot } from './snapshot.ts';

/** Entries of the history written down in one go: the page gets its turn in between. */
const HISTORY_AT_ONCE = 100;
const TIMEOUT_MS = 30_000;

const askFor = (round: Round, after: string) =>
  round.caller.call(`/api/pull?after=${after}`, pulledSchema, { timeoutMs: TIMEOUT_MS });

/** Pulls up to the end of the server's log, from a snapshot where nothing was pulled yet. */
export async function pullAll(round: Round): Promise<CallFailure | null> {
  const { log, caller } = round;
  if (round.memory.cursor === null) {
    const started = await takeSnapshot({ log, caller });
    if (started !== null) {
      const untilPos = parseCursor(started)?.pos ?? 0;
      await remember(round, { cursor: started, history: { at: formatCursor(startCursor), untilPos } });
    }
  }
  for (;;) {
    const pulled = await askFor(round, round.memory.cursor ?? formatCursor(startCursor));
    if (!pulled.ok) return pulled.error.code === 'epoch-changed' ? beginAnew(round) : pulled.error;
    await meetEpoch(round, pulled.value.serverEpoch);
    await takeEntries(round, pulled.value.entries, pulled.value.serverMs);
    await remember(round, { cursor: pulled.value.cursor });
    if (!pulled.value.more) break;
  }
  if (round.isSnapshotWanted) {
    round.isSnapshotWanted = false;
    await giveSnapshot({ log, caller, cursor: round.memory.cursor });
  }
  return null;
}

/** The server's log does not hold this place any more: begin anew, and offer what is here. */
async function beginAnew(round: Round): Promise<CallFailure | null> {
  round.receipts.length = 0;
  await remember(round, { cursor: null, history: null, acked: {}, head: null });
  await tellRollback(round);
  return (await offerHeads(round)) ?? (await pushAll(round)) ?? (await pullAgain(round));
}

/** Once only: a server that forgets its place twice in a row is left for the next round. */
async function pullAgain(round: Round): Promise<CallFailure | null> {
  const pulled = await askFor(round, formatCursor(startCursor));
  if (!pulled.ok) return pulled.error;
  await takeEntries(round, pulled.value.entries, pulled.value.serverMs);
  await remember(round, { cursor: pulled.value.cursor });
  return pulled.value.more ? pullAll(round) : null;
}

/** Takes in a live event; false where it does not go on from here, and a pull is due. */
export async function takeLive(round: Round, live: Live): Promise<boolean> {
  const { cursor, serverEpoch } = round.memory;
  if (live.serverEpoch !== serverEpoch || live.from !== cursor) {
    // An event that was pulled already is no gap.
    return live.serverEpoch === serverEpoch && isBehind(live.cursor, cursor);
  }
  if (live.entries === null) return live.cursor === cursor;
  await takeEntries(round, live.entries, round.world.nowMs() + round.caller.clockOffMs());
  await remember(round, { cursor: live.cursor });
  return true;
}

/** Pulls one page of the history that a snapshot stood in for; `done` where there is none left. */
export async function pullHistory(round: Round): Promise<CallFailure | 'done' | null> {
  if (round.memory.history === null) return 'done';
  const { at, untilPos } = round.memory.history;
  const pulled = await askFor(round, at);
  if (!pulled.ok) return pulled.error;
  const { entries, serverMs, cursor, more } = pulled.value;
  await takeEntries(round, entries, serverMs, HISTORY_AT_ONCE);
  const done = !more || (parseCursor(cursor)?.pos ?? untilPos) >= untilPos;
  await remember(round, { history: done ? null : { at: cursor, untilPos } });
  return done ? 'done' : null;
}

/** Takes in what is part of the log, and keeps the rest aside: one entry harms no other. */
async function takeEntries(
  { log, status }: Round,
  values: readonly unknown[],
  serverMs: number,
  atOnce = pageEntries,
): Promise<void> {
  const { entries, aside } = await checkPulled(values, { log, serverMs });
  for (let from = 0; from < entries.length; from += atOnce)
    await log.takeIn(entries.slice(from, from + atOnce));
  if (aside.length > 0) status({ setAside: (await log.setAside?.(aside)) ?? aside.length });
}

function isBehind(cursor: string, held: string | null): boolean {
  const pos = parseCursor(cursor)?.pos;
  const heldPos = held === null ? undefined : parseCursor(held)?.pos;
  return pos !== undefined && heldPos !== undefined && pos <= heldPos;
}
