// Pictures of labels that tablets keep as evidence: taken from the tablet that made the verdict, told to any tablet of the plant. The log
// has their hashes; here lie the bytes, for the days that the line's rule gave them.

import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { DAY_MS } from '../../../shared/kit/moment.ts';
import { pictureBytes, pictureDays } from '../../../shared/wire/limits.ts';
import type { ServerContext } from '../context.ts';
import { bodyHash } from './body.ts';
import { checkWire, requireTablet } from './proof.ts';
import { Refused } from './refuse.ts';

/** The first bytes of every JPEG (ITU-T T.81, B.1.1.3: SOI and the start of the next marker). */
const JPEG = [0xff, 0xd8, 0xff];

/** Adds the routes. */
export function addPictureRoutes(app: FastifyInstance, context: ServerContext): void {
  app.put('/api/picture', { bodyLimit: pictureBytes }, (request) => putPicture(request, context));
  app.get('/api/picture', { compress: false }, (request, reply) => getPicture(request, reply, context));
}

async function putPicture(request: FastifyRequest, context: ServerContext): Promise<{ readonly kept: true }> {
  checkWire(request);
  const { tablet } = await requireTablet(request, context);
  const of = entryAsked(request);
  // Nobody lays a picture under another tablet's verdict.
  if (!of.startsWith(`${tablet}/`)) throw new Refused('bad-query', 'of: expected an entry of this tablet');
  const days = Number((request.query as Record<string, unknown>)['days']);
  if (!Number.isInteger(days) || days < 1 || days > pictureDays)
    throw new Refused('bad-query', `days: expected a whole number from 1 to ${pictureDays}`);
  const bytes = request.body;
  if (!(bytes instanceof Uint8Array) || JPEG.some((byte, at) => bytes[at] !== byte))
    throw new Refused('bad-body', 'expected the bytes of a JPEG');
  context.quotas.spend(tablet, { bytes: bytes.length });
  const untilMs = context.nowMs() + days * DAY_MS;
  await context.store.putPicture({ sha256: bodyHash(request), of, untilMs, bytes });
  return { kept: true };
}

async function getPicture(
  request: FastifyRequest,
  reply: FastifyReply,
  context: ServerContext,
): Promise<FastifyReply> {
  checkWire(request);
  await requireTablet(request, context);
  const picture = await context.store.pictureOf(entryAsked(request));
  if (picture === null) throw new Refused('not-found', 'no picture is kept of this verdict');
  return reply
    .type('application/octet-stream')
    .header('reelward-sha256', picture.sha256)
    .send(Buffer.from(picture.bytes));
}

/** The verdict's entry that a request names. */
function entryAsked(request: FastifyRequest): string {
  const of = (request.query as Record<string, unknown>)['of'];
  if (typeof of !== 'string' || !/^[^/]{1,64}\/[^/]{1,64}\/\d{1,16}$/.test(of))
    throw new Refused('bad-query', 'of: expected the name of an entry, tablet/life/number');
  return of;
}
