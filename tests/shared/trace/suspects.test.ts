// Which panels are held for a reel that should not have been there, told by hand. That nothing escapes is shown in tests/truth.

import { describe, expect, test } from 'vitest';
import { isHeld, stillHeld } from '../../../shared/floor/fold-contain.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePanel, tracePlaces } from '../../../shared/trace/ask.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { suspectPanels } from '../../../shared/trace/suspects.ts';
import { beginStory, counted, type Story, started, tellPlant, unloaded, verified } from '../floor/story.ts';

const slot = 'M1-F-001';

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: 0, most: 2 }],
    missed: 0,
  });
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', lot: 'LA', quantity: 5000 }));
  story.tell('run.started', started('r1'));
  return story;
}

const scan = (story: Story, from: number, to: number, run = 'r1') => {
  for (let panel = from; panel <= to; panel++) story.tell('panels.counted', counted(run, 1, `PN${panel}`));
};
const indexOf = (story: Story) => traceLog([...story.entries].sort(compareEntries));
const sweep = (story: Story, reel: string, isRight: boolean) =>
  story.tell(
    'reel.verified',
    verified(slot, isRight ? 'R-100' : 'C-200', {
      act: 'sweep',
      reel,
      lot: isRight ? 'LA' : 'LX',
      run: 'r1',
      ...(isRight ? {} : { verdict: 'refused' as const, reasons: [{ code: 'not-the-loaded-reel' }] }),
    }),
  );

/** Right after panel 20, found wrong after panel 30. */
function foundWrong(): { readonly story: Story; readonly found: string } {
  const story = begun();
  scan(story, 1, 20);
  sweep(story, 'K1', true);
  scan(story, 21, 30);
  const found = entryId(sweep(story, 'X1', false));
  return { story, found };
}

describe('suspectPanels()', () => {
  test('holds all panels from the last good check to the one at work when a wrong reel is found', () => {
    const { story, found } = foundWrong();
    story.tell('reel.unloaded', unloaded(slot, { run: 'r1', reel: 'K1', part: 'R-100' }));
    scan(story, 31, 40);
    const { runs, codes, goesOn } = suspectPanels(indexOf(story), { cause: 'wrong-reel', finding: found });
    // 20 had passed at the check; at the find 30, two that were not counted yet, and the one at work.
    expect(runs).toEqual([{ run: 'r1', line: 'L1', slot, sure: null, possible: { first: 21, last: 33 } }]);
    expect(codes).toEqual(Array.from({ length: 13 }, (_, at) => `PN${21 + at}`));
    expect(goesOn).toBe(false);
  });

  test('says nothing sure of the reel that the log had there, and names the wrong one as possible', () => {
    const { story } = foundWrong();
    const index = indexOf(story);
    expect(tracePlaces(index, { reel: 'K1' })[0]).toMatchObject({
      sure: { first: 1, last: 20 },
      possible: { first: 1 },
    });
    expect(tracePlaces(index, { reel: 'X1' })).toMatchObject([
      { lot: 'LX', sure: null, possible: { first: 21, last: 30 }, goesOn: true },
    ]);
    expect(tracePanel(index, 'PN25')?.slots[0]?.lots.map(({ reel, sure }) => [reel, sure])).toEqual([
      ['K1', false],
      ['X1', false],
    ]);
  });

  test('answers for a lot by where the log has it, with what carries it surely', () => {
    const story = begun();
    scan(story, 1, 5);
    const { runs, goesOn } = suspectPanels(indexOf(story), { cause: 'blocked', material: { lot: 'la' } });
    expect(runs).toEqual([
      { run: 'r1', line: 'L1', slot, sure: { first: 1, last: 5 }, possible: { first: 1, last: 8 } },
    ]);
    expect(goesOn).toBe(true);
  });

  test('answers for a floor life found over late by what was placed after its end', () => {
    const story = begun();
    scan(story, 1, 5);
    const afterMs = story.entries.at(-1)?.hlc.ms ?? 0;
    scan(story, 6, 20);
    const question = { cause: 'floor-life', material: { reel: 'K1' }, afterMs } as const;
    // Five were counted then, two more may have passed and one been at work, and the next was counted as the sixth.
    expect(suspectPanels(indexOf(story), question).runs).toMatchObject([
      { possible: { first: 6 }, sure: { first: 10, last: 20 } },
    ]);
  });
});

describe('held panels', () => {
  test('stay held until a lead signs each or all; those still in the line join them as they are scanned', () => {
    const { story, found } = foundWrong();
    story.tell('reel.unloaded', unloaded(slot, { run: 'r1', reel: 'K1', part: 'R-100' }));
    const { runs, codes } = suspectPanels(indexOf(story), { cause: 'wrong-reel', finding: found });
    story.tell('panels.contained', {
      containment: 'c1',
      line: 'L1',
      slot,
      cause: 'wrong-reel',
      of: found,
      reel: 'X1',
      part: 'C-200',
      lot: 'LX',
      runs: [...runs],
      codes: [...codes],
      reason: 'wrong value',
    });
    const held = () => story.floor().contained.get('c1');
    expect([...(held()?.held.keys() ?? [])]).toEqual(Array.from({ length: 10 }, (_, at) => `PN${21 + at}`));
    scan(story, 31, 40);
    const now = held();
    expect(now && stillHeld(now)).toEqual(Array.from({ length: 13 }, (_, at) => `PN${21 + at}`));
    const sign = (codes: string[] | null) =>
      story.tell('containment.signed', {
        containment: 'c1',
        line: 'L1',
        codes,
        reason: 'reworked',
        by: 'lead',
        checked: 'tablet',
      });
    sign(['PN21', 'PN22']);
    const some = held();
    expect(some && [stillHeld(some).length, isHeld(some)]).toEqual([11, true]);
    sign(null);
    const all = held();
    expect(all && [stillHeld(all).length, isHeld(all)]).toEqual([0, false]);
    expect(all?.held.get('PN21')).toMatchObject({ by: 'lead', reason: 'reworked' });
  });
});
