// The log that this process has seen is the one that it goes on with. A backup may be put in while nothing stood between; a copy that lagged behind
// may take the place of the host that fell away. Whoever appended or signed on top would make a second log out of the first.

import { type Kysely, sql, type Transaction } from 'kysely';
import { firstRoot } from '../append.ts';
import { newEpoch, StoreRefused } from '../migrate.ts';
import { neededName } from '../step.ts';
import type { LogHead } from '../store.ts';
import type { Tables } from '../tables.ts';
import type { LogRecord } from './record.ts';
import { SERVING_LOCK } from './serving.ts';
import { noteTimeline } from './timeline.ts';

/** Key of the append lock: any number that nothing else in the database uses. */
const APPEND_LOCK = 7_236_002;

/** A backup is being put into the database, or was since this process opened it; or a step is being taken that it cannot live with. */
class RestoredUnder extends Error {
  readonly code = 'REELWARD_RESTORED';
  constructor() {
    super('a backup was put into the database under this process, or its schema is being brought forward');
  }
}

/** Entries that this process saw in the log are not in it any more. */
class LogLost extends Error {
  readonly code = 'REELWARD_LOST';
  constructor({ pos }: LogHead) {
    super(`the database does not hold the log as it was up to entry ${pos} any more`);
  }
}

/** Servers of a newer version took a step that this one cannot live with. */
class Outgrown extends StoreRefused {
  readonly code = 'REELWARD_OUTGROWN';
  constructor() {
    super(
      '--database: a newer program brought it to a schema that this one does not know; start the newer program here too',
    );
  }
}

/** Keeps an eye on the log. */
export interface KeptLog {
  /** The name of the log that is served from now on, and what is known of it. */
  readonly begin: (epoch: string, known: LogHead | null) => void;
  /** The log reached this far. */
  readonly saw: (head: LogHead) => void;
  /** Rejects where the database holds another log than the one that was seen. */
  readonly look: () => Promise<void>;
  /** The host may be another by now: looks, and notes its timeline where the log ends as it was seen to, else once an append went on from it. */
  readonly back: () => Promise<void>;
  /** Runs work that no other process's overlaps, on that log only. */
  readonly appendTransaction: <T>(work: (tx: Transaction<Tables>) => Promise<T>) => Promise<T>;
}

interface Found {
  readonly free: boolean;
  readonly epoch: string | null;
  readonly root: string | null;
  readonly needed: string | null;
}

/** Throws where it is another log. `asked`: how far the log was seen to reach when it was asked. */
function judgeLog(
  found: Found | undefined,
  { asked, known, epoch }: { readonly asked: LogHead; readonly known: number; readonly epoch: string | null },
): void {
  if (Number(found?.needed ?? 0) > known) throw new Outgrown();
  // Nothing is acknowledged that the restore would take away again, nor under the name of a log that is no more.
  if (!found?.free || (epoch !== null && found.epoch !== epoch)) throw new RestoredUnder();
  if (asked.pos > 0 && found.root !== asked.root) throw new LogLost(asked);
}

/** What the keeping is told, and tells. */
export interface KeptLogParts {
  /** The schema up to which this program knows. */
  readonly known: number;
  /** A server notes the timeline; an act leaves it. */
  readonly isServing: boolean;
  /** Told where the host lets nobody write. */
  readonly onRefused: () => void;
  /** Told of each head that is further than the one before. */
  readonly onSaw: (record: LogRecord) => void;
}

/** Starts with nothing seen. */
export function keepLog(db: Kysely<Tables>, { known, isServing, onRefused, onSaw }: KeptLogParts): KeptLog {
  let epoch: string | null = null;
  let isNoted = !isServing;
  let seen: LogHead = { pos: 0, root: firstRoot };
  const judge = (found: Found | undefined, asked: LogHead) => judgeLog(found, { asked, known, epoch });
  /** Whoever serves this database stops and starts again under another name of the log, so that tablets offer what it lacks. */
  const renamed = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (error) {
      if (error instanceof LogLost && epoch !== null) {
        await db
          .updateTable('meta')
          .set({ value: newEpoch() })
          .where('key', '=', 'server_epoch')
          .where('value', '=', epoch)
          .execute();
        await noteTimeline(db).catch(() => undefined); // what was found tells more
      }
      // Put back to a copy that is read only without cutting its connections; or its keeper lets nobody write for a while, and these go on like that.
      if ((error as { code?: unknown }).code === '25006') onRefused();
      throw error;
    }
  };
  /** True where the log ends as it was seen to. */
  const look = () =>
    renamed(async () => {
      const asked = seen;
      const { rows } = await sql<Found & { readonly last: number | null }>`
        select true as free, (select value from meta where key = 'server_epoch') as epoch,
          (select value from meta where key = ${neededName}) as needed,
          (select root from entries where pos = ${asked.pos}) as root,
          (select max(pos) from entries) as last`.execute(db);
      judge(rows[0], asked);
      return rows[0]?.last === asked.pos;
    });
  const noteOnce = async () => {
    if (isNoted) return;
    await noteTimeline(db);
    isNoted = true;
  };
  return {
    begin: (now, before) => {
      epoch = now;
      if (before) seen = before;
    },
    saw: (head) => {
      if (head.pos <= seen.pos) return;
      seen = head;
      if (epoch !== null) onSaw({ epoch, ...head });
    },
    look: async () => void (await look()),
    back: async () => {
      isNoted = !isServing;
      if (await look()) await noteOnce();
    },
    appendTransaction: async (work) => {
      const result = await renamed(() =>
        db.transaction().execute(async (tx) => {
          const asked = seen;
          const { rows } = await sql<Found>`
            select pg_advisory_xact_lock(${sql.lit(APPEND_LOCK)}),
              pg_try_advisory_xact_lock_shared(${sql.lit(SERVING_LOCK)}) as free,
              (select value from meta where key = 'server_epoch') as epoch,
              (select value from meta where key = ${neededName}) as needed,
              (select root from entries where pos = ${asked.pos}) as root`.execute(tx);
          judge(rows[0], asked);
          return work(tx);
        }),
      );
      // The next append notes it where this one cannot.
      await noteOnce().catch(() => undefined);
      return result;
    },
  };
}
