// Composition root of the server: opens the store, builds what the routes use, listens, and stops in order.

import type { Server } from 'node:http';
import type { Server as SecureServer } from 'node:https';
import type { FastifyInstance } from 'fastify';
import { unnamedPlant } from '../../shared/wire/messages.ts';
import { createAppender } from './appender.ts';
import type { KeptCertificate } from './certificates/keep.ts';
import type { ServerContext } from './context.ts';
import { type PutBack, putBackWords, storeWords, watchStore } from './health.ts';
import { createApp } from './http/app.ts';
import { createMetricsServer } from './http/metrics-server.ts';
import { createTrustServer } from './http/trust-page.ts';
import { openServerKey, type ServerKey } from './keys.ts';
import { CannotStart, lanAddresses, listen, shownHost } from './listen.ts';
import { createLiveHub } from './live.ts';
import { createMetrics, type Metrics } from './metrics.ts';
import { createOwnChain, type OwnChain } from './own-chain.ts';
import { createPeopleBook } from './people/book.ts';
import { createPinSeal } from './people/pin-seal.ts';
import { createTicketDesk } from './people/tickets.ts';
import { addPlantMetrics } from './plant-metrics.ts';
import { createPushDesk } from './push/desk.ts';
import { createQuotas } from './quotas.ts';
import { createSeenBook } from './seen.ts';
import type { ServerSettings } from './settings.ts';
import { createSignatureWalk } from './signatures.ts';
import { newEpoch } from './stores/migrate.ts';
import { MonthAway } from './stores/month-store.ts';
import { openStore } from './stores/open.ts';
import { settlePlant } from './stores/plant-name.ts';
import { lockFolder } from './stores/sqlite/lock.ts';
import type { Store } from './stores/store.ts';
import type { StoreTrouble } from './stores/trouble.ts';
import { createLocalDesk, type TraceDesk } from './trace/desk.ts';
import { createRemoteDesk } from './trace/remote.ts';
import { createHeadSigner } from './tree-heads.ts';
import { createWitnesses } from './witnesses.ts';

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
  /** What to do about its certificate, one line each. */
  readonly warnings: readonly string[];
  /** Takes up a certificate that was put in the place of the one in use, without dropping a connection; true where there was one. Rejects where it cannot be used. */
  readonly takeCertificate: () => Promise<boolean>;
  /** Resolves, with the reason in words, where it can serve no longer and has to be stopped: another log lies under it. */
  readonly over: Promise<string>;
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
  // A store that cannot be read through, or written, still serves what it can; what is wrong with it is told once there is a log to tell it in.
  const faults: unknown[] = [];
  let onFault = (error: Error): void => void faults.push(error);
  const fault = (error: Error) => onFault(error);
  const certificate = settings.https ? await openCertificate(settings) : null;
  const { store, putBack } = await openServed(settings, fault);
  closers.push(store.close);
  faults.push(...(await lookForMonths(settings, store)));
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
  onFault = (error) => {
    // What says something of the store is told as that, once.
    if (!context.health.met(error)) app.log.error({ err: error }, 'fault in the background');
  };
  let end = (_why: string): void => undefined;
  const over = new Promise<string>((resolve) => {
    end = resolve;
  });
  onTrouble = (trouble, where) => {
    app.log.error({ store: trouble, where }, storeWords[trouble]);
    if (trouble === 'restored' || trouble === 'outgrown') end(storeWords[trouble]);
    // Whoever serves it next remembers no head that was signed: under another name of the log tablets offer what it lacks.
    if (trouble === 'lost')
      void store
        .swapMeta('server_epoch', context.serverEpoch, newEpoch())
        .catch(fault)
        .finally(() => end(storeWords[trouble]));
  };
  if (putBack) app.log.error({ store: 'put-back' }, putBackWords[putBack]);
  for (const error of faults) fault(error as Error);
  for (const entry of unsigned) app.log.warn({ entry }, 'signature set aside: it is none by its form');
  closers.push(() => closeApp(app));
  // Live connections would hold the closing up: they end first.
  closers.push(context.live.close);
  await listen(
    (port, host) => app.listen({ port, host, listenTextResolver: () => '' }),
    settings.port,
    settings,
  );
  const port = portOf(app.server) ?? settings.port;
  const url = settings.publicUrl ?? `${certificate ? 'https' : 'http'}://${shownHost(settings)}:${port}`;
  closers.push(sweeping(store, nowMs, fault));
  if (certificate) closers.push(renewing(app.server as unknown as SecureServer, certificate, fault)); // made with TLS
  if (settings.metricsPort !== undefined)
    closers.push(await startMetrics(context.metrics, settings.metricsPort, fault));
  const trust = await startTrust(settings, { certificate, url, closers });
  const warnings = certificate?.warnings() ?? [];
  for (const line of warnings) app.log.warn({ certificate: true }, line);
  const takeCertificate = async () => {
    if (!certificate || !(await certificate.look())) return false;
    (app.server as unknown as SecureServer).setSecureContext(certificate.pair()); // made with TLS
    return true;
  };
  return { url, port, store, context, app, trust, warnings, takeCertificate, over, stop };
}

/** What is wrong with the files of months whose texts left the store; each is told, and all else is served. Throws `CannotStart` where nobody said where they lie. */
async function lookForMonths({ months = null }: ServerSettings, store: Store): Promise<readonly Error[]> {
  const faults = await store.monthFaults().catch((error: Error) => [error]);
  const [first] = faults;
  if (months === null && first instanceof MonthAway) throw new CannotStart(first.message);
  return faults;
}

/** Opens the store to serve it; `putBack`: its log got another name, as it is not the one of before, or nobody knows whether it is. */
async function openServed(
  { folder, database, months = null, clock, onMigrated, steps }: ServerSettings,
  onFault: (error: Error) => void,
): Promise<{ readonly store: Store; readonly putBack: PutBack | null }> {
  const told: { putBack: PutBack | null } = { putBack: null };
  const store = await openStore({
    folder,
    database,
    months,
    nowMs: clock.nowMs,
    onFault,
    role: 'server',
    onPutBack: (met) => {
      told.putBack = met;
    },
    ...(onMigrated ? { onMigrated } : {}),
    ...(steps ? { steps } : {}),
  });
  return { store, ...told };
}

/** Drops what has run out, now and then, where this process leads; ends it by what it returns. */
function sweeping(store: Store, nowMs: () => number, fault: (error: Error) => void): () => void {
  const sweep = setInterval(() => {
    if (store.leads()) store.sweep(nowMs()).catch(fault);
  }, SWEEP_MS);
  sweep.unref();
  return () => clearInterval(sweep);
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
  return keepCertificate({
    folder,
    plant: plant ?? unnamedPlant,
    settings: https,
    nowMs: clock.nowMs,
    addresses: lanAddresses,
  });
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
  const plant = await settlePlant(store, settings.plant, onFault);
  const serverEpoch = await store.serverEpoch();
  const key = await openServerKey(store);
  // A store of before there was a tree gets it now, and not at the first tablet's cost; one that cannot be read through tells so elsewhere.
  await store.tree().catch(onFault);
  const live = createLiveHub({ store, serverEpoch, start: await store.head(), onFault });
  const certificateEndsMs = () => certificate?.endsMs() ?? null;
  const metrics = createMetrics({ plant, listeners: live.count, certificateEndsMs });
  const signatures = createSignatureWalk({
    store,
    onFault,
    onDiffers: ({ tablet, epoch, seq }) => {
      metrics.quarantined.inc({ fault: 'signature-differs' });
      const id = `${tablet}/${epoch}/${seq}`;
      onFault(new Error(`the signature of ${id} does not hold, though the chain's later ones do`));
    },
  });
  const tickets = createTicketDesk({ store, key, plant });
  const heads = createHeadSigner(key.plant);
  const health = watchStore({ store, onTrouble });
  let proofsFromMs = nowMs();
  store.watch(({ kind }) => {
    if (kind !== 'back') return;
    proofsFromMs = nowMs();
    health.answered();
  });
  const seen = createSeenBook(store, onFault);
  const { registry, tablets } = metrics;
  const people = createPeopleBook(store, settings.people, tickets.trust);
  const push = createPushDesk({ settings: settings.push ?? null, store, people, secret: key.secret, nowMs });
  addPlantMetrics({ registry, tablets, folder: settings.folder, store, health, seen, push });
  return {
    settings,
    plant,
    store,
    metrics,
    push,
    quotas: createQuotas(),
    health,
    signatures,
    appender: createAppender(store, nowMs),
    seen,
    live,
    key,
    own: openOwnChain(settings, store, key),
    heads,
    witnesses: createWitnesses({ store, heads, origin: key.plant.ed25519.name, nowMs }),
    people,
    tickets,
    pinSeal: createPinSeal(key.secret),
    trace: openDesk(settings, store, onFault),
    serverEpoch,
    nowMs,
    startedMs: nowMs(),
    proofsFromMs: () => proofsFromMs,
    certificateEndsMs,
  };
}

/** Nothing is written where no version is told: a log that a test or the demo counts. */
function openOwnChain({ app, clock }: ServerSettings, store: Store, key: ServerKey): OwnChain {
  if (app === undefined) return { tell: async () => undefined };
  return createOwnChain({ store, key, app, nowMs: clock.nowMs });
}

function openDesk(settings: ServerSettings, store: Store, onFault: (error: Error) => void): TraceDesk {
  const { traceProgram: program, folder, database, months = null, clock } = settings;
  if (program === undefined) return createLocalDesk({ store, nowMs: clock.nowMs, onFault });
  return createRemoteDesk({ program, place: { folder, database, months }, store, onFault });
}

/** For this computer alone, whatever the server itself listens on. Returns the closing. */
async function startMetrics(
  metrics: Pick<Metrics, 'registry' | 'tablets'>,
  port: number,
  onFault: (error: Error) => void,
): Promise<() => Promise<void>> {
  const server = createMetricsServer(metrics, onFault);
  await listenPlain(server, port, { host: '127.0.0.1' });
  return () => closeServer(server);
}

/** Listens with a server of Node's own. */
function listenPlain(server: Server, port: number, place: Pick<ServerSettings, 'host' | 'listen'>) {
  return listen(
    (at, address) =>
      new Promise<void>((resolve, reject) => {
        server.once('error', reject);
        server.listen(at, address, resolve);
      }),
    port,
    place,
  );
}

async function startTrust(
  settings: ServerSettings,
  parts: {
    readonly certificate: KeptCertificate | null;
    readonly url: string;
    readonly closers: (() => Promise<void> | void)[];
  },
): Promise<RunningServer['trust']> {
  const { certificate, url: appUrl } = parts;
  const authority = certificate?.authority();
  if (!authority || !settings.https) return null;
  const pageUrl = `http://${shownHost(settings)}:${settings.https.trustPort}/ca`;
  const server = createTrustServer(() => ({
    authority: certificate?.authority() ?? authority,
    appUrl,
    pageUrl,
  }));
  parts.closers.push(() => closeServer(server));
  await listenPlain(server, settings.https.trustPort, settings);
  const url = `http://${shownHost(settings)}:${portOf(server) ?? settings.https.trustPort}/ca`;
  return { url, fingerprint: authority.fingerprint };
}

/** What is being answered may finish; whoever takes longer than this to read an answer is cut off, ms. */
const GRACE_MS = 3_000;

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

function portOf(server: Pick<Server, 'address'>): number | null {
  const address = server.address();
  return address !== null && typeof address === 'object' ? address.port : null;
}
