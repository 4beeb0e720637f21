// `reelward serve` on a data folder of its own: started, killed without warning, started again on what it left behind.

import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { dist, freePort, outside, untilTold } from './demo.ts';

/** A plant's server. */
export interface PlantServer {
  readonly url: string;
  readonly folder: string;
  /** The code that the server told at its first start. */
  readonly firstCode: string;
  /** A fresh one-time code, made in the terminal: for a tablet, or for a wall screen. */
  readonly newCode: (what?: 'tablet' | 'screen') => Promise<string>;
  /** Runs an act of the command line on the server's store; fails where it fails. */
  readonly act: (...args: readonly string[]) => Promise<string>;
  /** Ends it as a power cut does. */
  readonly kill: () => Promise<void>;
  /** Starts it again on the same folder and port. */
  readonly start: () => Promise<void>;
  /** Stops it and takes its folder away. */
  readonly stop: () => Promise<void>;
}

const cli = path.join(dist, 'cli/reelward.js');

/** Starts a server with nothing in it. `options`: more of its command line. */
export async function startServe(options: readonly string[] = []): Promise<PlantServer> {
  const folder = await mkdtemp(path.join(tmpdir(), 'reelward-serve-'));
  const port = await freePort();
  const data = path.join(folder, 'data');
  let child: ChildProcess | null = null;
  const start = async (isFirst: boolean) => {
    const args = ['serve', '--port', String(port), '--data', data, '--plant', 'Brae Works', ...options];
    const started = await launch(args, isFirst);
    child = started.child;
    return started.told;
  };
  const end = async (signal: NodeJS.Signals) => {
    if (!child || child.exitCode !== null) return;
    const over = new Promise((resolve) => child?.once('exit', resolve));
    child.kill(signal);
    await over;
    child = null;
  };
  const act = (...args: readonly string[]) => call(['serve', ...args, '--data', data]);
  const told = await start(true);
  return {
    url: `http://127.0.0.1:${port}/`,
    folder,
    firstCode: codeIn(told),
    newCode: async (what) => codeIn(await act('enrol', ...(what === 'screen' ? ['--screen'] : []))),
    act,
    kill: () => end('SIGKILL'),
    start: async () => void (await start(false)),
    stop: async () => {
      await end('SIGTERM');
      await rm(folder, { recursive: true, force: true });
    },
  };
}

function codeIn(text: string): string {
  const code = /\b[0-9A-Z]{5}-[0-9A-Z]{5}\b/.exec(text)?.[0];
  if (!code) throw new Error(`Cannot join as a code must be told: current value is ${text || 'nothing'}`);
  return code;
}

/** Starts a command that serves until it is ended, and waits for the address and the greeting that follows where nobody is enrolled. */
async function launch(
  args: readonly string[],
  isFirst: boolean,
): Promise<{ child: ChildProcess; told: string }> {
  const child = spawn(process.execPath, [cli, ...args], {
    stdio: ['ignore', 'ignore', 'pipe'],
    env: outside(),
  });
  return { child, told: await untilTold(child, isFirst ? /Later codes:/ : /serves at/) };
}

function call(args: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [cli, ...args], { env: outside() });
    let told = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => (told += String(chunk)));
    child.on('close', (code) =>
      code === 0 ? resolve(told) : reject(new Error(`${args.join(' ')} ended with ${code}: ${told}`)),
    );
  });
}
