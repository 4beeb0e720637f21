// How one server process hears of what another appended: LISTEN on a connection of its own. A broken connection is made
// anew, and everybody is told to look again, since notices sent meanwhile are gone.

import pg from 'pg';
import { StoreRefused } from '../migrate.ts';
import type { Signal, Store } from '../store.ts';
import { CONNECT_MS } from './client.ts';
import { SERVING_LOCK } from './serving.ts';

const AGAIN_MS = 1_000;

/** Listens until closed. `serves`: holds, as long as it listens, that no backup may be put in. */
export async function watchDatabase(
  url: string,
  {
    onFault,
    onBack,
    serves,
  }: {
    readonly onFault: (error: Error) => void;
    /** Told each time that a connection stands again after one broke. */
    readonly onBack: () => void;
    readonly serves: boolean;
  },
): Promise<{ readonly watch: Store['watch']; readonly close: () => Promise<void> }> {
  const listeners = new Set<(signal: Signal) => void>();
  let client: pg.Client | null = null;
  let timer: NodeJS.Timeout | null = null;
  let closed = false;

  const again = () => {
    if (closed || timer) return;
    timer = setTimeout(() => {
      timer = null;
      connect().then(
        () => {
          onBack();
          for (const listener of listeners) listener({ kind: 'appended' });
        },
        (error: Error) => {
          onFault(error);
          again();
        },
      );
    }, AGAIN_MS);
  };
  const connect = async () => {
    const next = new pg.Client({
      connectionString: url,
      keepAlive: true,
      connectionTimeoutMillis: CONNECT_MS,
    });
    next.on('error', (error) => {
      onFault(error);
      if (client === next) client = null;
      again();
    });
    next.on('end', again);
    next.on('notification', (notice) => {
      const signal = readSignal(notice.payload ?? '');
      if (signal) for (const listener of listeners) listener(signal);
    });
    await next.connect();
    if (serves) await serving(next);
    await next.query('listen reelward');
    client = next;
  };
  await connect();
  return {
    watch: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: async () => {
      closed = true;
      if (timer) clearTimeout(timer);
      await client?.end();
    },
  };
}

async function serving(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ free: boolean }>('select pg_try_advisory_lock_shared($1) as free', [
    SERVING_LOCK,
  ]);
  if (rows[0]?.free) return;
  client.removeAllListeners('end');
  await client.end();
  throw new StoreRefused('--database: a backup is being put into it; start the server when that is done');
}

function readSignal(payload: string): Signal | null {
  try {
    const value = JSON.parse(payload) as Partial<Signal>; // written by `tell` of this same program
    if (value.kind === 'appended') return { kind: 'appended' };
    if (value.kind === 'revoked' && typeof value.tablet === 'string')
      return { kind: 'revoked', tablet: value.tablet };
    return null;
  } catch {
    return null; // a notice by somebody else on the same channel name is none of ours
  }
}
