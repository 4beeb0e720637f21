// Up to where is each chain of an exported log signed, and what does nobody vouch for yet? A signed entry speaks for those before it, as far as
// the file holds what lies between, with its text.

import { lacksSecrets } from '../../shared/floor/secrets.ts';
import type { Omitted } from '../../shared/log/chain.ts';
import { chainId, type Entry } from '../../shared/log/entry.ts';
import { compareText } from '../../shared/log/order.ts';
import { sealedHash } from '../../shared/log/seal.ts';
import { goesOn, vouchersOf } from '../../shared/log/vouched.ts';

/** How far a chain is signed, as the file has it. */
export interface SignedTo {
  readonly tablet: string;
  readonly epoch: string;
  /** The last entry whose signature holds; 0 where none does. */
  readonly signedTo: number;
  /** The last entry in the file. */
  readonly lastSeq: number;
  /** Entries that no signature vouches for: after the last signed one, or before something that the file leaves out. */
  readonly notVouched: number;
}

/** What following them found. */
export interface Followed {
  /** The signed entry that vouches for an entry; its own where it is signed. */
  readonly vouchers: ReadonlyMap<Entry, Entry>;
  /** Entries at the end of a chain with a key that nobody vouches for, though nothing is left out of the file behind them. */
  readonly lacking: ReadonlySet<Entry>;
  readonly signedTo: readonly SignedTo[];
}

/** Follows the heads of all chains, in any order of `entries`. `hasKey`: whether a chain, by its id, names a key. Cost: a hash for each unsigned entry. */
export function followHeads(
  entries: readonly Entry[],
  {
    holds,
    omitted,
    hasKey,
  }: {
    readonly holds: (entry: Entry) => boolean;
    readonly omitted: readonly Omitted[];
    readonly hasKey: (chain: string) => boolean;
  },
): Followed {
  const vouchers = new Map<Entry, Entry>();
  const lacking = new Set<Entry>();
  const signedTo: SignedTo[] = [];
  const leftOutFrom = new Set(omitted.map((stretch) => `${chainId(stretch)}/${stretch.fromSeq}`));
  const isWhole = (entry: Entry) => !lacksSecrets(entry) && sealedHash(entry) === entry.hash;
  for (const [id, chain] of chainsOf(entries)) {
    chain.sort((a, b) => a.seq - b.seq);
    const found = vouchersOf(chain, { holds, isWhole });
    let [signed, notVouched] = [0, 0];
    /** The file goes from here to the chain's end, unsigned. Before a signature that does not hold, a break or a gap, those are what is wrong. */
    let isEnd = hasKey(id);
    for (let at = chain.length - 1; at >= 0; at -= 1) {
      const [entry, next, head] = [chain[at] as Entry, chain[at + 1], found[at]]; // within the list
      if (entry.sig !== null || leftOutFrom.has(`${id}/${entry.seq + 1}`)) isEnd = false;
      if (isEnd && next && !(goesOn(entry, next) && isWhole(next))) isEnd = false;
      if (head === entry && signed === 0) signed = entry.seq;
      if (head) vouchers.set(entry, head);
      else if (entry.sig === null) {
        notVouched += 1;
        if (isEnd) lacking.add(entry);
      }
    }
    const [first, last] = [chain[0], chain.at(-1)];
    if (first && last && (hasKey(id) || signed > 0)) {
      const { tablet, epoch } = first;
      signedTo.push({ tablet, epoch, signedTo: signed, lastSeq: last.seq, notVouched });
    }
  }
  signedTo.sort((a, b) => compareText(chainId(a), chainId(b)));
  return { vouchers, lacking, signedTo };
}

function chainsOf(entries: readonly Entry[]): ReadonlyMap<string, Entry[]> {
  const chains = new Map<string, Entry[]>();
  for (const entry of entries) {
    const chain = chains.get(chainId(entry));
    if (chain) chain.push(entry);
    else chains.set(chainId(entry), [entry]);
  }
  return chains;
}
