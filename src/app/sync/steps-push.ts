// Pushing: what the server lacks of each chain goes out page by page, some pages at a time.

import { chainId, type Entry, isBounded, signatureForm } from '../../../shared/log/entry.ts';
import type { EntryFault } from '../../../shared/wire/codes.ts';
import { pageEntries } from '../../../shared/wire/limits.ts';
import { type Brought, type Head, pushedSchema } from '../../../shared/wire/messages.ts';
import { type Page, takePage } from '../../../shared/wire/pages.ts';
import { broughtText, entryText } from '../../../shared/wire/signing.ts';
import { noteAcks, offerHeads, type SyncContext, tellBacklog } from './context.ts';
import { noteReceipt } from './heads.ts';
import type { CallFailure } from './http.ts';
import { handPins } from './pins.ts';
import type { SyncKey } from './ports.ts';

/** Pages of one chain on their way at the same time: the server flushes those that wait together in one go. */
const PAGES_AT_ONCE = 8;

/** A page on its way. */
interface Travelling {
  /** Sequence number of its last entry. */
  readonly end: number;
  readonly answer: Promise<CallFailure | null>;
}

/** Pushes all chains: own entries, and others' where the server lost them. */
export async function pushAll(context: SyncContext): Promise<CallFailure | null> {
  for (const head of await context.log.heads()) {
    const { size } = context.begunAnew;
    let failure = await pushChain(context, head);
    if (!failure && context.begunAnew.size > size) failure = await pushChain(context, head);
    if (failure) return failure;
  }
  const taken = context.nameTaken;
  context.nameTaken = null;
  if (taken && (await context.log.beginNewLife?.(taken))) {
    context.status({ quarantined: [] });
    return pushAll(context);
  }
  await handPins(context.log.pins, context.caller, context.memory.serverEpoch);
  await tellBacklog(context);
  return null;
}

/**
 * Some pages are on their way at a time: while the server writes one down, the next travel. Should a later one arrive
 * first, it is a gap to the server, is not acknowledged, and goes out again.
 */
async function pushChain(context: SyncContext, head: Head): Promise<CallFailure | null> {
  const id = chainId(head);
  const held = () => context.memory.acked[id] ?? 0;
  const isStuck = () => context.stuck.has(id);
  const travelling: Travelling[] = [];
  let failure: CallFailure | null = null;
  let sent = held();
  let before = sent;
  let isGap = false;
  for (;;) {
    while (!failure && !isGap && !isStuck() && travelling.length < PAGES_AT_ONCE && sent < head.seq) {
      const page = await nextPage(context, head, sent);
      const last = page?.entries.at(-1);
      if (!page || !last) break;
      sent = last.seq;
      travelling.push({ end: sent, answer: pushPage(context, page, head) });
    }
    const next = travelling.shift();
    if (next) {
      failure ??= await next.answer;
      // Not taken whole: what would be sent now is a gap too, until what is missing went out again.
      if (held() < next.end) isGap = true;
      continue;
    }
    if (failure || isStuck() || held() >= head.seq || held() <= before) return failure;
    // All have arrived, and some of it was not taken: from there again, as long as there is progress.
    before = sent = held();
    isGap = false;
  }
}

/** The next page of a chain; null where nothing is left that can travel, which leaves the chain stuck if something is left at all. */
async function nextPage(context: SyncContext, head: Head, sent: number): Promise<Page | null> {
  const next = await context.log.entriesAfter(head, sent, pageEntries);
  const page = takePage(next.slice(0, endOfIntact(next)));
  if (page.entries.length > 0) return page;
  if (next.length > 0) context.stuck.add(chainId(head));
  return null;
}

async function pushPage(context: SyncContext, page: Page, head: Head): Promise<CallFailure | null> {
  const { key, caller, status } = context;
  const own = head.tablet === key.tablet;
  const isSigned = !own || page.entries.every((entry) => entry.sig !== null);
  // The text that measured the page is the text that travels: writing it again would double the tablet's work.
  const entries = isSigned ? page.texts : [JSON.stringify(await signAll(page.entries, key))];
  const brought = own ? '' : `"brought":${JSON.stringify([await bring(page.entries, key)])},`;
  const texts = [`{"sentMs":${context.world.nowMs()},${brought}"entries":`, ...entries, '}'];
  const pushed = await caller.call('/api/push', pushedSchema, { texts, timeoutMs: 30_000 });
  if (!pushed.ok) return pushed.error;
  const { serverEpoch, acks, faults, snapshotWanted, receipt } = pushed.value;
  if (serverEpoch !== context.memory.serverEpoch) return offerHeads(context);
  noteReceipt(context, receipt, page.entries);
  // Answers may overtake each other: what was acknowledged once stays so within one life of the server.
  const { acked } = context.memory;
  await noteAcks(
    context,
    acks.map((ack) => ({ ...ack, seq: Math.max(ack.seq, acked[chainId(ack)] ?? 0) })),
  );
  if (faults.length > 0) {
    context.stuck.add(chainId(head));
    if (own) noteTaken(context, head, faults);
    if (own) status({ quarantined: faults.map((fault) => `${fault.id} ${fault.fault}`) });
  }
  if (snapshotWanted) context.isSnapshotWanted = true;
  await tellBacklog(context);
  return null;
}

/** How many entries from the start the server can read: an older app took in what no reader takes today. */
function endOfIntact(entries: readonly Entry[]): number {
  const bad = entries.findIndex(
    ({ hlc, sig }) => !isBounded(hlc) || (sig !== null && !signatureForm.test(sig)),
  );
  return bad < 0 ? entries.length : bad;
}

/**
 * Does the server hold another chain under this one's name? From its first entry on: somebody brought it before this tablet was let in,
 * since afterwards a name is nobody else's. Where it does not go on from what is held, what is held is asked for from the start.
 */
function noteTaken(
  context: SyncContext,
  head: Head,
  faults: readonly { readonly id: string; readonly fault: EntryFault }[],
): void {
  const id = chainId(head);
  const [first] = faults;
  if (first?.id === `${id}/1` && first.fault === 'name-taken') context.nameTaken = head;
  if (first?.fault !== 'prev-differs' || context.begunAnew.has(id)) return;
  context.begunAnew.add(id);
  context.stuck.delete(id);
  context.memory = { ...context.memory, acked: { ...context.memory.acked, [id]: 0 } };
}

/** This tablet's word that it brings the chain of another one: the server takes none of a tablet that it never let in without it. */
async function bring(entries: readonly Entry[], key: SyncKey): Promise<Brought> {
  const last = entries.at(-1);
  if (!last) throw new RangeError('Cannot bring a page as it must hold an entry: it holds none');
  const { tablet, epoch, seq, hash } = last;
  const end = { tablet, epoch, seq, hash };
  return { ...end, sig: await key.sign(broughtText(end)) };
}

/** Own entries written before there was a key are signed when they are first sent. */
function signAll(entries: readonly Entry[], key: SyncKey): Promise<readonly Entry[]> {
  return Promise.all(
    entries.map(async (entry) =>
      entry.sig === null ? { ...entry, sig: await key.sign(entryText(entry.hash)) } : entry,
    ),
  );
}
