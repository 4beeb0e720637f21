// Where the invented plant's store keeps each part: rows of racks, ten shelves each, in the order of the parts list.

import { partRows } from './parts.ts';

const shelves = new Map(
  partRows.map(([part], at) => [
    part,
    `${'ABCDEF'[Math.floor(at / 30) % 6]}${1 + (at % 30)}-S${1 + ((at * 7) % 10)}`,
  ]),
);

/** The shelf of a part; null for one that the store does not keep. */
export function shelfOf(part: string): string | null {
  return shelves.get(part) ?? null;
}
