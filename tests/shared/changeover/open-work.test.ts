// What is open or wrong before a release, each thing by its name.

import { describe, expect, test } from 'vitest';
import { isWrong, knownOpen, openWork } from '../../../shared/changeover/open-work.ts';
import type { Changeover } from '../../../shared/floor/state.ts';
import { beginStory, brookSetup, type Story, tellPlant, verified, wantedSlot } from '../floor/story.ts';

const setup = {
  ...brookSetup,
  setup: 'brook-top-b',
  slots: [
    wantedSlot('M1-F-001', 'R-100', { critical: true }),
    wantedSlot('M1-F-002', 'C-200', { polarity: 'Band up' }),
    wantedSlot('M1-F-010', 'U-300', { note: '4k7' }),
    wantedSlot('M1-R-003', 'R-104'),
  ],
};

function story(): Story {
  const told = beginStory();
  tellPlant(told);
  told.tell('setup.taken', setup);
  told.tell('changeover.began', {
    changeover: 'ch-1',
    line: 'L1',
    from: 'brook-top-a',
    setup: setup.setup,
    product: 'Brook',
    lastPanel: null,
  });
  return told;
}

function work(told: Story, facts: Partial<Parameters<typeof openWork>[2]> = {}) {
  const floor = told.floor();
  const changeover = floor.changeovers.get('ch-1') as Changeover; // told above
  return openWork(floor, changeover, { moves: [], steps: [], ...facts });
}

const said = (items: ReturnType<typeof work>) =>
  items.map(({ what, slot, part, reel }) => [what, slot, reel ?? part].filter((each) => each).join(' '));

describe('openWork()', () => {
  test('names empty slots, other parts, held reels and unchecked parts', () => {
    const told = story();
    told.tell('setup.chosen', { line: 'L1', setup: setup.setup });
    const on = { setup: setup.setup };
    told.tell('reel.verified', verified('M1-F-001', 'R-100', { ...on, reel: 'K1' }));
    told.tell('reel.verified', verified('M1-F-002', 'X-9', { ...on, reel: 'K2', setup: 'brook-top-a' }));
    told.tell('reel.verified', verified('M1-F-010', 'U-300', { ...on, reel: 'K3', verdict: 'held' }));
    expect(said(work(told))).toEqual([
      'slot-held M1-F-010 K3',
      'slot-other M1-F-002 X-9',
      'slot-empty M1-R-003 R-104',
      'unchecked M1-F-001 R-100',
      'unchecked M1-F-002 C-200',
      'unchecked M1-F-010 U-300',
    ]);
    expect(knownOpen(work(told))).toEqual({ moves: 0, slots: 3, 'first-panel': 3 });
  });

  test('names every slot as empty while the line is set up for the product before, and no other line’s held reel', () => {
    const told = story();
    for (const [line, reel] of [
      ['L1', 'K1'],
      ['L2', 'K2'],
    ] as const)
      told.tell('reel.verified', verified('M1-F-001', 'R-100', { line, reel, verdict: 'held' }));
    expect(said(work(told))).toEqual([
      'slot-held M1-F-001 K1',
      'slot-empty M1-F-001 R-100',
      'slot-empty M1-F-002 C-200',
      'slot-empty M1-F-010 U-300',
      'slot-empty M1-R-003 R-104',
      'unchecked M1-F-001 R-100',
      'unchecked M1-F-002 C-200',
      'unchecked M1-F-010 U-300',
    ]);
  });

  test('counts every slot as open while the line is set up for the product before', () => {
    expect(knownOpen(work(story())).slots).toBe(4);
  });

  test('names what measured or looked wrong before what is only unfinished', () => {
    const told = story();
    const part = { changeover: 'ch-1', line: 'L1', setup: setup.setup };
    const reading = { quantity: 9, unit: 'kΩ', uncertainty: 0, least: 4, most: 5 };
    told.tell('panel.measured', { ...part, slot: 'M1-F-010', part: 'U-300', ...reading, verdict: 'refused' });
    told.tell('panel.measured', { ...part, slot: 'M1-F-001', part: 'R-100', ...reading, verdict: 'held' });
    told.tell('panel.looked', { ...part, slot: 'M1-F-002', part: 'C-200', right: false, note: '' });
    const items = work(told);
    expect(said(items).filter((text) => !text.startsWith('slot'))).toEqual([
      'looked-wrong M1-F-002 C-200',
      'measured-wrong M1-F-010 U-300',
      'cannot-tell M1-F-001 R-100',
    ]);
    expect(items.filter(isWrong)).toHaveLength(2);
    expect(knownOpen(items)['first-panel']).toBe(3);
  });

  test('says what it cannot know: a setup that does not fit, a checklist that nobody opened', () => {
    const items = work(story(), { moves: null, steps: null });
    expect(items[0]).toMatchObject({ what: 'misfit' });
    expect(items.at(-1)).toMatchObject({ what: 'no-checklist' });
    expect(knownOpen(items).moves).toBe(1);
    expect(knownOpen(work(story(), { moves: [{ slot: 'M1-F-001', part: 'R-100' }] })).moves).toBe(1);
  });
});
