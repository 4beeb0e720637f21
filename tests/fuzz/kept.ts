// What lies on a disk or comes packed: certificates with their keys, and snapshots of the state.

import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { applyAll } from '../../shared/floor/fold.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { chainId, type Entry } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { packBootstrap, unpackBootstrap } from '../../src/app/store/pack.ts';
import { foldName } from '../../src/app/store/this-fold.ts';
import { readUpTo } from '../../src/app/sync/snapshot.ts';
import { makeAuthority, makeLeaf } from '../../src/server/certificates/authority.ts';
import { keepCertificate } from '../../src/server/certificates/keep.ts';
import { CertificateRefused } from '../../src/server/certificates/refused.ts';
import { checkUnpacks } from '../../src/server/http/body.ts';
import { Refused } from '../../src/server/http/refuse.ts';
import { beginStory, counted, started, tellPlant, verified } from '../shared/floor/story.ts';
import { mutateBytes, mutateDer } from './bytes.ts';
import { mutateJson } from './jsons.ts';
import type { Plan } from './plan.ts';
import { bytesTarget, type FuzzTarget, textTarget } from './target.ts';
import { mutateText } from './texts.ts';

const nowMs = Date.UTC(2026, 2, 2);
const authority = await makeAuthority('Brae Works', ['brae.example'], nowMs);
const leaf = await makeLeaf(authority, ['brae.example', '192.168.1.5'], nowMs);
const pems = [leaf.cert, authority.cert, leaf.key];
const ders = pems.map((pem) =>
  Uint8Array.from(Buffer.from(pem.replace(/-----[^-]+-----|\s/g, ''), 'base64')),
);
const folder = mkdtempSync(join(tmpdir(), 'reelward-fuzz-'));
const ownFiles = { certFile: join(folder, 'cert.pem'), keyFile: join(folder, 'key.pem') };
const options = { folder, plant: 'Brae Works', nowMs: () => nowMs, addresses: () => ['192.168.1.5'] };

function pemOf(plan: Plan): string {
  if (plan.sample % 4 === 0)
    return mutateText(
      { samples: pems, parts: /(-----|\n)/, odd: ['-----BEGIN X-----', '-----END CERTIFICATE-----', '===='] },
      plan,
    );
  const kind = plan.sample % 3 === 2 ? 'PRIVATE KEY' : 'CERTIFICATE';
  const text = Buffer.from(mutateDer(ders, plan)).toString('base64');
  return `-----BEGIN ${kind}-----\n${text.replace(/.{64}/g, '$&\n')}\n-----END ${kind}-----\n`;
}

/** Opens what is kept; its own refusal is an answer. */
async function opens(settings: Parameters<typeof keepCertificate>[0]['settings']): Promise<void> {
  try {
    const kept = await keepCertificate({ ...options, settings });
    kept.warnings();
    kept.authority();
  } catch (error) {
    if (!(error instanceof CertificateRefused)) throw error;
  }
}

const onOwn: FuzzTarget = textTarget({
  name: 'own certificates',
  share: 16_000,
  input: pemOf,
  read: async (pem, { sample }) => {
    writeFileSync(ownFiles.certFile, sample % 3 === 2 ? leaf.cert : pem);
    writeFileSync(ownFiles.keyFile, sample % 3 === 2 ? pem : leaf.key);
    await opens({ names: ['brae.example'], ownFiles, trustPort: 0 });
  },
});

const files = ['server.cert.pem', 'authority.cert.pem', 'server.key.pem', 'authority.key.pem'];
const kept = join(folder, 'certificates');
mkdirSync(kept);

const onLocal: FuzzTarget = textTarget({
  name: 'the local authority',
  share: 1_000,
  input: pemOf,
  read: async (pem, { sample, steps }) => {
    for (const [name, pair] of [
      ['server', leaf],
      ['authority', authority],
    ] as const) {
      writeFileSync(join(kept, `${name}.cert.pem`), pair.cert);
      writeFileSync(join(kept, `${name}.key.pem`), pair.key);
    }
    const name = sample % 3 === 2 ? files[2 + ((steps[0]?.[1] ?? 0) % 2)] : files[sample % 3];
    writeFileSync(join(kept, name ?? ''), pem);
    await opens({ names: ['brae.example'], ownFiles: null, trustPort: 0 });
  },
});

const story = beginStory();
tellPlant(story);
story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
story.tell('run.started', started('run-1'));
story.tell('panels.counted', counted('run-1', 4), { tablet: 'T2' });
const told = [...story.entries].sort(compareEntries);
const before = told.slice(0, -2);
const last = before.at(-1) as Entry;
const ends = new Map(before.map((entry) => [chainId(entry), entry]));
const heads = [...ends.values()].map(({ tablet, epoch, seq, hash }) => ({ tablet, epoch, seq, hash }));
const position = { hlc: last.hlc, tablet: last.tablet, epoch: last.epoch, seq: last.seq };
const whole = packBootstrap({
  bootstrap: { fold: foldName, state: applyAll(emptyState(), before), position, count: before.length, heads },
  tail: told.slice(-2),
});
if (!unpackBootstrap(whole, foldName)) throw new Error('the snapshot to begin with is not taken');
const snapshot: unknown = JSON.parse(new TextDecoder().decode(whole));

const onSnapshots: FuzzTarget = textTarget({
  name: 'snapshots',
  share: 20_000,
  input: (plan) => mutateJson([snapshot], plan),
  read: (text) => {
    const taken = unpackBootstrap(new TextEncoder().encode(text), foldName);
    if (!taken) return;
    // What is taken can be given on.
    if (!unpackBootstrap(packBootstrap(taken), foldName)) throw new Error('taken, and cannot be given on');
  },
});

const packed = [gzipSync(whole), gzipSync(new Uint8Array(200_000))].map((bytes) => Uint8Array.from(bytes));
const MOST = 100_000;

const onPacked: FuzzTarget = bytesTarget({
  name: 'snapshots, packed',
  share: 10_000,
  input: (plan) => mutateBytes(packed, plan),
  read: async (bytes) => {
    try {
      await checkUnpacks(bytes, MOST);
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
    }
    const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
    // Broken or too long: the tablet's reader rejects, and takes none.
    const unpacked = await readUpTo(stream, MOST).catch(() => new Uint8Array());
    if (unpacked.length > MOST) throw new Error('more than may be');
    unpackBootstrap(unpacked, foldName);
  },
});

/** All of it. */
export const keptTargets: readonly FuzzTarget[] = [onOwn, onLocal, onSnapshots, onPacked];
