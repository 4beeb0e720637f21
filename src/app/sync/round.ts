// What the steps of a sync round share: what is remembered, and which chains got stuck. Memory is written only after what it speaks of is
// durable, so that a crash in between repeats work and never skips any.

import { chainId } from '../../../shared/log/entry.ts';
import { type Mark, offeredSchema } from '../../../shared/wire/messages.ts';
import type { Caller, CallFailure } from './http.ts';
import type { Receipt, SyncKey, SyncLog, SyncMemory, SyncStatus, SyncWorld } from './ports.ts';

/** What the steps ask, and whom they tell. */
export interface RoundParts {
  readonly log: SyncLog;
  readonly key: SyncKey;
  readonly world: SyncWorld;
  readonly caller: Caller;
  readonly memory: SyncMemory;
  readonly status: (change: Partial<SyncStatus>) => void;
}

/** The state that all steps work on. */
export interface Round extends Omit<RoundParts, 'memory'> {
  memory: SyncMemory;
  /** Chains with an entry that the server kept aside: pushing more of them would change nothing. */
  readonly stuck: Set<string>;
  /** What the server gave for pushes since its heads were checked last. */
  readonly receipts: Receipt[];
  /** The server asked for a snapshot; it gets one after the next pull. */
  isSnapshotWanted: boolean;
}

/** Heads in one offer. */
const OFFER_AT_ONCE = 2_000;

/** The state before the first step. */
export function openRound(parts: RoundParts): Round {
  return { ...parts, stuck: new Set(), receipts: [], isSnapshotWanted: false };
}

/** Writes a change of the memory down, with how far the clock is off by now. */
export async function remember(round: Round, change: Partial<SyncMemory>): Promise<void> {
  round.memory = { ...round.memory, ...change, clockOffMs: Math.round(round.caller.clockOffMs()) };
  await round.log.writeMemory(round.memory);
}

/** Another life of the server: what it acknowledged and where it was read up to are void. */
export async function meetEpoch(round: Round, serverEpoch: string): Promise<void> {
  if (round.memory.serverEpoch === serverEpoch) return;
  round.stuck.clear();
  round.receipts.length = 0;
  const isOther = round.memory.serverEpoch !== null;
  await remember(round, { serverEpoch, cursor: null, history: null, acked: {}, head: null });
  if (isOther) await tellRollback(round);
}

/** The server holds less than it did, or another log than it did: people have to know, also where all of it comes back by itself. */
export async function tellRollback(round: Round): Promise<void> {
  const rolledBackMs = Math.round(round.world.nowMs() + round.caller.clockOffMs());
  await remember(round, { rolledBackMs });
  round.status({ rolledBackMs });
}

/** A person took note of what is wrong with the server's log. Another key that was told is the one to go by from now on. */
export async function takeNote(round: Round): Promise<void> {
  const { enrolled, headFault } = round.memory;
  const serverKey = headFault?.serverKey ?? null;
  await remember(round, { rolledBackMs: null, headFault: null });
  if (enrolled && serverKey !== null)
    await remember(round, { enrolled: { ...enrolled, serverKey }, head: null });
  round.status({ rolledBackMs: null, headFault: null });
}

/** Keeps how far the server holds each chain. */
export function noteAcks(round: Round, acks: readonly Mark[]): Promise<void> {
  const { acked } = round.memory;
  return remember(round, {
    acked: { ...acked, ...Object.fromEntries(acks.map((ack) => [chainId(ack), ack.seq])) },
  });
}

/** Counts own entries that the server does not hold yet; asks nobody. */
export async function tellBacklog(round: Round): Promise<void> {
  let backlog = 0;
  for (const head of await round.log.heads()) {
    if (head.tablet === round.key.tablet)
      backlog += Math.max(0, head.seq - (round.memory.acked[chainId(head)] ?? 0));
  }
  round.status({ backlog, clockOffMs: Math.round(round.caller.clockOffMs()) });
}

/** Asks how far the server holds what is here, and puts clocks right by its time. */
export async function offerHeads(round: Round): Promise<CallFailure | null> {
  const { log, caller, status } = round;
  const heads = await log.heads();
  let serverMs = 0;
  for (let at = 0; at === 0 || at < heads.length; at += OFFER_AT_ONCE) {
    const json = { heads: heads.slice(at, at + OFFER_AT_ONCE) };
    const offered = await caller.call('/api/offer', offeredSchema, { json });
    if (!offered.ok) return offered.error;
    await meetEpoch(round, offered.value.serverEpoch);
    await noteAcks(round, offered.value.acks);
    status({ clocksOff: offered.value.clocksOff ?? [] });
    serverMs = offered.value.serverMs;
  }
  await log.rightClocks?.({ nowMs: serverMs, offMs: caller.clockOffMs(), acked: round.memory.acked });
  await tellBacklog(round);
  return null;
}

/** Asks which tablets' clocks are off, and offers nothing. */
export async function askClocks({ caller, status }: Round): Promise<CallFailure | null> {
  const offered = await caller.call('/api/offer', offeredSchema, { json: { heads: [] } });
  if (!offered.ok) return offered.error;
  status({ clocksOff: offered.value.clocksOff ?? [] });
  return null;
}
