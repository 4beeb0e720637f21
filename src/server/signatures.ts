// Signatures of entries: the head of each run before an answer, and afterwards those that a later one in the chain already vouches
// for, as tablets with an app of before version 7 of the wire sign each entry. The second is a walk along the log itself, from where it last came to, so that a backlog is taken in at the speed of the
// disk, nothing waits in memory, and a stop forgets nothing.

import { setImmediate as turn } from 'node:timers/promises';
import type { EntryFault } from '../../shared/wire/codes.ts';
import { entryText } from '../../shared/wire/signing.ts';
import { signatureHolds } from './keys.ts';
import { createPaced } from './paced.ts';
import type { Checked, SignedEntry, Store } from './stores/store.ts';

/** What is wrong with an entry's signature by any of the tablet's keys. */
export function signatureFault(
  { hash, sig }: Pick<Checked, 'hash' | 'sig'>,
  keys: readonly string[],
): EntryFault | null {
  if (sig === null) return 'signature-missing';
  return keys.some((key) => signatureHolds(key, entryText(hash), sig)) ? null : 'signature-differs';
}

/** The walk along the log. */
export interface SignatureWalk {
  /** This signature was found to hold before its answer: the walk need not check it again. */
  readonly proved: (entry: Pick<Checked, 'hash' | 'sig'>) => void;
  /** Resolves when the walk has come to the log's end. */
  readonly drained: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

export interface WalkParts {
  readonly store: Pick<Store, 'signedPage' | 'tabletKeys' | 'readMeta' | 'writeMeta' | 'watch' | 'leads'>;
  /** Told of each signature that does not hold. */
  readonly onDiffers: (entry: SignedEntry) => void;
  readonly onFault: (error: Error) => void;
}

/** The walk goes on when nothing has come for so long, ms, or after so long at the latest. */
const IDLE_MS = 500;
const LATEST_MS = 10_000;
const ROWS_AT_ONCE = 200;
/** Entries after which the walk's place is kept: what was checked since is checked again after a stop. */
const KEEP_EVERY = 2_000;
/** Proved signatures remembered; some seconds of a busy plant. */
const PROVED_KEPT = 20_000;
/** Name of the kept place: the position up to which every signature was checked. */
export const signaturesTo = 'signatures_to';

/** The same words may come again with another signature. */
function nameOf({ hash, sig }: Pick<Checked, 'hash' | 'sig'>): string {
  return `${hash} ${sig}`;
}

/** Starts the walk, which goes on as the log grows, in the one process that leads; what an earlier one left is gone on with. */
export function createSignatureWalk({ store, onDiffers, onFault }: WalkParts): SignatureWalk {
  const proved = new Set<string>();

  const check = async (entry: SignedEntry, keys: readonly string[]) => {
    // Without a key of its tablet, or written before there was one: the chain alone vouches for it.
    if (proved.delete(nameOf(entry)) || keys.length === 0 || entry.sig === null) return;
    if (signatureFault(entry, keys) !== null) onDiffers(entry);
    await turn(); // the tablets go first
  };
  const walk = async () => {
    if (!store.leads()) return;
    const keys = new Map<string, readonly string[]>();
    let pos = Number((await store.readMeta(signaturesTo)) ?? 0);
    let kept = pos;
    const keep = async () => {
      if (pos > kept) await store.writeMeta(signaturesTo, String(pos));
      kept = pos;
    };
    while (!paced.isStopped() && store.leads()) {
      const rows = await store.signedPage(pos, ROWS_AT_ONCE);
      for (const row of rows) {
        if (paced.isStopped()) return;
        const known = keys.get(row.tablet) ?? (await store.tabletKeys(row.tablet));
        keys.set(row.tablet, known);
        await check(row, known);
        pos = row.pos;
      }
      const isEnd = rows.length < ROWS_AT_ONCE;
      if (isEnd || pos - kept >= KEEP_EVERY) await keep();
      if (isEnd) return;
    }
  };
  // Where the store fails, the next look begins where the walk was kept.
  const paced = createPaced({ work: walk, onFault, pauseMs: IDLE_MS, latestMs: LATEST_MS });
  const unwatch = store.watch((signal) => {
    if (signal.kind === 'appended') paced.ask();
  });
  paced.ask();
  return {
    proved: (entry) => {
      if (proved.size >= PROVED_KEPT) proved.clear();
      proved.add(nameOf(entry));
    },
    drained: async () => void (await paced.now()),
    stop: () => {
      unwatch();
      return paced.stop();
    },
  };
}
