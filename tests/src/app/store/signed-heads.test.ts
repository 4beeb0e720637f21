// The head of a tablet's chain is signed soon after an append and after a start, in no entry's way; what a tablet hands on carries it.

import './browser.ts';

import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { aheadLimitMs } from '../../../../shared/log/clock.ts';
import { chainId, type Entry } from '../../../../shared/log/entry.ts';
import { parseExport } from '../../../../shared/log/export-read.ts';
import { verifyExport } from '../../../../shared/log/export-verify.ts';
import { somebodyWaits } from '../../../../src/app/device/awaited.ts';
import { exportStore } from '../../../../src/app/screens/log/export-log.ts';
import { readSignedHeads, signHead } from '../../../../src/app/store/signed-heads.ts';
import { openStore, type Store } from '../../../../src/app/store/store.ts';
import { checkSignatures } from '../../../../src/cli/log-file.ts';

const trueMs = Date.UTC(2026, 2, 2, 8, 5);
let wallMs = trueMs;
let turn = 0;
let opened: Store[] = [];

const open = async () => {
  const clock = { nowMs: () => wallMs++ };
  const name = `signed-heads-${turn}`;
  const store = await openStore({ clock, appVersion: '0.1.0', tabletName: 'front', name });
  opened.push(store);
  return store;
};
const closeAll = async () => {
  for (const store of opened) await store.close();
  opened = [];
};
const named = (name: string) => ({ kind: 'tablet.named' as const, payload: { name } });
const headOf = async ({ log, identity }: Store) => (await readSignedHeads(log))[identity.epoch];

/** What an export of the tablet's own log proves. */
async function exported(store: Store) {
  const { blob } = await exportStore(store, {}, 'json');
  const reading = parseExport(await blob.text());
  const signatures = checkSignatures(reading.entries);
  const { holds, lacksHead } = signatures;
  const report = verifyExport(reading, { signatureHolds: holds, mustBeSigned: lacksHead });
  return { ...report, ...signatures };
}

beforeEach(() => {
  turn += 1;
  wallMs = trueMs;
  localStorage.clear();
});
afterEach(closeAll);

describe('the head', () => {
  test('is signed after an append, and stands in no entry', async () => {
    const store = await open();
    await store.append([named('one')], 'p1');
    const last = (await store.append([named('two')], 'p1')).at(-1) as Entry;
    expect(last.sig).toBe(null);
    await expect.poll(() => headOf(store)).toMatchObject({ seq: 3, hash: last.hash });
    expect((await store.log.entries.toArray()).map(({ entry }) => entry.sig)).toEqual([null, null, null]);
  });

  test('is signed by the next start where the tablet was stopped before', async () => {
    const first = await open();
    const last = (await first.append([named('one')], 'p1')).at(-1) as Entry;
    await closeAll();
    const store = await open();
    await expect.poll(() => headOf(store)).toMatchObject({ seq: 2, hash: last.hash });
  });

  test('is signed after a verdict that is awaited, but within a second of the append', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    vi.stubGlobal('requestAnimationFrame', () => 0);
    const store = await open();
    const last = (await store.append([named('one')], 'p1')).at(-1) as Entry;
    const answered = somebodyWaits();
    const looked = vi.spyOn(store.log.entries, 'where'); // the end of the chain, before it is signed
    try {
      vi.advanceTimersByTime(800);
      expect(looked).not.toHaveBeenCalled();
      vi.advanceTimersByTime(200);
      await expect.poll(() => headOf(store)).toMatchObject({ seq: 2, hash: last.hash });
    } finally {
      answered();
      vi.runAllTimers();
      vi.restoreAllMocks();
      vi.unstubAllGlobals();
      vi.useRealTimers();
    }
  });

  test('gives way to no earlier one, whichever window signs last', async () => {
    const store = await open();
    const late = signHead(store.log, store.identity);
    await store.append([named('one')], 'p1');
    await Promise.all([late, signHead(store.log, store.identity)]);
    expect(await headOf(store)).toMatchObject({ seq: 2 });
  });

  test('does not stand for what proves something by itself: a ticket is signed when it is written', async () => {
    const store = await open();
    const [entry] = await store.append(
      [{ kind: 'ticket.taken', payload: { person: 'ana', ticket: 'e30.e30.AA' } }],
      null,
    );
    expect(entry?.sig).toMatch(/^[\w-]{86}$/);
  });
});

describe('an export of a tablet', () => {
  test('carries the head, also of entries written a moment ago', async () => {
    const store = await open();
    await store.append([named('one'), named('two')], 'p1');
    const report = await exported(store);
    expect(report).toMatchObject({ ok: true, firstBroken: null, checked: 1 });
    expect(report.signedTo).toMatchObject([{ signedTo: 3, lastSeq: 3, notVouched: 0 }]);
  });

  test('carries the head of a life that a wrong clock ended, where that ends now', async () => {
    const store = await open();
    await store.append([named('before')], 'p1');
    const before = chainId(store.identity);
    wallMs = trueMs + 3 * aheadLimitMs;
    await store.append([named('while wrong')], 'p1');
    await signHead(store.log, store.identity);
    await store.rightClocks({
      nowMs: trueMs + 60_000,
      offMs: 60_000 - 3 * aheadLimitMs,
      acked: { [before]: 2 },
    });
    const report = await exported(store);
    expect(report).toMatchObject({ ok: true, firstBroken: null });
    expect(report.signedTo.map(({ signedTo, notVouched }) => [signedTo, notVouched])).toEqual([
      [2, 0],
      [2, 0],
    ]);
  });
});
