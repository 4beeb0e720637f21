// Whose server refused a tablet: asked only where the refusal may be another plant's.

import { expect, test } from 'vitest';
import { ok } from '../../../../shared/kit/result.ts';
import type { Caller, CallFailure } from '../../../../src/app/sync/http.ts';
import { sayOtherPlant } from '../../../../src/app/sync/other-plant.ts';

const own = { plant: 'Brae Works', serverKey: 'key of Brae' };
const failed = (code: CallFailure['code']): CallFailure => ({ code, facts: {}, retryAfterMs: null });

/** What is said of a failure where the server tells itself so, and what was asked for it. */
async function said(code: CallFailure['code'], met: { readonly plant: string; readonly serverKey: string }) {
  const asked: string[] = [];
  const readOwn = async () => {
    asked.push('memory');
    return own;
  };
  const call = async (path: string) => {
    asked.push(path);
    return ok(met);
  };
  const failure = await sayOtherPlant(failed(code), readOwn, { call: call as unknown as Caller['call'] }); // answers as that path does
  return { code: failure.code, asked };
}

const tarn = { plant: 'Tarn Works', serverKey: 'key of Tarn' };

test('a server that does not know the tablet and has another name and key is that of another plant', async () => {
  expect(await said('tablet-unknown', tarn)).toEqual({ code: 'other-plant', asked: ['memory', '/api/info'] });
  const renamed = { ...tarn, serverKey: own.serverKey };
  expect((await said('tablet-unknown', renamed)).code).toBe('tablet-unknown');
});

test('of any other failure neither the tablet’s memory nor the server is asked', async () => {
  for (const code of ['unreachable', 'tablet-revoked'] as const)
    expect(await said(code, tarn)).toEqual({ code, asked: [] });
});
