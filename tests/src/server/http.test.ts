// What comes in from outside and is not as it should be: the right status, a clear code, no stack, and no entry lost.

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '../../../shared/log/entry.ts';
import { type WireCode, wireCodes } from '../../../shared/wire/codes.ts';
import { entryBytes, unpackedBytes } from '../../../shared/wire/limits.ts';
import { pushedSchema, refusalSchema } from '../../../shared/wire/messages.ts';
import { entryText, formatProof, requestText } from '../../../shared/wire/signing.ts';
import { wireVersion } from '../../../shared/wire/version.ts';
import { newNonce } from '../../../src/app/sync/key.ts';
import { makeChain } from '../../contract/entries.ts';
import { enrolAt, newTablet, startTestServer, type TestServer, type TestTablet } from './tablets.ts';

let server: TestServer;
let tablet: TestTablet;
let stranger: TestTablet;
let other: TestTablet;

beforeAll(async () => {
  server = await startTestServer();
  tablet = await newTablet('t1', server.running.url);
  stranger = await newTablet('t2', server.running.url);
  await enrolAt(server.running, tablet);
  // Before noise is sent to where tablets enrol: an address has thirty tries a minute there.
  other = await newTablet('t3', server.running.url);
  await enrolAt(server.running, other);
});
afterAll(() => server.stop());

interface Signed {
  readonly path?: string;
  readonly method?: string;
  readonly body?: Uint8Array | string;
  readonly headers?: Record<string, string>;
  readonly timeMs?: number;
  readonly nonce?: string;
  readonly as?: TestTablet;
  readonly name?: string;
  /** Signed instead of what is sent. */
  readonly signed?: { readonly method?: string; readonly path?: string; readonly body?: string };
}

/** A request signed by hand, so that each part can be wrong on purpose. */
async function send(options: Signed = {}): Promise<Response> {
  const {
    path = '/api/push',
    method = 'POST',
    body = '{}',
    as = tablet,
    timeMs = Date.now(),
    nonce = newNonce(),
  } = options;
  const bytes = typeof body === 'string' ? new TextEncoder().encode(body) : body;
  const text = requestText({
    method: options.signed?.method ?? method,
    path: options.signed?.path ?? path,
    bodyHash: await sha256(
      options.signed?.body === undefined ? bytes : new TextEncoder().encode(options.signed.body),
    ),
    timeMs,
    nonce,
  });
  const authorization = formatProof({
    tablet: options.name ?? as.name,
    timeMs,
    nonce,
    sig: await as.key.sign(text),
  });
  const headers = {
    'reelward-wire': '1',
    'content-type': 'application/json',
    authorization,
    ...options.headers,
  };
  const init: RequestInit = { method, headers };
  if (method !== 'GET') init.body = bytes as Uint8Array<ArrayBuffer>;
  return fetch(server.running.url + path, init);
}

async function sha256(bytes: Uint8Array): Promise<string> {
  return Buffer.from(await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>)).toString('hex');
}

/** Checks a refusal's shape and returns its code. */
async function codeOf(response: Response): Promise<WireCode> {
  const text = await response.text();
  expect(text).not.toMatch(/\bat .*\(|node_modules|\.ts:|\.js:|SQLITE|stack/);
  return refusalSchema.parse(JSON.parse(text)).code;
}

const page = (entries: readonly unknown[]) => JSON.stringify({ sentMs: Date.now(), entries });
const signed = async (entry: Entry) => ({ ...entry, sig: await tablet.key.sign(entryText(entry.hash)) });

describe('a request', () => {
  const good = page(makeChain({ tablet: 't9', count: 1 }));
  const rows: readonly (readonly [string, Signed, number, WireCode])[] = [
    ['in no version', { headers: { 'reelward-wire': '' } }, 400, 'wire-unreadable'],
    ['in a version to come', { headers: { 'reelward-wire': String(wireVersion + 1) } }, 426, 'wire-too-new'],
    [
      'in a version that never was',
      { headers: { 'reelward-wire': '1; drop table' } },
      400,
      'wire-unreadable',
    ],
    ['without a signature', { headers: { authorization: '' } }, 401, 'signature-wrong'],
    ['with a bearer token', { headers: { authorization: 'Bearer abc' } }, 401, 'signature-wrong'],
    ['by a tablet nobody enrolled', { name: 't2' }, 401, 'tablet-unknown'],
    [
      'signed with a key that is not its own',
      {
        name: 't1',
        get as() {
          return stranger;
        },
      },
      401,
      'signature-wrong',
    ],
    ['signed for another path', { signed: { path: '/api/offer' } }, 401, 'signature-wrong'],
    ['signed for another method', { signed: { method: 'PUT' } }, 401, 'signature-wrong'],
    ['signed for another body', { body: good, signed: { body: '{}' } }, 401, 'signature-wrong'],
    ['signed an hour ago', { timeMs: Date.now() - 3_600_000 }, 401, 'time-off'],
    ['signed for tomorrow', { timeMs: Date.now() + 86_400_000 }, 401, 'time-off'],
    ['that is not JSON', { body: '{"a":' }, 400, 'bad-body'],
    ['that is not UTF-8', { body: new Uint8Array([0x7b, 0xff, 0x7d]) }, 400, 'bad-body'],
    ['without a body', { body: '' }, 400, 'bad-body'],
    ['with a body of another type', { headers: { 'content-type': 'text/plain' } }, 415, 'media-type'],
    ['packed in a way not known', { headers: { 'content-encoding': 'br' } }, 415, 'media-type'],
    ['that says gzip and is not', { headers: { 'content-encoding': 'gzip' } }, 400, 'bad-body'],
    ['with an empty page', { body: page([]) }, 400, 'bad-body'],
    ['with an entry that is none', { body: page([{ v: 1 }]) }, 400, 'bad-body'],
    ['with a page that is an array', { body: '[]' }, 400, 'bad-body'],
    [
      'nested a hundred thousand deep',
      { body: `${'['.repeat(100_000)}${']'.repeat(100_000)}` },
      400,
      'bad-body',
    ],
    ['to a path that is not there', { path: '/api/nothing' }, 404, 'not-found'],
    [
      'by a method that is not there',
      { path: '/api/pull?after=0.0000000000000000', method: 'DELETE' },
      404,
      'not-found',
    ],
    [
      'with a cursor that is none',
      { path: '/api/pull?after=1%27--', method: 'GET', body: '' },
      400,
      'bad-query',
    ],
    [
      'with a cursor past the end',
      { path: `/api/pull?after=9.${'a'.repeat(16)}`, method: 'GET', body: '' },
      409,
      'epoch-changed',
    ],
    ['for a snapshot of no fold', { path: '/api/snapshot', method: 'GET', body: '' }, 404, 'no-snapshot'],
    [
      'that shuts a tablet out with no person',
      { path: '/api/tablets/revoke', body: '{"tablet":"t1"}' },
      401,
      'person-unproven',
    ],
    [
      'that lists tablets with a made-up person',
      { path: '/api/tablets', method: 'GET', body: '', headers: { 'reelward-person': 'x' } },
      401,
      'person-unproven',
    ],
  ];
  it.each(rows)('%s is refused', async (_, options, status, code) => {
    const response = await send(options);
    expect([response.status, await codeOf(response)]).toEqual([status, code]);
  });

  it('sent twice is refused the second time, also when the first was a success', async () => {
    const nonce = newNonce();
    const timeMs = Date.now();
    const body = page([await signed(makeChain({ tablet: 't1', epoch: 'twice', count: 1 })[0] as Entry)]);
    expect((await send({ body, nonce, timeMs })).status).toBe(200);
    const again = await send({ body, nonce, timeMs });
    expect([again.status, await codeOf(again)]).toEqual([401, 'signature-replayed']);
  });

  it('that was signed before this server started is refused, since its nonce may be used', async () => {
    const response = await send({ timeMs: server.running.context.proofsFromMs() - 1 });
    expect([response.status, await codeOf(response)]).toEqual([401, 'time-off']);
  });

  it('that unpacks to more than the limit is refused without unpacking it all', async () => {
    const bomb = gzipSync(Buffer.alloc(200 * 1024 * 1024));
    expect(bomb.length).toBeLessThan(300 * 1024);
    const before = process.memoryUsage().rss;
    const response = await send({ body: bomb, headers: { 'content-encoding': 'gzip' } });
    expect([response.status, await codeOf(response)]).toEqual([413, 'body-too-large']);
    expect(process.memoryUsage().rss - before).toBeLessThan(20 * unpackedBytes);
  });

  it('with a body over the limit is refused', async () => {
    const response = await send({ body: `"${'x'.repeat(1_100_000)}"` });
    expect([response.status, await codeOf(response)]).toEqual([413, 'body-too-large']);
  });

  it('that sends its header drop by drop is cut off', async () => {
    const socket = connect(server.running.port, '127.0.0.1');
    const drops = setInterval(() => socket.writable && socket.write('x-a: b\r\n'), 500);
    socket.write('GET /api/info HTTP/1.1\r\nhost: localhost\r\n');
    const answer = await new Promise<string>((resolve) => {
      let text = '';
      socket.on('data', (chunk) => {
        text += chunk;
      });
      socket.on('error', () => resolve(text));
      socket.on('close', () => resolve(text));
    });
    clearInterval(drops);
    expect(answer).toMatch(/^HTTP\/1\.1 408/);
  }, 30_000);

  it('with noise for a body never ends in a fault, and the log is as before', async () => {
    const before = await server.running.store.head();
    const value = fc.oneof(
      fc.json().map((text) => text),
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc
        .record({ sentMs: fc.anything(), entries: fc.array(fc.anything(), { maxLength: 3 }) })
        .map((options) => JSON.stringify(options) ?? ''),
    );
    const paths = [
      '/api/push',
      '/api/offer',
      '/api/enrol',
      '/api/people/check',
      '/api/export',
      '/api/tablets/revoke',
    ];
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...paths), value, async (path, body) => {
        const response = await send({ path, body });
        const text = await response.text();
        expect(response.status).toBeLessThan(500);
        if (response.status !== 200) expect(wireCodes).toContain(refusalSchema.parse(JSON.parse(text)).code);
      }),
      { numRuns: 120 },
    );
    expect((await server.running.store.head()).pos).toBe(before.pos);
  });

  it('with database words and markup in every text is kept word for word', async () => {
    const nasty = `'; drop table entries; -- <img src=x onerror=alert(1)> "\${7*7}" %00 \u2028 \\ ../../etc`;
    const [entry] = makeChain({
      tablet: 't1',
      epoch: "e'--",
      count: 1,
      kind: '<b>;drop',
      payload: () => ({ [nasty]: nasty }),
    });
    const pushed = await send({ body: page([await signed(entry as Entry)]) });
    expect(pushedSchema.parse(await pushed.json())).toMatchObject({ faults: [], acks: [{ seq: 1 }] });
    const { pos } = await server.running.store.head();
    const [row] = await server.running.store.page(pos - 1, 1);
    expect((JSON.parse(row?.text ?? '') as Entry).payload).toEqual({ [nasty]: nasty });
  });

  it.each([
    ['changed after it was sealed', { payload: { text: 'other' } }, 'hash-differs'],
    ['with no signature', { sig: null }, 'signature-missing'],
    ['with a signature of something else', { sig: 'A'.repeat(86) }, 'signature-differs'],
  ] as const)('with an entry %s quarantines it and says so', async (_, change, fault) => {
    const [entry] = makeChain({ tablet: 't1', epoch: fault, count: 1 });
    const response = await send({ body: page([{ ...(await signed(entry as Entry)), ...change }]) });
    expect(response.status).toBe(200);
    expect(pushedSchema.parse(await response.json())).toMatchObject({
      faults: [{ id: `t1/${fault}/1`, fault }],
      acks: [{ seq: 0 }],
    });
  });

  it("with another tablet's entry needs that tablet's signature", async () => {
    const [entry] = makeChain({ tablet: 't3', count: 1 });
    const forged = await send({ body: page([await signed(entry as Entry)]) });
    expect(pushedSchema.parse(await forged.json()).faults).toEqual([
      { id: 't3/e1/1', fault: 'signature-differs' },
    ]);
    const real = { ...entry, sig: await other.key.sign(entryText(entry?.hash ?? '')) };
    const carried = await send({ body: page([real]) });
    expect(pushedSchema.parse(await carried.json())).toMatchObject({
      faults: [],
      acks: [{ tablet: 't3', seq: 1 }],
    });
  });

  it('with an entry over the limit or with half a character is refused as a whole, naming the entry', async () => {
    const [big] = makeChain({
      tablet: 't1',
      epoch: 'big',
      count: 1,
      payload: () => ({ text: 'x'.repeat(entryBytes) }),
    });
    const response = await send({ body: page([await signed(big as Entry)]) });
    const refusal = refusalSchema.parse(await response.json());
    expect([response.status, refusal.code, refusal.facts]).toEqual([400, 'bad-entry', { id: 't1/big/1' }]);
    const half = page([{ ...(await signed(big as Entry)), payload: { text: 'A' } }]).replace(
      '"A"',
      '"\\ud800"',
    );
    expect(await codeOf(await send({ body: half }))).toBe('bad-entry');
  });

  it('is taken in whatever order and with whatever blanks its keys are written', async () => {
    const [entry] = makeChain({ tablet: 't1', epoch: 'older', count: 1, payload: () => ({ b: 1, a: 2 }) });
    const { payload: _, v, ...rest } = await signed(entry as Entry);
    const body = JSON.stringify({ entries: [{ v, payload: { b: 1, a: 2 }, ...rest }], sentMs: 1 }, null, 2);
    const pushed = pushedSchema.parse(await (await send({ body })).json());
    expect(pushed).toMatchObject({ acks: [{ epoch: 'older', seq: 1 }], faults: [] });
  });

  it('dated two hours ahead is quarantined, and an older tablet is told so in a word that it knows', async () => {
    const [entry] = makeChain({ tablet: 't1', epoch: 'far', count: 1, atMs: Date.now() + 7_200_000 });
    const body = page([await signed(entry as Entry)]);
    const faultIn = async (wire: string) =>
      pushedSchema.parse(await (await send({ body, headers: { 'reelward-wire': wire } })).json()).faults;
    expect(await faultIn('2')).toEqual([{ id: 't1/far/1', fault: 'name-taken' }]);
    const hash = await sha256(new TextEncoder().encode(body));
    const headers = { 'reelward-wire': '3', 'reelward-body': hash };
    const told = pushedSchema.parse(await (await send({ body, headers })).json()).faults;
    expect(told).toEqual([{ id: 't1/far/1', fault: 'clock-ahead' }]);
  });

  it('dated ten minutes ahead is taken, and told', async () => {
    const [entry] = makeChain({ tablet: 't1', epoch: 'ahead', count: 1, atMs: Date.now() + 600_000 });
    const response = await send({ body: page([await signed(entry as Entry)]) });
    const pushed = pushedSchema.parse(await response.json());
    expect(pushed).toMatchObject({ acks: [{ seq: 1 }], ahead: [{ id: 't1/ahead/1' }] });
    expect(Math.abs((pushed.ahead[0]?.aheadMs ?? 0) - 600_000)).toBeLessThan(10_000);
  });
});

describe('every answer', () => {
  it('carries the strict policy and no word of what serves it', async () => {
    for (const path of ['/', '/api/info', '/api/nothing', '/health']) {
      const { headers } = await fetch(server.running.url + path);
      expect(headers.get('content-security-policy')).toBe(
        "default-src 'self';script-src 'self' 'wasm-unsafe-eval';style-src 'self';img-src 'self' data: blob:;" +
          "media-src 'self' blob:;worker-src 'self' blob:;object-src 'none';base-uri 'none';form-action 'self';frame-ancestors 'none';" +
          "require-trusted-types-for 'script';trusted-types default",
      );
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('strict-transport-security')).toBeNull();
      expect(headers.get('x-powered-by') ?? headers.get('server')).toBeNull();
    }
  });

  it('of /api is never cached', async () => {
    expect((await fetch(`${server.running.url}/api/info`)).headers.get('cache-control')).toBe('no-store');
    expect((await fetch(`${server.running.url}/api/nothing`)).headers.get('cache-control')).toBe('no-store');
  });
});

describe('the app', () => {
  let withApp: TestServer;
  beforeAll(async () => {
    withApp = await startTestServer();
    const root = withApp.settings.appRoot;
    mkdirSync(join(root, 'assets'), { recursive: true });
    const big = 'x'.repeat(3_000);
    writeFileSync(join(root, 'index.html'), `<!doctype html><title>app</title>${big}`);
    writeFileSync(join(root, 'sw.js'), '//');
    writeFileSync(join(root, 'manifest.webmanifest'), '{}');
    writeFileSync(join(root, 'assets', 'main-abc123.js'), '//');
    writeFileSync(join(root, '.secret'), 'no');
    await withApp.restart();
  });
  afterAll(() => withApp.stop());

  it.each([
    ['/', 200, 'no-cache', 'text/html'],
    ['/index.html', 200, 'no-cache', 'text/html'],
    ['/sw.js', 200, 'no-cache', 'javascript'],
    ['/manifest.webmanifest', 200, 'no-cache', 'manifest'],
    ['/assets/main-abc123.js', 200, 'public, max-age=31536000, immutable', 'javascript'],
    ['/line/L1/slots', 200, 'no-cache', 'text/html'],
    ['/assets/main-gone.js', 404, null, 'json'],
    ['/api/x', 404, 'no-store', 'json'],
    ['/export/x', 404, null, 'json'],
    ['/ca', 404, null, 'json'],
    ['/.secret', 404, null, 'json'],
    ['/%2e%2e/log.sqlite', 404, null, 'json'],
    ['/..%2flog.sqlite', 404, null, 'json'],
    ['/assets/..%2f..%2flog.sqlite', 404, null, 'json'],
  ])('%s answers %i', async (path, status, cache, type) => {
    const response = await raw(withApp.running.port, path);
    expect(response.status).toBe(status);
    if (cache !== null) expect(response.headers['cache-control']).toBe(cache);
    expect(String(response.headers['content-type'])).toContain(type);
    expect(response.text).not.toContain('SQLite format');
  });

  it('is packed for travel', async () => {
    const response = await raw(withApp.running.port, '/', { 'accept-encoding': 'gzip' });
    expect(response.headers['content-encoding']).toBe('gzip');
  });

  it('that is not built says how to build it', async () => {
    const response = await fetch(`${server.running.url}/`);
    expect(response.status).toBe(503);
    expect(await response.text()).toContain('npm run build');
  });
});

describe('operation', () => {
  it('`/health` tells the store and how much it holds', async () => {
    const health = (await (await fetch(`${server.running.url}/health`)).json()) as Record<string, unknown>;
    expect(health).toMatchObject({ ok: true, store: 'sqlite' });
    expect(health['entries']).toBe((await server.running.store.head()).pos);
  });

  it('`/metrics` counts entries, refusals and time in Prometheus text', async () => {
    const key = readFileSync(join(server.folder, 'metrics.key'), 'utf8').trim();
    const headers = { authorization: `Bearer ${key}` };
    const response = await fetch(`${server.running.url}/metrics`, { headers });
    expect(response.headers.get('content-type')).toContain('text/plain');
    const text = await response.text();
    expect(text).toMatch(/^reelward_entries_total\{plant="Brae Works"\} [1-9]/m);
    expect(text).toMatch(/^reelward_refusals_total\{code="signature-wrong",plant="Brae Works"\} [1-9]/m);
    expect(text).toMatch(/^reelward_append_seconds_bucket\{le="0.05",plant="Brae Works"\} \d/m);
    expect(text).not.toContain('t1');
  });
});

/** A request without the normalising that `fetch` does. */
function raw(port: number, path: string, headers: Record<string, string> = {}) {
  return new Promise<{ status: number; headers: Record<string, unknown>; text: string }>(
    (resolve, reject) => {
      const request = httpRequest({ port, path, headers, host: '127.0.0.1' }, (response) => {
        let text = '';
        response.on('data', (chunk) => {
          text += chunk;
        });
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, text }),
        );
      });
      request.on('error', reject);
      request.end();
    },
  );
}
