// Messages that reach a lead while the app is closed: who gets them, and what there is to tell.

import type { FastifyInstance } from 'fastify';
import { isZone } from '../../../shared/kit/zone.ts';
import {
  type PushInfo,
  pushQuietSchema,
  pushSubscribeSchema,
  pushTellSchema,
} from '../../../shared/wire/messages-push.ts';
import type { ServerContext } from '../context.ts';
import { readAs } from './body.ts';
import { checkWire, requireRole, requireTablet } from './proof.ts';
import { perTablet } from './rates.ts';
import { Refused } from './refuse.ts';

/** Requests of one tablet in a minute that let the server send something to an address that the tablet names. */
const SUBSCRIBE_TRIES = 6;
const TELL_TRIES = 30;

/** Adds the routes. */
export function addPushRoutes(app: FastifyInstance, context: ServerContext): void {
  const { push, store } = context;
  app.get('/api/push', async (request): Promise<PushInfo> => {
    checkWire(request);
    const { tablet } = await requireTablet(request, context);
    return { key: push.key, reaches: push.reaches(), on: await push.isOn(tablet) };
  });
  app.post('/api/push/subscribe', perTablet(SUBSCRIBE_TRIES), async (request) => {
    checkWire(request);
    const tablet = await requireTablet(request, context);
    const { person } = await requireRole(request, tablet, { roles: ['lead', 'engineer'], context });
    const wish = readAs(pushSubscribeSchema, request.body);
    checkZone(wish.zone);
    const end = await push.subscribe(tablet.tablet, person, wish);
    if (end === 'bad-key') throw new Refused('bad-body', 'publicKey: expected a point of P-256');
    request.log.warn({ act: 'push', tablet: tablet.tablet, person, end }, 'messages asked for');
    return end === 'sent' ? { kept: true, why: null } : { kept: false, why: end };
  });
  app.post('/api/push/quiet', async (request) => {
    checkWire(request);
    const { tablet } = await requireTablet(request, context);
    const { zone, quiet } = readAs(pushQuietSchema, request.body);
    checkZone(zone);
    await store.quietPush(tablet, zone, quiet);
    return { kept: true };
  });
  app.post('/api/push/forget', async (request) => {
    checkWire(request);
    const { tablet } = await requireTablet(request, context);
    await store.forgetPush(tablet);
    return { forgotten: true };
  });
  app.post('/api/push/tell', perTablet(TELL_TRIES), async (request) => {
    checkWire(request);
    const { tablet } = await requireTablet(request, context);
    const { notices } = readAs(pushTellSchema, request.body);
    return push.tell(tablet, notices);
  });
}

/** Refuses a zone that this server's own list does not have: nobody could say what time it is there. */
function checkZone(zone: string): void {
  if (!isZone(zone)) throw new Refused('bad-body', `zone: ${zone} is none that is known here`);
}
