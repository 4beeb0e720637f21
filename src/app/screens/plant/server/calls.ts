// A lead's calls to the server, each with the proof of the person. A tablet that lost its key or was never joined gets the
// answer that it would get from the server.

import type * as z from 'zod/mini';
import { fail, ok, type Result } from '../../../../../shared/kit/result.ts';
import {
  type CodeMade,
  codeMadeSchema,
  type Tablets,
  tabletsSchema,
} from '../../../../../shared/wire/messages.ts';
import type { Connection } from '../../../sync/connection.ts';
import type { CallFailure, CallOptions } from '../../../sync/http.ts';

const notJoined: CallFailure = { code: 'tablet-unknown', facts: {}, retryAfterMs: null };

async function call<S extends z.ZodMiniType>(
  connection: Connection,
  path: string,
  ask: CallOptions & { readonly schema: S },
): Promise<Result<z.output<S>, CallFailure>> {
  const caller = await connection.caller();
  return caller ? caller.call(path, ask.schema, ask) : fail(notJoined);
}

/** A one-time code for a new tablet, or for a wall screen. */
export function makeCode(
  connection: Connection,
  person: string,
  use: { readonly screen: boolean },
): Promise<Result<CodeMade, CallFailure>> {
  return call(connection, '/api/codes', { schema: codeMadeSchema, method: 'POST', json: use, person });
}

/** Every tablet that ever joined: those seen last come first, those shut out last. */
export async function listTablets(
  connection: Connection,
  person: string,
): Promise<Result<Tablets['tablets'], CallFailure>> {
  const listed = await call(connection, '/api/tablets', { schema: tabletsSchema, person });
  if (!listed.ok) return listed;
  const shown = [...listed.value.tablets].sort(
    (a, b) =>
      Number(a.revokedMs !== null) - Number(b.revokedMs !== null) || (b.seenMs ?? 0) - (a.seenMs ?? 0),
  );
  return ok(shown);
}

/** Shuts a tablet out. */
export async function revokeTablet(
  connection: Connection,
  person: string,
  tablet: string,
): Promise<Result<null, CallFailure>> {
  const caller = await connection.caller();
  if (!caller) return fail(notJoined);
  const done = await caller.open('/api/tablets/revoke', { json: { tablet }, person });
  return done.ok ? ok(null) : done;
}
