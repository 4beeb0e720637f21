// The local authority and its leaf, judged by OpenSSL and by a real TLS connection, and renewed in time.

import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { Agent, get } from 'node:https';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  leafDays,
  makeAuthority,
  makeLeaf,
  maySpeakFor,
  readCertificate,
} from '../../../src/server/certificates/authority.ts';
import { type KeepOptions, keepCertificate, renewBeforeMs } from '../../../src/server/certificates/keep.ts';
import { CertificateRefused } from '../../../src/server/certificates/refused.ts';
import { escapeHtml } from '../../../src/server/http/trust-page.ts';
import type { HttpsSettings } from '../../../src/server/settings.ts';
import { freePort, newFolder } from '../../contract/databases.ts';
import { newClock, startTestServer } from './tablets.ts';

const DAY_MS = 86_400_000;
let folder: ReturnType<typeof newFolder>;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => folder.remove());

const openssl = (...args: string[]) => execFileSync('openssl', args, { cwd: folder.path, encoding: 'utf8' });
const names = ['reelward.local', 'localhost', '192.168.7.20', '127.0.0.1', '::1'];

async function makePair() {
  const authority = await makeAuthority('Brae, "Works" + more', names, Date.now());
  const leaf = await makeLeaf(authority, names, Date.now());
  writeFileSync(join(folder.path, 'authority.pem'), authority.cert);
  writeFileSync(join(folder.path, 'leaf.pem'), leaf.cert);
  return { authority, leaf };
}

describe('`makeLeaf()`', () => {
  it('makes what OpenSSL verifies strictly, for each of its names and no other', async () => {
    await makePair();
    const verify = (...args: string[]) =>
      openssl(
        'verify',
        '-x509_strict',
        '-purpose',
        'sslserver',
        '-CAfile',
        'authority.pem',
        ...args,
        'leaf.pem',
      );
    expect(verify()).toBe('leaf.pem: OK\n');
    expect(verify('-verify_hostname', 'reelward.local')).toBe('leaf.pem: OK\n');
    expect(verify('-verify_ip', '192.168.7.20')).toBe('leaf.pem: OK\n');
    expect(verify('-verify_ip', '::1')).toBe('leaf.pem: OK\n');
    expect(() => verify('-verify_hostname', 'other.local')).toThrow();
    expect(() => openssl('verify', '-CAfile', 'leaf.pem', 'authority.pem')).toThrow();
  });

  it('stays within what the strictest platform accepts', async () => {
    const { leaf } = await makePair();
    const text = openssl('x509', '-in', 'leaf.pem', '-noout', '-text');
    expect(text).toMatch(/ecdsa-with-SHA256/);
    expect(text).toMatch(/NIST CURVE: P-256/);
    expect(text).toMatch(/TLS Web Server Authentication/);
    expect(text).toMatch(/CA:FALSE/);
    expect(text).toContain(
      'DNS:reelward.local, DNS:localhost, IP Address:192.168.7.20, IP Address:127.0.0.1, IP Address:0:0:0:0:0:0:0:1',
    );
    const authority = openssl('x509', '-in', 'authority.pem', '-noout', '-text');
    expect(authority).toMatch(/CA:TRUE, pathlen:0/);
    expect(authority).toMatch(/Certificate Sign/);
    const days = (readCertificate(leaf.cert).endsMs - Date.now()) / DAY_MS;
    // CA/Browser Forum baseline requirements: 398 days at most, counted from the start.
    expect(days).toBeLessThan(leafDays);
    expect(days).toBeGreaterThan(leafDays - 3);
  });

  it('makes an authority that cannot make another', async () => {
    const { authority } = await makePair();
    // A leaf used as if it were an authority.
    const leaf = await makeLeaf(authority, ['a.local'], Date.now());
    writeFileSync(join(folder.path, 'middle.pem'), leaf.cert);
    const below = await makeLeaf(leaf, ['b.local'], Date.now());
    writeFileSync(join(folder.path, 'below.pem'), below.cert);
    expect(() =>
      openssl('verify', '-CAfile', 'authority.pem', '-untrusted', 'middle.pem', 'below.pem'),
    ).toThrow();
  });
});

describe('`makeAuthority()`', () => {
  const judge = (leaf: string) => {
    writeFileSync(join(folder.path, 'any.pem'), leaf);
    const asked = ['verify', '-x509_strict', '-purpose', 'sslserver', '-CAfile', 'authority.pem', 'any.pem'];
    try {
      return openssl(...asked);
    } catch (error) {
      return String((error as { stderr?: unknown }).stderr);
    }
  };

  it('makes one that OpenSSL believes for own names, .local and private addresses, and for no other', async () => {
    const own = await makeAuthority('Brae Works', ['reelward.example', '203.0.113.7'], Date.now());
    writeFileSync(join(folder.path, 'authority.pem'), own.cert);
    const good = ['reelward.example', '203.0.113.7', 'any.local', 'localhost', '10.9.8.7', '172.31.0.1'];
    const more = ['192.168.1.1', '169.254.3.4', '127.0.0.1', '::1', 'fd12:3456::1', 'fe80::1'];
    const okay = await makeLeaf(own, [...good, ...more], Date.now());
    expect(judge(okay.cert)).toBe('any.pem: OK\n');
    const foreign = [
      'bank.example',
      'example',
      'local.example',
      '203.0.113.8',
      '172.32.0.1',
      '8.8.8.8',
      '2001:db8::1',
    ];
    for (const name of foreign) {
      const leaf = await makeLeaf(own, [name], Date.now());
      expect([name, judge(leaf.cert)]).toEqual([name, expect.stringMatching(/permitted subtree violation/)]);
      expect(maySpeakFor(own, name)).toBe(false);
    }
    for (const name of [...good, ...more]) expect([name, maySpeakFor(own, name)]).toEqual([name, true]);
  });

  it('makes one for servers only, that ends in two years', async () => {
    const { authority } = await makePair();
    const text = openssl('x509', '-in', 'authority.pem', '-noout', '-text');
    expect(text).toMatch(/Name Constraints: critical/);
    expect(text).toMatch(/TLS Web Server Authentication/);
    expect(text).not.toMatch(/Client Authentication|Code Signing|E-mail Protection/);
    expect((readCertificate(authority.cert).endsMs - Date.now()) / DAY_MS).toBeLessThan(732);
  });
});

describe('`keepCertificate()`', () => {
  const clock = newClock();
  let addresses = ['192.168.7.20'];
  const options = (change: Partial<HttpsSettings> = {}): KeepOptions => ({
    folder: folder.path,
    plant: 'Brae Works',
    settings: { names: ['reelward.local'], ownFiles: null, trustPort: 0, ...change },
    nowMs: clock.nowMs,
    addresses: () => addresses,
  });
  beforeEach(() => {
    clock.shiftMs = 0;
    addresses = ['192.168.7.20'];
  });

  it('makes the authority once, and keeps its key from others', async () => {
    const first = await keepCertificate(options());
    const second = await keepCertificate(options());
    expect(second.authority()?.fingerprint).toBe(first.authority()?.fingerprint);
    expect(second.pair().cert).toBe(first.pair().cert);
    const key = join(folder.path, 'certificates', 'authority.key.pem');
    expect(statSync(key).mode & 0o777).toBe(0o600);
  });

  it('refuses a name that the authority was not made for, saying what to do', async () => {
    await keepCertificate(options());
    const other = options({ names: ['other.example'] });
    await expect(keepCertificate(other)).rejects.toThrow(
      '--host other.example: the local authority was made for other names',
    );
  });

  it('leaves out an address of no private network that came later, so that the others go on', async () => {
    const kept = await keepCertificate(options());
    addresses = ['203.0.113.9', '10.1.2.3'];
    expect(await kept.look()).toBe(true);
    const { fits } = readCertificate(kept.pair().cert);
    expect(['10.1.2.3', '203.0.113.9'].map(fits)).toEqual([true, false]);
    expect(await kept.look()).toBe(false);
  });

  it('makes the next authority at a start in its last month', async () => {
    const first = await keepCertificate(options());
    clock.shiftMs = 731 * DAY_MS - renewBeforeMs;
    const second = await keepCertificate(options());
    expect(second.authority()?.fingerprint).not.toBe(first.authority()?.fingerprint);
  });

  it('makes the next authority also while the server runs, and tells of it two months before', async () => {
    const kept = await keepCertificate(options());
    const [before, leaf] = [kept.authority()?.fingerprint, kept.pair().cert];
    expect(kept.warnings()).toEqual([]);
    clock.shiftMs = 731 * DAY_MS - 2.5 * renewBeforeMs;
    expect(kept.warnings()).toEqual([expect.stringContaining('the local authority is made anew on ')]);
    clock.shiftMs = 731 * DAY_MS - renewBeforeMs;
    expect(await kept.look()).toBe(true);
    expect(kept.authority()?.fingerprint).not.toBe(before);
    expect(kept.pair().cert).not.toBe(leaf);
    expect(kept.warnings()).toEqual([]);
    expect(await kept.look()).toBe(false);
  });

  it('makes a new leaf where the authority was removed by hand', async () => {
    const first = await keepCertificate(options());
    for (const end of ['key', 'cert']) rmSync(join(folder.path, 'certificates', `authority.${end}.pem`));
    const second = await keepCertificate(options());
    expect(second.pair().cert).not.toBe(first.pair().cert);
  });

  it('makes a damaged leaf anew, and says what to do about a damaged authority', async () => {
    const first = await keepCertificate(options());
    const file = (name: string) => join(folder.path, 'certificates', name);
    for (const name of ['server.cert.pem', 'server.key.pem']) {
      writeFileSync(file(name), 'cut off');
      const second = await keepCertificate(options());
      expect(second.authority()?.fingerprint).toBe(first.authority()?.fingerprint);
      expect(readCertificate(second.pair().cert).fits('reelward.local')).toBe(true);
    }
    const { key } = (await makePair()).authority;
    for (const [name, text] of [
      ['authority.cert.pem', 'cut off'],
      ['authority.key.pem', key],
    ] as const) {
      const before = readFileSync(file(name), 'utf8');
      writeFileSync(file(name), text);
      await expect(keepCertificate(options())).rejects.toThrow(CertificateRefused);
      await expect(keepCertificate(options())).rejects.toThrow(/authority\.\*: cannot be read.*remove them/);
      writeFileSync(file(name), before);
    }
  });

  it('renews a month before the end, under the same authority', async () => {
    const kept = await keepCertificate(options());
    const before = kept.endsMs();
    clock.shiftMs = before - Date.now() - renewBeforeMs - DAY_MS;
    expect(await kept.look()).toBe(false);
    clock.shiftMs += 2 * DAY_MS;
    expect(await kept.look()).toBe(true);
    expect(kept.endsMs()).toBeGreaterThan(before + 300 * DAY_MS);
  });

  it('renews when the computer gets another address', async () => {
    const kept = await keepCertificate(options());
    addresses = ['10.1.2.3'];
    expect(await kept.look()).toBe(true);
    expect(readCertificate(kept.pair().cert).fits('10.1.2.3')).toBe(true);
    expect(readCertificate(kept.pair().cert).fits('reelward.local')).toBe(true);
  });

  it('takes an own certificate, and refuses what does not fit, naming file and reason', async () => {
    const { authority, leaf } = await makePair();
    const file = (name: string, text: string) => {
      writeFileSync(join(folder.path, name), text);
      return join(folder.path, name);
    };
    const [certFile, keyFile] = [file('own.pem', leaf.cert), file('own.key', leaf.key)];
    const kept = await keepCertificate(options({ ownFiles: { certFile, keyFile } }));
    expect(kept.authority()).toBeNull();
    expect(await kept.look()).toBe(false);
    const next = await makeLeaf(authority, names, Date.now());
    file('own.pem', next.cert);
    await expect(kept.look()).rejects.toThrow('not the key of the certificate');
    expect(kept.pair().cert).toBe(leaf.cert);
    file('own.key', next.key);
    expect(await kept.look()).toBe(true);

    const ended = await makeLeaf(authority, names, Date.now() - 2 * leafDays * DAY_MS);
    const cases = [
      [join(folder.path, 'none.pem'), keyFile, /--cert .*none\.pem: cannot be read \(ENOENT\)/],
      [file('text.pem', 'hello'), keyFile, /--cert .*text\.pem: expected a certificate as PEM/],
      [certFile, file('text.key', 'hello'), /--key .*text\.key: expected an unencrypted private key/],
      [certFile, file('other.key', leaf.key), /--key .*other\.key: not the key/],
      [file('ended.pem', ended.cert), file('ended.key', ended.key), /--cert .*ended\.pem: ended on 20/],
    ] as const;
    for (const [cert, key, message] of cases) {
      await expect(keepCertificate(options({ ownFiles: { certFile: cert, keyFile: key } }))).rejects.toThrow(
        message,
      );
    }
  });
});

describe('a server over HTTPS', () => {
  it('is trusted by who trusts the authority from its page, and by nobody else', async () => {
    const trustPort = await freePort();
    const https = { names: ['reelward.local'], ownFiles: null, trustPort };
    const server = await startTestServer({ https });
    const { running } = server;
    expect(running.url).toMatch(/^https:/);
    expect(running.trust?.url).toBe(`http://127.0.0.1:${trustPort}/ca`);
    const page = await fetch(running.trust?.url ?? '');
    const html = await page.text();
    expect(html).toContain(running.trust?.fingerprint);
    expect(html).toContain(running.url);
    expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect(html).not.toMatch(/https?:\/\/(?!127\.0\.0\.1)/);
    for (const system of ['Android', 'iPadOS', 'Windows', 'macOS', 'Linux']) expect(html).toContain(system);
    expect(await (await fetch(`http://127.0.0.1:${trustPort}/anything`)).text()).toBe(html);
    expect((await fetch(`http://127.0.0.1:${trustPort}/ca`, { method: 'POST' })).status).toBe(405);
    expect(await (await fetch(`http://127.0.0.1:${trustPort}/ca/code.svg`)).text()).toContain('<svg');

    const got = await fetch(`http://127.0.0.1:${trustPort}/ca/reelward-authority.crt`);
    expect(got.headers.get('content-type')).toBe('application/x-x509-ca-cert');
    writeFileSync(join(folder.path, 'got.der'), Buffer.from(await got.arrayBuffer()));
    const ca = openssl('x509', '-inform', 'DER', '-in', 'got.der');
    const status = (trusted: string | undefined) =>
      new Promise<number | string>((resolve) => {
        const agent = new Agent(trusted === undefined ? {} : { ca: trusted });
        get(`${running.url}/health`, { agent }, (response) => {
          response.resume();
          resolve(response.statusCode ?? 0);
        }).on('error', (error: NodeJS.ErrnoException) => resolve(error.code ?? ''));
      });
    expect(await status(ca)).toBe(200);
    expect(await status(undefined)).toMatch(/UNABLE_TO_VERIFY_LEAF_SIGNATURE|SELF_SIGNED/);
    await server.stop();
  });

  it('puts a renewed certificate to use without a restart', async () => {
    const server = await startTestServer({
      https: { names: [], ownFiles: null, trustPort: await freePort() },
    });
    const serial = () =>
      new Promise<string>((resolve, reject) => {
        const socket = connect(
          { port: server.running.port, host: '127.0.0.1', rejectUnauthorized: false },
          () => {
            resolve(socket.getPeerCertificate().serialNumber);
            socket.destroy();
          },
        );
        socket.on('error', reject);
      });
    const before = await serial();
    const read = (name: string) => readFileSync(join(server.folder, 'certificates', name), 'utf8');
    const authority = { cert: read('authority.cert.pem'), key: read('authority.key.pem') };
    const next = await makeLeaf(authority, ['127.0.0.1'], Date.now());
    const { server: socketServer } = server.running.app as unknown as {
      server: { setSecureContext: (pair: unknown) => void };
    };
    socketServer.setSecureContext(next);
    expect(await serial()).not.toBe(before);
    await server.stop();
  });

  it('that cannot open the port of its page starts nothing', async () => {
    const trustPort = await freePort();
    const { createServer } = await import('node:http');
    const taken = createServer();
    await new Promise<void>((resolve) => taken.listen(trustPort, '127.0.0.1', resolve));
    await expect(startTestServer({ https: { names: [], ownFiles: null, trustPort } })).rejects.toThrow(
      `port ${trustPort} is taken`,
    );
    taken.close();
  });

  it('`escapeHtml()` leaves no markup', () => {
    expect(escapeHtml(`<a href="x" b='y'>&`)).toBe('&lt;a href=&quot;x&quot; b=&#39;y&#39;&gt;&amp;');
  });
});
