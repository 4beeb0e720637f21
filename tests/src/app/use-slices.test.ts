// What a screen is told of steps: nothing until they ended, then what they came to, be that undefined.

import { h, render } from 'preact';
import { afterEach, expect, test, vi } from 'vitest';
import { useSlices } from '../../../src/app/use-slices.ts';

const ends: (() => void)[] = [];
afterEach(() => {
  for (const end of ends.splice(0)) end();
  vi.restoreAllMocks();
});

/** Draws a component that asks for the steps until it was drawn so often; answers with what it was told at each drawing. */
function toldAt<T>(drawings: number, make: () => Iterator<undefined, T>): Promise<readonly (T | null)[]> {
  return new Promise((resolve) => {
    const told: (T | null)[] = [];
    const Asking = () => {
      told.push(useSlices(make, []));
      if (told.length === drawings) resolve(told);
      return null;
    };
    // The component draws nothing, so its root need only be there.
    const root = { childNodes: [], firstChild: null } as unknown as Element;
    render(h(Asking, {}), root);
    ends.push(() => render(null, root));
  });
}

/** A clock on which each look is so long after the one before, ms. */
function eachLookTakes(ms: number): void {
  let nowMs = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => {
    nowMs += ms;
    return nowMs;
  });
}

function* threeSteps<T>(came: T): Generator<undefined, T> {
  yield;
  yield;
  return came;
}

test('useSlices() tells at once of short steps that they ended, also where they come to undefined', async () => {
  eachLookTakes(0);
  expect(await toldAt(1, () => threeSteps(undefined))).toEqual([undefined]);
});

test('useSlices() tells null of long steps until they ended, also where they come to undefined', async () => {
  eachLookTakes(1000);
  expect(await toldAt(2, () => threeSteps(undefined))).toEqual([null, undefined]);
});

test('useSlices() tells what long steps came to', async () => {
  eachLookTakes(1000);
  expect(await toldAt(2, () => threeSteps(7))).toEqual([null, 7]);
});
