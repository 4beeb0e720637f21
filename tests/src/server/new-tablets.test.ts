// What a new tablet starts from grows with the plant. As it nears what may be handed over, and once it is beyond that, the server tells it:
// to tablets, in its health, as a number and in its log; and no tablet makes it again and again for nothing.

import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { formatCursor, startCursor } from '../../../shared/wire/cursor.ts';
import { snapshotBytes, snapshotUnpackedBytes } from '../../../shared/wire/limits.ts';
import { roomShare, roomWord } from '../../../shared/wire/state-room.ts';
import { giveSnapshot } from '../../../src/app/sync/snapshot.ts';
import { metricsKeyFile } from '../../../src/server/http/metrics-key.ts';
import { type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

let lines: string[];
beforeEach(() => {
  lines = [];
});
const plant = usePlant({ logLevel: 'warn', logTo: { write: (line) => void lines.push(line) } });

const mib = 2 ** 20;
/** Bytes that pack to no less than they are. */
const bytesOf = (size: number) => new Uint8Array(randomBytes(size));
const portOf = (make: () => Promise<Uint8Array>) => ({ fold: 'f', make, take: async () => false });

const give = ({ log, caller }: TestTablet, plain: Uint8Array) =>
  giveSnapshot({
    log: { ...log, snapshots: portOf(async () => plain) },
    caller,
    cursor: formatCursor(startCursor),
  });

async function told(): Promise<{
  readonly health: unknown;
  readonly status: number;
  readonly share: number;
}> {
  const { url } = plant.server.running;
  const response = await fetch(`${url}/health`);
  const { newTablets } = (await response.json()) as { readonly newTablets?: unknown };
  const key = readFileSync(join(plant.server.folder, metricsKeyFile), 'utf8').trim();
  const metrics = await (
    await fetch(`${url}/metrics`, { headers: { authorization: `Bearer ${key}` } })
  ).text();
  const share = /^reelward_new_tablet_state_share\{plant="[^"]+"\} (\S+)$/m.exec(metrics)?.[1];
  return { health: newTablets, status: response.status, share: Number(share) };
}
const logged = () =>
  lines.map((line) => JSON.parse(line) as Record<string, unknown>).filter((line) => 'newTablets' in line);

describe('the state that a new tablet starts from', () => {
  it('is told as it nears its room, where it is beyond it, and as one that fits after that', async () => {
    const tablet = await plant.join('t1');
    expect(await told()).toEqual({ health: undefined, status: 200, share: 0 });
    await give(tablet, bytesOf(9 * mib));
    const near = await told();
    expect(near).toMatchObject({ health: { state: 'nears' }, status: 200 });
    expect(near.share).toBeCloseTo(9 / 16, 2);
    expect(logged()).toMatchObject([{ newTablets: 'nears' }]);

    await give(tablet, bytesOf(17 * mib));
    const over = await told();
    expect(over).toMatchObject({ health: { state: 'over' }, status: 200 });
    expect(over.share).toBeCloseTo(17 / 16, 2);
    expect(logged()).toMatchObject([{ newTablets: 'nears' }, { newTablets: 'over' }]);
    // What was handed over before is kept: a new tablet starts from that, and reads on from there.
    expect((await plant.server.running.store.snapshot('f'))?.bytes.length).toBeGreaterThan(9 * mib);
    tablet.start();
    await until('the news', () => (tablet.status()?.stateShare ?? 0) > 1);
    await tablet.stop();

    await give(tablet, bytesOf(100));
    expect(await told()).toMatchObject({ health: { state: 'fits' } });
    expect(logged()).toHaveLength(2);
  }, 60_000);

  it('is not made again at each page where it was too large', async () => {
    const tablet = await plant.join('t1');
    let made = 0;
    const make = async () => {
      made += 1;
      return bytesOf(17 * mib);
    };
    Object.assign(tablet.log, { snapshots: portOf(make) });
    tablet.log.write(5_600);
    tablet.start();
    await until('word of it', async () => (await told()).share > 1, 60_000);
    for (let more = 1; more <= 3; more++) {
      tablet.log.write(50);
      tablet.now();
      await until('the page', () => tablet.log.memory.acked['t1/e1'] === 5_600 + more * 50);
    }
    await tablet.stop();
    expect(made).toBe(1);
  }, 120_000);

  it.each([
    ['that would fit', `packed=${snapshotBytes}&plain=${snapshotUnpackedBytes}`],
    ['of one number', `packed=${snapshotBytes * 2}`],
    ['that is none', 'packed=1e9&plain=-1'],
    ['beyond all numbers', `packed=${'9'.repeat(400)}&plain=1`],
  ])('is not taken by a size %s', async (_, size) => {
    const { caller } = await plant.join('t1');
    const path = `/api/snapshot?fold=f&after=${formatCursor(startCursor)}&${size}`;
    expect(await caller.open(path, { method: 'PUT', bytes: new Uint8Array() })).toMatchObject({
      ok: false,
      error: { code: 'bad-query' },
    });
    expect((await told()).health).toBeUndefined();
  });
});

describe('the share of the room', () => {
  it('is that of the packed bytes or of those unpacked, whichever is nearer to its bound', () => {
    expect(roomShare({ packed: snapshotBytes, plain: 1 })).toBe(1);
    expect(roomShare({ packed: 1, plain: snapshotUnpackedBytes })).toBe(1);
    expect(roomWord(roomShare({ packed: snapshotBytes, plain: snapshotUnpackedBytes }))).toBe('nears');
    expect(roomWord(roomShare({ packed: snapshotBytes + 1, plain: 1 }))).toBe('over');
    expect(roomWord(roomShare({ packed: 1, plain: snapshotUnpackedBytes + 1 }))).toBe('over');
    expect(roomWord(roomShare({ packed: snapshotBytes / 2 - 1, plain: 1 }))).toBe('fits');
  });
});
