// Asks the server over Node's own HTTP: as much of `fetch` as sync needs.
// Refused: the engine's `fetch`, which takes 18 MB before the first request goes out: a fifth of what a link may have.

import { Agent, type IncomingMessage, type RequestOptions, request } from 'node:http';
import { Agent as SecureAgent, request as secureRequest } from 'node:https';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';

/** Connections to the server at one time: as many as a push has pages on their way. */
const AT_ONCE = 8;
/** So often a question is sent on to where an answer says. */
const SENT_ON_MOST = 3;
/** Bytes of an answer unpacked: a page of the log is far below. */
const ANSWER_MOST = 64 * 1024 * 1024;

const agents = {
  plain: new Agent({ keepAlive: true, maxSockets: AT_ONCE }),
  secure: new SecureAgent({ keepAlive: true, maxSockets: AT_ONCE }),
};
const unpack = promisify(gunzip);
const pack = promisify(gzip);

/** What is asked. */
export interface Asked {
  readonly method: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array | null;
  readonly signal: AbortSignal;
}

/** What sync reads of an answer; all of it is here when it resolves. */
export interface Answer {
  readonly ok: boolean;
  readonly status: number;
  readonly headers: { readonly get: (name: string) => string | null };
  readonly json: () => Promise<unknown>;
}

/** Asks; rejects where no whole answer comes, or the signal is raised. */
export async function plainFetch(address: string, asked: Asked): Promise<Answer> {
  let url = new URL(address);
  for (let sentOn = 0; ; sentOn += 1) {
    const { message, bytes } = await exchange(url, asked).catch((error: unknown) => {
      // The server had let go of a connection that was kept: on another one.
      if (error instanceof Stale) return exchange(url, asked);
      throw error;
    });
    const { statusCode: status = 0, headers } = message;
    const next = status === 307 || status === 308 ? headers.location : undefined;
    if (next !== undefined && sentOn < SENT_ON_MOST) {
      url = new URL(next, url);
      continue;
    }
    const isPacked = headers['content-encoding'] === 'gzip';
    const plain = isPacked ? await unpack(bytes, { maxOutputLength: ANSWER_MOST }) : bytes;
    return {
      ok: status >= 200 && status < 300,
      status,
      headers: { get: (name) => headers[name]?.toString() ?? null },
      json: async () => JSON.parse(plain.toString('utf8')),
    };
  }
}

/** A kept connection was gone before any answer. */
class Stale extends Error {}

/** Packs a body. */
export async function plainGzip(bytes: Uint8Array): Promise<Uint8Array> {
  return pack(bytes);
}

function exchange(
  url: URL,
  { method, headers, body, signal }: Asked,
): Promise<{ readonly message: IncomingMessage; readonly bytes: Buffer }> {
  const isSecure = url.protocol === 'https:';
  const length = body === null ? {} : { 'content-length': String(body.length) };
  const options: RequestOptions = {
    method,
    headers: { 'accept-encoding': 'gzip', ...headers, ...length },
    signal,
    agent: isSecure ? agents.secure : agents.plain,
  };
  return new Promise((resolve, reject) => {
    const call = (isSecure ? secureRequest : request)(url, options, (message) => {
      const chunks: Buffer[] = [];
      let length = 0;
      message.on('data', (chunk: Buffer) => {
        length += chunk.length;
        if (length > ANSWER_MOST) message.destroy(new Error('the answer is too long'));
        else chunks.push(chunk);
      });
      message.on('end', () =>
        message.complete
          ? resolve({ message, bytes: Buffer.concat(chunks) })
          : reject(new Error('the answer is cut off')),
      );
      message.on('error', reject);
    });
    call.on('error', (error: NodeJS.ErrnoException) =>
      reject(call.reusedSocket && error.code === 'ECONNRESET' ? new Stale() : error),
    );
    call.end(body ?? undefined);
  });
}
