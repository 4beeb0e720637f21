// Two builds of the app behind one address, as a plant has them on the day of an update: the folder that is served can be
// changed while pages are open. What the demo answers itself is passed on to a running demo.

import { spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import path from 'node:path';
import { freePort, outside } from './demo.ts';

const root = path.resolve(import.meta.dirname, '../../..');

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

/** Builds the app under another version into a folder. */
export async function buildVersion(version: string, folder: string): Promise<void> {
  const child = spawn(process.execPath, [path.join(root, 'node_modules/vite/bin/vite.js'), 'build'], {
    cwd: root,
    env: { ...outside(), NODE_ENV: 'production', REELWARD_VERSION: version, REELWARD_APP_OUT: folder },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let told = '';
  child.stderr.on('data', (chunk) => {
    told += String(chunk);
  });
  const code = await new Promise((resolve) => child.once('exit', resolve));
  if (code !== 0) throw new Error(`Cannot build version ${version}: ${told}`);
}

/** A server whose folder can be changed. */
export interface VersionServer {
  readonly url: string;
  readonly serve: (folder: string) => void;
  readonly stop: () => Promise<void>;
}

/** Serves a build. With `demoUrl` it carries the demo's mark, and `/demo/` is answered by that demo; null = the app as a plant gets it. */
export async function serveVersions(first: string, demoUrl: string | null): Promise<VersionServer> {
  let folder = first;
  const port = await freePort();
  const server = createServer(async (request, reply) => {
    const { pathname } = new URL(request.url ?? '/', 'http://127.0.0.1');
    if (demoUrl !== null && pathname.startsWith('/demo/')) {
      const answer = await fetch(new URL(pathname, demoUrl));
      reply.writeHead(answer.status, { 'content-type': answer.headers.get('content-type') ?? '' });
      reply.end(Buffer.from(await answer.arrayBuffer()));
      return;
    }
    const name = pathname === '/' ? 'index.html' : pathname.slice(1);
    try {
      const content = await readFile(path.join(folder, name));
      const marked = name === 'index.html' && demoUrl !== null;
      reply.writeHead(200, {
        'content-type': types[path.extname(name)] ?? 'application/octet-stream',
        'cache-control': name.startsWith('assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      });
      reply.end(
        marked
          ? String(content).replace('</head>', '<meta name="reelward-demo" content="plant" /></head>')
          : content,
      );
    } catch {
      reply.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${port}/`,
    serve: (next) => {
      folder = next;
    },
    stop: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
