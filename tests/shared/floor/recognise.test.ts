// What a scanned text names: only what the plant knows, only as a whole, and both where two lists know it.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recognise } from '../../../shared/floor/recognise.ts';
import { beginStory, started, tellPlant, verified } from './story.ts';

function floorOf() {
  const story = beginStory();
  tellPlant(story);
  story.tell('feeder.known', { feeder: 'F-7', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  story.tell('person.added', { person: 'ana', name: 'Ana', role: 'operator', badge: 'B-100', pin: null });
  story.tell('person.added', { person: 'bo', name: 'Bo', role: 'operator', badge: 'F-7', pin: null });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', feeder: 'F-9' }));
  story.tell('reel.verified', verified('M1-F-002', 'C-200'));
  story.tell('cart.filled', {
    cart: 'CART-1',
    line: 'L1',
    setup: 'brook-top-a',
    slot: 'M1-F-001',
    feeder: null,
    reel: null,
    part: 'R-100',
    supplierPart: null,
    lot: null,
    dateCode: null,
    quantity: 1,
    of: 'x',
  });
  story.tell('run.started', started('run-1', { panelPrefix: 'BW-' }));
  return story.floor();
}
const floor = floorOf();

describe('recognise()', () => {
  test('tells each kind of thing that the plant knows', () => {
    const rows: readonly (readonly [text: string, known: readonly object[]])[] = [
      ['M1-F-001', [{ is: 'slot', line: 'L1', slot: 'M1-F-001' }]],
      ['M1-R-020', [{ is: 'slot', line: 'L1', slot: 'M1-R-020' }]],
      [' M1-F-001\r', [{ is: 'slot', line: 'L1', slot: 'M1-F-001' }]],
      ['F-9', [{ is: 'feeder', feeder: 'F-9' }]],
      ['B-100', [{ is: 'person', person: 'ana' }]],
      ['CART-1', [{ is: 'cart', cart: 'CART-1' }]],
      ['CART-2', []],
      ['K1', [{ is: 'reel', reel: 'K1' }]],
      ['BW-0001', [{ is: 'panel', run: 'run-1', serial: 'BW-0001' }]],
    ];
    for (const [text, known] of rows) expect(recognise(floor, 'L1', text), text).toEqual(known);
  });

  test('gives both where two lists know a text', () => {
    expect(recognise(floor, 'L1', 'F-7')).toEqual([
      { is: 'feeder', feeder: 'F-7' },
      { is: 'person', person: 'bo' },
    ]);
  });

  test('finds slots of every line where no line is in hand', () => {
    expect(recognise(floor, null, 'M1-F-001')).toEqual([{ is: 'slot', line: 'L1', slot: 'M1-F-001' }]);
    expect(recognise(floor, 'L9', 'M1-F-001')).toEqual([]);
    expect(recognise(floor, null, 'BW-0001')).toEqual([]);
  });

  test('tells nothing from first letters: no cut, longer or other text is recognised', () => {
    const known = ['M1-F-001', 'F-7', 'F-9', 'B-100', 'K1'];
    for (const text of known) {
      for (let end = 0; end < text.length; end += 1)
        expect(recognise(floor, 'L1', text.slice(0, end))).toEqual([]);
      for (const more of ['x', '-', ' 1']) expect(recognise(floor, 'L1', text + more)).toEqual([]);
    }
    for (const text of [
      'M1-F-021',
      'M1-F-000',
      'M2-F-001',
      'M1-X-001',
      'BW-',
      'b-100',
      'PR-100',
      '1TLOT7',
      'QTY 1000',
    ])
      expect(recognise(floor, 'L1', text), text).toEqual([]);
  });

  test('does not take the name of a reel without an id for a scan', () => {
    const nameless = [...floor.reels.keys()].find((reel) => reel.startsWith('~')) ?? '';
    expect(nameless).not.toBe('');
    expect(recognise(floor, 'L1', nameless)).toEqual([]);
  });

  test('recognises nothing in a plant that knows nothing, and never throws', () => {
    const empty = beginStory().floor();
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(recognise(empty, null, text)).toEqual([]);
        expect(recognise(floor, 'L1', `?${text}`)).toEqual([]);
      }),
    );
  });
});
