// Pushing: what the server lacks of each chain goes out page by page, some pages at a time.

import { fromBase64Url, toBase64Url } from '../../../shared/kit/base64.ts';
import { chainId, type Entry, isBounded, signatureForm } from '../../../shared/log/entry.ts';
import { closedBy, unsignedEnd } from '../../../shared/log/vouched.ts';
import type { EntryFault } from '../../../shared/wire/codes.ts';
import { pageBytes, pageEntries } from '../../../shared/wire/limits.ts';
import { type Brought, type Head, pushedSchema } from '../../../shared/wire/messages.ts';
import { type Page, takePage } from '../../../shared/wire/pages.ts';
import { broughtText, entryText } from '../../../shared/wire/signing.ts';
import { noteAcks, offerHeads, type SyncContext, tellBacklog } from './context.ts';
import { noteReceipt } from './heads.ts';
import type { CallFailure } from './http.ts';
import { handPins } from './pins.ts';
import type { SyncKey, SyncLog } from './ports.ts';

/** Pages of one chain on their way at the same time: the server flushes those that wait together in one go. */
const PAGES_AT_ONCE = 8;
/** By how much a signature makes an entry's text longer at most. */
const SIGNATURE_CHARS = 100;

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
  let how: Signing = (await isOwnChain(context, head)) ? 'end' : 'none';
  const held = () => context.memory.acked[id] ?? 0;
  const isStuck = () => context.stuck.has(id);
  const travelling: Travelling[] = [];
  let failure: CallFailure | null = null;
  let sent = held();
  let before = sent;
  let isGap = false;
  for (;;) {
    while (!failure && !isGap && !isStuck() && travelling.length < PAGES_AT_ONCE && sent < head.seq) {
      const page = await nextPage(context, head, { sent, how });
      const last = page?.entries.at(-1);
      if (!page || !last) break;
      sent = last.seq;
      travelling.push({ end: sent, answer: pushPage(context, page, { head, how }) });
    }
    const next = travelling.shift();
    if (next) {
      failure ??= await next.answer;
      // Not taken whole: what would be sent now is a gap too, until what is missing went out again.
      if (held() < next.end) isGap = true;
      continue;
    }
    if (failure || isStuck() || held() >= head.seq) return failure;
    // All have arrived, and some of it was not taken: from there again, as long as there is progress.
    const isBetter = held() > before;
    if (!isBetter && how !== 'end') return failure;
    // Behind an entry that the server does not take no end vouches for those before it: then each is signed.
    if (how !== 'none') how = isBetter ? 'end' : 'each';
    before = sent = held();
    isGap = false;
  }
}

/** Which entries of a page are signed before it goes: of a chain by this tablet's key its end, or each where that did not do. */
type Signing = 'none' | 'end' | 'each';

/** Is the chain signed by the key that this tablet has? Not one of a life before, which a server that lost it gets as it is. */
async function isOwnChain({ log, key }: SyncContext, head: Head): Promise<boolean> {
  if (head.tablet !== key.tablet) return false;
  const named = await namedKey(log, head);
  return named === null || named === key.publicKey;
}

/** The point that a chain's first entry names as its key; null where it names none, or is not here. */
async function namedKey(log: SyncLog, chain: Head): Promise<string | null> {
  const first = await log.firstOf?.(chain);
  const key = first?.kind === 'tablet.opened' ? first.payload['key'] : null;
  if (typeof key !== 'object' || key === null || Array.isArray(key)) return null;
  const { x, y } = key as Readonly<Record<string, unknown>>; // looked at on the next line
  const point = typeof x === 'string' && typeof y === 'string' ? joinPoint(x, y) : null;
  return point && toBase64Url(point);
}

/** The uncompressed point of its two numbers, base64url; null where they are none. */
function joinPoint(x: string, y: string): Uint8Array | null {
  const [left, right] = [fromBase64Url(x), fromBase64Url(y)];
  return left && right ? Uint8Array.of(4, ...left, ...right) : null;
}

/** The next page of a chain; null where nothing is left that can travel, which leaves the chain stuck if something is left at all. */
async function nextPage(
  context: SyncContext,
  head: Head,
  { sent, how }: { readonly sent: number; readonly how: Signing },
): Promise<Page | null> {
  const next = await context.log.entriesAfter(head, sent, pageEntries);
  const page = takePage(next.slice(0, endOfIntact(next)), { bytes: pageBytes - SIGNATURE_CHARS });
  const vouched = how === 'none' ? await cutAtHead(context, head, page) : page;
  if (vouched.entries.length > 0) return vouched;
  if (next.length > 0) context.stuck.add(chainId(head));
  return null;
}

/** Up to the last signed entry: what comes after it nobody vouches for yet. A chain that names no key goes as it is. */
async function cutAtHead({ log }: SyncContext, head: Head, page: Page): Promise<Page> {
  const signed = closedBy(page.entries, ({ sig }) => sig !== null);
  if (signed === page.entries.length) return page;
  if (signed === 0 && (await namedKey(log, head)) === null) return page;
  return takePage(page.entries.slice(0, signed));
}

async function pushPage(
  context: SyncContext,
  page: Page,
  { head, how }: { readonly head: Head; readonly how: Signing },
): Promise<CallFailure | null> {
  const { key, caller, status } = context;
  const own = head.tablet === key.tablet;
  const entries = await signedTexts(context, page, how);
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

/**
 * The page's text with what is to be signed signed. The text that measured the page is the text that travels, but for its end: writing it
 * again would double the tablet's work.
 */
async function signedTexts({ log, key }: SyncContext, page: Page, how: Signing): Promise<readonly string[]> {
  const { entries, texts } = page;
  const last = entries.length - 1;
  const wanted = entries.flatMap((entry, at) => {
    const isWanted = at === last || how === 'each' || log.signsItself?.(entry, entries[at + 1] ?? null);
    return isWanted && entry.sig === null ? [at] : [];
  });
  if (how === 'none' || wanted.length === 0) return texts;
  const sigs = await Promise.all(wanted.map((at) => key.sign(entryText(entries[at]?.hash ?? ''))));
  const end = texts.at(-2) ?? '';
  if (wanted.length === 1 && wanted[0] === last && end.endsWith(unsignedEnd))
    return [...texts.slice(0, -2), `${end.slice(0, -unsignedEnd.length)}"sig":"${sigs[0]}"}`, ']'];
  const signed = new Map(wanted.map((at, index) => [at, sigs[index] ?? null]));
  return [JSON.stringify(entries.map((entry, at) => ({ ...entry, sig: signed.get(at) ?? entry.sig })))];
}
