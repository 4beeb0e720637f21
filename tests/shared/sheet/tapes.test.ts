import { describe, expect, it } from 'vitest';
import {
  isTapeWidth,
  listedPitchesMm,
  positionsForWidth,
  tapeWidthsMm,
} from '../../../shared/sheet/tapes.ts';

describe('listedPitchesMm()', () => {
  // ANSI/EIA-481-D tables 2 and 3, read at https://pdf.51smt.cn/ccf518d0a7eefa221413d46bbef09add?page=20 to 22; 4 mm from memory.
  it.each([
    [4, [1, 2]],
    [8, [2, 4]],
    [12, [2, 4, 8]],
    [16, [4, 8, 12]],
    [24, [4, 8, 12, 16, 20]],
    [32, [4, 8, 12, 16, 20, 24, 28, 32]],
    [44, [4, 8, 12, 16, 20, 24, 28, 32, 36, 40, 44]],
  ])('lists for %s mm tape: %j', (width, wanted) => {
    expect(listedPitchesMm(width)).toEqual(wanted);
  });

  it('lists 4 to 72 in steps of 4 from 72 mm on, and nothing for an unknown width', () => {
    expect(listedPitchesMm(200)).toHaveLength(18);
    expect(listedPitchesMm(72).at(-1)).toBe(72);
    expect(listedPitchesMm(9)).toEqual([]);
  });

  // Widths and pitches of parts as data sheets give them.
  it.each([
    [8, 4, 'SOT-23', 'https://www.ti.com/jp/ods/sysadd/pm/symlink/ina2180_pm.pdf'],
    [12, 8, 'SOIC-8', 'https://www.ti.com/ods/sysadd/pm/symlink/tl3845_pm.pdf'],
    [16, 8, 'SOIC-14', 'https://www.ti.com/ods/sysadd/pm/symlink/tl3845_pm.pdf'],
    [16, 12, 'SSOP-14', 'https://www.ti.com/ods/sysadd/pm/symlink/sn74lvc00a_pm.pdf'],
    [24, 16, 'TO-263', 'https://www.ti.com/ods/sysadd/pm/symlink/lp2954a_pm.pdf'],
  ])('holds %s mm at %s mm (%s, %s)', (width, pitch) => {
    expect(listedPitchesMm(width)).toContain(pitch);
  });
});

describe('isTapeWidth()', () => {
  it('knows the widths of EIA-481 and no other', () => {
    expect(tapeWidthsMm.every(isTapeWidth)).toBe(true);
    expect([9, 0, 20, 8.3, Number.NaN].some(isTapeWidth)).toBe(false);
  });
});

describe('positionsForWidth()', () => {
  // Common practice: 44 feeders of 8 mm and 2 of 12 mm take 48 positions.
  it('fills 48 positions with 44 feeders of 8 mm and 2 of 12 mm', () => {
    const eight = positionsForWidth(8) ?? Number.NaN;
    const twelve = positionsForWidth(12) ?? Number.NaN;
    expect(44 * eight + 2 * twelve).toBe(48);
  });

  it("takes the site's table first and gives null for an unknown width", () => {
    expect(positionsForWidth(12, { 12: 1 })).toBe(1);
    expect(positionsForWidth(72)).toBe(9);
    expect(positionsForWidth(9)).toBeNull();
  });
});
