// The built app: hashed files for ever, the page and the service worker never from a cache, any other path is the page.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { Refused, toRefusal } from './refuse.ts';

/** Files under this folder carry a hash of their content in their name. */
const HASHED = /\/assets\//;

/** Paths that are never the page. */
const NOT_PAGE = /^\/(api|ca|export|health|metrics)(\/|$)/;

/** Serves the app from `root`. */
export async function addStaticRoutes(
  app: FastifyInstance,
  root: string,
  nowMs: () => number,
): Promise<void> {
  const built = existsSync(join(root, 'index.html'));
  if (built) {
    await app.register(fastifyStatic, {
      root,
      wildcard: true,
      index: ['index.html'],
      dotfiles: 'ignore',
      cacheControl: false,
      setHeaders: (reply, path) => {
        reply.header(
          'cache-control',
          HASHED.test(path.replaceAll('\\', '/')) ? 'public, max-age=31536000, immutable' : 'no-cache',
        );
      },
    });
  }
  app.setNotFoundHandler((request: FastifyRequest, reply: FastifyReply) => {
    const path = (request.raw.url ?? '').split('?', 1)[0] ?? '';
    const page = (request.method === 'GET' || request.method === 'HEAD') && !NOT_PAGE.test(path);
    // A missing file is missing: handing out the page instead would be cached under the file's name.
    if (!page || /\.[a-z0-9]{1,12}$/i.test(path)) {
      return reply.code(404).send(toRefusal(new Refused('not-found', 'nothing is here'), nowMs()));
    }
    if (!built) {
      return reply
        .code(503)
        .type('text/plain; charset=utf-8')
        .send('The app is not built here yet: run "npm run build" and start the server again.\n');
    }
    return reply.header('cache-control', 'no-cache').sendFile('index.html');
  });
}
