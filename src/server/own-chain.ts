// What the server itself writes into the plant's log: who was let in and shut out, who took the log away, that a backup was put back. One chain for
// all servers of a plant, each entry signed by the plant's key and sealed to the one before it inside the append that adds it, so that it does not
// fork however many write. Its life is named after the log's: after a restore it begins anew.
// Refused: a chain for each process, whose openings would be most of what it says; lines of the server's own log alone, which nobody exports.

import { formatMoment } from '../../shared/kit/moment.ts';
import { tickClock } from '../../shared/log/clock.ts';
import { type ClockReading, type Entry, firstPrev } from '../../shared/log/entry.ts';
import { canonicalText, draftOf, sealEntry } from '../../shared/log/seal.ts';
import { serverChain } from '../../shared/log/server-chain.ts';
import { entryText } from '../../shared/wire/signing.ts';
import type { AskedBy } from './codes.ts';
import { jwkOf, type ServerKey } from './keys.ts';
import type { ChainEnd, Checked, Store } from './stores/store.ts';

/** What it is called. */
const NAME = 'Server';

/** One thing that a server tells of what was done to the plant; the floor knows the same shapes (`kinds-server.ts`). */
export type OwnDraft =
  | {
      readonly kind: 'tablet.let-in';
      readonly payload: AskedBy & { readonly tablet: string; readonly name: string };
    }
  | { readonly kind: 'tablet.shut-out'; readonly payload: AskedBy & { readonly tablet: string } }
  | {
      readonly kind: 'log.fetched';
      readonly payload: {
        readonly format: string;
        readonly filter: string;
        readonly tablet: string;
        readonly person: string;
      };
    }
  | { readonly kind: 'log.restored'; readonly payload: AskedBy & { readonly entries: number } };

/** Writes the chain. */
export interface OwnChain {
  /** Resolves when it is durable in the log. */
  readonly tell: (draft: OwnDraft) => Promise<void>;
}

/** What it needs. */
export interface OwnChainParts {
  readonly store: Pick<Store, 'appendNext' | 'keepKey' | 'serverEpoch'>;
  readonly key: Pick<ServerKey, 'publicKey' | 'sign'>;
  /** The program's version. */
  readonly app: string;
  readonly nowMs: () => number;
}

/** Makes it; nothing is written yet. */
export function createOwnChain({ store, key, app, nowMs }: OwnChainParts): OwnChain {
  const opened = () => ({
    kind: 'tablet.opened',
    payload: { name: NAME, app, key: jwkOf(Buffer.from(key.publicKey, 'base64url')), previous: null },
  });
  return {
    tell: async (draft) => {
      const atMs = nowMs();
      // Whoever checks the log finds the key in the plant's list.
      await store.keepKey(serverChain, key.publicKey, atMs);
      const epoch = await store.serverEpoch();
      await store.appendNext(
        { tablet: serverChain, epoch },
        (end) => sealAll(end ? [draft] : [opened(), draft], { end, epoch, atMs, sign: key.sign }),
        atMs,
      );
    },
  };
}

interface Sealing {
  readonly end: ChainEnd | null;
  readonly epoch: string;
  readonly atMs: number;
  readonly sign: ServerKey['sign'];
}

function sealAll(
  drafts: readonly { readonly kind: string; readonly payload: unknown }[],
  { end, epoch, atMs, sign }: Sealing,
): readonly Checked[] {
  let hlc: ClockReading | null = end?.hlc ?? null;
  let prev: string = end?.hash ?? firstPrev;
  return drafts.map(({ kind, payload }, index) => {
    hlc = tickClock(hlc, atMs);
    const seq = (end?.seq ?? 0) + index + 1;
    const at = formatMoment(atMs);
    const told = payload as Entry['payload']; // JSON, as its kind says
    const who = null;
    const entry = sealEntry({
      v: 1,
      tablet: serverChain,
      epoch,
      seq,
      at,
      hlc,
      who,
      kind,
      payload: told,
      prev,
    });
    prev = entry.hash;
    return checkedOf({ ...entry, sig: sign(entryText(entry.hash)) });
  });
}

/** An entry of one's own needs no check: only what the store wants to know of it. */
function checkedOf(entry: Entry): Checked {
  const { tablet, epoch, seq, prev, hash, sig, kind, hlc } = entry;
  const body = canonicalText(draftOf(entry));
  const atMs = Date.parse(entry.at);
  return { tablet, epoch, seq, prev, hash, sig, kind, hlc, atMs, body, aheadMs: 0, via: null, fault: null };
}
