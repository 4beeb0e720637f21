// Signatures of entries: one at a time before an answer, and a queue for those that a later one in the chain already vouches
// for. The queue works when nothing else asks, so that a backlog is taken in at the speed of the disk.

import type { EntryFault } from '../../shared/wire/codes.ts';
import { entryText } from '../../shared/wire/signing.ts';
import { signatureHolds } from './keys.ts';
import type { Checked } from './stores/store.ts';

/** What is wrong with an entry's signature by any of the tablet's keys. */
export async function signatureFault(
  entry: Pick<Checked, 'hash' | 'sig'>,
  keys: readonly string[],
): Promise<EntryFault | null> {
  if (entry.sig === null) return 'signature-missing';
  for (const key of keys) if (await signatureHolds(key, entryText(entry.hash), entry.sig)) return null;
  return 'signature-differs';
}

type Queued = Pick<Checked, 'tablet' | 'epoch' | 'seq' | 'hash' | 'sig'> & {
  readonly keys: readonly string[];
};

export interface SignatureQueue {
  readonly add: (entries: readonly Checked[], keys: readonly string[]) => void;
  /** How many wait. */
  readonly length: () => number;
  /** Resolves when all that wait were checked. */
  readonly drained: () => Promise<void>;
  /** Forgets the rest: it can be checked at any time from the log itself. */
  readonly stop: () => void;
}

/** The queue begins this long after entries were last added, ms. */
const IDLE_MS = 500;
/** Beyond this many the oldest are forgotten: memory matters more than checking early what the log keeps anyway. */
const MOST = 200_000;

/** Makes the queue; `onFault` is told of each signature that does not hold. */
export function createSignatureQueue(onFault: (entry: Queued) => void): SignatureQueue {
  let waiting: Queued[] = [];
  let timer: NodeJS.Timeout | null = null;
  let running: Promise<void> | null = null;
  let stopped = false;

  const run = async () => {
    while (waiting.length > 0 && !stopped) {
      const next = waiting.pop();
      if (next && (await signatureFault(next, next.keys)) !== null) onFault(next);
    }
    running = null;
  };
  const begin = () => {
    timer = null;
    running ??= run();
  };
  return {
    add: (entries, keys) => {
      if (stopped || entries.length === 0) return;
      for (const { tablet, epoch, seq, hash, sig } of entries)
        waiting.push({ tablet, epoch, seq, hash, sig, keys });
      if (waiting.length > MOST) waiting = waiting.slice(-MOST / 2);
      if (timer) timer.refresh();
      else {
        timer = setTimeout(begin, IDLE_MS);
        timer.unref();
      }
    },
    length: () => waiting.length,
    drained: async () => {
      if (timer) clearTimeout(timer);
      begin();
      while (running) await running;
    },
    stop: () => {
      stopped = true;
      if (timer) clearTimeout(timer);
      waiting = [];
    },
  };
}
