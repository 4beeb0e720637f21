import { describe, expect, test } from 'vitest';
import { shippedChecklists } from '../../../../../shared/checklist/shipped.ts';
import { shippedBefore } from '../../../../../shared/checklist/shipped-before.ts';
import type { PayloadOf } from '../../../../../shared/floor/kinds.ts';
import type { Changeover, Setup } from '../../../../../shared/floor/state.ts';
import {
  changeFacts,
  checklistOf,
  standingOf,
  templateFor,
  templateOf,
} from '../../../../../src/app/screens/change/checklist-desk.ts';
import { faultText } from '../../../../../src/app/screens/change/fault-text.ts';
import { bankSizes, doneSlots, planChange } from '../../../../../src/app/screens/change/model.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  tellPlant,
  verified,
  wantedSlot,
} from '../../../../shared/floor/story.ts';

const nextSetup: PayloadOf<'setup.taken'> = {
  ...brookSetup,
  setup: 'fern-bottom-b',
  product: 'Fern',
  side: 'bottom',
  revision: 'B',
  slots: [
    wantedSlot('M1-F-001', 'R-100'),
    wantedSlot('M1-F-005', 'C-200', { alternates: ['C-201'] }),
    wantedSlot('M1-F-010', 'L-400', { positions: 2 }),
  ],
};

function tellLoaded(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', nextSetup);
  story.tell('reel.verified', verified('M1-F-001', 'R-100'));
  story.tell('reel.verified', verified('M1-F-002', 'C-201'));
  story.tell('reel.verified', verified('M1-F-010', 'U-300'));
  story.tell('reel.verified', verified('M1-R-003', 'R-100'));
  return story;
}

const setupOf = (story: Story, setup: string) => story.floor().setups.get(setup) as Setup; // told above

function tellBegan(story: Story): Changeover {
  story.tell('changeover.began', {
    changeover: 'ch-1',
    line: 'L1',
    from: 'brook-top-a',
    setup: 'fern-bottom-b',
    product: 'Fern',
    lastPanel: null,
  });
  return story.floor().changeovers.get('ch-1') as Changeover; // told just now
}

describe('planChange()', () => {
  test('keeps, moves, takes out and puts in what the next product asks for', () => {
    const story = tellLoaded();
    const plan = planChange(story.floor(), 'L1', setupOf(story, 'fern-bottom-b'));
    if (!plan.fits) throw new Error('fits by construction');
    expect(plan.diff.keep.map((each) => each.slot)).toEqual(['M1-F-001']);
    expect(plan.diff.move.map(({ from, to }) => [from, to])).toEqual([['M1-F-002', 'M1-F-005']]);
    expect(plan.diff.takeOut.map((each) => each.slot)).toEqual(['M1-F-010']);
    expect(plan.diff.putIn.map((each) => each.slot)).toEqual(['M1-F-010']);
    expect(plan.diff.stay.map((each) => each.slot)).toEqual(['M1-R-003']);
    expect(plan.steps.steps).toHaveLength(3);
  });

  test('needs nothing once the line is as the setup wants it', () => {
    const story = tellLoaded();
    const plan = planChange(story.floor(), 'L1', setupOf(story, 'brook-top-a'));
    expect(plan.fits && plan.steps.steps).toEqual([]);
  });

  test('says why a setup cannot be: a bank too short, by how many positions', () => {
    const story = tellLoaded();
    story.tell('setup.taken', {
      ...nextSetup,
      setup: 'wide',
      slots: [wantedSlot('M1-F-020', 'L-400', { positions: 3 })],
    });
    const plan = planChange(story.floor(), 'L1', setupOf(story, 'wide'));
    expect(plan.fits).toBe(false);
    if (!plan.fits) expect(plan.faults[0]).toMatchObject({ slot: 'M1-F-020', part: 'L-400', over: 2 });
  });

  test('names a part that is wanted on several slots', () => {
    const story = tellLoaded();
    const plan = planChange(story.floor(), 'L1', setupOf(story, 'brook-top-a'));
    expect(plan.fits && plan.twice).toEqual([{ part: 'R-100', slots: ['M1-F-001', 'M1-R-003'] }]);
  });
});

describe('bankSizes()', () => {
  test('names every bank of the line', () => {
    expect(bankSizes(tellLoaded().floor(), 'L1')).toEqual({ 'M1-F': 20, 'M1-R': 20 });
  });
});

describe('doneSlots()', () => {
  test('lists what was changed since the changeover began, newest first', () => {
    const story = tellLoaded();
    const changeover = tellBegan(story);
    story.tell('reel.verified', verified('M1-F-005', 'C-200', { setup: 'fern-bottom-b' }), { at: 100 });
    story.tell('reel.verified', verified('M1-F-006', 'C-200', { setup: 'fern-bottom-b' }), { at: 200 });
    expect(doneSlots(story.floor(), changeover).map((each) => each.slot)).toEqual(['M1-F-006', 'M1-F-005']);
  });
});

describe('changeFacts()', () => {
  test('tells side and product apart', () => {
    const floor = tellLoaded().floor();
    expect(changeFacts(floor, 'brook-top-a', 'fern-bottom-b')).toEqual({
      sideChanges: true,
      productChanges: true,
      stencilChanges: true,
      programChanges: true,
    });
    expect(changeFacts(floor, 'brook-top-a', 'brook-top-a')).toEqual({
      sideChanges: false,
      productChanges: false,
      stencilChanges: false,
      programChanges: false,
    });
  });

  test('takes everything as changed where nothing was built before', () => {
    expect(changeFacts(tellLoaded().floor(), null, 'brook-top-a').stencilChanges).toBe(true);
  });
});

describe('planChange() over a feeder whose record is too wide', () => {
  test('names the feeder in the fault', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('reel.verified', verified('M1-F-018', 'X-999', { feeder: 'F-1' }));
    story.tell('reel.verified', verified('M1-F-019', 'X-998', { feeder: 'F-2' }));
    story.tell('feeder.known', { feeder: 'F-1', tapeWidthMm: 24, pitchesMm: [], positions: 3 });
    const floor = story.floor();
    const plan = planChange(floor, 'L1', floor.setups.get('brook-top-a') as Setup); // told by tellPlant
    expect(plan.fits ? [] : plan.faults).toEqual([
      expect.objectContaining({ code: 'overlap', feeder: { feeder: 'F-1', positions: 3 } }),
    ]);
    expect(plan.fits ? '' : plan.faults.map(faultText).join()).toContain(
      'Feeder F-1 is listed with 3 positions.',
    );
  });
});

describe('templateFor() and templateOf()', () => {
  test('take the shipped template until the site has its own, and keep an open checklist in its version', () => {
    const story = tellLoaded();
    const shipped = shippedChecklists.find((each) => each.purpose === 'changeover');
    if (!shipped) throw new Error('ships by construction');
    expect(templateFor(story.floor(), 'changeover')?.version).toBe(2);
    const changeover = tellBegan(story);
    story.tell('checklist.opened', {
      checklist: 'list-1',
      template: shipped.template,
      version: 1,
      line: 'L1',
      changeover: 'ch-1',
      slot: null,
      facts: changeFacts(story.floor(), changeover.from, changeover.setup),
    });
    const asked = standingOf(
      story.floor(),
      checklistOf(story.floor(), changeover) as never, // told just now
      shippedBefore[0] as never, // ships by construction
    ).asked;
    story.tell('checklist.template', {
      ...shipped,
      version: 2,
      title: { ...shipped.title },
      steps: shipped.steps.slice(0, 1).map((step) => ({
        ...step,
        group: { ...step.group },
        text: { en: 'Shorter' },
        caution: null,
        options: [...step.options],
        right: [...step.right],
      })),
    });
    const floor = story.floor();
    expect(templateFor(floor, 'changeover')?.version).toBe(2);
    const list = checklistOf(floor, changeover);
    if (!list) throw new Error('told above');
    const kept = templateOf(floor, list);
    expect(kept?.version).toBe(1);
    if (kept) expect(standingOf(floor, list, kept).asked).toBe(asked);
  });
});
