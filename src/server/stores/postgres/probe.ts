// A first question to the database, with a limit: one that takes the connection and says nothing would hold everything up for ever.

import pg from 'pg';
import { CONNECT_MS } from './client.ts';

/** How long one small question may take, ms. */
const ASK_MS = 1_500;

/** Resolves where the database answers; rejects with the driver's error where it does not within five seconds. */
export async function probeDatabase(url: string): Promise<void> {
  const client = new pg.Client({
    connectionString: url,
    connectionTimeoutMillis: CONNECT_MS,
    query_timeout: ASK_MS,
  });
  // What breaks fails what is asked; unheard, it would end the process.
  client.on('error', () => undefined);
  try {
    await client.connect();
    await client.query('select 1');
  } finally {
    // Not awaited: whoever says nothing does not say goodbye either.
    client.end().catch(() => undefined);
  }
}
