// What the server counts, on a port of its own: for this computer alone it needs no key, as nothing else passes there.

import { createServer, type Server } from 'node:http';
import type { Registry } from 'prom-client';

/** Makes it; the caller listens, on this computer's inner address. */
export function createMetricsServer(registry: Registry, onFault: (error: Error) => void): Server {
  return createServer({ headersTimeout: 10_000, requestTimeout: 10_000 }, (request, response) => {
    const path = (request.url ?? '').split('?', 1)[0];
    if (path !== '/metrics' || request.method !== 'GET') {
      response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('see /metrics\n');
      return;
    }
    registry.metrics().then(
      (text) => {
        response.writeHead(200, { 'content-type': registry.contentType, 'cache-control': 'no-store' });
        response.end(text);
      },
      (error: Error) => {
        onFault(error);
        response.writeHead(500).end();
      },
    );
  });
}
