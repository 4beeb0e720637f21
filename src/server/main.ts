// Composition root of the server: opens the store, builds what the routes use, listens, and stops in order.

import { networkInterfaces } from 'node:os';
import type { FastifyInstance } from 'fastify';
import { createAppender } from './appender.ts';
import type { ServerContext } from './context.ts';
import { createApp } from './http/app.ts';
import { openServerKey } from './keys.ts';
import { createLiveHub } from './live.ts';
import { createMetrics } from './metrics.ts';
import { createPeopleBook } from './people/book.ts';
import type { ServerSettings } from './settings.ts';
import { openStore } from './stores/open.ts';
import { lockFolder } from './stores/sqlite/lock.ts';
import type { Store } from './stores/store.ts';

/** The server cannot start, for a reason that a person can act on: one line. */
export class CannotStart extends Error {}

/** A server that listens. */
export interface RunningServer {
  /** Where people reach it, without a slash at the end. */
  readonly url: string;
  readonly port: number;
  readonly store: Store;
  readonly context: ServerContext;
  readonly app: FastifyInstance;
  /** Answers what it has begun, closes live connections, then the store. */
  readonly stop: () => Promise<void>;
}

/** How often what has run out is swept from the store, ms. */
const SWEEP_MS = 60_000;

/** Starts a server; rejects with `CannotStart` or `StoreRefused` where it must not run. */
export async function startServer(settings: ServerSettings): Promise<RunningServer> {
  const unlock = settings.database === null ? takeFolder(settings.folder) : () => undefined;
  try {
    return await startLocked(settings, unlock);
  } catch (error) {
    unlock();
    throw error;
  }
}

function takeFolder(folder: string): () => void {
  const unlock = lockFolder(folder);
  if (!unlock)
    throw new CannotStart(
      `${folder}: another process serves this data folder; stop it or name another with --data`,
    );
  return unlock;
}

async function startLocked(settings: ServerSettings, unlock: () => void): Promise<RunningServer> {
  const { nowMs } = settings.clock;
  const startedMs = nowMs();
  let onFault = (_error: Error): void => undefined;
  const store = await openStore({
    folder: settings.folder,
    database: settings.database,
    nowMs,
    onFault: (error) => onFault(error),
  });
  try {
    const serverEpoch = await store.serverEpoch();
    const live = createLiveHub({
      store,
      serverEpoch,
      start: await store.head(),
      onFault: (error) => onFault(error),
    });
    const certificateEndsMs = () => null;
    const context: ServerContext = {
      settings,
      store,
      appender: createAppender(store, nowMs),
      live,
      key: await openServerKey(store),
      people: createPeopleBook(store, settings.people),
      metrics: createMetrics({ listeners: live.count, certificateEndsMs }),
      serverEpoch,
      nowMs,
      startedMs,
      certificateEndsMs,
    };
    const app = await createApp(context, null);
    onFault = (error) => app.log.error({ err: error }, 'fault in the background');
    await listen(app, settings);
    const sweep = setInterval(() => void store.sweep(nowMs()).catch(onFault), SWEEP_MS);
    sweep.unref();
    const port = portOf(app) ?? settings.port;
    return {
      url: `http://${shownHost(settings.host)}:${port}`,
      port,
      store,
      context,
      app,
      stop: async () => {
        clearInterval(sweep);
        live.close();
        await app.close();
        await context.appender.drained();
        await store.close();
        unlock();
      },
    };
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function listen(app: FastifyInstance, settings: ServerSettings): Promise<void> {
  const { host, port } = settings;
  try {
    await app.listen({ port, host: isLocal(host) ? host : '::', listenTextResolver: () => '' });
  } catch (error) {
    await app.close();
    throw listenFault(error, host, port);
  }
}

/** Words a failure to listen for the person who started the server. */
function listenFault(error: unknown, host: string, port: number): Error {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'EADDRINUSE')
    return new CannotStart(`port ${port} is taken by another process; stop it or name another with --port`);
  if (code === 'EACCES')
    return new CannotStart(`port ${port} may not be opened by this user; name one above 1023 with --port`);
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    return new CannotStart(`${host} is no address of this computer; see --host`);
  return error as Error; // as thrown by listen
}

function isLocal(host: string): boolean {
  return host === '127.0.0.1' || host === 'localhost' || host === '::1';
}

function shownHost(host: string): string {
  if (host === '0.0.0.0' || host === '::') return lanAddresses()[0] ?? 'localhost';
  return host.includes(':') ? `[${host}]` : host;
}

/** The computer's own addresses on its networks, IPv4 first. */
export function lanAddresses(): readonly string[] {
  const all = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  const outer = all.filter((one) => !one.internal && !one.address.startsWith('fe80'));
  return outer
    .sort((a, b) => Number(a.family === 'IPv6') - Number(b.family === 'IPv6'))
    .map((one) => one.address);
}

function portOf(app: FastifyInstance): number | null {
  const address = app.server.address();
  return address !== null && typeof address === 'object' ? address.port : null;
}
