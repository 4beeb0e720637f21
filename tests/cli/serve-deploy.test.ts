// The administrator's page is true: every command on it is run, in its order, with the built program, in a root of its own. What changes
// the computer itself (users, units, packages) is played by stand-ins that write down how they were called.

import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { expect, inject, it } from 'vitest';
import { readAddress } from '../../src/server/stores/postgres/hosts.ts';
import { openSqlite } from '../../src/server/stores/sqlite/open.ts';
import type { Step } from '../../src/server/stores/step.ts';
import { steps } from '../../src/server/stores/tables.ts';
import { freePort } from '../contract/databases.ts';
import { makeChain, toChecked } from '../contract/entries.ts';
import { useBuiltCli } from './built.ts';
import { call } from './call.ts';

const cli = useBuiltCli();
const deploy = 'src/server/deploy';
const page = readFileSync(`${deploy}/README.md`, 'utf8');
const commands = [...page.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gm)].flatMap(([, form, block]) =>
  form === '' ? (block ?? '').trim().split('\n') : [],
);

/** Everything that lies outside the page's own folder, in a root under the test's folder. */
const rooted = (text: string, root: string) =>
  text.replaceAll(/(?<![\w.])\/(opt|etc|var|usr\/local\/bin)(?![\w-])/g, (place) => root + place);

/** A stand-in for a program that would change the computer. */
function standIn(root: string, name: string, script = ''): void {
  const file = join(root, 'stand-ins', name);
  writeFileSync(file, `#!/bin/sh\necho "${name} $*" >> "${root}/called"\n${script}\n`);
  chmodSync(file, 0o755);
}

function prepare(root: string): void {
  for (const place of ['stand-ins', 'opt', 'etc/systemd/system', 'usr/local/bin', 'var/lib', 'sources'])
    mkdirSync(join(root, place), { recursive: true });
  // Packages are there already; what npm would put beside the program is linked there.
  standIn(
    root,
    'npm',
    `case "$1 $2" in 'ci --omit=dev') ln -s "${process.cwd()}/node_modules" node_modules;; esac`,
  );
  for (const name of ['useradd', 'systemctl', 'runuser']) standIn(root, name);
  // As another user it would be; here it is the one who tests.
  standIn(root, 'id', 'echo 1000');
  const real = execFileSync('sh', ['-c', 'command -v install'], { encoding: 'utf8' }).trim();
  // The owner alone is left out: there is no such user here.
  const withoutOwner = `if [ "$2" = -o ]; then first=$1; shift 3; exec ${real} "$first" "$@"; fi`;
  standIn(root, 'install', `${withoutOwner}\nexec ${real} "$@"`);
  const sources = join(root, 'sources');
  mkdirSync(join(sources, 'src', 'server'), { recursive: true });
  symlinkSync(join(inject('builtCli'), 'dist'), join(sources, 'dist'));
  for (const file of ['package.json', 'package-lock.json']) cpSync(file, join(sources, file));
  cpSync(deploy, join(sources, deploy), { recursive: true });
  for (const file of ['reelward', 'reelward-plant', 'reelward-plants']) {
    const place = join(sources, deploy, file);
    writeFileSync(place, rooted(readFileSync(place, 'utf8'), root));
  }
}

async function append(folder: string): Promise<void> {
  const store = await openSqlite({ folder, nowMs: Date.now });
  const entries = makeChain({ tablet: 't1', count: 5 }).map((entry) => toChecked(entry));
  await store.append([{ sender: 't1', entries }], Date.now());
  await store.close();
}

async function bringForward(folder: string): Promise<Awaited<ReturnType<typeof openSqlite>>> {
  const later: Step = async ({ schema }) => schema.createTable('later').addColumn('id', 'integer').execute();
  return openSqlite({ folder, nowMs: Date.now, steps: [...steps, later] });
}

it('every command on it runs, in its order, and does what it says', async () => {
  const root = cli.folder;
  prepare(root);
  const env: NodeJS.ProcessEnv = {
    ...process.env,
    PATH: `${root}/stand-ins:${root}/usr/local/bin:${process.env['PATH']}`,
  };
  delete env['VITEST'];
  const [port, trustPort, metricsPort] = [await freePort(), await freePort(), await freePort()];
  const others = new Map([
    [8444, await freePort()],
    [8081, await freePort()],
    [9101, await freePort()],
  ]);
  const plantData = join(root, 'var/lib/reelward/brae');
  const outputs: (readonly [string, string])[] = [];
  for (const command of commands) {
    const nights = join(root, 'var/backups/reelward/brae');
    const night = existsSync(nights)
      ? readdirSync(nights).find((name) => name.endsWith('.sqlite'))
      : undefined;
    const copies = join(plantData, 'backups');
    const copy = existsSync(copies) ? readdirSync(copies).find((name) => name.includes('schema')) : undefined;
    const text = rooted(command, root)
      .replace('/FILE', `/${night}`)
      .replace('/COPY', `/${copy}`)
      // The tar of a link would hold the link; of the program it holds the program.
      .replace('tar -czf', 'tar -chzf')
      .replace(
        '"metrics-port": 9100',
        `"metrics-port": ${metricsPort}, "port": ${port}, "trust-port": ${trustPort}`,
      )
      .replaceAll(/\b(8444|8081|9101)\b/g, (number) => String(others.get(Number(number))));
    // Nothing of the computer itself is named any more.
    expect(
      text
        .match(/(?<![\w.:/-])\/(?!\/)[\w./@-]+/g)
        ?.filter((path) => !path.startsWith(root) && path !== '/usr/sbin/nologin') ?? [],
    ).toEqual([]);
    const { status, stdout, stderr } = spawnSync('sh', ['-ec', text], {
      cwd: join(root, 'sources'),
      env,
      encoding: 'utf8',
    });
    expect({ command, status, told: status === 0 ? '' : stdout + stderr }).toEqual({
      command,
      status: 0,
      told: '',
    });
    outputs.push([command, stdout + stderr]);
    if (command.startsWith('reelward-plant brae enrol')) await append(plantData);
    // The other version is a newer one: it brings the store forward, after a copy.
    if (command === 'systemctl restart reelward@brae.service') await (await bringForward(plantData)).close();
    // What the unit of that name would have run.
    if (command === 'systemctl start reelward-backup@brae.service') {
      const [, run = ''] =
        /ExecStart=(.*)/.exec(readFileSync(`${deploy}/reelward-backup@.service`, 'utf8')) ?? [];
      const night = spawnSync('sh', ['-ec', rooted(run, root).replaceAll('%i', 'brae')], {
        env,
        encoding: 'utf8',
      });
      expect([night.status, night.stderr]).toEqual([0, expect.stringContaining('and read them back')]);
    }
  }
  const told = (start: string) => outputs.find(([command]) => command.startsWith(start))?.[1] ?? '';
  const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly version: string };
  expect(told('reelward --version')).toBe(`${version}\n`);
  expect(told('reelward-plant brae check')).toContain('good    store: none yet in');
  expect(told('reelward-plant brae enrol')).toContain('https://reelward.local:8443/#enrol=');
  // Both plants, told apart; nothing that they share is wrong.
  expect(told('reelward-plants')).toMatch(/^brae {2}good {4}configuration: understood$/m);
  expect(told('reelward-plants')).toMatch(/^tarn {2}WARNING server: does not run$/m);
  expect(told('reelward-plants')).not.toContain('WRONG');
  expect(told('reelward-plant tarn enrol')).toContain(`https://tarn.local:${others.get(8444)}/#enrol=`);
  expect(told('reelward-plant brae restore')).toContain('Restored 5 entries from');
  expect(readdirSync(join(root, 'etc/systemd/system')).sort()).toEqual([
    'reelward-backup@.service',
    'reelward-backup@.timer',
    'reelward@.service',
  ]);
  const called = readFileSync(join(root, 'called'), 'utf8');
  expect(called).toContain('systemctl enable --now reelward@brae.service reelward-backup@brae.timer');
  // Every unit that it names is one of those.
  for (const [, unit = ''] of called.matchAll(/(reelward[a-z-]*@)brae\.(?:service|timer)/g))
    expect(['reelward@', 'reelward-backup@']).toContain(unit);
});

it('every setting on it is understood', async () => {
  const settings = [...page.matchAll(/\{"[^`']*?\}/g)].map(([text]) => text);
  expect(settings.length).toBe(3);
  for (const text of settings) {
    const file = join(cli.folder, 'plant.json');
    writeFileSync(
      file,
      JSON.stringify({ ...(JSON.parse(text) as object), port: await freePort(), 'trust-port': undefined }),
    );
    const answer = await call(['serve', 'check', '--config', file, '--data', cli.folder]);
    expect([answer.out.split('\n')[0], answer.err]).toEqual(['good    configuration: understood', '']);
  }
});

it('the settings of servers that share a cluster are understood, and the configuration of Patroni and HAProxy names their addresses', async () => {
  const file = join(cli.folder, 'server.json');
  cpSync(`${deploy}/cluster/server.json`, file);
  const answer = await call([
    'serve',
    'check',
    '--config',
    file,
    '--data',
    cli.folder,
    '--database',
    'postgres://u@127.0.0.1:9,127.0.0.1:11/brae?target_session_attrs=read-write',
  ]);
  expect(answer.out.split('\n').slice(0, 2)).toEqual([
    'good    configuration: understood',
    'WRONG   store: --database: nobody answers at 127.0.0.1:9,127.0.0.1:11/brae; is PostgreSQL started, and the address right?',
  ]);
  const { database } = JSON.parse(readFileSync(file, 'utf8')) as { readonly database: string };
  const { urls } = readAddress(database);
  expect(urls).toEqual(['10.0.0.11', '10.0.0.12'].map((host) => `postgres://reelward@${host}:5432/brae`));
  const patroni = readFileSync(`${deploy}/cluster/patroni.yml`, 'utf8');
  expect(patroni).toContain('listen: 10.0.0.11:5432');
  const proxy = readFileSync(`${deploy}/cluster/haproxy.cfg`, 'utf8');
  expect(proxy).toContain('httpchk GET /ready');
});

it('the way back from a newer program keeps the plant’s key and who was shut out', async () => {
  const data = join(cli.folder, 'data');
  const place = ['--data', data];
  await append(data);
  const store = await openSqlite({ folder: data, nowMs: Date.now });
  await store.enrolTablet({ tablet: 't1', name: 'Line 1', publicKey: 'k' }, Date.now());
  await store.close();
  const key = (await call(['serve', 'keys', ...place])).err;
  // The newer program brings it forward, after a copy, and then a tablet is shut out.
  const newer = await bringForward(data);
  await newer.revokeTablet('t1', Date.now());
  await newer.close();
  const [copy = ''] = readdirSync(join(data, 'backups'));
  expect((await call(['serve', 'tablets', ...place])).err).toContain(
    'start the newer program, or restore a backup',
  );
  const back = await call(['serve', 'restore', join(data, 'backups', copy), '--replace', ...place]);
  expect([back.code, back.err]).toEqual([0, expect.stringContaining('Restored 5 entries')]);
  expect((await call(['serve', 'keys', ...place])).err).toBe(key);
  expect(JSON.parse((await call(['serve', 'tablets', ...place])).out)).toMatchObject([
    { revoked: expect.any(String) },
  ]);
});
