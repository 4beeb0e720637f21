// What the steps of a sync share: what is remembered, and which chains got stuck. Memory is written only after what it speaks of is
// durable, so that a crash in between repeats work and never skips any.

import { chainId } from '../../../shared/log/entry.ts';
import { type ChainMark, type Head, type Offered, offeredSchema } from '../../../shared/wire/messages.ts';
import type { Caller, CallFailure } from './http.ts';
import {
  isScreenIn,
  type Receipt,
  type SyncKey,
  type SyncLog,
  type SyncMemory,
  type SyncStatus,
  type SyncWorld,
} from './ports.ts';

/** What the steps ask, and whom they tell. */
export interface SyncParts {
  readonly log: SyncLog;
  readonly key: SyncKey;
  readonly world: SyncWorld;
  readonly caller: Caller;
  readonly memory: SyncMemory;
  readonly status: (change: Partial<SyncStatus>) => void;
}

/** The state that all steps work on. */
export interface SyncContext extends Omit<SyncParts, 'memory'> {
  memory: SyncMemory;
  /** Chains with an entry that the server quarantined: pushing more of them would change nothing. */
  readonly stuck: Set<string>;
  /** What the server gave for pushes since its heads were checked last. */
  readonly receipts: Receipt[];
  /** The head that the plant's tablets sign, as the server told it last; null where it told none. */
  witness: string | null;
  /** The server asked for a snapshot; it gets one after the next pull. */
  isSnapshotWanted: boolean;
  /** A chain of this tablet under whose name the server holds another. */
  nameTaken: Head | null;
  /** Chains that did not go on from what the server holds, and were sent from the start since. */
  readonly begunAnew: Set<string>;
}

/** Heads in one offer. */
const OFFER_AT_ONCE = 2_000;

/** The state before the first step. */
export function openSyncContext(parts: SyncParts): SyncContext {
  return {
    ...parts,
    stuck: new Set(),
    receipts: [],
    witness: null,
    isSnapshotWanted: false,
    nameTaken: null,
    begunAnew: new Set(),
  };
}

/** True on a wall screen: what it holds of its own is sent to nobody. */
export const isScreen = ({ memory }: Pick<SyncContext, 'memory'>) => isScreenIn(memory);

/** Writes a change of the memory down, with how far the clock is off by now. */
export async function remember(context: SyncContext, change: Partial<SyncMemory>): Promise<void> {
  context.memory = { ...context.memory, ...change, clockOffMs: Math.round(context.caller.clockOffMs()) };
  await context.log.writeMemory(context.memory);
}

/** Another life of the server: what it acknowledged and where it was read up to are void. */
export async function meetEpoch(context: SyncContext, serverEpoch: string): Promise<void> {
  if (context.memory.serverEpoch === serverEpoch) return;
  context.stuck.clear();
  context.receipts.length = 0;
  const isOther = context.memory.serverEpoch !== null;
  await remember(context, { serverEpoch, cursor: null, history: null, acked: {}, head: null, cosigned: 0 });
  if (isOther) await tellRollback(context);
}

/** The server holds less than it did, or another log than it did: people have to know, also where all of it comes back by itself. */
export async function tellRollback(context: SyncContext): Promise<void> {
  const rolledBackMs = Math.round(context.world.nowMs() + context.caller.clockOffMs());
  await remember(context, { rolledBackMs });
  context.status({ rolledBackMs });
}

/** A person took note of what is wrong with the server's log. Another key that was told is the one to go by from now on. */
export async function takeNote(context: SyncContext): Promise<void> {
  const { enrolled, headFault } = context.memory;
  const serverKey = headFault?.serverKey ?? null;
  await remember(context, { rolledBackMs: null, headFault: null });
  if (enrolled && serverKey !== null)
    await remember(context, { enrolled: { ...enrolled, serverKey }, head: null });
  context.status({ rolledBackMs: null, headFault: null });
}

/** Keeps how far the server holds each chain. */
export function noteAcks(context: SyncContext, acks: readonly ChainMark[]): Promise<void> {
  const { acked } = context.memory;
  return remember(context, {
    acked: { ...acked, ...Object.fromEntries(acks.map((ack) => [chainId(ack), ack.seq])) },
  });
}

/** Counts own entries that the server does not hold yet; asks nobody. */
export async function tellBacklog(context: SyncContext): Promise<void> {
  let backlog = 0;
  for (const head of await context.log.heads()) {
    if (head.tablet === context.key.tablet && !isScreen(context))
      backlog += Math.max(0, head.seq - (context.memory.acked[chainId(head)] ?? 0));
  }
  context.status({ backlog, clockOffMs: Math.round(context.caller.clockOffMs()) });
}

/** Asks how far the server holds what is here, and puts clocks right by its time. */
export async function offerHeads(context: SyncContext): Promise<CallFailure | null> {
  const { log, caller } = context;
  const heads = await log.heads();
  let serverMs = 0;
  for (let at = 0; at === 0 || at < heads.length; at += OFFER_AT_ONCE) {
    const json = { heads: heads.slice(at, at + OFFER_AT_ONCE) };
    const offered = await caller.call('/api/offer', offeredSchema, { json });
    if (!offered.ok) return offered.error;
    await meetEpoch(context, offered.value.serverEpoch);
    await noteAcks(context, offered.value.acks);
    tellPlant(context, offered.value);
    serverMs = offered.value.serverMs;
  }
  await log.rightClocks?.({ nowMs: serverMs, offMs: caller.clockOffMs(), acked: context.memory.acked });
  await tellBacklog(context);
  return null;
}

/** Asks how the plant stands (which tablets' clocks are off, how large its state is), and offers nothing. */
export async function askPlant(context: SyncContext): Promise<CallFailure | null> {
  const offered = await context.caller.call('/api/offer', offeredSchema, { json: { heads: [] } });
  if (!offered.ok) return offered.error;
  tellPlant(context, offered.value);
  return null;
}

function tellPlant({ status }: SyncContext, { clocksOff = [], stateShare }: Offered): void {
  status({ clocksOff, stateShare: stateShare ?? null });
}
