// etcd, two PostgreSQL under Patroni and HAProxy on this computer, by the settings that an administrator is given (`src/server/deploy/cluster`)
// with addresses of this computer put in. All of it is Debian's; what is missing is installed where that may be done.

import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { freePort } from '../contract/databases.ts';
import { type CutOff, newCutOff } from './cut-off.ts';

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** What has to be there, and the package that brings it. */
const programs = [
  ['/usr/bin/etcd', 'etcd-server'],
  ['/usr/bin/patroni', 'patroni'],
  ['/usr/sbin/haproxy', 'haproxy'],
  ['/usr/lib/postgresql/15/bin/postgres', 'postgresql-15'],
  ['/usr/lib/python3/dist-packages/etcd/__init__.py', 'python3-etcd'],
] as const;

/** Installs what is missing; throws where it may not. */
export function installCluster(): void {
  const missing = programs.filter(([file]) => !existsSync(file)).map(([, name]) => name);
  if (missing.length === 0) return;
  if (process.getuid?.() !== 0)
    throw new Error(`install these first (Debian: apt-get install ${missing.join(' ')})`);
  execFileSync('apt-get', ['update', '-qq'], { stdio: 'inherit' });
  execFileSync('apt-get', ['install', '-y', '--no-install-recommends', ...missing], { stdio: 'inherit' });
}

/** One PostgreSQL under Patroni. */
export interface ClusterNode {
  readonly name: string;
  readonly address: string;
  readonly port: number;
  /** Cuts it off from everything else, and joins it again; null where that cannot be done. */
  readonly network: Pick<CutOff, 'cut' | 'join'> | null;
  /** Kills Patroni and PostgreSQL without a warning. */
  readonly kill: () => Promise<void>;
  readonly start: () => void;
  /** Stops all of its processes in mid-act, and lets them go on. */
  readonly pause: () => void;
  readonly resume: () => void;
  readonly role: () => Promise<string | null>;
  /** What Patroni calls it in the cluster, e.g. `sync_standby`. */
  readonly isSync: () => Promise<boolean>;
}

/** The cluster. */
export interface Cluster {
  readonly nodes: readonly ClusterNode[];
  /** The address of a database on all hosts, or on one node. */
  readonly url: (database: string, node?: ClusterNode) => string;
  readonly stop: () => Promise<void>;
}

const deploy = new URL('../../../src/server/deploy/cluster/', import.meta.url);

/** Whoever PostgreSQL runs as: it refuses root. */
export function postgresUser(): { readonly uid?: number; readonly gid?: number } {
  if (process.getuid?.() !== 0) return {};
  const id = (flag: string) => Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

/** Starts etcd and both nodes; resolves when one is the primary and the other its synchronous copy. */
export async function startCluster(folder: string): Promise<Cluster> {
  const user = postgresUser();
  mkdirSync(folder, { recursive: true });
  chmodSync(folder, 0o777);
  const [client, peer] = [await freePort(), await freePort()];
  // The second node has a network of its own where that can be made.
  const cutOff = newCutOff();
  const host = cutOff?.outside ?? '127.0.0.1';
  const etcd = run('/usr/bin/etcd', etcdArguments(folder, `${host}:${client}`, `${host}:${peer}`), {
    folder,
    name: 'etcd',
    user: {},
  });
  const common = { folder, user, etcd: `${host}:${client}` };
  const nodes = [
    await newNode({ ...common, name: 'db1', address: host, network: null }),
    await newNode({ ...common, name: 'db2', address: cutOff?.inside ?? host, network: cutOff }),
  ];
  const isWhole = async () => {
    const roles = await Promise.all(nodes.map((node) => node.role()));
    const syncs = await Promise.all(nodes.map((node) => node.isSync()));
    return roles.some(isPrimary) && syncs.some(Boolean);
  };
  await waitFor('a primary and its synchronous copy', isWhole, 120_000);
  return {
    nodes,
    url: (database, node) => {
      const hosts = (node ? [node] : nodes).map(({ address, port }) => `${address}:${port}`).join(',');
      return `postgres://postgres:CHANGE-ME-1@${hosts}/${database}${node ? '' : '?target_session_attrs=read-write'}`;
    },
    stop: async () => {
      for (const node of nodes) await node.kill();
      etcd.kill('SIGKILL');
      cutOff?.remove();
    },
  };
}

export function isPrimary(role: string | null): boolean {
  return role === 'master' || role === 'primary';
}

/** Waits until something holds; the time it took, ms. */
export async function waitFor(
  what: string,
  holds: () => boolean | Promise<boolean>,
  limitMs: number,
): Promise<number> {
  const fromMs = performance.now();
  while (!(await holds())) {
    if (performance.now() - fromMs > limitMs) throw new Error(`waited in vain for ${what}`);
    await pause(50);
  }
  return performance.now() - fromMs;
}

function etcdArguments(folder: string, client: string, peer: string): readonly string[] {
  const [at, to] = [`http://${client}`, `http://${peer}`];
  const own = ['--listen-client-urls', at, '--advertise-client-urls', at, '--listen-peer-urls', to];
  const cluster = ['--initial-advertise-peer-urls', to, '--initial-cluster', `default=${to}`];
  return ['--data-dir', join(folder, 'etcd'), ...own, ...cluster];
}

function run(
  program: string,
  args: readonly string[],
  how: {
    readonly folder: string;
    readonly name: string;
    readonly user: { readonly uid?: number; readonly gid?: number };
  },
): ChildProcess {
  const log = openSync(join(how.folder, `${how.name}.log`), 'a');
  return spawn(program, [...args], {
    cwd: how.folder,
    stdio: ['ignore', log, log],
    env: { ...process.env, HOME: how.folder },
    ...how.user,
  });
}

async function newNode({
  name,
  folder,
  user,
  etcd,
  address,
  network,
}: {
  readonly name: string;
  readonly folder: string;
  readonly user: { readonly uid?: number; readonly gid?: number };
  readonly etcd: string;
  readonly address: string;
  readonly network: CutOff | null;
}): Promise<ClusterNode> {
  const [port, rest] = [await freePort(), await freePort()];
  const data = join(folder, `${name}-data`);
  const file = join(folder, `${name}.yml`);
  const settings = readFileSync(new URL('patroni.yml', deploy), 'utf8')
    .replaceAll('db1', name)
    .replaceAll('10.0.0.11:8008', `${address}:${rest}`)
    .replaceAll('10.0.0.11:2379,10.0.0.12:2379,10.0.0.13:2379', etcd)
    .replaceAll('10.0.0.11:5432', `${address}:${port}`)
    .replaceAll('10.0.0.0/24', address.replace(/\d+$/, '0/24'))
    .replaceAll('/var/lib/postgresql/brae', data)
    // Its socket: the system's folder for sockets belongs to the system's own database.
    .concat(`  parameters:\n    unix_socket_directories: ${folder}\n`);
  writeFileSync(file, settings);
  let patroni: ChildProcess | null = null;
  const start = () => {
    const [program = '', ...args] = network
      ? [
          ...network.enter,
          'setpriv',
          `--reuid=${user.uid}`,
          `--regid=${user.gid}`,
          '--clear-groups',
          '/usr/bin/patroni',
          file,
        ]
      : ['/usr/bin/patroni', file];
    patroni = run(program, args, { folder, name, user: network ? {} : user });
  };
  const postmaster = () => {
    const pid = join(data, 'postmaster.pid');
    return existsSync(pid) ? Number(readFileSync(pid, 'utf8').split('\n')[0]) : null;
  };
  const signal = (sign: NodeJS.Signals) => {
    const parent = postmaster();
    for (const pid of [patroni?.pid ?? null, parent, ...(parent ? childrenOf(parent) : [])])
      if (pid) send(pid, sign);
  };
  const ask = async (): Promise<Readonly<Record<string, unknown>> | null> => {
    try {
      const answer = await fetch(`http://${address}:${rest}/patroni`, { signal: AbortSignal.timeout(1_000) });
      return (await answer.json()) as Readonly<Record<string, unknown>>;
    } catch {
      return null;
    }
  };
  start();
  return {
    name,
    address,
    port,
    network,
    start,
    kill: async () => {
      const ended = new Promise<void>((resolve) => {
        if (!patroni || patroni.exitCode !== null || patroni.signalCode !== null) resolve();
        else patroni.once('exit', () => resolve());
      });
      signal('SIGKILL');
      await ended;
    },
    pause: () => signal('SIGSTOP'),
    resume: () => signal('SIGCONT'),
    role: async () => {
      const told = await ask();
      return told?.['state'] === 'running' ? String(told['role']) : null;
    },
    isSync: async () => (await ask())?.['sync_standby'] === true,
  };
}

function childrenOf(pid: number): readonly number[] {
  const { stdout } = spawnSync('ps', ['--ppid', String(pid), '-o', 'pid='], { encoding: 'utf8' });
  return stdout.split('\n').map(Number).filter(Boolean);
}

function send(pid: number, sign: NodeJS.Signals): void {
  try {
    process.kill(pid, sign);
  } catch {
    // It is gone already.
  }
}

/** HAProxy before the servers, which asks each at `check` whether it serves; resolves with where it listens. */
export async function startProxy(
  folder: string,
  servers: readonly number[],
  check = '/ready',
): Promise<{ readonly port: number; readonly kill: () => void; readonly start: () => void }> {
  const port = await freePort();
  const file = join(folder, 'haproxy.cfg');
  const settings = readFileSync(new URL('haproxy.cfg', deploy), 'utf8')
    .replace('GET /ready', `GET ${check}`)
    .replace('bind :443 ssl crt /etc/haproxy/brae.pem', `bind 127.0.0.1:${port}`)
    .replace(/10\.0\.0\.2(\d):8080/g, (_, at) => `127.0.0.1:${servers[Number(at) - 1]}`);
  writeFileSync(file, settings);
  execFileSync('/usr/sbin/haproxy', ['-c', '-f', file], { stdio: 'ignore' });
  const start = () => run('/usr/sbin/haproxy', ['-db', '-f', file], { folder, name: 'haproxy', user: {} });
  let child = start();
  return {
    port,
    kill: () => void child.kill('SIGKILL'),
    start: () => {
      child = start();
    },
  };
}
