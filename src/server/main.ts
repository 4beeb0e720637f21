// Composition root of the server: opens the store, builds what the routes use, listens, and stops in order.

import type { Server } from 'node:http';
import type { Server as SecureServer } from 'node:https';
import { networkInterfaces } from 'node:os';
import type { FastifyInstance } from 'fastify';
import { createAppender } from './appender.ts';
import type { KeptCertificate } from './certificates/keep.ts';
import type { ServerContext } from './context.ts';
import { type StoreTrouble, storeWords, watchStore } from './health.ts';
import { createApp } from './http/app.ts';
import { createTrustServer } from './http/trust-page.ts';
import { openServerKey } from './keys.ts';
import { createLiveHub } from './live.ts';
import { createMetrics } from './metrics.ts';
import { createPeopleBook } from './people/book.ts';
import { createPinSeal } from './people/pin-seal.ts';
import { createTicketDesk } from './people/tickets.ts';
import { createQuotas } from './quotas.ts';
import { createSeenBook } from './seen.ts';
import type { ServerSettings } from './settings.ts';
import { createSignatureWalk } from './signatures.ts';
import { openStore } from './stores/open.ts';
import { lockFolder } from './stores/sqlite/lock.ts';
import type { Store } from './stores/store.ts';
import { createLocalDesk, type TraceDesk } from './trace/desk.ts';
import { createRemoteDesk } from './trace/remote.ts';
import { createHeadSigner } from './tree-heads.ts';

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
  /** The plain page about the local authority, and its fingerprint; null without HTTPS or with an own certificate. */
  readonly trust: { readonly url: string; readonly fingerprint: string } | null;
  /** Answers what it has begun, closes live connections, then the store. */
  readonly stop: () => Promise<void>;
}

/** How often what has run out is swept from the store, ms. */
const SWEEP_MS = 60_000;

/** Starts a server; rejects with `CannotStart`, `StoreRefused` or `CertificateRefused` where it must not run. */
export async function startServer(settings: ServerSettings): Promise<RunningServer> {
  // What was opened is closed again in reverse order, at the stop as after a start that failed.
  const closers: (() => Promise<void> | void)[] = [];
  const stop = async () => {
    for (let close = closers.pop(); close; close = closers.pop()) await close();
  };
  try {
    return await startParts(settings, { closers, stop });
  } catch (error) {
    await stop();
    throw error;
  }
}

interface Closing {
  readonly closers: (() => Promise<void> | void)[];
  readonly stop: () => Promise<void>;
}

async function startParts(settings: ServerSettings, { closers, stop }: Closing): Promise<RunningServer> {
  const { nowMs } = settings.clock;
  if (settings.database === null) closers.push(takeFolder(settings.folder));
  let onFault = (_error: Error): void => undefined;
  const fault = (error: Error) => onFault(error);
  const certificate = settings.https ? await openCertificate(settings) : null;
  const store = await openStore({
    folder: settings.folder,
    database: settings.database,
    nowMs,
    onFault: fault,
    serves: true,
  });
  closers.push(store.close);
  // A store that cannot be read through still serves what it can; what is wrong with it is told.
  const faults: unknown[] = [];
  const unsigned = await store.quarantineSignatures(nowMs()).catch((error: unknown) => {
    faults.push(error);
    return [];
  });
  let onTrouble = (_trouble: StoreTrouble, _where: string): void => undefined;
  const context = await createContext(settings, {
    store,
    certificate,
    onFault: fault,
    onTrouble: (trouble, where) => onTrouble(trouble, where),
  });
  closers.push(context.health.stop);
  closers.push(context.appender.drained);
  closers.push(context.signatures.stop);
  closers.push(context.seen.stop);
  closers.push(context.trace.stop);
  const app = await createApp(context, certificate?.pair() ?? null);
  onFault = (error) => app.log.error({ err: error }, 'fault in the background');
  onTrouble = (trouble, where) => app.log.error({ store: trouble, where }, storeWords[trouble]);
  for (const error of faults) if (!context.health.met(error)) fault(error as Error);
  for (const entry of unsigned) app.log.warn({ entry }, 'signature set aside: it is none by its form');
  closers.push(() => closeApp(app));
  // Live connections would hold the closing up: they end first.
  closers.push(context.live.close);
  await listen(
    (port, host) => app.listen({ port, host, listenTextResolver: () => '' }),
    settings.port,
    settings.host,
  );
  const port = portOf(app.server) ?? settings.port;
  const url = `${certificate ? 'https' : 'http'}://${shownHost(settings)}:${port}`;
  const sweep = setInterval(() => void store.sweep(nowMs()).catch(fault), SWEEP_MS);
  sweep.unref();
  closers.push(() => clearInterval(sweep));
  if (certificate) closers.push(renewing(app.server as unknown as SecureServer, certificate, fault)); // made with TLS
  const trust = await startTrust(settings, { certificate, url, closers });
  return { url, port, store, context, app, trust, stop };
}

function takeFolder(folder: string): () => void {
  const unlock = lockFolder(folder);
  if (!unlock)
    throw new CannotStart(
      `${folder}: another process serves this data folder; stop it or name another with --data`,
    );
  return unlock;
}

async function openCertificate(settings: ServerSettings): Promise<KeptCertificate> {
  const { folder, plant, https, clock } = settings;
  if (!https)
    throw new TypeError('Cannot open a certificate as HTTPS must be asked for: current value is null');
  // Loaded when wanted only: what makes certificates is large.
  const { keepCertificate } = await import('./certificates/keep.ts');
  return keepCertificate({ folder, plant, settings: https, nowMs: clock.nowMs, addresses: lanAddresses });
}

/** Puts each renewed certificate to use without a restart. */
function renewing(
  server: SecureServer,
  certificate: KeptCertificate,
  onFault: (error: Error) => void,
): () => void {
  return certificate.watch((pair) => server.setSecureContext(pair), onFault);
}

async function createContext(
  settings: ServerSettings,
  parts: {
    readonly store: Store;
    readonly certificate: KeptCertificate | null;
    readonly onFault: (error: Error) => void;
    readonly onTrouble: (trouble: StoreTrouble, where: string) => void;
  },
): Promise<ServerContext> {
  const { store, certificate, onFault, onTrouble } = parts;
  const { nowMs } = settings.clock;
  const serverEpoch = await store.serverEpoch();
  const key = await openServerKey(store);
  // A store of before there was a tree gets it now, and not at the first tablet's cost; one that cannot be read through tells so elsewhere.
  await store.tree().catch(onFault);
  const live = createLiveHub({ store, serverEpoch, start: await store.head(), onFault });
  const certificateEndsMs = () => certificate?.endsMs() ?? null;
  const metrics = createMetrics({ listeners: live.count, certificateEndsMs });
  const signatures = createSignatureWalk({
    store,
    onFault,
    onDiffers: ({ tablet, epoch, seq }) => {
      metrics.quarantined.inc({ fault: 'signature-differs' });
      const id = `${tablet}/${epoch}/${seq}`;
      onFault(new Error(`the signature of ${id} does not hold, though the chain's later ones do`));
    },
  });
  const tickets = createTicketDesk({ store, key, plant: settings.plant });
  return {
    settings,
    store,
    metrics,
    quotas: createQuotas(),
    health: watchStore({ store, onTrouble }),
    signatures,
    appender: createAppender(store, nowMs),
    seen: createSeenBook(store, onFault),
    live,
    key,
    heads: createHeadSigner(key.plant),
    people: createPeopleBook(store, settings.people, tickets.trust),
    tickets,
    pinSeal: createPinSeal(key.secret),
    trace: openDesk(settings, store, onFault),
    serverEpoch,
    nowMs,
    startedMs: nowMs(),
    certificateEndsMs,
  };
}

function openDesk(settings: ServerSettings, store: Store, onFault: (error: Error) => void): TraceDesk {
  const { traceProgram: program, folder, database, clock } = settings;
  if (program === undefined) return createLocalDesk({ store, nowMs: clock.nowMs, onFault });
  return createRemoteDesk({ program, folder, database, store, onFault });
}

async function startTrust(
  settings: ServerSettings,
  parts: {
    readonly certificate: KeptCertificate | null;
    readonly url: string;
    readonly closers: (() => Promise<void> | void)[];
  },
): Promise<RunningServer['trust']> {
  const authority = parts.certificate?.authority;
  if (!authority || !settings.https) return null;
  const pageUrl = `http://${shownHost(settings)}:${settings.https.trustPort}/ca`;
  const server = createTrustServer({ authority, appUrl: parts.url, pageUrl });
  parts.closers.push(() => closeServer(server));
  await listen(
    (port, host) =>
      new Promise<void>((resolve, reject) => {
        server.once('error', reject);
        server.listen(port, host, resolve);
      }),
    settings.https.trustPort,
    settings.host,
  );
  const url = `http://${shownHost(settings)}:${portOf(server) ?? settings.https.trustPort}/ca`;
  return { url, fingerprint: authority.fingerprint };
}

/** What is being answered may finish; whoever takes longer than this to read an answer is cut off, ms. */
const GRACE_MS = 5_000;

async function closeApp(app: FastifyInstance): Promise<void> {
  const cut = setTimeout(() => app.server.closeAllConnections(), GRACE_MS);
  await app.close();
  clearTimeout(cut);
}

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.closeAllConnections();
    server.close(() => resolve());
  });
}

async function listen(
  start: (port: number, host: string) => Promise<unknown>,
  port: number,
  host: string,
): Promise<void> {
  try {
    if (isLocal(host)) await start(port, host);
    // Every address, of both families where the computer has both.
    else
      await start(port, '::').catch((error) =>
        isFamilyFault(error) ? start(port, '0.0.0.0') : Promise.reject(error),
      );
  } catch (error) {
    throw listenFault(error, host, port);
  }
}

function isFamilyFault(error: unknown): boolean {
  const code = (error as NodeJS.ErrnoException).code;
  return code === 'EAFNOSUPPORT' || code === 'EADDRNOTAVAIL';
}

/** Words a failure to listen for the person who started the server. */
function listenFault(error: unknown, host: string, port: number): Error {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'EADDRINUSE')
    return new CannotStart(`port ${port} is taken by another process; stop it or name another port`);
  if (code === 'EACCES')
    return new CannotStart(`port ${port} may not be opened by this user; name one above 1023`);
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    return new CannotStart(`${host} is no address of this computer; see --host`);
  return error as Error; // as thrown by listen
}

function isLocal(host: string): boolean {
  return host === '127.0.0.1' || host === 'localhost' || host === '::1';
}

function shownHost({ host }: ServerSettings): string {
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

function portOf(server: Pick<Server, 'address'>): number | null {
  const address = server.address();
  return address !== null && typeof address === 'object' ? address.port : null;
}
