// Proofs for papers: asked for the present life of the chain and for what the server holds, and the one just printed is kept.

import './browser.ts';
import { expect, test } from 'vitest';
import { CacheDatabase } from '../../../../src/app/store/database.ts';
import { keepRecord, keptRecord, recordPort } from '../../../../src/app/store/records.ts';
import { makeChain } from '../../../contract/entries.ts';

const record = (index: number) => ({ index, proof: [], head: 'head' });
let opened = 0;
const open = () => {
  opened += 1;
  return new CacheDatabase(`records-${opened}`);
};
const spliced = (epoch: string, count: number) =>
  makeChain({ tablet: 't1', epoch, count, kind: 'step.signed' });

test('a chain that goes on in a new life is asked for from then on', async () => {
  const chains: Record<string, ReturnType<typeof makeChain>> = { e1: spliced('e1', 3), e2: spliced('e2', 2) };
  let epoch = 'e1';
  const port = recordPort(
    open(),
    () => ({ tablet: 't1', epoch }),
    async ({ epoch: of }, seq, limit) => (chains[of] ?? []).filter((each) => each.seq > seq).slice(0, limit),
  );
  const wanted = async (acked: Readonly<Record<string, number>>) =>
    (await port.wanted(acked)).map((each) => `${each.epoch}/${each.seq}`);
  expect(await wanted({ 't1/e1': 3 })).toEqual(['e1/1', 'e1/2', 'e1/3']);
  // A server that was restored holds less: what it lost is not asked for until it has it again.
  expect(await wanted({ 't1/e1': 2 })).toEqual(['e1/1', 'e1/2']);
  await port.keep('t1/e1/1', record(0));
  expect(await wanted({ 't1/e1': 3 })).toEqual(['e1/2', 'e1/3']);
  epoch = 'e2';
  expect(await wanted({ 't1/e1': 3, 't1/e2': 2 })).toEqual(['e2/1', 'e2/2']);
});

test('the proof that was just fetched stays, however old its entry is', async () => {
  const cache = open();
  for (let at = 0; at < 200; at += 1) await keepRecord(cache, `new/${at}`, record(1000 + at));
  await keepRecord(cache, 'old', record(3));
  expect(await keptRecord(cache, 'old')).toEqual(record(3));
  expect(await keptRecord(cache, 'new/0')).toBeNull();
  expect(await keptRecord(cache, 'new/1')).not.toBeNull();
});
