// Last checks, finds of wrong reels, and held panels: what opens each, what ends it, and what leaves it alone.

import { describe, expect, test } from 'vitest';
import { isHeld, stillHeld } from '../../../shared/floor/fold-contain.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import {
  beginStory,
  counted,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from './story.ts';

const slot = 'M1-F-001';

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}
const checkOn = (story: Story, place = slot) => story.floor().checks.get(slotKey('L1', place));
const finds = (story: Story) => [...story.floor().findings.values()];

function load(story: Story, more: Partial<PayloadOf<'reel.verified'>> = {}, place = slot) {
  return idOf(story.tell('reel.verified', verified(place, 'R-100', { reel: 'K1', lot: 'LA', ...more })));
}
const scan = (story: Story, from: number, to: number, run = 'r1') => {
  for (let panel = from; panel <= to; panel++) story.tell('panels.counted', counted(run, 1, `PN${panel}`));
};

describe('the last check of a slot', () => {
  test('is a load that was let on, with the run and how far it was counted', () => {
    const story = begun();
    expect(checkOn(story)).toBeUndefined();
    const entry = load(story);
    expect(checkOn(story)).toMatchObject({ entry, run: null, tally: 0 });
    story.tell('run.started', started('r1'));
    scan(story, 1, 3);
    const second = load(story, { reel: 'K2' }, 'M1-R-003');
    expect(checkOn(story, 'M1-R-003')).toMatchObject({ entry: second, run: 'r1', tally: 3 });
    expect(checkOn(story)).toMatchObject({ entry });
  });

  test('is a sweep that saw the right reel, and no splice: that checks the reel to come', () => {
    const story = begun();
    const first = load(story);
    load(story, { act: 'splice', reel: 'K2' });
    expect(checkOn(story)?.entry).toBe(first);
    const swept = load(story, { act: 'sweep' });
    expect(checkOn(story)?.entry).toBe(swept);
  });

  test('is nothing that was refused or held, and no reel put on a cart', () => {
    const story = begun();
    load(story, { verdict: 'refused' });
    load(story, { verdict: 'held' });
    load(story, { cart: 'CART-1' });
    expect(checkOn(story)).toBeUndefined();
  });

  test('names the run that was built last where none is, and of this line alone', () => {
    const story = begun();
    for (const [run, line] of [
      ['r1', 'L1'],
      ['r2', 'L1'],
      ['r3', 'L2'],
    ] as const) {
      story.tell('run.started', started(run, { line }));
      story.tell('panels.counted', { ...counted(run, 4), line });
      story.tell('run.ended', { run, line, panels: 4, note: '' });
    }
    load(story);
    expect(checkOn(story)).toMatchObject({ run: 'r2', tally: 4 });
  });
});

/** Right, then a sweep finds another reel. */
function found(more: Partial<PayloadOf<'reel.verified'>> = {}) {
  const story = begun();
  const right = load(story);
  const of = load(story, { act: 'sweep', reel: 'X1', part: 'C-200', lot: 'LX', verdict: 'refused', ...more });
  return { story, right, of };
}

describe('a wrong reel', () => {
  test('is found by a sweep, with its facts and the last check before it', () => {
    const { story, right, of } = found();
    expect(finds(story)).toMatchObject([
      {
        entry: of,
        line: 'L1',
        slot,
        reel: 'X1',
        part: 'C-200',
        lot: 'LX',
        who: 'ana',
        found: { entry: of },
        since: { entry: right },
        until: null,
      },
    ]);
  });

  test('is none where the reel is the one that stands there, whatever else speaks against it', () => {
    expect(finds(found({ reel: 'K1', part: 'R-100', lot: 'LA', verdict: 'held' }).story)).toEqual([]);
    // Without an id, part and lot say whether it is the same; one of them alone does not.
    expect(finds(found({ reel: null, part: 'R-100', lot: 'LA', verdict: 'held' }).story)).toEqual([]);
    expect(finds(found({ reel: null, part: 'R-100', lot: 'LX' }).story)).toHaveLength(1);
    expect(finds(found({ reel: null, part: 'C-200', lot: 'LA' }).story)).toHaveLength(1);
    expect(finds(found({ reel: 'X1', part: 'R-100', lot: 'LA' }).story)).toHaveLength(1);
  });

  test('is compared by part and lot with a reel that the log knows no id of', () => {
    const story = begun();
    load(story, { reel: null });
    load(story, { act: 'sweep', reel: 'K7', verdict: 'held' });
    expect(finds(story)).toEqual([]);
    load(story, { act: 'sweep', reel: 'K7', lot: 'LX', verdict: 'refused' });
    expect(finds(story)).toHaveLength(1);
  });

  test('is found by a sweep alone, and only where the log has a reel', () => {
    const story = begun();
    load(story, { act: 'sweep', reel: 'X1', verdict: 'refused' });
    load(story);
    load(story, { reel: 'X1', verdict: 'refused' });
    load(story, { act: 'splice', reel: 'X1', verdict: 'refused' });
    expect(finds(story)).toEqual([]);
  });

  test.each([
    ['a reel that is let on', (story: Story) => load(story, { act: 'sweep' })],
    ['a splice', (story: Story) => load(story, { act: 'splice', reel: 'K2' })],
    ['an unloaded reel', (story: Story) => idOf(story.tell('reel.unloaded', unloaded(slot)))],
    [
      'a hold that a lead cleared',
      (story: Story) =>
        idOf(
          story.tell('hold.cleared', {
            of: 'T1/e/1',
            line: 'L1',
            slot,
            reason: 'looked at',
            by: 'lea',
            checked: 'tablet',
          }),
        ),
    ],
  ])('stands until %s, and no longer for what comes after', (_, end) => {
    const { story } = found();
    const until = end(story);
    story.tell('reel.unloaded', unloaded(slot));
    expect(finds(story)).toMatchObject([{ until: { entry: until } }]);
  });

  test('goes on while other slots and other lines change', () => {
    const { story } = found();
    load(story, { reel: 'K5' }, 'M1-R-003');
    story.tell('reel.unloaded', unloaded('M1-R-003'));
    story.tell('reel.unloaded', unloaded(slot, { line: 'L2' }));
    expect(finds(story)).toMatchObject([{ until: null }]);
  });

  test('is taken back with the entry that told it', () => {
    const { story, of } = found();
    story.tell('entry.corrected', { of, line: 'L1', slot, reason: 'other label' });
    expect(finds(story)).toEqual([]);
  });
});

const hold = (story: Story, codes: string[], more: Partial<PayloadOf<'panels.contained'>> = {}) =>
  story.tell('panels.contained', {
    containment: 'c1',
    line: 'L1',
    slot,
    cause: 'wrong-reel',
    of: null,
    reel: null,
    part: null,
    lot: null,
    runs: [{ run: 'r1', line: 'L1', slot, sure: null, possible: { first: 3, last: 6 } }],
    codes,
    reason: 'wrong reel',
    ...more,
  });
const sign = (story: Story, codes: string[] | null, containment = 'c1', by = 'lea') =>
  story.tell('containment.signed', {
    containment,
    line: 'L1',
    codes,
    reason: 'looked at',
    by,
    checked: 'tablet',
  });

/** Four panels counted, the third and fourth held; two more are still in the line. */
function contained() {
  const story = begun();
  story.tell('run.started', started('r1'));
  scan(story, 1, 4);
  const entry = hold(story, ['PN3', 'PN4']);
  const now = () => story.floor().contained.get('c1')!;
  return { story, entry, now };
}

describe('held panels', () => {
  test('are those of the entry, with who held them and when', () => {
    const { entry, now } = contained();
    expect(now()).toMatchObject({ entry: idOf(entry), who: 'ana', signed: null });
    expect(now().atMs).toBeGreaterThan(startMs);
    expect(stillHeld(now())).toEqual(['PN3', 'PN4']);
    expect(isHeld(now())).toBe(true);
  });

  test('are joined by those that come out of the line later, up to the last place in question', () => {
    const { story, now } = contained();
    scan(story, 5, 9);
    expect(stillHeld(now())).toEqual(['PN3', 'PN4', 'PN5', 'PN6']);
  });

  test('are not joined by panels of another run, nor by counts without a code', () => {
    const { story, now } = contained();
    story.tell('panels.counted', counted('r1', 1));
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 5, note: '' });
    story.tell('run.started', started('r2'));
    scan(story, 11, 16, 'r2');
    expect(stillHeld(now())).toEqual(['PN3', 'PN4']);
  });

  test('begin at the first place in question', () => {
    const story = begun();
    story.tell('run.started', started('r1'));
    hold(story, []);
    scan(story, 1, 4);
    expect(stillHeld(story.floor().contained.get('c1')!)).toEqual(['PN3', 'PN4']);
  });

  test('are signed one by one or all at once; only all at once signs those without a code', () => {
    const { story, now } = contained();
    sign(story, ['PN3']);
    expect(stillHeld(now())).toEqual(['PN4']);
    expect(now().held.get('PN3')).toMatchObject({ by: 'lea', reason: 'looked at' });
    sign(story, ['PN4']);
    expect(stillHeld(now())).toEqual([]);
    expect(isHeld(now())).toBe(true);
    sign(story, null, 'c1', 'max');
    expect(isHeld(now())).toBe(false);
    expect([...now().held.values()].map((signed) => signed?.by)).toEqual(['lea', 'lea']); // a signature stays whose it was
    expect(now().signed).toMatchObject({ by: 'max' });
  });

  test('take no signature for a code that is not held, nor for another containment', () => {
    const { story, now } = contained();
    sign(story, ['PN1']);
    sign(story, null, 'c9');
    expect([...now().held.keys()]).toEqual(['PN3', 'PN4']);
    expect(stillHeld(now())).toEqual(['PN3', 'PN4']);
  });

  test('that were all signed are held again when one more comes out of the line', () => {
    const { story, now } = contained();
    sign(story, null);
    expect(isHeld(now())).toBe(false);
    scan(story, 5, 5);
    expect(stillHeld(now())).toEqual(['PN5']);
    expect(isHeld(now())).toBe(true);
    expect(now().held.get('PN3')).not.toBeNull();
  });

  test('keep their signature when their code is scanned once more', () => {
    const { story, now } = contained();
    sign(story, null);
    scan(story, 4, 4);
    expect(isHeld(now())).toBe(false);
    expect(stillHeld(now())).toEqual([]);
  });
});
