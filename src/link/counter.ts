// `POST /api/stations/STATION/count`: where a device tells its running total. Whatever else comes gets a clear no, and counts nothing.
// Method: the plain server of Node with narrow limits; who sends is known before the body is looked at, by its bearer token, or by the
// proof over the body's bytes. Refused: a web framework for one route.

import { createHash, createHmac, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import * as z from 'zod';
import { wellFormed } from '../../shared/log/seal.ts';
import type { NoticeWhat } from './notices.ts';
import type { CountMessage } from './station-desk.ts';

/** Most bytes of a message. */
const BODY_MOST = 4_096;
const SLOW_MS = 10_000;
const CONNECTIONS_MOST = 200;

const noControls = /^[^\u0000-\u001f\u007f]*$/;
const plain = (most: number) =>
  z.string().min(1).max(most).regex(noControls, 'expected text without control characters');

const moment = z
  .string()
  .max(40)
  .regex(
    /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,9})?(Z|[+-]\d{2}:\d{2})$/,
    'expected ISO 8601 with offset, e.g. 2026-03-02T06:00:00+01:00',
  )
  .refine((text) => Number.isFinite(Date.parse(text)), 'expected a date that exists');

const messageSchema = z.strictObject({
  boot: plain(48),
  total: z
    .int()
    .min(0)
    .max(2 ** 40),
  at: moment.nullable().default(null),
  serial: plain(200).nullable().default(null),
  skipped: z
    .union([z.int().min(0).max(1000), z.array(z.int().min(1)).max(1000)])
    .nullable()
    .default(null),
  state: z
    .int()
    .min(-(2 ** 31))
    .max(2 ** 31)
    .nullable()
    .default(null),
});

/** A station at this door. */
export interface CounterDoor {
  readonly secret: string;
  readonly take: (message: CountMessage) => Promise<{ readonly boot: string; readonly total: number }>;
  readonly notice: (what: NoticeWhat, said: string) => Promise<unknown>;
}

/** An answer that is no. */
class Refused extends Error {
  constructor(
    readonly status: number,
    message: string,
  ) {
    super(message);
  }
}

/** Makes the server for some stations; it does not listen yet. `onFault`: told of faults that are not the device's. */
export function createCounter(
  doors: ReadonlyMap<string, CounterDoor>,
  onFault: (error: unknown) => void,
): Server {
  const server = createServer(
    { maxHeaderSize: 8_192, requestTimeout: SLOW_MS, headersTimeout: SLOW_MS, keepAliveTimeout: 60_000 },
    (request, response) => {
      answer(doors, request).then(
        (held) => send(response, 200, held),
        (error: unknown) => {
          const refused = error instanceof Refused ? error : new Refused(503, 'stopping: send it again');
          if (!(error instanceof Refused)) onFault(error);
          send(response, refused.status, { error: refused.message });
          // What is left of its body is not waited for.
          if (!request.complete) request.destroy();
        },
      );
    },
  );
  server.maxConnections = CONNECTIONS_MOST;
  // Bytes that are no HTTP.
  server.on('clientError', (_error, socket) => {
    if (socket.writable) socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\n\r\n');
    else socket.destroy();
  });
  return server;
}

function send(response: ServerResponse, status: number, value: unknown): void {
  const text = JSON.stringify(value);
  response.writeHead(status, {
    'content-type': 'application/json',
    'content-length': Buffer.byteLength(text),
    ...(status === 200 ? null : { connection: 'close' }),
  });
  response.end(text);
}

async function answer(
  doors: ReadonlyMap<string, CounterDoor>,
  request: IncomingMessage,
): Promise<{ readonly boot: string; readonly total: number }> {
  const [path = ''] = (request.url ?? '').split('?');
  const name = /^\/api\/stations\/([^/]+)\/count$/.exec(path)?.[1];
  if (name === undefined) throw new Refused(404, 'path: expected /api/stations/STATION/count');
  if (request.method !== 'POST') throw new Refused(405, `method: expected POST, found ${request.method}`);
  const door = doors.get(decoded(name));
  if (!door) throw new Refused(404, `station: ${decoded(name).slice(0, 64)} is not one of this link’s`);
  const bearer = /^Bearer (.+)$/i.exec(request.headers.authorization ?? '')?.[1];
  const mac = request.headers['reelward-mac'];
  if (bearer === undefined && mac === undefined) {
    await door.notice('wrong-secret', 'none');
    throw new Refused(
      401,
      'authorization: expected Bearer SECRET, or reelward-mac: sha256=HEX of the body; found neither',
    );
  }
  if (bearer !== undefined && !isSame(bearer, door.secret)) {
    await door.notice('wrong-secret', 'authorization');
    throw new Refused(401, 'authorization: not this station’s secret');
  }
  const body = await readBody(request, door);
  if (bearer === undefined && !isProof(String(mac), body, door.secret)) {
    await door.notice('wrong-secret', 'reelward-mac');
    throw new Refused(
      401,
      'reelward-mac: expected sha256= and the HMAC-SHA-256 of the body’s bytes by this station’s secret',
    );
  }
  return door.take(await readMessage(body, door));
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Compares without telling by its time where they differ. */
function isSame(one: string, other: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(one), digest(other));
}

function isProof(header: string, body: Buffer, secret: string): boolean {
  const hex = /^sha256=([0-9a-f]{64})$/i.exec(header)?.[1];
  if (hex === undefined) return false;
  return timingSafeEqual(Buffer.from(hex, 'hex'), createHmac('sha256', secret).update(body).digest());
}

/** What is wrong with a message, told to the device and once to people. */
async function no(door: CounterDoor, message: string): Promise<Refused> {
  await door.notice('not-understood', message);
  return new Refused(400, message);
}

async function readBody(request: IncomingMessage, door: CounterDoor): Promise<Buffer> {
  if (request.headers['content-encoding'] !== undefined)
    throw await no(door, 'content-encoding: expected none');
  const tooLong = `body: expected at most ${BODY_MOST} bytes`;
  if (Number(request.headers['content-length'] ?? 0) > BODY_MOST) throw await no(door, tooLong);
  const chunks: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const chunk of request as AsyncIterable<Buffer>) {
      bytes += chunk.length;
      if (bytes > BODY_MOST) break;
      chunks.push(chunk);
    }
  } catch {
    throw await no(door, 'body: cut off');
  }
  if (bytes > BODY_MOST) throw await no(door, tooLong);
  return Buffer.concat(chunks);
}

async function readMessage(body: Buffer, door: CounterDoor): Promise<CountMessage> {
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(body));
  } catch (error) {
    throw await no(
      door,
      error instanceof SyntaxError ? 'body: expected JSON' : 'body: expected UTF-8, found other bytes',
    );
  }
  const checked = messageSchema.safeParse(value);
  if (!checked.success) throw await no(door, whatIsWrong(checked.error));
  const { at, boot, serial, ...rest } = checked.data;
  return {
    ...rest,
    boot: wellFormed(boot),
    serial: serial === null ? null : wellFormed(serial),
    atMs: at === null ? null : Date.parse(at),
  };
}

/** Where and what, of the first thing that is wrong. */
export function whatIsWrong(error: z.ZodError): string {
  const issue = error.issues.find(({ code }) => code === 'unrecognized_keys') ?? error.issues[0];
  if (!issue) return 'body: not as expected';
  if (issue.code === 'unrecognized_keys')
    return `${[...issue.path, issue.keys[0] ?? ''].join('.').slice(0, 80)}: not known here`;
  return `${issue.path.length === 0 ? 'body' : issue.path.join('.')}: ${issue.message}`;
}
