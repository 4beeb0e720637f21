// What a tablet does with what it pulls and cannot be an entry: it is set aside in a form that can be kept, and the rest goes on.

import { expect, test } from 'vitest';
import { checkPulled } from '../../../../src/app/sync/check.ts';
import { makeChain, startMs } from '../../../contract/entries.ts';

const nested = (levels: number): unknown => JSON.parse('['.repeat(levels) + ']'.repeat(levels));

test('entries nested deeper than any stack are set aside, flat, and the others are taken', async () => {
  const [one, two] = makeChain({ tablet: 't1', count: 2 });
  const deep = nested(50_000);
  const values = [one, { ...one, payload: { deep } }, deep, { ...two, at: 'never', payload: { deep } }, two];
  const { entries, quarantined } = await checkPulled(values, { log: {}, serverMs: startMs + 60_000 });
  expect(entries).toEqual([one, two]);
  expect(quarantined.map(({ fault }) => fault)).toEqual(['unreadable', 'unreadable', 'unreadable']);
  // As the store names and keeps it.
  for (const { value } of quarantined)
    expect(structuredClone(value)).toEqual(JSON.parse(JSON.stringify(value)));
  expect(quarantined[0]?.value).toMatchObject({ tablet: 't1', seq: 1, payload: '(nested too deep)' });
});

test('what is no entry and is not deep is kept as it came', async () => {
  const values = [null, 5, 'x', { payload: [[[]]] }];
  const { quarantined } = await checkPulled(values, { log: {}, serverMs: startMs });
  expect(quarantined.map(({ value }) => value)).toEqual(values);
});
