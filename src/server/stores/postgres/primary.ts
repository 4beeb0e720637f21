// The host in use, and the connections to it. Where it falls silent or away all of them are cut at once, so that nobody waits for an answer that
// does not come, and the next is looked for. While it is away a question is refused at once; whether it is asked again is its asker's business.

import type { PostgresPool } from 'kysely';
import pg from 'pg';
import { cutClient, WAIT_MS } from './client.ts';
import { findHost, readAddress } from './hosts.ts';

/** Where the database is written to now. */
export interface Primary {
  /** The host's address, found where it is not known. */
  readonly url: () => Promise<string>;
  /** A pool that follows it. */
  readonly pool: (settings: Partial<pg.PoolConfig>) => PostgresPool;
  /** Nothing comes from the host any more: cuts what leads there. Until `found`, questions are refused with this error. */
  readonly lost: (error: Error) => void;
  /** Another may be written to by now, or this one by connections made from now on: cuts what leads there, and refuses nothing. */
  readonly leave: () => void;
  /** It answers again, or another does. */
  readonly found: () => void;
}

/** Looks for nothing yet. `onFault`: told where a connection breaks. */
export function createPrimary(database: string, onFault: (error: Error) => void): Primary {
  const address = readAddress(database);
  const cutters = new Set<() => void>();
  let url: Promise<string> | null = null;
  let away: Error | null = null;
  const leave = () => {
    url = null;
    for (const cut of cutters) cut();
  };
  const findUrl = () => {
    url ??= findHost(address).catch((error: unknown) => {
      url = null;
      throw error;
    });
    return url;
  };
  return {
    url: findUrl,
    pool: (settings) => {
      const followed = followingPool(
        async () => {
          if (away) throw away;
          return findUrl();
        },
        { settings, onFault },
      );
      cutters.add(followed.cut);
      return followed.pool;
    },
    lost: (error) => {
      away = error;
      leave();
    },
    leave,
    found: () => {
      away = null;
    },
  };
}

function followingPool(
  findUrl: () => Promise<string>,
  {
    settings,
    onFault,
  }: { readonly settings: Partial<pg.PoolConfig>; readonly onFault: (error: Error) => void },
): { readonly pool: PostgresPool; readonly cut: () => void } {
  let current: pg.Pool | null = null;
  let clients = new Set<pg.PoolClient>();
  const open = (connectionString: string) => {
    const pool = new pg.Pool({ connectionString, connectionTimeoutMillis: WAIT_MS, ...settings });
    const own = clients;
    // A connection that breaks emits, the pool for idle ones, the client itself for one in use; unheard, it would end the process.
    pool.on('error', onFault);
    pool.on('connect', (client) => {
      own.add(client);
      client.on('error', onFault);
    });
    pool.on('remove', (client) => own.delete(client));
    return pool;
  };
  const cut = () => {
    const [old, some] = [current, clients];
    current = null;
    clients = new Set();
    for (const client of some) cutClient(client);
    old?.end().catch(() => undefined);
  };
  return {
    cut,
    pool: {
      connect: async () => {
        const url = await findUrl();
        current ??= open(url);
        return current.connect();
      },
      end: async () => {
        await current?.end();
        current = null;
      },
    },
  };
}
