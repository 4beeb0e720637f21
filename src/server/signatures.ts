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

/** Entries of one chain that wait. As one text: tens of thousands of small objects would be moved about by the engine until then. */
interface WaitingRun {
  readonly tablet: string;
  readonly epoch: string;
  readonly keys: readonly string[];
  readonly count: number;
  /** JSON of number, hash and signature of each in turn. */
  readonly text: string;
}

export interface SignatureQueue {
  /** Takes in entries of one chain. */
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
export function createSignatureQueue(
  onFault: (entry: Pick<Checked, 'tablet' | 'epoch' | 'seq'>) => void,
): SignatureQueue {
  let waiting: WaitingRun[] = [];
  let count = 0;
  let timer: NodeJS.Timeout | null = null;
  let running: Promise<void> | null = null;
  let stopped = false;

  const check = async ({ tablet, epoch, keys, text }: WaitingRun) => {
    const facts = JSON.parse(text) as readonly (number | string | null)[]; // written by `add`
    for (let at = facts.length - 3; at >= 0 && !stopped; at -= 3) {
      const [seq, hash, sig] = facts.slice(at, at + 3) as [number, string, string | null]; // as above
      count -= 1;
      if ((await signatureFault({ hash, sig }, keys)) !== null) onFault({ tablet, epoch, seq });
    }
  };
  const run = async () => {
    for (let next = waiting.pop(); next && !stopped; next = waiting.pop()) await check(next);
    running = null;
  };
  const forgetOldest = () => {
    let from = 0;
    for (; count > MOST / 2; from += 1) count -= waiting[from]?.count ?? count;
    waiting = waiting.slice(from);
  };
  const begin = () => {
    timer = null;
    running ??= run();
  };
  return {
    add: (entries, keys) => {
      const [first] = entries;
      if (stopped || !first) return;
      const { tablet, epoch } = first;
      const text = JSON.stringify(entries.flatMap(({ seq, hash, sig }) => [seq, hash, sig]));
      waiting.push({ tablet, epoch, keys, count: entries.length, text });
      count += entries.length;
      if (count > MOST) forgetOldest();
      if (timer) timer.refresh();
      else {
        timer = setTimeout(begin, IDLE_MS);
        timer.unref();
      }
    },
    length: () => count,
    drained: async () => {
      if (timer) clearTimeout(timer);
      begin();
      while (running) await running;
    },
    stop: () => {
      stopped = true;
      if (timer) clearTimeout(timer);
      waiting = [];
      count = 0;
    },
  };
}
