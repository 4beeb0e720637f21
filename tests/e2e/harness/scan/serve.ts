// Builds the scan harness once and serves it under the strict content policy that the app is served under.

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { preact } from '@preact/preset-vite';
import { build } from 'vite';

const STRICT = "default-src 'self'; object-src 'none'; base-uri 'none'; frame-ancestors 'none'";
export const POLICY = `${STRICT}; script-src 'self' 'wasm-unsafe-eval'`;
/** As above, with WebAssembly barred. */
export const POLICY_WITHOUT_WASM = `${STRICT}; script-src 'self'`;

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.wasm': 'application/wasm',
};

export interface HarnessServer {
  readonly url: string;
  /** Paths that were asked for, in order. */
  readonly asked: string[];
  setPolicy(policy: string): void;
  close(): void;
}

export async function serveHarness(): Promise<HarnessServer> {
  const outDir = mkdtempSync(path.join(os.tmpdir(), 'reelward-scan-'));
  await build({
    configFile: false,
    root: path.dirname(fileURLToPath(import.meta.url)),
    logLevel: 'error',
    build: { outDir, emptyOutDir: true, target: 'es2022' },
    worker: { format: 'es' },
    plugins: [preact()],
  });
  const asked: string[] = [];
  let policy = POLICY;
  const server = createServer((request, response) => {
    const name = new URL(request.url ?? '/', 'http://here').pathname;
    asked.push(name);
    const file = path.join(outDir, name === '/' ? 'index.html' : path.normalize(name));
    try {
      const body = readFileSync(file);
      response.writeHead(200, {
        'content-type': TYPES[path.extname(file)] ?? 'application/octet-stream',
        'content-security-policy': policy,
      });
      response.end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo; // a TCP server's address is never a string
  return {
    url: `http://127.0.0.1:${port}/`,
    asked,
    setPolicy(next) {
      policy = next;
    },
    close() {
      server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
}
