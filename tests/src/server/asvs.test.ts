// The table of ASVS requirements is whole and names tests that are there; and what it says of headers, files and methods holds on a
// running server. The numbers: OWASP ASVS 5.0.0, levels 1 and 2, by section.

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { projectRoot, readSources } from '../../source-scan.ts';
import { enrolAt, newTablet, startTestServer, type TestServer } from './tablets.ts';

/** By section: numbers of level 1, and of level 2. */
const sections: Readonly<Record<string, readonly [first: string, second: string]>> = {
  '1.1': ['', '1-2'],
  '1.2': ['1-5', '6-9'],
  '1.3': ['1-2', '3-11'],
  '1.4': ['', '1-3'],
  '1.5': ['1', '2'],
  '2.1': ['1', '2-3'],
  '2.2': ['1-2', '3'],
  '2.3': ['1', '2-4'],
  '2.4': ['', '1'],
  '3.2': ['1-2', ''],
  '3.3': ['1', '2-4'],
  '3.4': ['1-2', '3-6'],
  '3.5': ['1-3', '4-5'],
  '3.7': ['', '1-2'],
  '4.1': ['1', '2-3'],
  '4.2': ['', '1'],
  '4.3': ['', '1-2'],
  '4.4': ['1', '2-4'],
  '5.1': ['', '1'],
  '5.2': ['1-2', '3'],
  '5.3': ['1-2', ''],
  '5.4': ['', '1-3'],
  '6.1': ['1', '2-3'],
  '6.2': ['1-8', '9-12'],
  '6.3': ['1-2', '3-4'],
  '6.4': ['1-2', '3-4'],
  '6.5': ['', '1-5'],
  '6.6': ['', '1-3'],
  '6.8': ['', '1-4'],
  '7.1': ['', '1-3'],
  '7.2': ['1-4', ''],
  '7.3': ['', '1-2'],
  '7.4': ['1-2', '3-5'],
  '7.5': ['', '1-2'],
  '7.6': ['', '1-2'],
  '8.1': ['1', '2'],
  '8.2': ['1-2', '3'],
  '8.3': ['1', ''],
  '8.4': ['', '1'],
  '9.1': ['1-3', ''],
  '9.2': ['1', '2-4'],
  '10.1': ['', '1-2'],
  '10.2': ['', '1-2'],
  '10.3': ['', '1-4'],
  '10.4': ['1-5', '6-11'],
  '10.5': ['', '1-5'],
  '10.6': ['', '1-2'],
  '10.7': ['', '1-3'],
  '11.1': ['', '1-2'],
  '11.2': ['', '1-3'],
  '11.3': ['1-2', '3'],
  '11.4': ['1', '2-4'],
  '11.5': ['', '1'],
  '11.6': ['', '1'],
  '12.1': ['1', '2-3'],
  '12.2': ['1-2', ''],
  '12.3': ['', '1-4'],
  '13.1': ['', '1'],
  '13.2': ['', '1-5'],
  '13.3': ['', '1-2'],
  '13.4': ['1', '2-5'],
  '14.1': ['', '1-2'],
  '14.2': ['1', '2-4'],
  '14.3': ['1', '2-3'],
  '15.1': ['1', '2-3'],
  '15.2': ['1', '2-3'],
  '15.3': ['1', '2-7'],
  '16.1': ['', '1'],
  '16.2': ['', '1-5'],
  '16.3': ['', '1-4'],
  '16.4': ['', '1-3'],
  '16.5': ['', '1-3'],
  '17.1': ['', '1'],
  '17.2': ['', '1-4'],
  '17.3': ['', '1-2'],
};
const span = (text: string) => {
  const [first = 0, last = first] = text === '' ? [1, 0] : text.split('-').map(Number);
  return Array.from({ length: last - first + 1 }, (_, at) => first + at);
};
const wanted = new Map(
  Object.entries(sections).flatMap(([section, levels]) =>
    levels.flatMap((numbers, at) => span(numbers).map((number) => [`${section}.${number}`, at + 1] as const)),
  ),
);

const rows = readFileSync(join(projectRoot, 'src/server/ASVS.md'), 'utf8')
  .split('\n')
  .filter((line) => /^\| \d/.test(line))
  .map((line) => line.split('|').map((cell) => cell.trim()))
  .map(([, numbers = '', levels = '', subject = '', state = '']) => ({
    // Held against the list below.
    numbers: numbers.split(', ') as `${string}.${number}`[],
    levels,
    subject,
    state,
  }));

describe('the table', () => {
  test('has each requirement of levels 1 and 2 once, at its level', () => {
    expect([...wanted.values()].filter((level) => level === 1)).toHaveLength(70);
    const told = rows.flatMap(({ numbers }) => numbers);
    expect([...told].sort()).toEqual([...wanted.keys()].sort());
    for (const { numbers, levels } of rows)
      expect(`${numbers}: ${levels}`).toBe(
        `${numbers}: ${[...new Set(numbers.map((number) => wanted.get(number)))].sort().join(', ')}`,
      );
  });

  test('says of each how it stands, and names files that are there', () => {
    const files = rows.flatMap(({ numbers, subject, state }) => {
      expect(`${numbers} ${subject}`.length, String(numbers)).toBeGreaterThan(String(numbers).length + 3);
      expect(state).toMatch(/^(met|partly|not met|not applicable|by whoever runs it)\b/);
      const tests = [...state.matchAll(/`([^`]+\.(?:test|e2e)\.ts)`/g)].map(([, name = '']) => name);
      // What is met says how it is known: by a test, by a file that says it, or by reading.
      if (state.startsWith('met'))
        expect(state).toMatch(
          /`|by reading|by Node|by the |below|bits|there are none|none is|one person a tablet/,
        );
      return tests;
    });
    expect(files.length).toBeGreaterThan(80);
    expect(files.filter((file) => !existsSync(join(projectRoot, 'tests', file)))).toEqual([]);
  });
});

test('the server calls its database, push services, and its own port to see whether that is free', () => {
  const callers = readSources(['src/server'])
    .filter(
      ({ source }) =>
        /\bfetch\(/.test(source) ||
        /import \{[^}]*\b(request|get|connect|createConnection|Socket|lookup)\b[^}]*\} from 'node:(https?|http2|net|tls|dns|dgram)'/.test(
          source.replaceAll(/\btype \w+/g, ''),
        ) ||
        /from '(pg|undici|axios|ws)'/.test(source),
    )
    .map(({ path }) => path)
    .filter((path) => !path.startsWith('src/server/stores/postgres/'));
  expect(callers.sort()).toEqual(['src/server/checks.ts', 'src/server/push/send.ts']);
});

describe('a running server', () => {
  let server: TestServer;
  let url = '';
  beforeAll(async () => {
    server = await startTestServer();
    const root = server.settings.appRoot;
    mkdirSync(join(root, 'assets'), { recursive: true });
    writeFileSync(join(root, 'index.html'), '<!doctype html><title>app</title>');
    writeFileSync(join(root, 'assets', 'a.js'), '//');
    writeFileSync(join(root, '..', 'secret.txt'), 'nothing of yours');
    url = server.running.url;
  });
  afterAll(() => server.stop());

  test('lets no other origin in, sets no cookie, tells types with their characters, and leads nowhere else', async () => {
    for (const path of ['/', '/api/info', '/api/nothing', '/health', '/assets/a.js']) {
      const answer = await fetch(url + path, {
        headers: { origin: 'https://other.invalid' },
        redirect: 'manual',
      });
      const named = [...answer.headers.keys()];
      expect(named.filter((name) => name.startsWith('access-control-') || name === 'set-cookie')).toEqual([]);
      expect(answer.headers.get('content-type')).toMatch(/; charset=utf-8$/i);
      expect(answer.status < 300 || answer.status >= 400).toBe(true);
      expect(answer.headers.get('referrer-policy')).toBe('no-referrer');
    }
  });

  /** As a program sends it that does not tidy paths up. */
  const ask = (method: string, path: string) =>
    new Promise<{ status: number; text: string }>((resolve, reject) => {
      const { hostname, port } = new URL(url);
      const sent = request({ host: hostname, port, method, path }, (answer) => {
        let text = '';
        answer.on('data', (chunk) => {
          text += String(chunk);
        });
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, text }));
      });
      sent.on('error', reject);
      sent.end();
    });

  test('gives no list of a folder and no file beside its own, and knows no TRACE', async () => {
    expect((await ask('GET', '/assets/')).text).not.toContain('a.js');
    for (const path of [
      '/../secret.txt',
      '/assets/../../secret.txt',
      '/%2e%2e/secret.txt',
      '/assets/..%2f..%2fsecret.txt',
      '/..%5csecret.txt',
      '/assets/%00',
    ])
      expect((await ask('GET', path)).text).not.toContain('nothing of yours');
    expect((await ask('TRACE', '/')).status).toBeGreaterThanOrEqual(400);
  });

  test('takes a parameter that comes twice for none', async () => {
    const tablet = await newTablet('twice', url);
    await enrolAt(server.running, tablet);
    const answer = await tablet.caller.open('/api/pull?after=0.0000000000000000&after=1.0000000000000000');
    expect(answer).toMatchObject({ ok: false, error: { code: 'bad-query' } });
  });
});

test('over HTTPS an old TLS is refused, and 1.2 and 1.3 are spoken', async () => {
  const server = await startTestServer({ https: { names: ['localhost'], ownFiles: null, trustPort: 0 } });
  const port = Number(new URL(server.running.url).port);
  const speak = (version: 'TLSv1.1' | 'TLSv1.2' | 'TLSv1.3') =>
    new Promise<string | null>((resolve) => {
      const socket = connect({
        port,
        host: 'localhost',
        rejectUnauthorized: false,
        minVersion: version,
        maxVersion: version,
        ciphers: 'DEFAULT@SECLEVEL=0',
      });
      socket.once('secureConnect', () => {
        resolve(socket.getProtocol());
        socket.destroy();
      });
      socket.once('error', () => resolve(null));
    });
  expect([await speak('TLSv1.1'), await speak('TLSv1.2'), await speak('TLSv1.3')]).toEqual([
    null,
    'TLSv1.2',
    'TLSv1.3',
  ]);
  await server.stop();
});
