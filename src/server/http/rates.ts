// Limits on how often somebody asks, counted over all servers on one database: whoever guesses would else have as many tries more as there are
// servers. A server with a data folder of its own counts in its memory.

import type {
  FastifyRateLimitStore,
  FastifyRateLimitStoreCtor,
  RateLimitPluginOptions,
} from '@fastify/rate-limit';
import type { FastifyRequest } from 'fastify';
import { hashOf } from '../keys.ts';
import type { Store } from '../stores/store.ts';
import { askerOf } from './passed.ts';

/** A route's limit: so many requests from one address in a minute. */
export const perMinute = (max: number) => ({ config: { rateLimit: { max, timeWindow: '1 minute' } } });

/**
 * So many of one tablet in a minute: by tablet and not by address, as a plant's tablets may share one. By address where the tablet is
 * not proved before its body is here: anybody could use up what is another's.
 */
export const perTablet = (max: number) => ({
  config: {
    rateLimit: {
      max,
      timeWindow: '1 minute',
      keyGenerator: (request: FastifyRequest) => askerOf(request).name,
    },
  },
});

/** What the limits are counted with; nothing where one process serves alone. */
export function sharedRates(
  store: Pick<Store, 'countRate' | 'dialect'>,
  nowMs: () => number,
): Pick<RateLimitPluginOptions, 'store'> {
  if (store.dialect === 'sqlite') return {};
  const counting = (route: string): FastifyRateLimitStore => ({
    // Hashed: what somebody may have as an address or a name is of any length.
    incr: (key, callback, windowMs = 60_000) => {
      const atMs = nowMs();
      store.countRate(`${route} ${hashOf(key)}`, atMs, windowMs).then(
        ({ count, untilMs }) => callback(null, { current: count, ttl: Math.max(0, untilMs - atMs) }),
        (error: Error) => callback(error),
      );
    },
    // The route comes under another name than the types say.
    child: (options) =>
      counting(String((options as { readonly routeInfo?: { readonly url?: string } }).routeInfo?.url)),
  });
  class SharedRates implements FastifyRateLimitStore {
    readonly incr = counting('').incr;
    readonly child = counting('').child;
  }
  return { store: SharedRates as FastifyRateLimitStoreCtor };
}
