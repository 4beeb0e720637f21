// The real server with the demo plant, as `npm start` serves it, on a port of its own.

import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { aheadMs } from './clock.ts';

/** A running demo. */
export interface RunningDemo {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

const root = path.resolve(import.meta.dirname, '../../..');
/** Where the build lies: `app` and `cli` in it. */
export const dist = path.resolve(process.env['REELWARD_DIST'] ?? path.join(root, 'dist'));

const aheadModule = pathToFileURL(path.join(import.meta.dirname, 'ahead.mjs')).href;

/**
 * The environment of a process that is no part of the test run: the command line runs only where no test imports it. Its clock is
 * as far ahead as that of the tests.
 */
export function outside(): NodeJS.ProcessEnv {
  const { VITEST: _, ...rest } = process.env;
  if (aheadMs === 0) return rest;
  return { ...rest, NODE_OPTIONS: `${rest['NODE_OPTIONS'] ?? ''} --import ${aheadModule}`.trim() };
}

/** Waits until a process has told something on its error output; what it has told until then. Rejects where it ends before. */
export function untilTold(child: ChildProcess, wanted: RegExp): Promise<string> {
  return new Promise((resolve, reject) => {
    let told = '';
    child.stderr?.on('data', (chunk) => {
      told += String(chunk);
      if (wanted.test(told)) resolve(told);
    });
    child.once('error', reject);
    child.once('exit', () => reject(new Error(`It ended before it said ${wanted}: ${told}`)));
  });
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

/** Starts `reelward demo` from the build and waits until it says where it serves. */
export async function startDemo(args: readonly string[] = [], port?: number): Promise<RunningDemo> {
  const wanted = port ?? (await freePort());
  const child = spawn(
    process.execPath,
    [path.join(dist, 'cli/reelward.js'), 'demo', '--port', String(wanted), ...args],
    { cwd: root, stdio: ['ignore', 'ignore', 'pipe'], env: outside() },
  );
  await untilTold(child, /^Ctrl-C ends it/m);
  return { url: `http://127.0.0.1:${wanted}/`, stop: () => end(child) };
}

async function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  const over = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await over;
}
