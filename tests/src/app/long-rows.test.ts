// A long list comes piece by piece: never more than a few rows at once, and in the end every row, in order, as the newest list has it.

import fc from 'fast-check';
import { h, options, render, type VNode } from 'preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { LongRows, ROWS_AT_ONCE } from '../../../src/app/long-rows.tsx';
import { Node, smallDocument } from './small-document.ts';

interface Item {
  readonly name: string;
  readonly says: number;
}

const { debounceRendering: debounce } = options;
/** What waits for the next frame. */
const frames: (() => void)[] = [];
/** Drawings that wait until what is being done is done. */
const drawings: (() => void)[] = [];
/** Tells that the browser prints. */
let browser = new EventTarget();
let printsLabels = false;

beforeEach(() => {
  vi.useFakeTimers();
  printsLabels = false;
  const body = { classList: { contains: () => printsLabels } };
  vi.stubGlobal('document', Object.assign(Object.create(smallDocument), { body }));
  browser = new EventTarget();
  vi.stubGlobal('addEventListener', browser.addEventListener.bind(browser));
  vi.stubGlobal('removeEventListener', browser.removeEventListener.bind(browser));
  frames.length = 0;
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => void frames.push(work));
  drawings.length = 0;
  options.debounceRendering = (draw) => void drawings.push(draw);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  if (debounce) options.debounceRendering = debounce;
  else delete options.debounceRendering;
});

/** Draws what waits to be drawn, without a frame in between. */
function settle(): void {
  while (drawings.length > 0) for (const drawing of drawings.splice(0)) drawing();
}

/** A page with one list; each act answers with how many rows it drew. */
function page() {
  const root = new Node(1, 'ol');
  let drawn = 0;
  const draw = ({ name, says }: Item): VNode => {
    drawn += 1;
    return h('li', { key: name }, `${name} ${says}`) as VNode; // of no props of its own
  };
  const counted = (act: () => void) => {
    drawn = 0;
    act();
    return drawn;
  };
  return {
    show: (items: readonly Item[]) =>
      counted(() => {
        const list = h(LongRows<Item>, { items, keyOf: ({ name }) => name, draw });
        render(list, root as never); // stands in for an element
        settle();
      }),
    paint: () =>
      counted(() => {
        for (const frame of frames.splice(0)) frame();
        vi.advanceTimersByTime(1); // no browser here that tells when it is idle
        settle();
      }),
    /** What was drawn when the browser took the page to paper: it waits for nothing that comes later. */
    print: () => counted(() => void browser.dispatchEvent(new Event('beforeprint'))),
    printed: () => void browser.dispatchEvent(new Event('afterprint')),
    rows: () => root.childNodes.map((row) => row.textContent),
  };
}

const items = (names: readonly number[], says = 0): readonly Item[] =>
  names.map((name) => ({ name: `R-${name}`, says }));
const text = (list: readonly Item[]) => list.map(({ name, says }) => `${name} ${says}`);

test('LongRows() draws a few rows at once, and the rest a piece with each frame', () => {
  const list = items(Array.from({ length: 3 * ROWS_AT_ONCE + 1 }, (_, at) => at));
  const { show, paint, rows } = page();
  expect(show(list)).toBe(ROWS_AT_ONCE);
  expect(rows()).toEqual(text(list.slice(0, ROWS_AT_ONCE)));
  expect([paint(), paint(), paint(), paint()]).toEqual([ROWS_AT_ONCE, ROWS_AT_ONCE, 1, 0]);
  expect(rows()).toEqual(text(list));
});

test('LongRows() lets no row go that stays in the list while it is drawn anew', () => {
  const list = items(Array.from({ length: 3 * ROWS_AT_ONCE }, (_, at) => at));
  const { show, paint, rows } = page();
  show(list);
  paint();
  paint();
  const newer = list.map(({ name }) => ({ name, says: 1 }));
  expect(show(newer)).toBe(ROWS_AT_ONCE);
  expect(rows()).toEqual([...text(newer.slice(0, ROWS_AT_ONCE)), ...text(list.slice(ROWS_AT_ONCE))]);
  paint();
  paint();
  expect(rows()).toEqual(text(newer));
});

test('LongRows() draws one piece between two frames, however often the list is handed down', () => {
  const list = items(Array.from({ length: 5 * ROWS_AT_ONCE }, (_, at) => at));
  const { show, paint, rows } = page();
  expect([show(list), show([...list]), show([...list])]).toEqual(Array(3).fill(ROWS_AT_ONCE));
  expect(rows()).toHaveLength(ROWS_AT_ONCE);
  expect(paint()).toBe(ROWS_AT_ONCE);
});

test('LongRows() comes to stand whole, and to be the newest, where the list is handed down anew after every frame', () => {
  const list = items(Array.from({ length: 5 * ROWS_AT_ONCE }, (_, at) => at));
  const { show, paint, rows } = page();
  for (let pieces = 0; pieces < 5; pieces += 1) {
    expect(show([...list])).toBe(ROWS_AT_ONCE);
    expect(paint()).toBeLessThanOrEqual(ROWS_AT_ONCE);
  }
  expect(rows()).toEqual(text(list));
  const newer = list.map(({ name }) => ({ name, says: 1 }));
  for (let pieces = 0; pieces < 5; pieces += 1) {
    show([...newer]);
    paint();
  }
  expect(rows()).toEqual(text(newer));
});

test('LongRows() stands whole on paper, with what changed just before', () => {
  const list = items(Array.from({ length: 3 * ROWS_AT_ONCE + 1 }, (_, at) => at));
  const { show, paint, print, printed, rows } = page();
  show(list);
  expect(print()).toBe(list.length - ROWS_AT_ONCE);
  expect(rows()).toEqual(text(list));
  // What is handed down while the page is on its way to paper comes whole too.
  const newer = items(Array.from({ length: 4 * ROWS_AT_ONCE }, (_, at) => at + 2));
  expect(show(newer)).toBe(newer.length);
  expect(rows()).toEqual(text(newer));
  printed();
  expect(show([...list])).toBe(ROWS_AT_ONCE);
  while (paint() > 0);
  expect(rows()).toEqual(text(list));
});

test('LongRows() draws no more than a piece where labels are printed', () => {
  const list = items(Array.from({ length: 3 * ROWS_AT_ONCE }, (_, at) => at));
  const { show, print } = page();
  show(list);
  printsLabels = true;
  expect(print()).toBe(0);
});

test('LongRows() ends with the newest list whole and in order, whenever another list came between', () => {
  const names = fc.uniqueArray(fc.nat(60), { maxLength: 45 });
  const lists = fc.array(fc.record({ names, paints: fc.nat(4) }), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(lists, (history) => {
      const { show, paint, rows } = page();
      let newest: readonly Item[] = [];
      for (const [at, each] of history.entries()) {
        newest = items(each.names, at);
        expect(show(newest)).toBeLessThanOrEqual(ROWS_AT_ONCE);
        for (let times = 0; times < each.paints; times += 1)
          expect(paint()).toBeLessThanOrEqual(ROWS_AT_ONCE);
        const order = newest.map(({ name }) => name);
        const shown = rows().map((row) => order.indexOf(row.split(' ')[0] ?? ''));
        expect(shown).toEqual([...new Set(shown)].filter((place) => place >= 0).sort((a, b) => a - b));
        expect(rows().slice(0, ROWS_AT_ONCE)).toEqual(text(newest.slice(0, ROWS_AT_ONCE)));
      }
      while (paint() > 0);
      expect(rows()).toEqual(text(newest));
    }),
    { numRuns: 200 },
  );
});
