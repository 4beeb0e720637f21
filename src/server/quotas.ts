// How much one tablet may have kept: far more than any tablet writes, and not enough to fill a disk. A bucket for bytes and one for
// entries quarantined, each filled at an even pace; what is in it may go in one burst, since a weekend's backlog comes so.

import { performance } from 'node:perf_hooks';

/** Bytes of entries, unpacked, and of snapshots, packed: a plant's year in one burst, then a mebibyte a second. */
const BYTES_MOST = 256 * 1024 * 1024;
const BYTES_A_SECOND = 1024 * 1024;
/** Entries quarantined: honest tablets have none. */
const QUARANTINED_MOST = 5_000;
const QUARANTINED_A_SECOND = 5;
/** Tablets remembered; a full bucket need not be. */
const TABLETS_MOST = 2_000;

interface Buckets {
  bytes: number;
  quarantined: number;
  atMs: number;
}

export interface Quotas {
  /** How long the tablet has to wait before more of it is kept, ms; 0 where it need not. */
  readonly waitMs: (tablet: string) => number;
  /** Notes what was kept; the bucket may be overdrawn by the last of it. */
  readonly spend: (tablet: string, spent: { readonly bytes?: number; readonly quarantined?: number }) => void;
}

/** Starts with every bucket full. `nowMs`: any clock that only grows. */
export function createQuotas(nowMs: () => number = () => performance.now()): Quotas {
  const all = new Map<string, Buckets>();
  const bucketsOf = (tablet: string): Buckets => {
    const atMs = nowMs();
    const there = all.get(tablet);
    if (!there) {
      const [oldest] = all.keys();
      if (all.size >= TABLETS_MOST && oldest !== undefined) all.delete(oldest);
      const fresh = { bytes: BYTES_MOST, quarantined: QUARANTINED_MOST, atMs };
      all.set(tablet, fresh);
      return fresh;
    }
    const seconds = (atMs - there.atMs) / 1000;
    there.bytes = Math.min(BYTES_MOST, there.bytes + seconds * BYTES_A_SECOND);
    there.quarantined = Math.min(QUARANTINED_MOST, there.quarantined + seconds * QUARANTINED_A_SECOND);
    there.atMs = atMs;
    return there;
  };
  return {
    waitMs: (tablet) => {
      const { bytes, quarantined } = bucketsOf(tablet);
      const waits = [
        bytes > 0 ? 0 : 1 - bytes / BYTES_A_SECOND,
        quarantined > 0 ? 0 : 1 - quarantined / QUARANTINED_A_SECOND,
      ];
      return 1000 * Math.max(...waits);
    },
    spend: (tablet, { bytes = 0, quarantined = 0 }) => {
      const buckets = bucketsOf(tablet);
      buckets.bytes -= bytes;
      buckets.quarantined -= quarantined;
    },
  };
}
