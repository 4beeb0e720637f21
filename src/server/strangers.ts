// Chains of tablets that were never let in here. No key of theirs is known, so that anybody could write in their name: whoever brings such
// a chain signs that it did, and answers for it by its own name. It is taken as the word of its bringer and no more until its tablet is let in.
// Refused: to keep such chains out of the log, since after a loss of the server they are all that is left of a tablet that is gone.

import { chainId, type Entry, entryId } from '../../shared/log/entry.ts';
import type { Brought } from '../../shared/wire/messages.ts';
import { broughtText } from '../../shared/wire/signing.ts';
import type { ArrivedEntry } from './arrived.ts';
import type { Carrier } from './checked.ts';
import { signatureHolds } from './keys.ts';
import type { KeptBrought, Store } from './stores/store.ts';

/** Such chains as one page brings them. */
export interface Strangers {
  /**
   * Takes a run of one, or finds it at fault; answers the key that the chain's first entry names, to check the run by: null where there is
   * nothing to check by.
   */
  readonly take: (run: readonly ArrivedEntry[]) => Promise<readonly string[] | null>;
  /** What the carrier signed for those that were taken. */
  readonly words: () => readonly KeptBrought[];
}

/** Looks at what one page brings; nothing is computed for a page without such a chain. */
export function createStrangers(
  entries: readonly ArrivedEntry[],
  carrier: Carrier,
  store: Pick<Store, 'firstOf'>,
): Strangers {
  const kept = new Set<Brought>();
  let covered: ReadonlyMap<ArrivedEntry, Brought> | null = null;
  const namedKey = async (chain: ArrivedEntry) => {
    const there = await store.firstOf(chain);
    const isFirst = (entry: ArrivedEntry) => entry.seq === 1 && chainId(entry) === chainId(chain);
    const first = there?.text ?? entries.find(isFirst)?.body;
    return first === undefined ? null : keyNamedIn(first);
  };
  return {
    words: () => [...kept].map((word) => ({ ...word, via: carrier.tablet, atMs: carrier.nowMs })),
    take: async (run) => {
      const [first] = run;
      // Out of a file nobody brings it: what is imported is the word of whoever imports it.
      if (carrier.tablet === '' || !first) return null;
      covered ??= coveredBy(entries, carrier);
      for (const entry of run) {
        const word = covered.get(entry);
        if (word) kept.add(word);
        else entry.fault ??= 'signature-missing';
      }
      const key = await namedKey(first);
      return key === null ? null : [key];
    },
  };
}

/** The entries of a page that the carrier's words vouch for: the one that a word names, and through the seals those before it. */
function coveredBy(
  entries: readonly ArrivedEntry[],
  { brought = [], publicKey }: Carrier,
): ReadonlyMap<ArrivedEntry, Brought> {
  const byName = new Map(entries.map((entry) => [entryId(entry), entry]));
  const covered = new Map<ArrivedEntry, Brought>();
  for (const word of brought) {
    if (!signatureHolds(publicKey, broughtText(word), word.sig)) continue;
    let { hash } = word;
    for (let { seq } = word; ; seq -= 1) {
      const entry = byName.get(entryId({ ...word, seq }));
      if (entry?.hash !== hash || covered.has(entry)) break;
      covered.set(entry, word);
      hash = entry.prev;
    }
  }
  return covered;
}

/** The key that the first entry of a chain names, as a point; null where it names none. */
function keyNamedIn(text: string): string | null {
  const { kind, payload } = JSON.parse(text) as Pick<Entry, 'kind' | 'payload'>; // checked when it came
  const key = kind === 'tablet.opened' ? payload['key'] : null;
  if (key === null || typeof key !== 'object' || Array.isArray(key)) return null;
  const { x, y } = key as Readonly<Record<string, unknown>>; // looked at on the next line
  if (typeof x !== 'string' || typeof y !== 'string') return null;
  const [left, right] = [Buffer.from(x, 'base64url'), Buffer.from(y, 'base64url')];
  return Buffer.concat([Buffer.of(4), left, right]).toString('base64url');
}
