// This tablet as a witness: it signs the head that the plant's tablets sign at present, once it has checked that this head and the last one that
// it knows are of one log. It never signs a smaller one than before. And the head that somebody else was shown, brought here on paper
// or otherwise: a server that shows two tablets two logs is found out where one's head comes to the other.

import { canWitness, tabletCosignedText } from '../../../shared/log/tablet-cosignature.ts';
import { consistencyHolds } from '../../../shared/log/tree.ts';
import { cosignedSchema } from '../../../shared/wire/messages-heads.ts';
import { remember, type SyncContext } from './context.ts';
import {
  checkHeads,
  checkSome,
  inOrder,
  type NotHeld,
  readHead,
  readSigned,
  type SeenHead,
  tellFault,
} from './heads.ts';
import type { CallFailure } from './http.ts';

/** Checks the heads, then signs the one that is put up, where that is a new one. */
export async function checkAndSign(context: SyncContext, onlyWaiting = false): Promise<CallFailure | null> {
  context.witness = null;
  const failure = await checkHeads(context, onlyWaiting);
  if (failure !== null || context.witness === null) return failure;
  return sign(context, context.witness);
}

async function sign(context: SyncContext, note: string): Promise<CallFailure | null> {
  const { key, caller, memory, world } = context;
  // Where something does not hold, or another log is shown than before, nothing is signed until somebody took note.
  const isTold = memory.headFault !== null || memory.rolledBackMs !== null;
  if (!canWitness(key.tablet) || isTold) return null;
  const shown = await readSigned(note, memory.enrolled?.serverKey ?? '');
  if (typeof shown === 'string') return tellFault(context, shown, note);
  const { size } = shown;
  if (size <= memory.cosigned) return null;
  const holds = await isOneLog(context, shown);
  if (holds !== true) return typeof holds === 'string' ? null : holds;
  const seconds = Math.floor((world.nowMs() + caller.clockOffMs()) / 1000);
  const text = noteText(note);
  const json = { size, seconds, sig: await key.sign(tabletCosignedText(text, seconds)) };
  // Kept before it is given away: what was signed once is never gone back behind.
  await remember(context, { cosigned: size });
  const sent = await caller.call('/api/witness', cosignedSchema, { json });
  return sent.ok || sent.error.code === 'not-found' ? null : sent.error;
}

/** True where a head and the one checked last are of one log; what did not hold of that, which was told; a failure; null where none was checked. */
async function isOneLog(context: SyncContext, shown: SeenHead): Promise<CallFailure | NotHeld | true | null> {
  const known = readHead(context.memory.head ?? '');
  if (!known) return null;
  if (known.size === shown.size && consistencyHolds(known, shown, [])) return true;
  const heads = inOrder([known, shown]);
  if (!heads) {
    await tellFault(context, 'forked', shown.note);
    return 'forked';
  }
  return (await checkSome(context, heads, [])) ?? true;
}

const noteText = (note: string) => note.slice(0, note.lastIndexOf('\n\n') + 1);

/** What a head that was brought turned out to be; `not-checked`: nobody here could say, and it was not kept for later. */
export type BroughtHead = 'one-log' | 'not-one-log' | 'not-the-plants' | 'no-server' | 'not-checked';

/** Checks a head that somebody else was shown: a signed note. What does not hold is told as always. */
export async function checkBrought(context: SyncContext, note: string): Promise<BroughtHead> {
  const shown = await readSigned(note, context.memory.enrolled?.serverKey ?? '');
  if (typeof shown === 'string') return 'not-the-plants';
  const later = (): BroughtHead => {
    context.receipts.push({ note, leaf: null });
    return 'no-server';
  };
  // Before any head was checked there is nothing to compare with: the present one is asked for first.
  if (context.memory.head === null && (await checkHeads(context)) !== null) return later();
  const holds = await isOneLog(context, shown);
  if (holds === true) return 'one-log';
  if (holds === 'forked' || holds === 'shorter') return 'not-one-log';
  return holds === null || typeof holds === 'string' ? 'not-checked' : later();
}
