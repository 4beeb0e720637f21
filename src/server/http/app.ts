// Puts the HTTP side together: limits, headers, body reading, routes, and the one place where errors become answers.

import compress from '@fastify/compress';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import Fastify, { type FastifyInstance, type FastifyRequest, LogController } from 'fastify';
import { codesSince, type WireCode } from '../../../shared/wire/codes.ts';
import { bodyBytes } from '../../../shared/wire/limits.ts';
import { wireHeader } from '../../../shared/wire/version.ts';
import type { ServerContext } from '../context.ts';
import { storeWords } from '../health.ts';
import { readStateSize, stateTold } from '../state-room.ts';
import { MonthAway } from '../stores/month-store.ts';
import type { StoreTrouble } from '../stores/trouble.ts';
import { within } from '../within.ts';
import { addBodyParsers } from './body.ts';
import { limitConnections, provedIdleMs } from './connections.ts';
import { createSecurityEvents } from './events.ts';
import { addExportRoutes } from './export-routes.ts';
import { addGate } from './gate.ts';
import { isKey, openMetricsKey } from './metrics-key.ts';
import { addPeopleRoutes } from './people-routes.ts';
import { addPictureRoutes } from './picture-routes.ts';
import { addPushRoutes } from './push-routes.ts';
import { sharedRates } from './rates.ts';
import { Refused, toRefusal, toRefused } from './refuse.ts';
import { addSnapshotRoutes } from './snapshot-routes.ts';
import { addStaticRoutes } from './static-routes.ts';
import { addSyncRoutes } from './sync-routes.ts';
import { addTraceRoutes } from './trace-routes.ts';

/** Key and certificate as PEM. */
export interface TlsFiles {
  readonly key: string;
  readonly cert: string;
}

/** The page uses the camera and keeps the screen awake; whatever else a browser offers is none of its business. */
const permissions = [
  'camera=(self)',
  'screen-wake-lock=(self)',
  'fullscreen=(self)',
  ...[
    'accelerometer',
    'autoplay',
    'display-capture',
    'geolocation',
    'gyroscope',
    'hid',
    'idle-detection',
    'magnetometer',
    'microphone',
    'midi',
    'payment',
    'serial',
    'usb',
    'xr-spatial-tracking',
  ].map((name) => `${name}=()`),
].join(', ');

/** What a tablet is told of what is wrong with the store. */
const troubleCodes: Readonly<Record<StoreTrouble, WireCode>> = {
  'disk-full': 'store-full',
  'read-only': 'store-read-only',
  away: 'store-away',
  restored: 'store-away',
  lost: 'store-away',
  outgrown: 'store-away',
  damaged: 'server-fault',
  'text-changed': 'server-fault',
  'log-broken': 'server-fault',
  'month-away': 'server-fault',
};

/** A client that greets, or sends its header or body, slower than this is cut off. */
const HEADER_MS = 10_000;
const REQUEST_MS = 30_000;

/** Builds the app; the caller listens. */
export async function createApp(context: ServerContext, tls: TlsFiles | null): Promise<FastifyInstance> {
  const app = createFastify(context, tls);
  const isSecure = tls !== null || context.settings.publicUrl?.startsWith('https:') === true;
  const events = createSecurityEvents(context.nowMs);
  limitConnections(app, context, events);
  const refuse = (error: unknown) =>
    toRefused(error) ?? new Refused('server-fault', 'the server could not do this; its log says why');
  app.setErrorHandler((error, request, reply) => {
    const trouble = error instanceof Refused ? null : context.health.met(error);
    // Which month it is the error says; where the server looks for its file is for the log below alone.
    const words = error instanceof MonthAway ? error.told() : trouble && storeWords[trouble];
    const refused = trouble ? new Refused(troubleCodes[trouble], words ?? '') : refuse(error);
    if (refused.code === 'server-fault') request.log.error({ err: error }, 'fault');
    context.metrics.refusals.inc({ code: refused.code });
    events.refused(request, refused.code);
    return reply
      .code(refused.status)
      .headers({ 'cache-control': 'no-store' })
      .send(toRefusal(refused, context.nowMs(), speaksOlder(request)));
  });
  addBodyParsers(app);
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        'default-src': ["'self'"],
        'script-src': ["'self'", "'wasm-unsafe-eval'"],
        'style-src': ["'self'"],
        'img-src': ["'self'", 'data:', 'blob:'],
        'media-src': ["'self'", 'blob:'],
        'worker-src': ["'self'", 'blob:'],
        'object-src': ["'none'"],
        'base-uri': ["'none'"],
        'form-action': ["'self'"],
        'frame-ancestors': ["'none'"],
        'require-trusted-types-for': ["'script'"],
        'trusted-types': ['default'],
      },
    },
    // Would also force HTTPS on the plain page that explains how to trust the certificate: same host, another port.
    strictTransportSecurity: false,
    referrerPolicy: { policy: 'no-referrer' },
    xFrameOptions: { action: 'deny' },
    // Both only mean something on a trusted origin, and browsers complain elsewhere.
    crossOriginOpenerPolicy: isSecure ? { policy: 'same-origin' } : false,
    originAgentCluster: isSecure,
  });
  await app.register(rateLimit, { global: false, ...sharedRates(context.store, context.nowMs) });
  // Answers only: requests are unpacked by our own reader, which also hashes them.
  await app.register(compress, { globalDecompression: false, threshold: 1024, encodings: ['gzip'] });
  app.addHook('onRequest', async (request, reply) => {
    reply.header('permissions-policy', permissions);
    if ((request.raw.url ?? '').startsWith('/api/')) reply.header('cache-control', 'no-store');
  });
  addGate(app, context);
  app.addHook('onResponse', async (request, reply) => {
    const route = request.routeOptions.url ?? '(none)';
    context.metrics.requests.observe({ route, status: reply.statusCode }, reply.elapsedTime / 1000);
  });
  addOperationRoutes(app, context);
  addSyncRoutes(app, context);
  addSnapshotRoutes(app, context);
  addPeopleRoutes(app, context);
  addExportRoutes(app, context);
  addTraceRoutes(app, context);
  addPictureRoutes(app, context);
  addPushRoutes(app, context);
  context.settings.addRoutes?.(app);
  await addStaticRoutes(app, context.settings.appRoot, context.nowMs);
  return app;
}

/** True for a tablet that was built before some of the codes. */
function speaksOlder(request: FastifyRequest): boolean {
  const header = Number(request.headers[wireHeader]);
  return Number.isInteger(header) && header < codesSince;
}

function createFastify(context: ServerContext, tls: TlsFiles | null): FastifyInstance {
  const { logLevel } = context.settings;
  const { trustProxy } = context.settings;
  const options = {
    // Who asks is told by whoever stands between only where that one is named: anybody can write such a header.
    ...(trustProxy ? { trustProxy: [...trustProxy] } : {}),
    bodyLimit: bodyBytes,
    requestTimeout: REQUEST_MS,
    keepAliveTimeout: provedIdleMs,
    forceCloseConnections: 'idle' as const,
    routerOptions: { maxParamLength: 200, ignoreTrailingSlash: true },
    // A body of JSON is read by our own parser; answers are plain objects.
    logger: {
      level: logLevel,
      stream: context.settings.logTo ?? process.stderr,
      redact: ['req.headers.authorization', 'req.headers["reelward-person"]'],
      serializers: {
        req: (request: { method: string; url: string; ip: string }) => ({
          method: request.method,
          // A ticket in a path opens an export: it does not belong in a log.
          url: request.url.replace(/^(\/export\/)[^/]+/, '$1…'),
          ip: request.ip,
        }),
      },
    },
    logController: new LogController({ disableRequestLogging: logLevel !== 'debug' }),
    http: { headersTimeout: HEADER_MS, connectionsCheckingInterval: 2_000 },
  };
  const { http, ...rest } = options;
  return tls
    ? (Fastify({
        ...rest,
        https: { ...tls, ...http, handshakeTimeout: HEADER_MS },
      }) as unknown as FastifyInstance) // the same app on another socket
    : Fastify(options);
}

/** Whoever asks how the server stands waits no longer for the database than this, ms. */
const HEALTH_MS = 1_500;

/** How messages went since the server began, where it sends any. No reason to call it unwell: its log does not hang on them. */
function pushTold({ push }: ServerContext): object {
  return push.key === null ? {} : { push: push.counts() };
}

/** A question that is asked once however many wait for it: a database that says nothing would take a connection for each. Null where it says nothing in time. */
function oneAtATime<T>(ask: () => Promise<T>): () => Promise<T | null> {
  let asking: Promise<T> | null = null;
  return () => {
    asking ??= ask().finally(() => {
      asking = null;
    });
    return within(asking, HEALTH_MS, null);
  };
}

function addOperationRoutes(app: FastifyInstance, context: ServerContext): void {
  const end = oneAtATime(() => context.store.head());
  const stand = oneAtATime(async () => {
    const { pos } = await context.store.head();
    return { entries: pos, state: await readStateSize(context.store) };
  });
  app.get('/health', async (_, reply) => {
    reply.header('cache-control', 'no-store');
    const { health, store } = context;
    try {
      const stands = await stand();
      if (stands === null)
        throw Object.assign(new Error('the database does not answer'), { code: 'ETIMEDOUT' });
      health.answered();
      const upSeconds = Math.floor((context.nowMs() - context.startedMs) / 1000);
      const why = health.troubles();
      const told = {
        plant: context.plant,
        store: store.dialect,
        entries: stands.entries,
        upSeconds,
        ...stateTold(stands.state),
        ...pushTold(context),
      };
      if (why.length === 0) return { ok: true, ...told };
      return reply.code(503).send({ ok: false, degraded: why, ...told });
    } catch (error) {
      const why = health.met(error);
      return reply
        .code(503)
        .send({ ok: false, degraded: why ? [why] : [], plant: context.plant, store: store.dialect });
    }
  });
  // For whoever chooses among several servers: one that reaches the database serves, whatever is wrong with the log that all of them share.
  app.get('/ready', async (_, reply) => {
    reply.header('cache-control', 'no-store');
    const head = await end().catch(() => null);
    return head === null ? reply.code(503).send({ ready: false }) : { ready: true };
  });
  const metricsKey = openMetricsKey(context.settings.folder);
  app.get('/metrics', async (request, reply) => {
    if (!isKey(request.headers.authorization, metricsKey))
      throw new Refused(
        'signature-missing',
        'metrics need the key that lies in the data folder (metrics.key)',
      );
    return reply.type(context.metrics.registry.contentType).send(await context.metrics.registry.metrics());
  });
}
