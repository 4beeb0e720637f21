// Servers share a database with each other, and with nobody who puts a backup in. The lock is the database's own, held by a connection,
// so that a killed process leaves none behind.

import pg from 'pg';
import { CONNECT_MS } from './client.ts';
import { probeDatabase } from './probe.ts';

/** Key of the lock: any number that nothing else in the database uses. Servers share it; a restore has it alone. */
export const SERVING_LOCK = 7_236_003;

/** Takes the database for a restore; null where a server runs on it. Returns the release. */
export async function lockDatabase(url: string): Promise<(() => Promise<void>) | null> {
  await probeDatabase(url);
  const client = new pg.Client({
    connectionString: url,
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
