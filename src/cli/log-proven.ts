// What of an exported log is proven, by whose key, and what is only claimed. Proven: the entry's text is what its hash says, and its
// signature holds by a key of the plant's list. Everything else is the word of whoever wrote the file, however well it hangs together.

import { chainId, type Entry } from '../../shared/log/entry.ts';
import type { ListedKey } from '../../shared/log/plant-list.ts';
import { hashDraft } from '../../shared/log/seal.ts';
import type { ClaimReason, SignatureCheck } from './log-file.ts';

/** How much is proven, by whose key, and what is only claimed and why. */
export interface Proven {
  readonly proven: number;
  readonly claimed: number;
  readonly provenBy: readonly (ListedKey & { readonly entries: number })[];
  readonly claims: readonly {
    readonly tablet: string;
    readonly epoch: string;
    readonly why: ClaimReason;
    readonly entries: number;
  }[];
}

/** Counts it. `isWhole`: every entry's text is known to be what its hash says. */
export function countProven(entries: readonly Entry[], check: SignatureCheck, isWhole: boolean): Proven {
  const provenBy = new Map<ListedKey, number>();
  const claims = new Map<string, { tablet: string; epoch: string; why: ClaimReason; entries: number }>();
  let proven = 0;
  for (const entry of entries) {
    const key = isWhole || hashDraft(entry) === entry.hash ? check.keyOf(entry) : null;
    if (key !== null && typeof key === 'object') {
      proven += 1;
      provenBy.set(key, (provenBy.get(key) ?? 0) + 1);
      continue;
    }
    const { tablet, epoch } = entry;
    const why = key ?? 'does-not-hold';
    const name = `${chainId(entry)} ${why}`;
    const before = claims.get(name)?.entries ?? 0;
    claims.set(name, { tablet, epoch, why, entries: before + 1 });
  }
  return {
    proven,
    claimed: entries.length - proven,
    provenBy: [...provenBy].map(([key, count]) => ({ ...key, entries: count })),
    claims: [...claims.values()],
  };
}
