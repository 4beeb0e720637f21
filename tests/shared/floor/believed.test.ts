// What a machine believes to be loaded against the scans: slot by slot, with the act that cures it, gone when cured; never a change by itself.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareBelieved } from '../../../shared/floor/believed.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import type { BelievedPlace } from '../../../shared/floor/station-state.ts';
import { beginStory, brookSetup, type Story, tellPlant, verified, wantedSlot } from './story.ts';

const [one, two] = ['M1-F-001', 'M1-F-002'];
const load = (story: Story, slot: string, part: string, reel: string, more: object = {}) =>
  story.tell('reel.verified', verified(slot, part, { reel, lot: `LOT-${reel}`, ...more }));

/** A line with a station at its machine and a reel on each of its first two slots. */
function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  const known = { machine: 'M1', at: 'work', means: 'ipc2591', version: '0.1.0', address: '' } as const;
  story.tell('station.known', { station: 'placer', line: 'L1', ...known });
  load(story, one, 'R-100', 'K1');
  load(story, two, 'C-200', 'K2');
  return story;
}

const place = (slot: string, reel: string | null, part: string | null = null): BelievedPlace => ({
  slot,
  reel,
  part,
  feeder: null,
});

function says(
  story: Story,
  places: readonly BelievedPlace[] | null,
  more: Partial<PayloadOf<'machine.loaded'>> = {},
) {
  story.tell(
    'machine.loaded',
    {
      station: 'placer',
      line: 'L1',
      report: 'r1',
      page: 0,
      pages: 1,
      whole: true,
      places: places && [...places],
      ...more,
    },
    { tablet: 'LINK', who: null },
  );
}
const compared = (story: Story) => compareBelieved(story.floor(), 'placer');

describe('what a machine believes to be loaded', () => {
  test('is nothing where it never said', () => {
    expect(compared(begun())).toBeNull();
  });

  test('that is what the scans say differs nowhere', () => {
    const story = begun();
    says(story, [place(one, 'K1', 'R-100'), place(two, 'K2')]);
    expect(compared(story)).toMatchObject({ same: 2, differs: [], later: [], open: [], unknown: [] });
  });

  test('names another reel: both sides, and the slot is to be looked at; nothing is changed', () => {
    const story = begun();
    const before = story.floor().slots;
    says(story, [place(one, 'K9', 'R-100'), place(two, 'K2')]);
    expect(compared(story)?.differs).toEqual([
      {
        slot: one,
        machine: { reel: 'K9', part: 'R-100' },
        here: { reel: 'K1', part: 'R-100' },
        cure: 'look',
      },
    ]);
    expect(story.floor().slots).toEqual(before);
  });

  test('is cured by a scan of the reel that it names, at once; by its own next word otherwise', () => {
    const story = begun();
    says(story, [place(one, 'K9', 'R-100'), place(two, 'K2')]);
    load(story, one, 'R-100', 'K9');
    expect(compared(story)).toMatchObject({ same: 2, differs: [] });

    const other = begun();
    says(other, [place(one, 'K9', 'R-100'), place(two, 'K2')]);
    says(other, [place(one, 'K1', 'R-100'), place(two, 'K2')], { report: 'r2' });
    expect(compared(other)).toMatchObject({ same: 2, differs: [] });
  });

  test('is not held against it where the slot was changed after it spoke, until it says so again', () => {
    const story = begun();
    says(story, [place(one, 'K1'), place(two, 'K2')]);
    load(story, one, 'R-100', 'K5');
    expect(compared(story)).toMatchObject({ same: 1, differs: [], later: [one] });
    // A word of another report says nothing of this one.
    says(story, null, { report: 'r0' });
    expect(compared(story)).toMatchObject({ differs: [], later: [one] });
    says(story, null);
    expect(compared(story)).toMatchObject({ differs: [{ slot: one, cure: 'look' }], later: [] });
  });

  test('stands by when the same reel is scanned there again: one of both is still wrong', () => {
    const story = begun();
    says(story, [place(one, 'K9'), place(two, 'K2')]);
    load(story, one, 'R-100', 'K1');
    expect(compared(story)?.differs).toMatchObject([{ slot: one }]);
  });

  test('has something where nothing was scanned: scan it there', () => {
    const story = begun();
    says(story, [place(one, 'K1'), place(two, 'K2'), place('M1-F-010', 'K3', 'U-300')]);
    expect(compared(story)?.differs).toEqual([
      { slot: 'M1-F-010', machine: { reel: 'K3', part: 'U-300' }, here: null, cure: 'scan' },
    ]);
  });

  test('leaves a slot out: empty where the report was whole and the machine is known, else nothing is said', () => {
    const story = begun();
    says(story, [place(one, 'K1')]);
    expect(compared(story)?.differs).toMatchObject([{ slot: two, machine: null, cure: 'look' }]);
    says(story, [place(one, 'K1')], { report: 'r2', whole: false });
    expect(compared(story)?.differs).toEqual([]);
    // Not one of its names is a slot of this line: it has other names, not empty slots.
    says(story, [place('B1.F.45', 'K1')], { report: 'r3' });
    expect(compared(story)).toMatchObject({ differs: [], unknown: ['B1.F.45'] });
  });

  test('calls a place empty: looked at where a reel stands, agreed where none does', () => {
    const story = begun();
    says(story, [place(one, null), place(two, 'K2'), place('M1-F-010', null)]);
    expect(compared(story)).toMatchObject({ same: 2, differs: [{ slot: one, machine: null }] });
  });

  test('in a register of its own is compared by part, by the line’s own rule; without a part nothing is claimed', () => {
    const story = begun();
    says(story, [place(one, 'MAT-1', 'R-100'), place(two, 'MAT-2', 'R-100')]);
    expect(compared(story)).toMatchObject({ same: 1, differs: [{ slot: two }] });
    says(story, [place(one, 'MAT-1', 'R-100'), place(two, 'MAT-2')], { report: 'r2' });
    expect(compared(story)).toMatchObject({ same: 1, differs: [], open: [two] });
  });

  test('calls an alternate by its own number or by that of its program; another part, or another alternate, differs', () => {
    const asks = (part: string, more: object = {}) => {
      const story = begun();
      const slots = [wantedSlot(one, 'R-100'), wantedSlot(two, 'C-200', { alternates: ['C-201', 'C-202'] })];
      story.tell('setup.taken', { ...brookSetup, setup: 'now', slots });
      story.tell('setup.chosen', { line: 'L1', setup: 'now' });
      load(story, two, 'C-201', 'K3', { setup: 'now', ...more });
      says(story, [place(one, 'MAT-1', 'R-100'), place(two, 'MAT-2', part)]);
      return compared(story);
    };
    expect(asks('C-201')).toMatchObject({ same: 2, differs: [] });
    expect(asks('C-200')).toMatchObject({ same: 2, differs: [] });
    expect(asks('C-202')).toMatchObject({ same: 1, differs: [{ slot: two, cure: 'look' }] });
    expect(asks('R-100')).toMatchObject({ same: 1, differs: [{ slot: two, cure: 'look' }] });
    // A lead let it on for this setup; what was let on for another setup stands for nothing here.
    expect(asks('C-200', { part: 'C-999' })).toMatchObject({ same: 2, differs: [] });
    const other = { part: 'C-999', setup: 'brook-top-a' };
    expect(asks('C-200', other)).toMatchObject({ same: 1, differs: [{ slot: two }] });
    expect(asks('C-999', other)).toMatchObject({ same: 2, differs: [] });
  });

  test('knows a joined tape as the slot’s own, and a slot however its address is written', () => {
    const story = begun();
    load(story, one, 'R-100', 'K7', { act: 'splice' });
    says(story, [place('m1/f/1', 'K7'), place(two, 'K2')]);
    expect(compared(story)).toMatchObject({ same: 2, differs: [], unknown: [] });
  });

  test('in pages counts when all are here; a page missed or doubled leaves the report before', () => {
    const story = begun();
    says(story, [place(one, 'K1'), place(two, 'K2')], { report: 'r1' });
    const half = { report: 'r2', pages: 2 };
    says(story, [place(one, 'K9')], { ...half, page: 0 });
    expect(compared(story)?.differs).toEqual([]);
    says(story, [place(two, 'K2')], { ...half, page: 0 });
    says(story, [place(one, 'K9')], { ...half, page: 1 });
    expect(compared(story)?.differs).toMatchObject([{ slot: one }]);
    says(story, [place(one, 'K1')], { report: 'r3', pages: 3, page: 2 });
    expect(compared(story)?.differs).toMatchObject([{ slot: one }]);
  });

  test('of thousands of places is compared, and every slot is in exactly one answer', () => {
    const names = fc.constantFrom(one, two, 'M1-F-010', 'M1-R-001', 'X', '', '#', 'M1-F-001#', '__proto__');
    const some = fc.constantFrom(null, 'K1', 'K2', 'K9', 'R-100');
    const places = fc.array(
      fc.record({ slot: names.filter((name) => name !== ''), reel: some, part: some }),
      {
        maxLength: 60,
      },
    );
    fc.assert(
      fc.property(places, fc.boolean(), (rows, whole) => {
        const story = begun();
        says(
          story,
          rows.map((row) => ({ ...row, feeder: null })),
          { whole },
        );
        const told = compared(story);
        if (!told) return false;
        const slots = [...told.differs.map(({ slot }) => slot), ...told.later, ...told.open];
        expect(new Set(slots).size).toBe(slots.length);
        const all = new Set([...slots, ...told.unknown]);
        return told.same + all.size >= new Set(rows.map(({ slot }) => slot)).size - 1;
      }),
      { numRuns: 60 },
    );
    const story = begun();
    const many = Array.from({ length: 4_000 }, (_, at) => place(`Z9-F-${at}`, `MAT-${at}`));
    for (let page = 0; page < 20; page += 1)
      says(story, many.slice(page * 200, (page + 1) * 200), { report: 'big', page, pages: 20 });
    expect(compared(story)?.unknown).toHaveLength(4_000);
  });
});
