// The list of what is shipped says what the lock file says; and a registry that cannot be asked is no all-clear.

import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { newFolder } from '../../contract/databases.ts';
import { projectRoot } from '../../source-scan.ts';

const close: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of close.splice(0)) await end();
});

interface Lock {
  readonly packages: Readonly<Record<string, { readonly version?: string; readonly dev?: boolean }>>;
}

async function run(act: string, registry = 'http://127.0.0.1:1/') {
  const cache = newFolder();
  close.push(() => cache.remove());
  const env = {
    ...process.env,
    npm_config_registry: registry,
    npm_config_cache: cache.path,
    npm_config_fetch_retries: '0',
  };
  const child = spawn(process.execPath, [join(projectRoot, 'src/server/deploy/supply.mjs'), act], { env });
  const [out, err]: [string[], string[]] = [[], []];
  child.stdout.on('data', (chunk) => out.push(String(chunk)));
  child.stderr.on('data', (chunk) => err.push(String(chunk)));
  const code = await new Promise<number | null>((resolve) => child.once('close', resolve));
  return { code, out: out.join(''), err: err.join('') };
}

/** A registry of one's own, which knows advisories of one package or none. */
async function registry(answer: RequestListener): Promise<string> {
  const server = createServer(answer);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  close.push(
    () => new Promise((resolve) => server.close(resolve)),
    () => server.closeAllConnections(),
  );
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}

const lock: Lock = JSON.parse(readFileSync(join(projectRoot, 'package-lock.json'), 'utf8'));

test('the bill of materials names each package that is shipped, with its version, and no other', async () => {
  const { code, out, err } = await run('sbom');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const bill = JSON.parse(out);
  expect(bill).toMatchObject({
    bomFormat: 'CycloneDX',
    metadata: { component: { name: 'reelward', type: 'application' } },
  });
  const named: string[] = bill.components.map(
    (one: { name: string; version: string }) => `${one.name}@${one.version}`,
  );
  const shipped = Object.entries(lock.packages).flatMap(([path, { version, dev }]) =>
    path === '' || dev === true ? [] : [`${path.slice(path.lastIndexOf('node_modules/') + 13)}@${version}`],
  );
  expect([...new Set(named)].sort()).toEqual([...new Set(shipped)].sort());
  // Also used by packages for development, and shipped all the same.
  for (const name of ['pg', 'preact', 'fflate', 'workbox-window'])
    expect(named.some((one) => one.startsWith(`${name}@`))).toBe(true);
  const refs = new Set(bill.components.map((one: { 'bom-ref': string }) => one['bom-ref']));
  for (const { dependsOn } of bill.dependencies)
    for (const ref of dependsOn) expect(refs.has(ref)).toBe(true);
  expect(named.some((name) => name.startsWith('vitest@'))).toBe(false);
});

test('advisories of the registry are told, none is told as none, and a registry that cannot be asked as neither', async () => {
  const version = lock.packages['node_modules/fastify']?.version;
  const advisory = {
    id: 1,
    url: 'https://advisories.invalid/1',
    title: 'an invented fault',
    severity: 'high',
    vulnerable_versions: `<=${version}`,
    cwe: [],
    cvss: { score: 7, vectorString: null },
  };
  const known = await registry((request, response) => {
    response.setHeader('content-type', 'application/json');
    if (request.url?.endsWith('/advisories/bulk')) response.end(JSON.stringify({ fastify: [advisory] }));
    else
      response.end(
        JSON.stringify({
          name: 'fastify',
          'dist-tags': {},
          versions: { [String(version)]: { name: 'fastify', version } },
        }),
      );
  });
  const bad = await run('advisories', known);
  expect(bad).toMatchObject({ code: 1, err: '' });
  expect(bad.out).toContain('high: an invented fault https://advisories.invalid/1');

  const none = await run('advisories', await registry((_, response) => response.end('{}')));
  expect(none).toMatchObject({ code: 0, out: 'No advisory is known for the packages that are shipped.\n' });

  const shut = await registry((_, response) => response.writeHead(405).end());
  for (const url of [shut, undefined]) {
    const { code, out, err } = await run('advisories', url);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/could not be asked \(.+\): nothing is known for or against/);
  }
});
