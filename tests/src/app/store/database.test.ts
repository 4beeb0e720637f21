// Why a database cannot go on: the cause is found however deep the library wraps it.

import './browser.ts';
import Dexie from 'dexie';
import { expect, test } from 'vitest';
import { CacheDatabase, storeFault } from '../../../../src/app/store/database.ts';
import {
  firstPreferences,
  keep,
  keepPreferences,
  readKept,
  readPreferences,
} from '../../../../src/app/store/preferences.ts';

const named = (name: string, message = '', inner?: unknown) =>
  Object.assign(new Error(message), { name, inner });

test('`storeFault()` names what people can act on', () => {
  const rows: readonly (readonly [error: unknown, fault: string, why: string])[] = [
    [named('QuotaExceededError'), 'disk-full', 'bare'],
    [named('AbortError', 'aborted', named('QuotaExceededError')), 'disk-full', 'in an abort'],
    [
      named('BulkError', '', named('AbortError', '', named('QuotaExceededError'))),
      'disk-full',
      'twice wrapped',
    ],
    [new Dexie.QuotaExceededError(), 'disk-full', 'the library’s own'],
    [named('AbortError', 'Encountered full disk while opening: no space left'), 'disk-full', 'said in words'],
    [new Dexie.VersionError(), 'closed-by-newer', 'an older app'],
    [new Dexie.DatabaseClosedError(), 'closed-by-newer', 'closed by a newer window'],
    [named('UnknownError', 'Internal error'), 'lost', 'damaged files'],
    [new Dexie.OpenFailedError('', new Error('x')), 'lost', 'does not open'],
    [named('TypeError', 'x is not a function'), 'unknown', 'a fault of ours'],
    ['text', 'unknown', 'no error at all'],
    [null, 'unknown', 'nothing'],
  ];
  for (const [error, fault, why] of rows) expect(storeFault(error), why).toBe(fault);
});

test('`storeFault()` ends on causes that go in a circle', () => {
  const error = named('AbortError');
  error.inner = error;
  expect(storeFault(error)).toBe('unknown');
});

test('preferences are as on the first day until kept, and missing ones are filled in', async () => {
  const cache = new CacheDatabase('preferences-test');
  expect(await readPreferences(cache)).toEqual(firstPreferences);
  await keepPreferences(cache, { ...firstPreferences, line: 'L1', language: 'es' });
  expect(await readPreferences(cache)).toMatchObject({ line: 'L1', language: 'es', sound: true });
  await cache.kept.put({ key: 'preferences', value: { line: 'L2' } });
  expect(await readPreferences(cache)).toEqual({ ...firstPreferences, line: 'L2' });
  expect(await readKept(cache, 'thing')).toBeNull();
  await keep(cache, 'thing', { n: 1 });
  expect(await readKept(cache, 'thing')).toEqual({ n: 1 });
  cache.close();
});

test('a cache that is broken is a fresh one, and keeping in it fails in silence', async () => {
  const cache = new CacheDatabase('broken-cache');
  cache.close({ disableAutoOpen: true });
  expect(await readPreferences(cache)).toEqual(firstPreferences);
  expect(await readKept(cache, 'thing')).toBeNull();
  await expect(keepPreferences(cache, firstPreferences)).resolves.toBeUndefined();
  await expect(keep(cache, 'thing', 1)).resolves.toBeUndefined();
});
