// The steps of a sync round, each safe to repeat: names of entries decide what is new, at both ends. Memory is written only
// after what it speaks of is durable, so that a crash in between repeats work and never skips any.

import { chainId, type Entry, isBounded, signatureForm } from '../../../shared/log/entry.ts';
import { formatCursor, parseCursor, startCursor } from '../../../shared/wire/cursor.ts';
import { pageEntries } from '../../../shared/wire/limits.ts';
import {
  checkpointSchema,
  type Head,
  type Live,
  type Mark,
  offeredSchema,
  pulledSchema,
  pushedSchema,
} from '../../../shared/wire/messages.ts';
import { type Page, takePage } from '../../../shared/wire/pages.ts';
import { entryText } from '../../../shared/wire/signing.ts';
import { checkPulled } from './check.ts';
import type { Caller, CallFailure } from './http.ts';
import type { SyncKey, SyncLog, SyncMemory, SyncStatus, SyncWorld } from './ports.ts';
import { giveSnapshot, takeSnapshot } from './snapshot.ts';

export interface Rounds {
  /** Asks how far the server holds what is here; after a restore on its side, that is less than before. */
  readonly start: () => Promise<CallFailure | null>;
  /** Pushes what the server lacks: own entries, and others' where the server lost them. */
  readonly push: () => Promise<CallFailure | null>;
  /** Pulls up to the end of the server's log. */
  readonly pull: () => Promise<CallFailure | null>;
  /** Takes in a live event; false where it does not go on from here, and a pull is due. */
  readonly takeLive: (live: Live) => Promise<boolean>;
  /** Pulls one page of the history that a snapshot stood in for; `done` where there is none left. */
  readonly history: () => Promise<CallFailure | 'done' | null>;
  /** A person took note that the server's log went back. */
  readonly tookNote: () => Promise<void>;
  /** Asks how the plant stands: which tablets' clocks are off. */
  readonly ask: () => Promise<CallFailure | null>;
  /** Counts own entries that the server does not hold yet; asks nobody. */
  readonly tellBacklog: () => Promise<void>;
  /** Keeps the server's newest checkpoint. */
  readonly checkpoint: () => Promise<CallFailure | null>;
}

export interface RoundParts {
  readonly log: SyncLog;
  readonly key: SyncKey;
  readonly world: SyncWorld;
  readonly caller: Caller;
  readonly memory: SyncMemory;
  readonly status: (change: Partial<SyncStatus>) => void;
}

/** Pages of one chain on their way at the same time: the server flushes those that wait together in one go. */
const PAGES_AT_ONCE = 8;
/** Entries of the history written down in one go: the page gets its turn in between. */
const HISTORY_AT_ONCE = 100;
/** Heads in one offer. */
const OFFER_AT_ONCE = 2_000;

/** Makes the steps around one memory. */
export function createRounds(parts: RoundParts): Rounds {
  const { log, caller, status } = parts;
  let memory = parts.memory;
  /** Chains with an entry that the server kept aside: pushing more of them would change nothing. */
  const stuck = new Set<string>();

  const remember = async (change: Partial<SyncMemory>) => {
    memory = { ...memory, ...change, clockOffMs: Math.round(caller.clockOffMs()) };
    await log.writeMemory(memory);
  };

  /** Another life of the server: what it acknowledged and where it was read up to are void. */
  const meetEpoch = async (serverEpoch: string) => {
    if (memory.serverEpoch === serverEpoch) return;
    stuck.clear();
    const isOther = memory.serverEpoch !== null;
    await remember({ serverEpoch, cursor: null, history: null, acked: {} });
    if (isOther) await tellRollback();
  };

  /** The server holds less than it did, or another log than it did: people have to know, also where all of it comes back by itself. */
  const tellRollback = async () => {
    const rolledBackMs = Math.round(parts.world.nowMs() + caller.clockOffMs());
    await remember({ rolledBackMs });
    status({ rolledBackMs });
  };

  const noteAcks = (acks: readonly Mark[]) =>
    remember({
      acked: { ...memory.acked, ...Object.fromEntries(acks.map((ack) => [chainId(ack), ack.seq])) },
    });

  const tellBacklog = async () => {
    let backlog = 0;
    for (const head of await log.heads()) {
      if (head.tablet === parts.key.tablet)
        backlog += Math.max(0, head.seq - (memory.acked[chainId(head)] ?? 0));
    }
    status({ backlog, clockOffMs: Math.round(caller.clockOffMs()) });
  };

  const start = async (): Promise<CallFailure | null> => {
    const heads = await log.heads();
    let serverMs = 0;
    for (let at = 0; at === 0 || at < heads.length; at += OFFER_AT_ONCE) {
      const json = { heads: heads.slice(at, at + OFFER_AT_ONCE) };
      const offered = await caller.call('/api/offer', offeredSchema, { json });
      if (!offered.ok) return offered.error;
      await meetEpoch(offered.value.serverEpoch);
      await noteAcks(offered.value.acks);
      status({ clocksOff: offered.value.clocksOff ?? [] });
      serverMs = offered.value.serverMs;
    }
    await log.rightClocks?.({ nowMs: serverMs, offMs: caller.clockOffMs(), acked: memory.acked });
    await tellBacklog();
    return null;
  };

  const ask = async (): Promise<CallFailure | null> => {
    const offered = await caller.call('/api/offer', offeredSchema, { json: { heads: [] } });
    if (!offered.ok) return offered.error;
    status({ clocksOff: offered.value.clocksOff ?? [] });
    return null;
  };

  const push = async (): Promise<CallFailure | null> => {
    for (const head of await log.heads()) {
      const failure = await pushChain(head);
      if (failure) return failure;
    }
    await tellBacklog();
    return null;
  };

  /**
   * Some pages are on their way at a time: while the server writes one down, the next travel. Should a later one arrive
   * first, it is a gap to the server, is not acknowledged, and goes out again.
   */
  const pushChain = async (head: Head): Promise<CallFailure | null> => {
    const id = chainId(head);
    const held = () => memory.acked[id] ?? 0;
    const travelling: { readonly end: number; readonly answer: Promise<CallFailure | null> }[] = [];
    let failure: CallFailure | null = null;
    let sent = held();
    let before = sent;
    let isGap = false;
    for (;;) {
      while (!failure && !isGap && !stuck.has(id) && travelling.length < PAGES_AT_ONCE && sent < head.seq) {
        const next = await log.entriesAfter(head, sent, pageEntries);
        const page = takePage(next.slice(0, endOfSound(next)));
        const last = page.entries.at(-1);
        if (!last) {
          if (next.length > 0) stuck.add(id);
          break;
        }
        sent = last.seq;
        travelling.push({ end: sent, answer: pushPage(page, head) });
      }
      const next = travelling.shift();
      if (next) {
        failure ??= await next.answer;
        // Not taken whole: what would be sent now is a gap too, until what is missing went out again.
        if (held() < next.end) isGap = true;
        continue;
      }
      if (failure || stuck.has(id) || held() >= head.seq || held() <= before) return failure;
      // All have arrived, and some of it was not taken: from there again, as long as there is progress.
      before = sent = held();
      isGap = false;
    }
  };

  const pushPage = async (page: Page, head: Head): Promise<CallFailure | null> => {
    const own = head.tablet === parts.key.tablet;
    const isSigned = !own || page.entries.every((entry) => entry.sig !== null);
    // The text that measured the page is the text that travels: writing it again would double the tablet's work.
    const entries = isSigned ? page.texts : [JSON.stringify(await signAll(page.entries, parts.key))];
    const texts = [`{"sentMs":${parts.world.nowMs()},"entries":`, ...entries, '}'];
    const pushed = await caller.call('/api/push', pushedSchema, { texts, timeoutMs: 30_000 });
    if (!pushed.ok) return pushed.error;
    const { serverEpoch, acks, faults, snapshotWanted } = pushed.value;
    if (serverEpoch !== memory.serverEpoch) return start();
    // Answers may overtake each other: what was acknowledged once stays so within one life of the server.
    await noteAcks(acks.map((ack) => ({ ...ack, seq: Math.max(ack.seq, memory.acked[chainId(ack)] ?? 0) })));
    if (faults.length > 0) {
      stuck.add(chainId(head));
      if (own) status({ aside: faults.map((fault) => `${fault.id} ${fault.fault}`) });
    }
    if (snapshotWanted) wanted = true;
    await tellBacklog();
    return null;
  };
  let wanted = false;

  const pull = async (): Promise<CallFailure | null> => {
    if (memory.cursor === null) {
      const started = await takeSnapshot({ log, caller });
      if (started !== null) {
        const untilPos = parseCursor(started)?.pos ?? 0;
        await remember({ cursor: started, history: { at: formatCursor(startCursor), untilPos } });
      }
    }
    for (;;) {
      const after = memory.cursor ?? formatCursor(startCursor);
      const pulled = await caller.call(`/api/pull?after=${after}`, pulledSchema, { timeoutMs: 30_000 });
      if (!pulled.ok) {
        if (pulled.error.code !== 'epoch-changed') return pulled.error;
        // The server's log does not hold this place any more: begin anew, and offer what is here.
        await remember({ cursor: null, history: null, acked: {} });
        await tellRollback();
        return (await start()) ?? (await push()) ?? (await pullAgain());
      }
      await meetEpoch(pulled.value.serverEpoch);
      await takeEntries(pulled.value.entries, pulled.value.serverMs);
      await remember({ cursor: pulled.value.cursor });
      if (!pulled.value.more) break;
    }
    if (wanted) {
      wanted = false;
      await giveSnapshot({ log, caller, cursor: memory.cursor });
    }
    return null;
  };

  /** Once only: a server that forgets its place twice in a row is left for the next round. */
  const pullAgain = async (): Promise<CallFailure | null> => {
    const after = formatCursor(startCursor);
    const pulled = await caller.call(`/api/pull?after=${after}`, pulledSchema, { timeoutMs: 30_000 });
    if (!pulled.ok) return pulled.error;
    await takeEntries(pulled.value.entries, pulled.value.serverMs);
    await remember({ cursor: pulled.value.cursor });
    return pulled.value.more ? pull() : null;
  };

  /** Takes in what is part of the log, and keeps the rest aside: one entry harms no other. */
  const takeEntries = async (values: readonly unknown[], serverMs: number, atOnce = pageEntries) => {
    const { entries, aside } = await checkPulled(values, { log, serverMs });
    for (let from = 0; from < entries.length; from += atOnce)
      await log.takeIn(entries.slice(from, from + atOnce));
    if (aside.length > 0) status({ setAside: (await log.setAside?.(aside)) ?? aside.length });
  };

  return {
    start,
    push,
    pull,
    ask,
    tookNote: async () => {
      await remember({ rolledBackMs: null });
      status({ rolledBackMs: null });
    },
    tellBacklog,
    takeLive: async (live) => {
      if (live.serverEpoch !== memory.serverEpoch || live.from !== memory.cursor) {
        // An event that was pulled already is no gap.
        return live.serverEpoch === memory.serverEpoch && isBehind(live.cursor, memory.cursor);
      }
      if (live.entries === null) return live.cursor === memory.cursor;
      await takeEntries(live.entries, parts.world.nowMs() + caller.clockOffMs());
      await remember({ cursor: live.cursor });
      return true;
    },
    history: async () => {
      if (memory.history === null) return 'done';
      const { at, untilPos } = memory.history;
      const pulled = await caller.call(`/api/pull?after=${at}`, pulledSchema, { timeoutMs: 30_000 });
      if (!pulled.ok) return pulled.error;
      const { entries, serverMs, cursor, more } = pulled.value;
      await takeEntries(entries, serverMs, HISTORY_AT_ONCE);
      const done = !more || (parseCursor(cursor)?.pos ?? untilPos) >= untilPos;
      await remember({ history: done ? null : { at: cursor, untilPos } });
      return done ? 'done' : null;
    },
    checkpoint: async () => {
      const got = await caller.call('/api/checkpoint', checkpointSchema);
      if (!got.ok) return got.error;
      await log.keepCheckpoint(got.value);
      return null;
    },
  };
}

function isBehind(cursor: string, held: string | null): boolean {
  const pos = parseCursor(cursor)?.pos;
  const heldPos = held === null ? undefined : parseCursor(held)?.pos;
  return pos !== undefined && heldPos !== undefined && pos <= heldPos;
}

/** How many entries from the start the server can read: an older app took in what no reader takes today. */
function endOfSound(entries: readonly Entry[]): number {
  const bad = entries.findIndex(
    ({ hlc, sig }) => !isBounded(hlc) || (sig !== null && !signatureForm.test(sig)),
  );
  return bad < 0 ? entries.length : bad;
}

/** Own entries written before there was a key are signed when they are first sent. */
function signAll(entries: readonly Entry[], key: SyncKey): Promise<readonly Entry[]> {
  return Promise.all(
    entries.map(async (entry) =>
      entry.sig === null ? { ...entry, sig: await key.sign(entryText(entry.hash)) } : entry,
    ),
  );
}
