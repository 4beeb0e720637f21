// Long work in slices: as many steps as fit into one, the rest later, none after it was stopped.

import { afterEach, expect, test, vi } from 'vitest';
import { bySlices, inSlices, takeSlice } from '../../../../src/app/device/slices.ts';

afterEach(() => vi.restoreAllMocks());

/** A clock on which each step lasts so long, ms. */
function eachStepLasts(ms: number): void {
  let nowMs = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => {
    nowMs += ms;
    return nowMs;
  });
}

function* countTo(most: number, seen: number[]): Generator<undefined, string> {
  for (let at = 1; at <= most; at += 1) {
    seen.push(at);
    yield;
  }
  return 'done';
}

test('takeSlice() takes what fits, and leaves the rest to the next slice', () => {
  eachStepLasts(3);
  const seen: number[] = [];
  const steps = countTo(5, seen);
  expect([takeSlice(steps), [...seen]]).toEqual([undefined, [1, 2, 3]]);
  expect(takeSlice(steps)).toEqual({ came: 'done' });
  expect(seen).toEqual([1, 2, 3, 4, 5]);
});

test('takeSlice() takes one step at least, however long it lasts', () => {
  eachStepLasts(1000);
  const seen: number[] = [];
  expect([takeSlice(countTo(2, seen)), seen]).toEqual([undefined, [1]]);
});

test('inSlices() goes on to the end and tells what it came to', async () => {
  eachStepLasts(5);
  const seen: number[] = [];
  const came = await new Promise((resolve) => inSlices(countTo(9, seen), resolve));
  expect([came, seen.length]).toEqual(['done', 9]);
});

test('inSlices() that is stopped takes no step more and tells nothing', async () => {
  eachStepLasts(1000);
  const seen: number[] = [];
  const told = vi.fn();
  const stop = inSlices(countTo(9, seen), told);
  stop();
  // Another one that comes to its end has had its turns after it.
  await new Promise((resolve) => inSlices(countTo(3, []), resolve));
  expect([seen, told.mock.calls]).toEqual([[], []]);
});

test('bySlices() takes at once what one slice holds, and lets others have their turn where it is more', async () => {
  eachStepLasts(3);
  const order: string[] = [];
  const tell = (what: string) => () => order.push(what);
  const short = bySlices(countTo(1, [])).then(tell('short'));
  const seen: number[] = [];
  const long = bySlices(countTo(9, seen)).then(tell('long'));
  expect(seen).toEqual([1, 2, 3]);
  const other = new Promise((resolve) => inSlices(countTo(1, []), resolve)).then(tell('other'));
  await Promise.all([short, long, other]);
  expect([order, seen.length]).toEqual([['short', 'other', 'long'], 9]);
});

test('bySlices() rejects with what a later step throws', async () => {
  eachStepLasts(1000);
  function* failing(): Generator<undefined, string> {
    yield;
    throw new Error('no more');
  }
  await expect(bySlices(failing())).rejects.toThrow('no more');
});
