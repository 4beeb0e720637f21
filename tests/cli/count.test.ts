// The command `count` from text to text.

import { describe, expect, test } from 'vitest';
import { call } from './call.ts';

const ask = async (input: unknown) => {
  const { code, out, err } = await call(['count', '-'], JSON.stringify(input));
  return { code, err, answer: code === 0 ? JSON.parse(out) : null };
};

describe('reelward count', () => {
  test('counts wound tape by its thickness', async () => {
    const { answer } = await ask({ outer: 120, hub: 60, thickness: 0.95, pitch: 4, sdOuter: 1 });
    expect(answer.parts).toBeCloseTo(2232.18, 2);
    expect(answer.sd).toBeCloseTo(49.6, 1);
    expect([answer.thickness, answer.basis]).toEqual([0.95, 'measured']);
  });

  test('learns the thickness from a full reel', async () => {
    const { answer } = await ask({ outer: 60, hub: 60, pitch: 4, full: { outer: 172.4, parts: 3000 } });
    expect(answer).toMatchObject({ parts: 0, sd: 0 });
    expect(answer.thickness).toBeCloseTo(1.71, 2);
    const full = await ask({ outer: 172.4, hub: 60, pitch: 4, full: { outer: 172.4, parts: 3000 } });
    expect(full.answer.parts).toBe(3000);
  });

  test('counts by weight', async () => {
    const { answer } = await ask({ mass: 410, empty: 60, full: { mass: 760, parts: 5000 }, sdMass: 0.5 });
    expect(answer).toMatchObject({ parts: 2500, thickness: null, basis: 'weighed' });
    expect(answer.sd).toBeCloseTo((5000 / 700) * 0.5, 6);
  });

  test.each([
    { reason: 'less tape than none', input: { outer: 50, hub: 60, thickness: 1, pitch: 4 }, path: 'outer' },
    {
      reason: 'a full reel without tape',
      input: { outer: 60, hub: 60, pitch: 4, full: { outer: 60, parts: 10 } },
      path: 'full.outer',
    },
    {
      reason: 'less mass than empty',
      input: { mass: 50, empty: 60, full: { mass: 700, parts: 10 } },
      path: 'mass',
    },
    {
      reason: 'a full reel as light as an empty one',
      input: { mass: 60, empty: 60, full: { mass: 60, parts: 10 } },
      path: 'full.mass',
    },
    { reason: 'no thickness', input: { outer: 120, hub: 60, thickness: 0, pitch: 4 }, path: 'thickness' },
    {
      reason: 'a key misspelt',
      input: { outer: 120, hub: 60, thickness: 1, pitch: 4, sdOutter: 1 },
      path: 'sdOutter',
    },
    {
      reason: 'keys of two ways',
      input: { mass: 410, empty: 60, hub: 60, full: { mass: 760, parts: 5 } },
      path: 'hub',
    },
    { reason: 'nothing', input: {}, path: 'outer' },
    { reason: 'a list', input: [], path: '(document)' },
  ])('refuses with $path for $reason', async ({ input, path }) => {
    const { code, err } = await ask(input);
    expect(code).toBe(2);
    expect(err).toContain(`${path}: `);
  });

  test('prints help', async () => {
    const { code, out } = await call(['count', '--help']);
    expect([code, out.includes('sdOuter')]).toEqual([0, true]);
  });
});
