// The pick list of a run: a store of thousands of packages has hundreds of reels for it, and they come piece by piece; none is left out.

import { signal } from '@preact/signals';
import { h, options, render } from 'preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Reel } from '../../../../../shared/floor/state.ts';
import type { PickLine } from '../../../../../shared/forecast/outlook.ts';
import type { Supply } from '../../../../../shared/outlook/supply.ts';
import { type App, AppContext } from '../../../../../src/app/app.ts';
import { ROWS_AT_ONCE } from '../../../../../src/app/long-rows.tsx';
import { Bring } from '../../../../../src/app/screens/stock/Bring.tsx';
import { Node, smallDocument } from '../../small-document.ts';

const { debounceRendering: debounce } = options;
/** What waits for the next frame, and drawings that follow. */
const waiting: (() => void)[] = [];

beforeEach(() => {
  vi.stubGlobal('document', smallDocument);
  vi.stubGlobal('addEventListener', () => undefined);
  waiting.length = 0;
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => void waiting.push(work));
  options.debounceRendering = (draw) => void waiting.push(draw);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  if (debounce) options.debounceRendering = debounce;
  else delete options.debounceRendering;
});

const reelAt = (at: number): Reel => ({
  reel: `K-${at}`,
  part: 'R-100',
  supplierPart: null,
  lot: null,
  dateCode: null,
  count: 100 + at,
  sd: 1,
  basis: 'label',
  at: null,
  place: 'A-1',
});
const pick = (part: string, place: string): PickLine => ({
  part,
  place,
  reels: 2,
  byMs: 9000,
  slots: ['M1-F-001'],
});

function rowsIn(node: Node): readonly string[] {
  if (node.names.get('class')?.split(' ').includes('pick')) return [node.textContent];
  return node.childNodes.flatMap(rowsIn);
}

test('hundreds of reels on hand come a few rows at once, then what is to be brought, each place of a part by itself', () => {
  const onHand = Array.from({ length: 300 }, (_, at) => ({ reel: reelAt(at), slot: `M1-F-${at}` }));
  const picks = [pick('C-200', 'A-1'), pick('C-200', 'B-2'), pick('C-300', 'B-2')];
  const supply: Supply = { slots: [], onHand, picks };
  const root = new Node(1, 'main');
  const app = { nowMs: signal(1000) } as unknown as App; // all that is asked of it
  const drawn = h(AppContext.Provider, { value: app }, h(Bring, { supply, zone: 'UTC', hold: null }));
  render(drawn, root as never); // stands in for an element
  const seen = [0, rowsIn(root).length];
  while (waiting.length > 0) {
    for (const next of waiting.splice(0)) next();
    vi.advanceTimersByTime(1); // no browser here that tells when it is idle
    seen.push(rowsIn(root).length);
  }
  const rows = rowsIn(root);
  expect(rows).toHaveLength(303);
  for (const [at, { reel }] of onHand.entries()) expect(rows[at]).toContain(reel.reel);
  expect(rows.slice(300).map((text) => text.slice(0, 5))).toEqual(['C-200', 'C-200', 'C-300']);
  const grown = seen.map((count, at) => count - (seen[at - 1] ?? 0));
  expect(Math.max(...grown)).toBeLessThanOrEqual(ROWS_AT_ONCE);
});
