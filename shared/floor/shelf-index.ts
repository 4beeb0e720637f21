// Which labels on the shelf may a slot take? Thousands of packages bear a few hundred different labels; a slot looks at those whose number may be its own.

import { comparisonKeys, type PartComparison } from '../labels/part-numbers.ts';
import type { Reel } from './state.ts';

/** Reels off the line with one label: the same part and maker's number. */
export type SameLabel = readonly Reel[];

// A reel's record never changes, so its label is put together once.
const labels = new WeakMap<Reel, string>();

function labelOf(reel: Reel): string {
  let label = labels.get(reel);
  if (label === undefined) {
    label = `${reel.part === null ? '' : `=${reel.part}`}\u0000${reel.supplierPart ?? ''}`;
    labels.set(reel, label);
  }
  return label;
}

/** Answers for part numbers which labels may be of one of them; those that bear a maker's number alone are among them always. */
export function shelfIndex(
  reels: Iterable<Reel>,
  comparison: PartComparison,
): (parts: readonly string[]) => readonly SameLabel[] {
  const byLabel = new Map<string, Reel[]>();
  for (const reel of reels) {
    if (reel.at !== null) continue;
    const label = labelOf(reel);
    const same = byLabel.get(label);
    if (same) same.push(reel);
    else byLabel.set(label, [reel]);
  }
  const bare: SameLabel[] = [];
  const byKey = new Map<string, SameLabel[]>();
  for (const same of byLabel.values()) {
    const part = same[0]?.part ?? null;
    if (part === null) bare.push(same);
    else
      for (const key of comparisonKeys(part, comparison)) {
        const there = byKey.get(key);
        if (there) there.push(same);
        else byKey.set(key, [same]);
      }
  }
  return (parts) => {
    const found = new Set<SameLabel>(bare);
    for (const part of parts)
      for (const key of comparisonKeys(part, comparison))
        for (const same of byKey.get(key) ?? []) found.add(same);
    return [...found];
  };
}
