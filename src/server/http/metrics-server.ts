// What the server counts, on a port of its own: for this computer alone it needs no key, as nothing else passes there.

import { createServer, type Server } from 'node:http';
import type { Metrics } from '../metrics.ts';

/** Makes it; the caller listens, on this computer's inner address. */
export function createMetricsServer(
  { registry, tablets }: Pick<Metrics, 'registry' | 'tablets'>,
  onFault: (error: Error) => void,
): Server {
  return createServer({ headersTimeout: 10_000, requestTimeout: 10_000 }, (request, response) => {
    const path = (request.url ?? '').split('?', 1)[0];
    if (path !== '/metrics' || request.method !== 'GET') {
      response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('see /metrics\n');
      return;
    }
    Promise.all([registry.metrics(), tablets.metrics()]).then(
      (texts) => {
        response.writeHead(200, { 'content-type': registry.contentType, 'cache-control': 'no-store' });
        response.end(texts.join(''));
      },
      (error: Error) => {
        onFault(error);
        response.writeHead(500).end();
      },
    );
  });
}
