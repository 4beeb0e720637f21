// Servers share a database with each other, and with nobody who puts a backup in. The lock is the database's own, held by a connection,
// so that a killed process leaves none behind.

import pg from 'pg';
import { CONNECT_MS } from './client.ts';
import { findHost, readAddress } from './hosts.ts';

/** Key of the lock: any number that nothing else in the database uses. Servers share it; a restore has it alone. */
export const SERVING_LOCK = 7_236_003;

/** What of the plant's work one process does for all: the server's share, and that of the trace. Keys of the locks that say which one. */
export const LEADING_LOCKS = { server: 7_236_004, trace: 7_236_005 } as const;

/** A process that stays, by what it does. */
export type Role = keyof typeof LEADING_LOCKS;

/** For connections that hold a lock others wait for: a computer that is gone gives it back within seconds, and not after the two hours of the operating system. Times in s, ms where the name is a timeout. */
export const LET_GO_GONE =
  '-c tcp_keepalives_idle=5 -c tcp_keepalives_interval=2 -c tcp_keepalives_count=3 -c tcp_user_timeout=10000';

/** And a process that stands still in the middle of an append does, too. */
export const LET_GO = `${LET_GO_GONE} -c idle_in_transaction_session_timeout=5000`;

/** Takes the database for a restore; null where a server runs on it. Returns the release. */
export async function lockDatabase(database: string): Promise<(() => Promise<void>) | null> {
  const client = new pg.Client({
    connectionString: await findHost(readAddress(database)),
    keepAlive: true,
    connectionTimeoutMillis: CONNECT_MS,
  });
  await client.connect();
  // Should the connection break, its restore fails by its own; unheard, the error would end the process in mid-act.
  client.on('error', () => undefined);
  const { rows } = await client.query<{ free: boolean }>('select pg_try_advisory_lock($1) as free', [
    SERVING_LOCK,
  ]);
  if (rows[0]?.free) return () => client.end();
  await client.end();
  return null;
}
