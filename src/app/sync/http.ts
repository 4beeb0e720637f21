// One signed request: packs and hashes the body, signs, sends with a time limit, reads the answer or the refusal.
// A wrong tablet clock costs one extra round: the server's refusal carries its time, and the request is signed again.

import type * as z from 'zod/mini';
import { fail, ok, type Result } from '../../../shared/kit/result.ts';
import type { WireCode } from '../../../shared/wire/codes.ts';
import { personHeader, refusalSchema } from '../../../shared/wire/messages.ts';
import { formatProof, requestText } from '../../../shared/wire/signing.ts';
import { bodyHeader, wireHeader, wireVersion } from '../../../shared/wire/version.ts';
import { retryAfterMs } from './backoff.ts';
import { type PackedBody, packBody, type UnpackedBody } from './pack.ts';
import type { SyncKey, SyncWorld } from './ports.ts';

/** Why there was no answer of use. */
export interface CallFailure {
  /** `unreachable`: no answer at all; `unreadable`: an answer that is none of ours, e.g. by something in between; `other-plant`: the server is another plant's. */
  readonly code: WireCode | 'unreachable' | 'unreadable' | 'other-plant';
  readonly facts: Readonly<Record<string, string | number | boolean | null>>;
  readonly retryAfterMs: number | null;
}

export interface CallOptions extends UnpackedBody {
  readonly method?: 'GET' | 'POST' | 'PUT';
  /** Token of a checked person. */
  readonly person?: string;
  readonly timeoutMs?: number;
  readonly signal?: AbortSignal;
}

/** Sends signed requests for one tablet. */
export interface Caller {
  /** Sends and checks the answer against its schema. */
  readonly call: <S extends z.ZodMiniType>(
    path: string,
    schema: S,
    options?: CallOptions,
  ) => Promise<Result<z.output<S>, CallFailure>>;
  /** Sends and hands back the raw answer. */
  readonly open: (path: string, options?: CallOptions) => Promise<Result<Response, CallFailure>>;
  /** The server's clock minus this tablet's, ms, as last seen. */
  readonly clockOffMs: () => number;
}

const TIMEOUT_MS = 10_000;

export interface CallerOptions {
  /** As remembered. */
  readonly clockOffMs?: number;
  /** Told of each answer by the server, a no included. */
  readonly onAnswer?: () => void;
  /** Raised to end all calls. */
  readonly signal?: AbortSignal;
}

/** Makes the caller. */
export function createCaller(world: SyncWorld, key: SyncKey, options: CallerOptions = {}): Caller {
  let clockOffMs = options.clockOffMs ?? 0;

  /** One answer, a no included, with its time limit still running. */
  const exchange = async (path: string, asked: CallOptions): Promise<Result<Exchange, CallFailure>> => {
    const body = await packBody(asked, world.gzip);
    for (let tries = 0; ; tries += 1) {
      const sent = await send(path, asked, body);
      if (!sent.ok) return sent;
      const { response, release, signal } = sent.value;
      options.onAnswer?.();
      if (response.ok) return sent;
      const failure = await readFailure(response, signal);
      release();
      if (failure.code !== 'time-off' || failure.serverMs === null || tries > 0) return fail(failure);
      clockOffMs = failure.serverMs - world.nowMs();
      world.sawServer?.(failure.serverMs);
    }
  };

  const send = async (
    path: string,
    asked: CallOptions,
    body: PackedBody,
  ): Promise<Result<Exchange, CallFailure>> => {
    const method = asked.method ?? (body.bytes ? 'POST' : 'GET');
    const timeMs = Math.max(0, Math.round(world.nowMs() + clockOffMs));
    const nonce = world.nonce();
    const sig = await key.sign(requestText({ method, path, bodyHash: body.hash, timeMs, nonce }));
    const headers: Record<string, string> = {
      [wireHeader]: String(wireVersion),
      [bodyHeader]: body.hash,
      authorization: formatProof({ tablet: key.tablet, timeMs, nonce, sig }),
      ...body.headers,
      ...(asked.person === undefined ? {} : { [personHeader]: asked.person }),
    };
    const limit = timeLimit(asked.timeoutMs ?? TIMEOUT_MS, asked.signal ?? options.signal);
    try {
      const bytes = body.bytes as Uint8Array<ArrayBuffer> | null; // never shared memory
      // No annotation: not every runtime's types know of a cache.
      const init = { method, headers, signal: limit.signal, cache: 'no-store' as const, body: bytes };
      return ok({ response: await world.fetch(world.origin + path, init), ...limit });
    } catch {
      limit.release();
      return fail({ code: 'unreachable', facts: {}, retryAfterMs: null });
    }
  };

  return {
    clockOffMs: () => clockOffMs,
    open: async (path, asked = {}) => {
      const sent = await exchange(path, asked);
      if (!sent.ok) return sent;
      sent.value.clear();
      return ok(sent.value.response);
    },
    call: async (path, schema, asked = {}) => {
      const sent = await exchange(path, asked);
      if (!sent.ok) return sent;
      const value = await readJson(sent.value.response, sent.value.signal);
      sent.value.release();
      const checked = schema.safeParse(value);
      if (!checked.success) return fail({ code: 'unreadable', facts: {}, retryAfterMs: null });
      const serverMs = (checked.data as { serverMs?: unknown }).serverMs; // answers carry the server's clock
      if (typeof serverMs === 'number') {
        clockOffMs = serverMs - world.nowMs();
        world.sawServer?.(serverMs);
      }
      return ok(checked.data);
    },
  };
}

interface Exchange {
  readonly response: Response;
  /** Aborted by the time limit and by whoever ends the call. */
  readonly signal: AbortSignal;
  /** Ends the time limit only: the answer is a stream that may last, and that the outer signal must still end. */
  readonly clear: () => void;
  /** The answer was read: neither time nor signal matter any more. */
  readonly release: () => void;
}

/** A time limit that a live stream can outlive: it is cleared when the headers are there. */
function timeLimit(ms: number, outer: AbortSignal | undefined) {
  const controller = new AbortController();
  const abort = () => controller.abort();
  const timer = setTimeout(abort, ms);
  if (outer?.aborted) abort();
  outer?.addEventListener('abort', abort);
  const clear = () => clearTimeout(timer);
  return {
    signal: controller.signal,
    clear,
    release: () => {
      clear();
      outer?.removeEventListener('abort', abort);
    },
  };
}

/**
 * Undefined where it is cut off or not JSON: no schema accepts it. The signal is asked beside the body, because a runtime may leave
 * a body that is aborted between its headers and its first byte unsettled for ever (seen with undici 6.24 in Node 20).
 */
async function readJson(response: Response, signal: AbortSignal): Promise<unknown> {
  if (signal.aborted) return undefined;
  let end = () => {};
  const aborted = new Promise<undefined>((resolve) => {
    end = () => resolve(undefined);
  });
  signal.addEventListener('abort', end);
  const value = await Promise.race([response.json().catch(() => undefined), aborted]);
  signal.removeEventListener('abort', end);
  return value;
}

async function readFailure(
  response: Response,
  signal: AbortSignal,
): Promise<CallFailure & { readonly serverMs: number | null }> {
  const refusal = refusalSchema.safeParse(await readJson(response, signal));
  const again = retryAfterMs(response.headers.get('retry-after'));
  if (!refusal.success) {
    // Something in between says that the server is not there.
    const away = response.status >= 502 && response.status <= 504;
    return {
      code: away ? 'unreachable' : 'unreadable',
      facts: { status: response.status },
      retryAfterMs: again,
      serverMs: null,
    };
  }
  const { code, facts, serverMs } = refusal.data;
  return { code, facts: facts ?? {}, retryAfterMs: again, serverMs: serverMs ?? null };
}
