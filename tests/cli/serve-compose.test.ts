// The file for containers names what the files beside it name: addresses, database, journal, options. Nothing of it is started.

import { cpSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { useBuiltCli } from './built.ts';
import { call } from './call.ts';

const cli = useBuiltCli();
const folder = 'src/server/deploy/cluster';
const text = (file: string) => readFileSync(`${folder}/${file}`, 'utf8');

interface Service {
  readonly image: string;
  readonly command: readonly string[];
  readonly environment: Readonly<Record<string, string>>;
  readonly volumes: readonly string[];
  readonly networks: { readonly plant: { readonly ipv4_address: string } };
}
interface Compose {
  readonly services: Readonly<Record<'db' | 's1' | 's2' | 's3' | 'proxy', Service>>;
  readonly volumes: Readonly<Record<string, null>>;
  readonly secrets: { readonly password: { readonly file: string } };
}

const compose = () => parse(text('compose.yml'), { merge: true }) as Compose; // looked at below

describe('compose.yml', () => {
  const addressOf = ({ networks }: Service) => networks.plant.ipv4_address;

  it('gives servers and proxy the addresses that the settings of both name', () => {
    const { s1, s2, s3, proxy } = compose().services;
    const named = [...text('haproxy.cfg').matchAll(/^ {2}server \w+ ([\d.]+):8080 check$/gm)];
    expect(named.map(([, address]) => address)).toEqual([s1, s2, s3].map(addressOf));
    for (const server of [s1, s2, s3]) expect(server.environment['REELWARD_LISTEN']).toBe(addressOf(server));
    const settings = JSON.parse(text('server.json')) as Readonly<Record<string, unknown>>;
    expect(settings['trust-proxy']).toBe(addressOf(proxy));
    expect(text('haproxy.cfg')).toContain('crt /etc/haproxy/brae.pem');
    expect(proxy.volumes).toContain('./brae.pem:/etc/haproxy/brae.pem:ro');
  });

  it('names one database, its user and its password file alike on both sides', () => {
    const { db, s1 } = compose().services;
    const { username, hostname, pathname } = new URL(s1.environment['REELWARD_DATABASE'] ?? '');
    expect([username, hostname, pathname]).toEqual([
      db.environment['POSTGRES_USER'],
      addressOf(db),
      `/${db.environment['POSTGRES_DB']}`,
    ]);
    expect(text('compose.yml')).toContain(
      `${hostname}:5432${pathname.replace('/', ':')}:${username}:PASSWORD`,
    );
  });

  it('keeps the journal as archive.conf does, and takes as many connections as Patroni does', () => {
    const { command } = compose().services.db;
    const set = command.filter((_, at) => command[at - 1] === '-c');
    const kept = text('archive.conf')
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'))
      .map((line) => line.replace(' = ', '=').replaceAll("'", ''));
    const [, most] = /max_connections: (\d+)/.exec(text('patroni.yml')) ?? [];
    expect([...set].sort()).toEqual([...kept, `max_connections=${most}`].sort());
  });

  it('mounts what is there, or what its head says has to be', () => {
    const { services, volumes, secrets } = compose();
    const [head = ''] = text('compose.yml').split('\nname: ');
    const mounted = [
      ...Object.values(services).flatMap((service) =>
        service.volumes.map((volume) => volume.split(':')[0] ?? ''),
      ),
      secrets.password.file,
    ];
    for (const place of mounted) {
      const name = place.replace('./', '');
      if (!place.startsWith('./')) expect(Object.keys(volumes)).toContain(place);
      else if (!existsSync(join(folder, name))) expect(head).toMatch(new RegExp(`^# {3}${name}/? `, 'm'));
    }
    expect(mounted.length).toBeGreaterThan(15);
  });

  it('gives each server options that it understands', async () => {
    const { s1, s2, s3 } = compose().services;
    const file = join(cli.folder, 'brae.json');
    cpSync(`${folder}/server.json`, file);
    for (const { environment } of [s1, s2, s3]) {
      // All but the file with the password, which is for whoever runs there alone.
      const { PGPASSFILE: _, REELWARD_DATABASE: database = '', ...named } = environment;
      const own = {
        ...named,
        REELWARD_CONFIG: file,
        REELWARD_DATA: cli.folder,
        REELWARD_DATABASE: database.replace('10.0.0.11:5432', '127.0.0.1:9'),
      };
      const before = { ...process.env };
      Object.assign(process.env, own);
      try {
        const { out, err } = await call(['serve', 'check']);
        expect([err, ...out.split('\n').slice(0, 2)]).toEqual([
          '',
          'good    configuration: understood',
          'WRONG   store: --database: nobody answers at 127.0.0.1:9/brae; is PostgreSQL started, and the address right?',
        ]);
      } finally {
        for (const name of Object.keys(own)) delete process.env[name];
        Object.assign(process.env, before);
      }
    }
  });
});
