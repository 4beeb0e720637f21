// The real server with the demo plant, as `npm start` serves it, on a port of its own.

import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import path from 'node:path';

/** A running demo. */
export interface RunningDemo {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

const root = path.resolve(import.meta.dirname, '../../..');
/** Where the build lies: `app` and `cli` in it. */
export const dist = path.resolve(process.env['REELWARD_DIST'] ?? path.join(root, 'dist'));

/** The environment of a process that is no part of the test run: the command line runs only where no test imports it. */
export function outside(): NodeJS.ProcessEnv {
  const { VITEST: _, ...rest } = process.env;
  return rest;
}

export async function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

/** Starts `reelward demo` from the build and waits until it answers. */
export async function startDemo(args: readonly string[] = [], port?: number): Promise<RunningDemo> {
  const wanted = port ?? (await freePort());
  const child = spawn(
    process.execPath,
    [path.join(dist, 'cli/reelward.js'), 'demo', '--port', String(wanted), ...args],
    { cwd: root, stdio: ['ignore', 'ignore', 'pipe'], env: outside() },
  );
  const url = `http://127.0.0.1:${wanted}/`;
  let told = '';
  child.stderr?.on('data', (chunk) => {
    told += String(chunk);
  });
  for (let tries = 0; tries < 200; tries++) {
    if (child.exitCode !== null) throw new Error(`The demo did not start: ${told}`);
    const answers = await fetch(url).then(
      (response) => response.ok,
      () => false, // not listening yet
    );
    if (answers) return { url, stop: () => end(child) };
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`The demo does not answer: ${told}`);
}

async function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  const over = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await over;
}
