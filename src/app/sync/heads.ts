// Does the server's log still grow from the one that it showed before? Each head that it signed for this tablet, in receipts and when asked,
// must be by the key known since the tablet joined, begin with the head before it, and hold what the receipt says. Asked for some at a
// time and never in a push's way. What does not hold is kept as evidence and told until a person took note; nothing is held back.

import { fromHex } from '../../../shared/log/bytes.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { ecdsaFromDer, p256NoteKey, parseNote, signaturesBy } from '../../../shared/log/note.ts';
import { consistencyHolds, inclusionHolds, leafHash, type TreeHead } from '../../../shared/log/tree.ts';
import { parseTreeHead, proofFromTexts } from '../../../shared/log/tree-head.ts';
import {
  infoSchema,
  type Pushed,
  type TreeTold,
  treeAskMost,
  treeToldSchema,
} from '../../../shared/wire/messages.ts';
import { remember, type SyncContext, tellRollback } from './context.ts';
import type { CallFailure } from './http.ts';
import type { HeadFault, HeadFaultCode, Receipt } from './ports.ts';

/** Receipts that wait to be checked; of a longer backlog the newest. */
const RECEIPTS_MOST = 256;

/** A head with the note that it stands in. */
export interface SeenHead extends TreeHead {
  readonly note: string;
}

/** Keeps a push's receipt until the heads are checked. */
export function noteReceipt(
  context: SyncContext,
  receipt: Pushed['receipt'],
  entries: readonly Entry[],
): void {
  if (!receipt) return;
  const last = entries.at(-1);
  const place = receipt.places.find(
    ({ tablet, epoch, seq, count }) =>
      last?.tablet === tablet && last.epoch === epoch && last.seq >= seq && last.seq < seq + count,
  );
  const leaf = last && place ? { index: place.index + last.seq - place.seq, hash: last.hash } : null;
  context.receipts.push({ note: receipt.head, leaf });
  if (context.receipts.length > RECEIPTS_MOST) context.receipts.shift();
}

/** Checks the receipts that wait, and the newest head; `onlyWaiting`: asks nothing where none waits. */
export async function checkHeads(context: SyncContext, onlyWaiting = false): Promise<CallFailure | null> {
  const receipts = context.receipts.splice(0);
  if (onlyWaiting && receipts.length === 0) return null;
  const { head: last, enrolled } = context.memory;
  const seen: SeenHead[] = [];
  // The last one was checked when it came.
  const known = last === null ? null : readHead(last);
  if (known) seen.push(known);
  for (const { note } of receipts) {
    const head = await readSigned(note, enrolled?.serverKey ?? '');
    if (typeof head === 'string') return tellFault(context, head, note);
    seen.push(head);
  }
  const heads = inOrder(seen);
  if (!heads) return tellFault(context, 'forked', receipts.at(-1)?.note ?? '');
  const leaves = receipts.flatMap(({ leaf }) => (leaf ? [leaf] : [])).slice(-treeAskMost);
  const step = treeAskMost - 1;
  for (let at = 0; at === 0 || at < heads.length - 1; at += step) {
    const some = heads.slice(at, at + treeAskMost);
    const isLast = at + step >= heads.length - 1;
    const failure = await checkSome(context, some, isLast ? leaves : []);
    if (typeof failure === 'string') return null;
    if (failure !== null) {
      // No answer: they wait for the next.
      context.receipts.unshift(...receipts);
      return failure;
    }
  }
  return null;
}

/** What did not hold of an answer: it was told. `shorter`: the server shows less than it did. */
export type NotHeld = HeadFaultCode | 'shorter';

/** Asks for the proofs of some heads, each of which begins with the one before; what did not hold was told. */
export async function checkSome(
  context: SyncContext,
  heads: readonly SeenHead[],
  leaves: readonly NonNullable<Receipt['leaf']>[],
): Promise<CallFailure | NotHeld | null> {
  const json = { sizes: heads.map(({ size }) => size), places: leaves.map(({ index }) => index) };
  const asked = await context.caller.call('/api/tree', treeToldSchema, { json });
  if (!asked.ok) {
    // A server of before there were heads; one that had them does not lose them.
    if (asked.error.code !== 'not-found') return asked.error;
    if (heads.length > 0) await tellFault(context, 'no-proof', '');
    return 'no-proof';
  }
  const told = asked.value;
  context.witness = told.witness ?? null;
  const now = await readSigned(told.head, context.memory.enrolled?.serverKey ?? '');
  const fault = typeof now === 'string' ? now : judge(told, { heads, now, leaves });
  if (fault === 'shorter') {
    await remember(context, { head: told.head });
    await tellRollback(context);
    return fault;
  }
  if (fault !== null) {
    await tellFault(context, fault, told.head);
    return fault;
  }
  await remember(context, { head: told.head });
  return null;
}

/** What is wrong with an answer; null where all of it holds. */
function judge(
  told: TreeTold,
  {
    heads,
    now,
    leaves,
  }: {
    readonly heads: readonly SeenHead[];
    readonly now: SeenHead;
    readonly leaves: readonly NonNullable<Receipt['leaf']>[];
  },
): NotHeld | null {
  if ((heads.at(-1)?.size ?? 0) > now.size) return 'shorter';
  if (told.consistency.length !== heads.length || told.inclusion.length !== leaves.length) return 'no-proof';
  for (const [at, head] of heads.entries()) {
    const proof = proofFromTexts(told.consistency[at] ?? []);
    if (!proof || !consistencyHolds(head, heads[at + 1] ?? now, proof)) return 'forked';
  }
  for (const [at, { index, hash }] of leaves.entries()) {
    const data = fromHex(hash, 32);
    const proof = proofFromTexts(told.inclusion[at] ?? []);
    if (!data || !proof) return 'forked';
    if (!inclusionHolds({ leaf: leafHash(data), index, size: now.size, root: now.root }, proof))
      return 'forked';
  }
  return null;
}

/** By size, each once; null where two of one size are not the same. */
export function inOrder(seen: readonly SeenHead[]): readonly SeenHead[] | null {
  const bySize = new Map<number, SeenHead>();
  for (const head of seen) {
    const there = bySize.get(head.size);
    if (there && !consistencyHolds(there, head, [])) return null;
    bySize.set(head.size, head);
  }
  return [...bySize.values()].sort((a, b) => a.size - b.size);
}

export function readHead(text: string): SeenHead | null {
  const note = parseNote(text);
  const head = note && parseTreeHead(note.text);
  return head && { size: head.size, root: head.root, note: text };
}

/** Reads a head that must be signed by the plant's key (P-256 point, base64url), or says what is wrong with it. */
export async function readSigned(text: string, serverKey: string): Promise<SeenHead | HeadFaultCode> {
  const head = await noteSignedBy(text, serverKey, parseTreeHead);
  return typeof head === 'string' ? head : { size: head.size, root: head.root, note: text };
}

/** Reads what is in a note that must be signed by the plant's key (P-256 point, base64url), or says what is wrong with it. */
export async function noteSignedBy<T extends { readonly origin: string }>(
  text: string,
  serverKey: string,
  read: (text: string) => T | null,
): Promise<T | 'no-proof' | 'other-key'> {
  const note = parseNote(text);
  const told = note && read(note.text);
  if (!note || !told) return 'no-proof';
  const key = p256NoteKey(told.origin, serverKey);
  const [signature] = key ? signaturesBy(note, key) : [];
  const joined = signature ? ecdsaFromDer(signature) : null;
  if (!key || !joined) return 'other-key';
  const point = Uint8Array.from(key.key);
  const curve = { name: 'ECDSA', namedCurve: 'P-256' };
  const own = await crypto.subtle.importKey('raw', point, curve, false, ['verify']).catch(() => null); // no point of the curve
  const how = { name: 'ECDSA', hash: 'SHA-256' };
  const signed = new TextEncoder().encode(note.text);
  return own !== null && (await crypto.subtle.verify(how, own, joined, signed)) ? told : 'other-key';
}

/** Keeps what does not hold together with what was known, and tells it; the watch then goes on from what is shown now. */
export async function tellFault(context: SyncContext, code: HeadFaultCode, shown: string): Promise<null> {
  const { head, headFault: before } = context.memory;
  const atMs = Math.round(context.world.nowMs() + context.caller.clockOffMs());
  // The first of its kind stays until somebody took note: what follows from it says less.
  const isKnown = before?.code === code;
  const serverKey = code === 'other-key' ? await askKey(context) : null;
  const headFault: HeadFault = isKnown ? before : { code, atMs, known: head, shown, serverKey };
  await remember(context, { headFault, head: code === 'forked' && readHead(shown) ? shown : head });
  context.status({ headFault });
  return null;
}

/** The key that the server signs with now; null where it does not say. */
async function askKey(context: SyncContext): Promise<string | null> {
  const info = await context.caller.call('/api/info', infoSchema);
  return info.ok ? info.value.serverKey : null;
}
