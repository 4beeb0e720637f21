// What an administrator watches: numbers on a port of their own, alert rules that name numbers that are there, and a log that a program reads.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { wireVersion } from '../../shared/wire/version.ts';
import { enrolTablet, readEnrolCode } from '../../src/app/sync/enrol.ts';
import { freePort } from '../contract/databases.ts';
import { newTablet, until } from '../src/server/tablets.ts';
import { useBuiltCli } from './built.ts';
import { call } from './call.ts';

const cli = useBuiltCli();

/** The numbers of a page of metrics, by name and labels as they stand there. */
async function readMetrics(port: number): Promise<ReadonlyMap<string, number>> {
  const text = await (await fetch(`http://127.0.0.1:${port}/metrics`)).text();
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  // Each carries whose it is.
  expect(lines.filter((line) => !line.includes('plant="Brae Works"'))).toEqual([]);
  const plain = lines.map((line) => line.replace(/,?plant="Brae Works"/, '').replace('{}', ''));
  return new Map(
    plain.map((line) => [line.slice(0, line.lastIndexOf(' ')), Number(line.slice(line.lastIndexOf(' ')))]),
  );
}

it('the numbers tell of store, backup, checks and tablets, and the alert rules name no others', async () => {
  const [port, metricsPort] = [await freePort(), await freePort()];
  const server = cli.run(
    'serve',
    '--plant',
    'Brae Works',
    '--port',
    String(port),
    '--metrics-port',
    String(metricsPort),
  );
  await until('the code', () => server.err().includes('#enrol='));
  const tablet = await newTablet('t1', `http://127.0.0.1:${port}`);
  await enrolTablet(tablet, { code: readEnrolCode(server.err()) ?? '', name: 'Line 1' });
  // Who was let in is told without asking for more than a server tells by itself.
  expect(server.err()).toContain('"act":"enrolled","tablet":"t1","name":"Line 1"');
  const beganSeconds = Date.now() / 1000 - 1;
  tablet.log.write(7);
  tablet.start();
  await until('seven', () => tablet.log.memory.acked['t1/e1'] === 7);
  await tablet.stop();
  await until(
    'the checks',
    async () => (await readMetrics(metricsPort)).get('reelward_checks_behind_entries') === 0,
  );
  const before = await readMetrics(metricsPort);
  // With what the server wrote of the tablet that it let in.
  expect(before.get('reelward_log_entries')).toBe(9);
  expect(before.get('reelward_aside_entries')).toBe(0);
  expect(before.get('reelward_backup_seconds')).toBe(0);
  expect(before.get('reelward_store_bytes')).toBeGreaterThan(50_000);
  expect(before.get('reelward_disk_free_bytes')).toBeGreaterThan(0);
  expect(before.get('reelward_store_trouble{trouble="disk-full"}')).toBe(0);
  expect(before.get('reelward_tablet_seen_seconds{tablet="t1",name="Line 1"}')).toBeGreaterThan(beganSeconds);
  expect(before.get('reelward_tablet_wire_version{tablet="t1"}')).toBe(wireVersion);
  const made = await call([
    'serve',
    'backup',
    join(cli.folder, 'copy.sqlite'),
    '--data',
    join(cli.folder, 'data'),
  ]);
  expect(made.code).toBe(0);
  expect((await readMetrics(metricsPort)).get('reelward_backup_seconds')).toBeGreaterThan(beganSeconds);
  expect((await fetch(`http://127.0.0.1:${metricsPort}/api/info`)).status).toBe(404);

  const rules = readFileSync('src/server/deploy/alerts.yml', 'utf8');
  const named = new Set(rules.match(/reelward_[a-z_]+/g));
  expect(named.size).toBeGreaterThan(8);
  const told = await (await fetch(`http://127.0.0.1:${metricsPort}/metrics`)).text();
  for (const name of named) expect(told).toContain(`# TYPE ${name} `);
});

it('with `--log-json` every line on standard error is one object', async () => {
  const port = await freePort();
  const server = cli.run('serve', '--port', String(port), '--log-json', '--log', 'info');
  await until('the code', () => server.err().includes('#enrol='));
  server.child.kill('SIGTERM');
  await server.ended;
  const lines = server
    .err()
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as { readonly msg: string });
  expect(lines.map(({ msg }) => msg)).toContain(`Reelward serves at http://127.0.0.1:${port}`);
  expect(lines.length).toBeGreaterThan(3);
});
