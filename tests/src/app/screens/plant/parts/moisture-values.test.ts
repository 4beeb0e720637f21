// A plant's own moisture values while they are entered, and the packages of its parts: what is kept, what is refused, what looks wrong.

import { describe, expect, test } from 'vitest';
import { bakeKey, lifeKey } from '../../../../../../shared/floor/moisture-rules.ts';
import { tableCell } from '../../../../../../shared/moisture/derating.ts';
import { moistureRuling } from '../../../../../../shared/moisture/reel-life.ts';
import {
  type BakeCell,
  bakeRows,
  draftObstacle,
  draftToRuled,
  isOutOfOrder,
  type LifeCell,
  lifeRows,
  type MoistureDraft,
  moistureDraft,
} from '../../../../../../src/app/screens/plant/parts/moisture-model.ts';
import {
  formToPackage,
  listedPackages,
  packageForm,
} from '../../../../../../src/app/screens/plant/parts/packages-model.ts';
import { beginStory, brookSetup, tellPlant, wantedSlot } from '../../../../../shared/floor/story.ts';

const life: LifeCell = { class: 'C', level: '3', celsius: 30, humidity: 60, days: 5 };
const bake: BakeCell = { body: 'thin', level: '3', celsius: 125, isLong: false, hours: 12 };
const empty = moistureDraft(null);
const named: MoistureDraft = { ...empty, edition: ' our copy ', source: ' table 7-1 ' };
const withLife: MoistureDraft = { ...named, lives: new Map([[lifeKey(life), life]]) };

describe('a draft of own values', () => {
  test('begins with what is in force, and becomes the same entry again', () => {
    const story = beginStory();
    const ruled = draftToRuled({ ...withLife, bakes: new Map([[bakeKey(bake), bake]]), cabinetPauses: true });
    expect(ruled).toEqual({
      edition: 'our copy',
      source: 'table 7-1',
      cabinetPauses: true,
      lives: [life],
      bakes: [bake],
    });
    story.tell('moisture.ruled', ruled);
    const ruling = moistureRuling(story.floor());
    expect(draftToRuled(moistureDraft(ruling))).toEqual(ruled);
    expect(draftObstacle(moistureDraft(ruling), ruling)).toBe('nothingNew');
  });

  test('with values of its own says which copy they are from; without any it need not', () => {
    expect(draftObstacle(withLife, null)).toBeNull();
    expect(draftObstacle({ ...withLife, edition: ' ' }, null)).toBe('needsEdition');
    expect(draftObstacle({ ...withLife, source: '' }, null)).toBe('needsEdition');
    expect(draftObstacle({ ...empty, cabinetPauses: true }, null)).toBe('needsEdition');
    expect(draftObstacle({ ...empty, bakes: new Map([[bakeKey(bake), bake]]) }, null)).toBe('needsEdition');
    expect(draftObstacle({ ...empty, edition: 'our copy' }, null)).toBeNull();
    expect(draftObstacle(empty, null)).toBe('nothingNew');
  });

  test('stands in the table in place of the shipped cell, and nowhere else', () => {
    const rows = lifeRows(withLife, 'C', '3');
    const temperatures = rows.map(({ celsius }) => celsius);
    expect(temperatures).toEqual([...temperatures].sort((a, b) => b - a));
    const cells = rows.flatMap(({ celsius, cells: row }) => row.map((cell) => ({ celsius, ...cell })));
    for (const { celsius, humidity, days } of cells) {
      const isOwn = celsius === 30 && humidity === 60;
      expect(days, `${celsius} ${humidity}`).toBe(
        isOwn ? 5 : tableCell('3', 'C', { celsius, humidity }).days,
      );
    }
    expect(lifeRows(withLife, 'B', '3')).toEqual(lifeRows(empty, 'B', '3'));
  });

  test('has bake rows of level 6 for large bodies only', () => {
    const levels = (body: 'thin' | 'large') => bakeRows(empty, body).map(({ level }) => level);
    expect(levels('large')).toEqual([...levels('thin'), '6']);
    const own = bakeRows({ ...named, bakes: new Map([[bakeKey(bake), bake]]) }, 'thin')
      .find(({ level }) => level === '3')
      ?.cells.find(({ celsius, isLong }) => celsius === 125 && !isLong);
    expect(own?.value).toMatchObject({ hours: 12 });
  });

  test('looks wrong where it gives more life than a drier or cooler cell, and right where it gives as much', () => {
    const shipped = tableCell('3', 'C', { celsius: 30, humidity: 60 }).days;
    const cooler = tableCell('3', 'C', { celsius: 25, humidity: 60 }).days;
    expect(shipped).not.toBeNull();
    expect(cooler).not.toBeNull();
    const at = (days: number | null) => isOutOfOrder(empty, { ...life, days });
    expect(at(shipped)).toBe(false);
    expect(at(cooler)).toBe(false);
    expect(at((cooler ?? 0) + 1)).toBe(true);
    expect(at(null)).toBe(true);
    // Another cell of the draft counts before the shipped one.
    const tight: LifeCell = { ...life, celsius: 25, days: 2 };
    expect(isOutOfOrder({ ...empty, lives: new Map([[lifeKey(tight), tight]]) }, { ...life, days: 3 })).toBe(
      true,
    );
  });
});

describe('the list of packages', () => {
  test('has those first whose class is open, then goes by number', () => {
    const story = beginStory();
    tellPlant(story);
    const slots = ['U-3', 'U-1', 'U-2'].map((part, at) =>
      wantedSlot(`M1-F-00${at + 1}`, part, part === 'U-2' ? { msl: '3' } : { msl: '3', bodyMm: 1.2 }),
    );
    story.tell('setup.taken', { ...brookSetup, slots });
    const known = { family: 'qfn', pins: 24, bodyMm: 0.9, bodyXMm: 4, bodyYMm: 4, isStacked: false } as const;
    for (const part of ['U-1', 'U-3'])
      story.tell('part.described', { part, ...known, msl: null, source: '' });
    const list = listedPackages(story.floor());
    expect(list.map(({ part, classes }) => [part, classes.length > 1])).toEqual([
      ['U-2', true],
      ['U-1', false],
      ['U-3', false],
    ]);
    expect(list[1]).toMatchObject({ level: '3', bodyMm: 0.9, package: { family: 'qfn', pins: 24 } });
  });
});

describe('the form of a package', () => {
  const facts = {
    part: 'U-1',
    family: 'bga',
    pins: 48,
    bodyMm: 1.2,
    bodyXMm: 10,
    bodyYMm: 12,
    isStacked: true,
    msl: '3',
    source: 'maker’s sheet',
  } as const;

  test('comes back as it went in, with a comma as well, and empty for what is not known', () => {
    expect(formToPackage(packageForm('U-1', facts))).toEqual(facts);
    const bare = packageForm('U-1', undefined);
    expect(bare).toMatchObject({ pins: '', thickness: '', length: '', width: '', family: null, msl: null });
    expect(packageForm('U-1', undefined, 1.4).thickness).toBe('1.4');
    expect(formToPackage({ ...bare, thickness: ' 1,4 ', part: ' U-1 ' })).toMatchObject({
      part: 'U-1',
      bodyMm: 1.4,
      pins: null,
    });
  });

  test.each([
    [{ part: ' ' }, 'partMissing'],
    [{ thickness: '0' }, 'badNumber'],
    [{ thickness: '-1' }, 'badNumber'],
    [{ thickness: 'thin' }, 'badNumber'],
    [{ length: 'x' }, 'badNumber'],
    [{ width: '0' }, 'badNumber'],
    [{ pins: '1.5' }, 'badNumber'],
    [{ pins: '10001' }, 'badNumber'],
    [{ length: '' }, 'sizeHalf'],
    [{ width: '' }, 'sizeHalf'],
  ] as const)('is refused whole with %o', (more, obstacle) => {
    expect(formToPackage({ ...packageForm('U-1', facts), ...more })).toBe(obstacle);
  });

  test('takes the most pins and no size at all', () => {
    const form = { ...packageForm('U-1', facts), pins: '10000', length: '', width: '' };
    expect(formToPackage(form)).toMatchObject({ pins: 10_000, bodyXMm: null, bodyYMm: null });
  });
});
