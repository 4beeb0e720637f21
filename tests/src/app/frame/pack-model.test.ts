// What is entered of a package: figures that make no package are told, and a tapped pocket is a count.

import { describe, expect, test } from 'vitest';
import { readPack, startPack, trayOf } from '../../../../src/app/frame/pack-model.ts';

const tray = { ...startPack(null, 'tray'), rows: '6', columns: '15', trays: '2' };
const tube = { ...startPack(null, 'tube'), tubes: '3', parts: '50' };

describe('a package as entered', () => {
  test('begins with what its slot is fed from, or with what was said of it before', () => {
    expect(startPack(null, null).kind).toBe('tape');
    expect(startPack(null, 'tube').kind).toBe('tube');
    expect(startPack({ comesIn: 'bulk' }, 'tube').kind).toBe('bulk');
    expect(startPack({ comesIn: 'tube', tube: { tubes: 3, parts: 50 } }, null)).toMatchObject({
      parts: '50',
    });
  });

  test('tells its count only where a pocket was tapped', () => {
    const form = { rows: 6, columns: 15, trays: 2, first: 'top-left', along: 'rows', pin1: null };
    expect(trayOf(tray)).toEqual(form);
    expect(readPack(tray)).toEqual({ pack: { comesIn: 'tray', tray: form }, left: null });
    expect(readPack({ ...tray, next: { tray: 2, row: 1, column: 1 } })).toMatchObject({ left: 90 });
  });

  test.each([['0'], ['101'], [''], ['1.5'], ['-2']])('a tray of %s rows is none', (rows) => {
    expect(readPack({ ...tray, rows })).toEqual({ wrong: 'figures' });
  });

  test('counts full tubes and what is in the open one', () => {
    expect(readPack(tube)).toEqual({ pack: { comesIn: 'tube', tube: { tubes: 3, parts: 50 } }, left: 150 });
    expect(readPack({ ...tube, loose: '12' })).toEqual({
      pack: { comesIn: 'tube', tube: { tubes: 4, parts: 50 } },
      left: 162,
    });
    expect(readPack({ ...tube, loose: '50' })).toEqual({ wrong: 'loose' });
    expect(readPack({ ...tube, tubes: '0' })).toEqual({ wrong: 'figures' });
    expect(readPack({ ...tube, tubes: '0', loose: '12' })).toMatchObject({ left: 12 });
  });

  test('counts no tubes where the form is opened again and saved: parts were taken since', () => {
    const known = { comesIn: 'tube', tube: { tubes: 3, parts: 50 } } as const;
    const again = startPack(known, null);
    expect(readPack(again)).toEqual({ pack: known, left: null });
    expect(readPack({ ...again, tubes: '1', loose: '7' })).toEqual({
      pack: { comesIn: 'tube', tube: { tubes: 2, parts: 50 } },
      left: 57,
    });
    expect(readPack({ ...again, loose: '7' })).toEqual({ wrong: 'figures' });
    expect(readPack(startPack(null, 'tube'))).toEqual({ wrong: 'figures' });
  });
});
