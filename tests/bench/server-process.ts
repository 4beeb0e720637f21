// The server in a process of its own for benches: the same bundle started again in another role.

import { type ChildProcess, fork } from 'node:child_process';
import { startServer } from '../../src/server/main.ts';
import { keepTraceAsChild } from '../../src/server/trace/child.ts';
import { traceRole } from '../../src/server/trace/protocol.ts';
import { settingsFor } from '../src/server/tablets.ts';

/** What the child is told on start. */
interface ServerOptions {
  readonly folder: string;
  readonly database: string | null;
  readonly port: number;
  /** The built page; null where none is wanted. */
  readonly appRoot: string | null;
}

/** A server in another process. */
export interface ServerProcess {
  readonly port: number;
  readonly url: string;
  readonly child: ChildProcess;
  /** Asks for a one-time code. */
  readonly code: () => Promise<string>;
  /** Most memory used so far, bytes. */
  readonly peakBytes: () => Promise<number>;
  /** Processor time used so far, seconds. */
  readonly cpuSeconds: () => Promise<number>;
  /** Resolves when all signatures that wait were checked. */
  readonly allSigned: () => Promise<void>;
  readonly stop: () => Promise<void>;
  readonly kill: () => Promise<void>;
}

const ROLE = 'server-process';

/** True in the child: then the bundle only serves. Call before anything else. */
export async function isServerProcess(): Promise<boolean> {
  if (process.argv[2] === traceRole) return keepTraceAsChild();
  if (process.argv[2] !== ROLE) return false;
  const options = JSON.parse(process.argv[3] ?? '{}') as ServerOptions; // written by startServerProcess
  const { makeCode } = await import('../../src/server/codes.ts');
  const { database, port, appRoot } = options;
  const running = await startServer(
    settingsFor(options.folder, {
      database,
      port,
      traceProgram: process.argv[1] ?? '',
      ...(appRoot === null ? {} : { appRoot }),
    }),
  );
  process.on('message', async (ask) => {
    if (ask === 'code') process.send?.({ code: (await makeCode(running.store, Date.now())).code });
    // maxRSS is in kilobytes.
    if (ask === 'peak') process.send?.({ peak: process.resourceUsage().maxRSS * 1024 });
    if (ask === 'cpu') process.send?.({ cpu: cpuSeconds() });
    if (ask === 'signed') {
      await running.context.signatures.drained();
      process.send?.({ signed: true });
    }
    if (ask === 'stop') {
      await running.stop();
      process.exit(0);
    }
  });
  // The bench that started it is gone: nobody would stop it.
  process.on('disconnect', () => process.exit(1));
  process.send?.({ port: running.port });
  return true;
}

/** Starts a server; `entry` is the bundle's own `import.meta.url`. */
export async function startServerProcess(
  entry: string,
  options: Partial<ServerOptions> & Pick<ServerOptions, 'folder'>,
): Promise<ServerProcess> {
  const full: ServerOptions = { database: null, port: 0, appRoot: null, ...options };
  const child = fork(new URL(entry).pathname, [ROLE, JSON.stringify(full)], {
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
  const next = (key: string) =>
    new Promise<unknown>((resolve, reject) => {
      const hear = (message: unknown) => {
        const value = (message as Record<string, unknown>)[key]; // messages are plain objects from the child
        if (value === undefined) return;
        child.off('message', hear);
        child.off('exit', gone);
        resolve(value);
      };
      const gone = () => reject(new Error('the server process ended'));
      child.on('message', hear);
      child.once('exit', gone);
    });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const port = (await next('port')) as number;
  return {
    port,
    url: `http://127.0.0.1:${port}`,
    child,
    code: () => {
      const code = next('code');
      child.send('code');
      return code as Promise<string>;
    },
    peakBytes: () => {
      const peak = next('peak');
      child.send('peak');
      return peak as Promise<number>;
    },
    cpuSeconds: () => {
      const cpu = next('cpu');
      child.send('cpu');
      return cpu as Promise<number>;
    },
    allSigned: async () => {
      const signed = next('signed');
      child.send('signed');
      await signed;
    },
    stop: async () => {
      child.send('stop');
      await ended;
    },
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}

/** Processor time that this process has used, seconds. */
export function cpuSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** The value below which a share of the samples lies. */
export function quantile(samples: readonly number[], share: number): number {
  const sorted = [...samples].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** A whole number from the environment. */
export function parameter(name: string, fallback: number): number {
  const value = Number(process.env[name] ?? fallback);
  if (!Number.isFinite(value) || value <= 0)
    throw new RangeError(`${name} must be a positive number: current value is ${process.env[name]}`);
  return value;
}

/** A payload of the size that a verdict has. */
export function verdictPayload(seq: number) {
  return {
    line: 'L1',
    slot: `M${1 + (seq % 3)}-F-${String(1 + (seq % 40)).padStart(3, '0')}`,
    feeder: `F${1000 + (seq % 120)}`,
    reel: `R${500_000 + seq}`,
    part: `P-${10_000 + (seq % 300)}`,
    supplierPart: `SP${(seq * 7919) % 1_000_000}`,
    lot: `LOT${(seq * 104_729) % 10_000_000}`,
    quantity: 5_000,
    verdict: seq % 50 === 0 ? 'refused' : 'accepted',
    reasons: seq % 50 === 0 ? [{ code: 'part-differs', wanted: 'P-1', found: 'P-2' }] : [],
  };
}
