// How one server process hears of what another appended: LISTEN on a connection of its own, which also asks once a second whether the database
// is there, so that one that fell silent is told within five seconds. A broken connection is made anew, and everybody is told to look again, since
// notices sent meanwhile are gone. The same connection holds the locks of whoever serves, and of the one process that leads the others.

import pg from 'pg';
import { StoreRefused } from '../migrate.ts';
import type { Signal, Store } from '../store.ts';
import { CONNECT_MS, cutClient } from './client.ts';
import type { Primary } from './primary.ts';
import { LEADING_LOCKS, LET_GO, type Role, SERVING_LOCK } from './serving.ts';

const AGAIN_MS = 1_000;
/** How often it is asked, and how long half of its silence may last, ms: in two halves, since a timer that fires late says of this process alone that it was busy. */
const PULSE_MS = 1_000;
const HALF_SILENT_MS = 1_800;

/** What the watch is told to do. */
export interface WatchParts {
  readonly onFault: (error: Error) => void;
  /** Told each time that a connection stands again after one broke. */
  readonly onBack: () => void;
  /** What the process is, as long as it listens; null for an act, which holds no lock. */
  readonly role: Role | null;
}

/** A watch over the database. */
export interface Watch {
  readonly watch: Store['watch'];
  /** True while this process holds the lock of the one that leads. */
  readonly leads: () => boolean;
  /** The host refused a write: it is looked for anew, and every connection made anew, this one too. */
  readonly refused: () => void;
  readonly close: () => Promise<void>;
}

/** A watch at work. */
interface Watching extends WatchParts {
  readonly primary: Primary;
  readonly listeners: Set<(signal: Signal) => void>;
  client: pg.Client | null;
  /** The one that is being made. */
  coming: pg.Client | null;
  timer: NodeJS.Timeout | null;
  closed: boolean;
  isLeading: boolean;
}

/** Listens until closed. A process that serves holds, as long as it listens, that no backup may be put in. */
export async function watchDatabase(primary: Primary, parts: WatchParts): Promise<Watch> {
  const watching: Watching = {
    ...parts,
    primary,
    listeners: new Set(),
    client: null,
    coming: null,
    timer: null,
    closed: false,
    isLeading: false,
  };
  await connect(watching);
  const { listeners, role } = watching;
  return {
    watch: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    // An act works for itself alone.
    leads: () => role === null || watching.isLeading,
    refused: () => {
      // Being made anew already.
      if (watching.closed || watching.coming || !watching.client) return;
      drop(watching);
      primary.leave();
      again(watching);
    },
    close: async () => {
      watching.closed = true;
      if (watching.timer) clearTimeout(watching.timer);
      if (watching.coming) cutClient(watching.coming);
      await watching.client?.end();
    },
  };
}

function tell({ listeners }: Watching, signal: Signal): void {
  for (const listener of listeners) listener(signal);
}

/** Left standing a connection would keep its locks where the host comes back, and nobody could lead. */
function drop(watching: Watching): void {
  if (watching.client) cutClient(watching.client);
  watching.client = null;
  watching.isLeading = false;
}

function lost(watching: Watching, error: Error): void {
  if (watching.closed) return;
  drop(watching);
  watching.primary.lost(error);
  again(watching);
}

function again(watching: Watching): void {
  if (watching.closed || watching.timer) return;
  watching.timer = setTimeout(() => {
    watching.timer = null;
    connect(watching).then(
      () => {
        watching.primary.found();
        watching.onBack();
        tell(watching, { kind: 'back' });
        tell(watching, { kind: 'appended' });
      },
      (error: Error) => {
        if (watching.closed) return;
        watching.onFault(error);
        lost(watching, error);
      },
    );
  }, AGAIN_MS);
}

async function connect(watching: Watching): Promise<void> {
  const url = await watching.primary.url();
  if (watching.closed) throw connectionEnded();
  const next = newClient(url);
  const isOver = () => watching.closed || watching.client !== next;
  const gone = (error: Error) => {
    if (isOver()) return;
    watching.onFault(error);
    lost(watching, error);
  };
  next.on('error', gone);
  next.on('end', () => gone(connectionEnded()));
  next.on('notification', (notice) => {
    const signal = readSignal(notice.payload ?? '');
    if (signal) tell(watching, signal);
  });
  watching.coming = next;
  try {
    await next.connect();
    await unlessSilent(next, async () => {
      if (watching.role === 'server') await serving(next);
      await next.query('listen reelward');
      watching.client = next;
      await contest(watching, next);
    });
  } catch (error) {
    cutClient(next);
    throw error;
  } finally {
    watching.coming = null;
  }
  pulse({ ask: () => contest(watching, next), isOver, gone });
}

/** Takes the lead where nobody has it; a process that fell away left it. */
async function contest(watching: Watching, asked: pg.Client): Promise<void> {
  const { role } = watching;
  if (role === null || watching.isLeading) {
    await asked.query('select 1');
    return;
  }
  if (!(await takeLock(asked, LEADING_LOCKS[role])) || watching.client !== asked) return;
  watching.isLeading = true;
  // What the one before left undone is looked for.
  tell(watching, { kind: 'appended' });
}

/** Asks once a second until it is over; tells where no answer comes. */
function pulse(parts: {
  readonly ask: () => Promise<void>;
  readonly isOver: () => boolean;
  readonly gone: (error: Error) => void;
}): void {
  const { ask, isOver, gone } = parts;
  const timer = setTimeout(() => {
    if (isOver()) return;
    const silent = () => gone(Object.assign(new Error('the database fell silent'), { code: 'ETIMEDOUT' }));
    const heard = limitSilence(silent);
    ask()
      .then(() => pulse(parts), gone)
      .finally(heard);
  }, PULSE_MS);
  timer.unref();
}

/** Calls `silent` where the function that it returns is not called in time. */
function limitSilence(silent: () => void): () => void {
  let limit = setTimeout(() => {
    limit = setTimeout(silent, HALF_SILENT_MS);
  }, HALF_SILENT_MS);
  return () => clearTimeout(limit);
}

/** Asks on a connection, which is cut where no answer comes: what was asked then rejects. */
async function unlessSilent(client: pg.Client, ask: () => Promise<void>): Promise<void> {
  const heard = limitSilence(() => cutClient(client));
  await ask().finally(heard);
}

/** Takes a lock where nobody has it. */
async function takeLock(client: pg.Client, key: number): Promise<boolean> {
  const text = 'select pg_try_advisory_lock($1) as taken';
  const { rows } = await client.query<{ taken: boolean }>(text, [key]);
  return rows[0]?.taken ?? false;
}

function newClient(connectionString: string): pg.Client {
  return new pg.Client({
    connectionString,
    keepAlive: true,
    connectionTimeoutMillis: CONNECT_MS,
    options: LET_GO,
  });
}

function connectionEnded(): Error {
  return Object.assign(new Error('connection terminated'), { code: 'ECONNRESET' });
}

async function serving(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ free: boolean }>('select pg_try_advisory_lock_shared($1) as free', [
    SERVING_LOCK,
  ]);
  if (rows[0]?.free) return;
  throw new StoreRefused(
    '--database: a backup is being put into it, or its schema brought forward; start the server when that is done',
  );
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
