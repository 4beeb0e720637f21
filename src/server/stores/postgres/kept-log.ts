// The log that this process has seen is the one that it goes on with. A backup may be put in while nothing stood between; a copy that lagged behind
// may take the place of the host that fell away. Whoever appended or signed on top would make a second log out of the first.

import { type Kysely, sql, type Transaction } from 'kysely';
import { firstRoot } from '../append.ts';
import { newEpoch, StoreRefused } from '../migrate.ts';
import { neededName } from '../step.ts';
import type { LogHead } from '../store.ts';
import type { Tables } from '../tables.ts';
import { SERVING_LOCK } from './serving.ts';
import { noteTimeline } from './timeline.ts';

/** Key of the append lock: any number that nothing else in the database uses. */
const APPEND_LOCK = 7_236_002;

/** A backup is being put into the database, or was since this process opened it. */
class RestoredUnder extends Error {
  readonly code = 'REELWARD_RESTORED';
  constructor() {
    super('a backup was put into the database under this process');
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
  /** The name of the log that is served from now on. */
  readonly begin: (epoch: string) => void;
  /** The log reached this far. */
  readonly saw: (head: LogHead) => void;
  /** Rejects where the database holds another log than the one that was seen; true where something of it was seen, so that it is known to be the same. */
  readonly look: () => Promise<boolean>;
  /** Runs work that no other process's overlaps, on that log only. */
  readonly appendTransaction: <T>(work: (tx: Transaction<Tables>) => Promise<T>) => Promise<T>;
}

interface Found {
  readonly free: boolean;
  readonly epoch: string | null;
  readonly root: string | null;
  readonly needed: string | null;
}

/** Starts with nothing seen. `known`: the schema up to which this program knows; `onRefused`: told where the host lets nobody write. */
export function keepLog(
  db: Kysely<Tables>,
  { known, onRefused }: { readonly known: number; readonly onRefused: () => void },
): KeptLog {
  let epoch: string | null = null;
  let seen: LogHead = { pos: 0, root: firstRoot };
  /** `asked`: how far the log was seen to reach when it was asked. */
  const judge = (found: Found | undefined, asked: LogHead) => {
    if (Number(found?.needed ?? 0) > known) throw new Outgrown();
    // Nothing is acknowledged that the restore would take away again, nor under the name of a log that is no more.
    if (!found?.free || (epoch !== null && found.epoch !== epoch)) throw new RestoredUnder();
    if (asked.pos > 0 && found.root !== asked.root) throw new LogLost(asked);
  };
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
        await noteTimeline(db);
      }
      // Put back to a copy that is read only without cutting its connections; or its keeper lets nobody write for a while, and these go on like that.
      if ((error as { code?: unknown }).code === '25006') onRefused();
      throw error;
    }
  };
  return {
    begin: (now) => {
      epoch = now;
    },
    saw: (head) => {
      if (head.pos > seen.pos) seen = head;
    },
    look: () =>
      renamed(async () => {
        const asked = seen;
        const { rows } = await sql<Found>`
          select true as free, (select value from meta where key = 'server_epoch') as epoch,
            (select value from meta where key = ${neededName}) as needed,
            (select root from entries where pos = ${asked.pos}) as root`.execute(db);
        judge(rows[0], asked);
        return asked.pos > 0;
      }),
    appendTransaction: (work) =>
      renamed(() =>
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
      ),
  };
}
