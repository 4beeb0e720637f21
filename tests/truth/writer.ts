// Writes entries as tablets do: sealed chains with a clock each. Knows entries and their seal, and nothing of what is made of them.

import { tickClock } from '../../shared/log/clock.ts';
import {
  type ClockReading,
  type Entry,
  entryId,
  firstPrev,
  type JsonObject,
} from '../../shared/log/entry.ts';
import { sealEntry } from '../../shared/log/seal.ts';

/** 2026-03-02T06:00:00Z. */
const START_MS = 1_772_431_200_000;

export interface Writer {
  /** Writes an entry now; its id. */
  readonly write: (kind: string, payload: object, tablet?: string) => string;
  /** Lets seconds pass. */
  readonly pass: (seconds: number) => void;
  readonly entries: readonly Entry[];
}

export function createWriter(): Writer {
  const entries: Entry[] = [];
  const chains = new Map<string, { seq: number; hash: string; hlc: ClockReading | null }>();
  let ms = START_MS;
  return {
    entries,
    pass: (seconds) => {
      ms += Math.round(seconds * 1000);
    },
    write: (kind, payload, tablet = 'A') => {
      ms += 1000;
      const chain = chains.get(tablet) ?? { seq: 0, hash: firstPrev, hlc: null };
      const hlc = tickClock(chain.hlc, ms);
      const entry = sealEntry({
        v: 1,
        tablet,
        epoch: `${tablet}-1`,
        seq: chain.seq + 1,
        hlc,
        at: new Date(ms).toISOString(),
        who: 'op',
        kind,
        payload: JSON.parse(JSON.stringify(payload)) as JsonObject, // an object by its type
        prev: chain.hash,
      });
      chains.set(tablet, { seq: entry.seq, hash: entry.hash, hlc });
      entries.push(entry);
      return entryId(entry);
    },
  };
}
