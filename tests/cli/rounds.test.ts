// The command `rounds` from text to text.

import { describe, expect, test } from 'vitest';
import { call } from './call.ts';

const at = (time: string) => `2026-03-02T${time}+01:00`;
const splice = (slot: string, opens: string, closes: string) => ({
  slot,
  opens: at(opens),
  closes: at(closes),
});
const input = {
  now: at('06:00:00'),
  walk: 60,
  each: 45,
  splices: [splice('M1-F-014', '08:10:00', '08:15:00'), splice('M1-R-002', '08:12:00', '08:20:00')],
};
const ask = async (change: object) => call(['rounds', '-'], JSON.stringify({ ...input, ...change }));

describe('reelward rounds', () => {
  test('is the same as `walks`', async () => {
    expect(await call(['walks', '-'], JSON.stringify(input))).toEqual(await ask({}));
  });

  test('does two overlapping windows in one walk, as late as it may', async () => {
    const { code, out } = await ask({});
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({
      rounds: [{ start: at('08:13:15'), end: at('08:15:45'), slots: ['M1-F-014', 'M1-R-002'] }],
      missed: [],
      proven: true,
    });
  });

  test('names what is missed, by when it would have had to be done, and why', async () => {
    const splices = [...input.splices, splice('M2-F-001', '05:50:00', '06:01:00')];
    const { code, out } = await ask({ splices });
    expect(code).toBe(0);
    expect(JSON.parse(out).missed).toEqual([
      { slot: 'M2-F-001', by: at('06:01:00'), reason: 'closesTooSoon' },
    ]);
  });

  test('has nothing to do for no splices, and keeps the offset of now', async () => {
    expect(JSON.parse((await ask({ splices: [] })).out)).toEqual({ rounds: [], missed: [], proven: true });
    const zulu = await ask({ now: '2026-03-02T05:00:00Z' });
    expect(JSON.parse(zulu.out).rounds[0].start).toBe('2026-03-02T07:13:15Z');
  });

  test.each([
    { reason: 'a negative walk', change: { walk: -1 }, path: 'walk' },
    {
      reason: 'a window that closes before it opens',
      change: { splices: [splice('a', '08:10:00', '08:00:00')] },
      path: 'splices[0].closes',
    },
    { reason: 'a key misspelt', change: { wlak: 1 }, path: 'wlak' },
    { reason: 'a moment without offset', change: { now: '2026-03-02T06:00:00' }, path: 'now' },
  ])('refuses with $path for $reason', async ({ change, path }) => {
    const { code, err } = await ask(change);
    expect(code).toBe(2);
    expect(err).toContain(`${path}: `);
  });

  test('says the line when the input is not JSON', async () => {
    const { code, err } = await call(['rounds', '-'], '{\n "now": oops');
    expect(code).toBe(2);
    expect(err).toContain('line 2');
  });
});
