// A place in the log that a request names.

import type { FastifyRequest } from 'fastify';
import { type Cursor, parseCursor } from '../../../shared/wire/cursor.ts';
import type { ServerContext } from '../context.ts';
import { Refused } from './refuse.ts';

/** Reads `after` and makes sure that it names a place in this very log. */
export async function readPlace(request: FastifyRequest, context: ServerContext): Promise<Cursor> {
  const after = (request.query as Record<string, unknown>)['after'];
  const cursor = typeof after === 'string' ? parseCursor(after) : null;
  if (!cursor) throw new Refused('bad-query', 'after: expected a cursor, e.g. 0.0000000000000000');
  const root = await context.store.rootAt(cursor.pos);
  if (root === null || root.slice(0, 16) !== cursor.root) {
    throw new Refused(
      'epoch-changed',
      'this log does not hold that place: begin anew, and offer what you hold',
      {
        serverEpoch: context.serverEpoch,
      },
    );
  }
  return { pos: cursor.pos, root };
}
