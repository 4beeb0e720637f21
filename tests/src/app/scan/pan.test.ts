// A camera that passes over many labels: each is read once, whatever is in view with it, and none is made of two.

import { describe, expect, test } from 'vitest';
import type { SeenCode } from '../../../../src/app/scan/gather.ts';
import {
  EMPTY_PAN,
  type PanState,
  panFrame,
  panSettings,
  SETTLE_LOOKS,
} from '../../../../src/app/scan/pan.ts';

const envelope = (part: string, more = '') => `[)>\u001e06\u001dP${part}\u001dQ4000${more}\u001e\u0004`;

function code(
  text: string,
  x: number,
  y: number,
  more: { width?: number; height?: number; format?: string } = {},
): SeenCode {
  const { width = 60, height = 60, format = 'DataMatrix' } = more;
  return {
    text,
    format,
    symbologyId: null,
    quad: [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ],
  };
}
const bar = (text: string, x: number, y: number) =>
  code(text, x, y, { width: 160, height: 24, format: 'Code128' });

const settings = panSettings({
  claim: ({ text }) => (text.startsWith('[)>') ? 'envelope' : (/^(1T|[PQ])/.exec(text)?.[0] ?? null)),
  isAlone: ({ text }) => text.startsWith('[)>'),
  settleFor: (codes) => (codes.some(({ text }) => text.startsWith('1T')) ? SETTLE_LOOKS : null),
});

/** A pass over these looks, 100 ms apart. */
const pass = (looks: readonly (readonly SeenCode[])[], from: PanState = EMPTY_PAN) =>
  looks.reduce((state, codes, at) => panFrame(state, codes, { settings, nowMs: at * 100 }), from);

const textsOf = ({ found }: PanState) =>
  [...found.values()].map(({ codes }) => codes.map(({ text }) => text).sort());

/** A dozen labels in three rows, moved to the left by `shift`. */
const shelf = (shift: number) =>
  Array.from({ length: 12 }, (_, at) =>
    code(envelope(`P-${at}`), 100 + (at % 4) * 300 - shift, 80 + Math.floor(at / 4) * 200),
  );

describe('panFrame()', () => {
  test('finds a dozen labels in view, each once, over looks in which each is missed now and then', () => {
    const looks = Array.from({ length: 10 }, (_, look) =>
      shelf(look * 25).filter((_each, at) => (at + look) % 3 !== 0),
    );
    const state = pass(looks);
    expect(textsOf(state).flat().sort()).toEqual(
      shelf(0)
        .map(({ text }) => text)
        .sort(),
    );
    for (const { looks: seen, copies } of state.found.values()) {
      expect([6, 7]).toContain(seen);
      expect(copies).toBe(1);
    }
  });

  test('knows a label again that comes back after it was out of view, and tells when it was read first', () => {
    const [one] = shelf(0);
    const there = one === undefined ? [] : [one];
    const away = Array.from({ length: 30 }, () => []);
    const state = pass([there, ...away, there]);
    expect([...state.found.values()].map(({ looks, firstMs }) => [looks, firstMs])).toEqual([[2, 0]]);
  });

  test('tells that a label without an id is there twice, and not where one is seen after the other', () => {
    const text = envelope('P-1');
    expect([...pass([[code(text, 100, 100), code(text, 500, 100)]]).found.values()][0]?.copies).toBe(2);
    expect([...pass([[code(text, 100, 100)], [code(text, 900, 100)]]).found.values()][0]?.copies).toBe(1);
  });

  const label = (part: string, x: number, y = 100) => [
    bar(`P${part}`, x, y),
    bar('Q4000', x, y + 34),
    bar(`1T${part}L`, x, y + 68),
  ];

  test('joins the codes of a label, and leaves those of its neighbours where they are', () => {
    const look = [...label('A-1', 100), ...label('B-2', 300), ...label('C-3', 100, 260)];
    const looks = Array.from({ length: 6 }, () => look);
    expect(textsOf(pass(looks)).sort()).toEqual(
      ['A-1', 'B-2', 'C-3'].map((part) => [`1T${part}L`, `P${part}`, 'Q4000']),
    );
  });

  test('counts half a label not at all, and a label that is read further not twice', () => {
    const half = label('A-1', 100).slice(0, 2);
    expect(textsOf(pass(Array.from({ length: 12 }, () => half)))).toEqual([]);
    const most = Array.from({ length: 6 }, () => label('A-1', 100));
    const all = Array.from({ length: 6 }, () => [...label('A-1', 100), bar('9D2631', 100, 202)]);
    const further = pass([...most, ...all]);
    expect(textsOf(further)).toEqual([['1TA-1L', '9D2631', 'PA-1', 'Q4000']]);
    const back = pass(
      most,
      pass(
        Array.from({ length: 30 }, () => []),
        further,
      ),
    );
    expect(textsOf(back)).toEqual([['1TA-1L', '9D2631', 'PA-1', 'Q4000']]);
  });

  test('takes the stripes that say what a square code beside them says for no label of their own', () => {
    const look = [code(envelope('A-1', '\u001d1TA-1L'), 20, 100), ...label('A-1', 100)];
    expect(textsOf(pass(Array.from({ length: 8 }, () => look)))).toEqual([[envelope('A-1', '\u001d1TA-1L')]]);
  });

  test('keeps which part of a message each of its symbols carries', () => {
    const portion = (index: number) => ({ index, of: 2, id: '7' });
    const head = { ...code('1TA-1L\u001dQ40', 100, 100), portion: portion(0) };
    const tail = { ...code('00', 170, 100), portion: portion(1) };
    const [found] = pass(Array.from({ length: 6 }, () => [head, tail])).found.values();
    expect(found?.codes.map((each) => each.portion)).toEqual([portion(0), portion(1)]);
  });

  test('believes stripes by two looks only', () => {
    expect(pass([label('A-1', 100)]).inView).toEqual([]);
  });

  test('takes a label out of the picture some looks after it was read last', () => {
    const beside = code(envelope('B-2'), 500, 100);
    const gone = Array.from({ length: 5 }, () => [beside]);
    const state = pass([[code(envelope('A-1'), 100, 100), beside], ...gone]);
    expect(state.inView.map(({ key }) => key)).toEqual([envelope('B-2')]);
  });
});
