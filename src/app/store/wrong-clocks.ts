// Which entries did a clock date too far ahead? Asked once the true time is known, and at a start that finds its newest entry out of all
// bounds; what is done about it stands in righted.ts and is fetched when there is something to do, which is hardly ever.

import { aheadLimitMs } from '../../../shared/log/clock.ts';
import { chainId, clockMsMost, type Entry, isBounded } from '../../../shared/log/entry.ts';
import { type LogDatabase, orderIndex } from './database.ts';
import type { Identity } from './identity.ts';

/** What is known when clocks are put right. */
export interface Right {
  /** The true time, ms since 1970; null where nobody told it, and only readings out of all bounds are wrong for sure. */
  readonly nowMs: number | null;
  /** What this tablet's clock shows, ms since 1970. */
  readonly wallMs: number;
  /** `tablet/epoch` -> sequence number up to which the server holds that chain. */
  readonly acked: Readonly<Record<string, number>>;
  /** For the first entry of the new chain. */
  readonly app: string;
  readonly name: string;
}

/** What clocks dated wrongly. */
export interface Wrong {
  /** Readings beyond it are wrong, ms since 1970. */
  readonly limitMs: number;
  /** This tablet's own entries to tell again, in chains. */
  readonly own: readonly Entry[];
  readonly others: readonly Entry[];
}

/** The entries that a clock dated wrongly; null where there are none. */
export async function findWrong(
  log: LogDatabase,
  identity: Identity,
  right: Pick<Right, 'nowMs' | 'acked'>,
): Promise<Wrong | null> {
  const limitMs = right.nowMs === null ? clockMsMost : right.nowMs + aheadLimitMs;
  const ahead = (
    await log.entries
      .where(orderIndex)
      .above([limitMs + 1])
      .toArray()
  ).map((row) => row.entry);
  const own = await wrongOwn(log, { identity, right, ahead });
  const others = ahead.filter((entry) => entry.tablet !== identity.tablet);
  return own.length === 0 && others.length === 0 ? null : { limitMs, own, others };
}

/** Own entries from the first one on that no reader takes: in chains, since what follows it cannot travel without it. */
async function wrongOwn(
  log: LogDatabase,
  { identity, right, ahead }: { identity: Identity; right: Pick<Right, 'acked'>; ahead: readonly Entry[] },
): Promise<readonly Entry[]> {
  const { tablet, epoch } = identity;
  const chain = { tablet, epoch };
  const sent = right.acked[chainId(chain)] ?? 0;
  const between = (from: number) =>
    log.entries
      .where('[tablet+epoch+seq]')
      .between([tablet, epoch, from], [tablet, epoch, Number.MAX_SAFE_INTEGER], true, true);
  const unbounded = await between(sent + 1)
    .filter((row) => !isBounded(row.entry.hlc))
    .first();
  const first = ahead
    .filter((entry) => chainId(entry) === chainId(chain))
    .reduce((least, { seq }) => Math.min(least, seq), unbounded?.seq ?? Number.POSITIVE_INFINITY);
  const earlier = ahead.filter((entry) => entry.tablet === tablet && entry.epoch !== epoch);
  const tail = Number.isFinite(first) ? (await between(first).toArray()).map((row) => row.entry) : [];
  return [...earlier, ...tail];
}
