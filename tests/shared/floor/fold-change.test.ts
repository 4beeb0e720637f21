import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { emptyState, slotKey } from '../../../shared/floor/state.ts';
import { isDropped } from '../../../shared/floor/state-change.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { payloadExamples } from './examples.ts';
import { beginStory, counted, type Story, started, startMs, tellPlant, verified } from './story.ts';

const facts = { sideChanges: false, stencilChanges: true, productChanges: true, programChanges: true };

function openList(story: Story, checklist = 'list-1'): void {
  story.tell('checklist.opened', {
    checklist,
    template: 'changeover',
    version: 1,
    line: 'L1',
    changeover: 'ch-1',
    slot: null,
    facts,
  });
}

function begin(story: Story, more: Partial<PayloadOf<'changeover.began'>> = {}): void {
  story.tell('changeover.began', {
    changeover: 'ch-1',
    line: 'L1',
    from: 'brook-top-a',
    setup: 'brook-top-b',
    product: 'Brook',
    lastPanel: null,
    ...more,
  });
}

function fill(story: Story, slot: string, more: Partial<PayloadOf<'cart.filled'>> = {}): void {
  story.tell('cart.filled', {
    cart: 'CART-1',
    line: 'L1',
    setup: 'brook-top-a',
    slot,
    feeder: 'F-1',
    reel: 'K-1',
    part: 'R-100',
    supplierPart: null,
    lot: 'LT-1',
    dateCode: null,
    quantity: 4000,
    of: 'T1/T1-life-1/1',
    ...more,
  });
}

describe('foldChange() with checklist templates', () => {
  test('keeps versions in their order and never replaces one', () => {
    const story = beginStory();
    const template = payloadExamples['checklist.template'];
    story.tell('checklist.template', { ...template, version: 3 });
    story.tell('checklist.template', { ...template, version: 2 });
    story.tell('checklist.template', { ...template, version: 2, title: { en: 'other' } });
    const versions = story.floor().templates.get(template.template) ?? [];
    expect(versions.map((each) => each.version)).toEqual([2, 3]);
    expect(versions[0]?.title).toEqual(template.title);
  });
});

describe('foldChange() with checklists', () => {
  test('keeps who answered what, and when', () => {
    const story = beginStory();
    openList(story);
    const line = 'L1';
    story.tell(
      'step.answered',
      { checklist: 'list-1', line, step: 'rails', value: 120.5, unit: 'mm' },
      { at: 60 },
    );
    const list = story.floor().checklists.get('list-1');
    expect(list?.answers.get('rails')).toEqual({
      value: 120.5,
      by: ['ana'],
      atMs: startMs + 60_000,
      skipped: null,
    });
    expect(list).toMatchObject({ openedBy: 'ana', tablet: 'T1', closedMs: null });
  });

  test('gathers different signers of one step, each once', () => {
    const story = beginStory();
    openList(story);
    const sign = { checklist: 'list-1', line: 'L1', step: 'signed', value: 'signed', unit: null };
    story.tell('step.answered', sign);
    story.tell('step.answered', sign);
    story.tell('step.answered', sign, { who: 'bea' });
    expect(story.floor().checklists.get('list-1')?.answers.get('signed')?.by).toEqual(['ana', 'bea']);
  });

  test('keeps a signature of each person once, and gives it back to who gave it alone', () => {
    const story = beginStory();
    begin(story);
    openList(story);
    const step = { checklist: 'list-1', line: 'L1', step: 'released' };
    const sign = { ...step, how: 'badge', checked: 'tablet' } as const;
    story.tell('step.signed', { ...sign, by: 'ana', role: 'operator' });
    story.tell('step.signed', { ...sign, by: 'ana', role: 'lead' });
    story.tell('step.signed', { ...sign, by: 'lea', role: 'lead' });
    const signers = () =>
      story
        .floor()
        .checklists.get('list-1')
        ?.answers.get('released')
        ?.signed?.map(({ person, role }) => `${person} ${role}`);
    expect(signers()).toEqual(['ana operator', 'lea lead']);
    story.tell('step.reopened', { ...step, reason: '' });
    expect(signers()).toEqual(['ana operator', 'lea lead']);
    story.tell('step.unsigned', { ...step, by: 'bo', checked: 'tablet' });
    story.tell('step.unsigned', { ...step, by: 'ana', checked: 'tablet' });
    expect(signers()).toEqual(['lea lead']);
    story.tell('step.unsigned', { ...step, by: 'lea', checked: 'tablet' });
    expect(story.floor().checklists.get('list-1')?.answers.has('released')).toBe(false);
  });

  test('opens a closed list whose signature is taken back, and keeps it once the run is released', () => {
    const story = beginStory();
    begin(story);
    openList(story);
    const step = { checklist: 'list-1', line: 'L1', step: 'released' };
    story.tell('step.signed', { ...step, by: 'ana', role: 'operator', how: 'pin', checked: 'server' });
    story.tell('checklist.closed', { checklist: 'list-1', line: 'L1', done: 1, asked: 1, note: '' });
    story.tell('step.unsigned', { ...step, by: 'ana', checked: 'tablet' });
    const list = () => story.floor().checklists.get('list-1');
    expect(list()).toMatchObject({ closedMs: null });
    story.tell('step.signed', { ...step, by: 'ana', role: 'operator', how: 'pin', checked: 'server' });
    story.tell('changeover.released', { changeover: 'ch-1', line: 'L1', by: 'lea', reason: '' });
    story.tell('step.unsigned', { ...step, by: 'ana', checked: 'tablet' });
    expect(list()?.answers.get('released')?.signed).toHaveLength(1);
  });

  test('lets a step be skipped by a lead with a reason, and done again after reopening', () => {
    const story = beginStory();
    openList(story);
    const step = { checklist: 'list-1', line: 'L1', step: 'rails' };
    story.tell('step.skipped', { ...step, by: 'lea', reason: 'same width' });
    expect(story.floor().checklists.get('list-1')?.answers.get('rails')).toMatchObject({
      value: null,
      skipped: { by: 'lea', reason: 'same width' },
    });
    story.tell('step.reopened', { ...step, reason: '' });
    expect(story.floor().checklists.get('list-1')?.answers.has('rails')).toBe(false);
    story.tell('step.answered', { ...step, value: 'done', unit: null });
    expect(story.floor().checklists.get('list-1')?.answers.get('rails')?.skipped).toBeNull();
  });

  test('goes on where another tablet left, and takes no answer once closed', () => {
    const story = beginStory();
    openList(story);
    story.tell('checklist.handed', { checklist: 'list-1', line: 'L1', to: 'T2' });
    story.tell('checklist.closed', { checklist: 'list-1', line: 'L1', done: 1, asked: 1, note: '' });
    story.tell('step.answered', {
      checklist: 'list-1',
      line: 'L1',
      step: 'rails',
      value: 'done',
      unit: null,
    });
    const list = story.floor().checklists.get('list-1');
    expect(list?.tablet).toBe('T2');
    expect(list?.closedMs).not.toBeNull();
    expect(list?.answers.size).toBe(0);
  });

  test('ignores answers to a checklist that nobody opened', () => {
    const story = beginStory();
    story.tell('step.answered', { checklist: 'no', line: 'L1', step: 'rails', value: 'done', unit: null });
    expect(story.floor().checklists.size).toBe(0);
  });
});

describe('foldChange() with changeovers', () => {
  test('is open from its beginning to its release', () => {
    const story = beginStory();
    begin(story);
    expect(story.floor().changing.get('L1')).toBe('ch-1');
    story.tell('changeover.released', { changeover: 'ch-1', line: 'L1', by: 'lea', reason: '' }, { at: 900 });
    const floor = story.floor();
    expect(floor.changing.has('L1')).toBe(false);
    expect(floor.changeovers.get('ch-1')).toMatchObject({
      releasedMs: startMs + 900_000,
      releasedBy: 'lea',
    });
  });

  test('keeps the first release where two tablets release', () => {
    const story = beginStory();
    begin(story);
    story.tell('changeover.released', { changeover: 'ch-1', line: 'L1', by: 'lea', reason: '' }, { at: 900 });
    story.tell(
      'changeover.released',
      { changeover: 'ch-1', line: 'L1', by: 'tom', reason: '' },
      { at: 950, tablet: 'T2' },
    );
    expect(story.floor().changeovers.get('ch-1')?.releasedBy).toBe('lea');
  });

  test('starts at the last good panel where it is given', () => {
    const story = beginStory();
    begin(story, { lastPanel: '2026-03-02T05:30:00.000Z' });
    expect(story.floor().changeovers.get('ch-1')?.beganMs).toBe(startMs - 1_800_000);
  });

  test('is open no more when it is cancelled, and nobody released it', () => {
    const story = beginStory();
    begin(story);
    const dropped = story.tell('changeover.dropped', {
      changeover: 'ch-1',
      line: 'L1',
      reason: 'job withdrawn',
    });
    const floor = story.floor();
    const there = floor.changeovers.get('ch-1');
    expect(there).toMatchObject({ releasedMs: null, dropped: { entry: entryId(dropped) } });
    expect(there && isDropped(there)).toBe(true);
    expect(floor.changing.size).toBe(0);
    expect(floor.conflicts.size).toBe(0);
  });

  test('keeps the newest measurement of a slot', () => {
    const story = beginStory();
    begin(story);
    const measured = { ...payloadExamples['panel.measured'], changeover: 'ch-1', slot: 'M1-F-001' };
    story.tell('panel.measured', { ...measured, quantity: 1, verdict: 'refused' });
    story.tell('panel.measured', { ...measured, quantity: 2, verdict: 'accepted' });
    story.tell('panel.measured', { ...measured, slot: 'M1-F-002', quantity: 3 });
    const all = story.floor().changeovers.get('ch-1')?.measured ?? [];
    expect(all.map((each) => [each.slot, each.quantity, each.by])).toEqual([
      ['M1-F-001', 2, 'ana'],
      ['M1-F-002', 3, 'ana'],
    ]);
  });
});

describe('foldChange() with carts', () => {
  test('loads what it carries with one docking, and the cart is empty then', () => {
    const story = beginStory();
    tellPlant(story);
    fill(story, 'M1-F-001');
    fill(story, 'M1-F-002', { reel: 'K-2', feeder: 'F-2', part: 'C-200', quantity: null });
    const docked = story.tell('cart.docked', {
      cart: 'CART-1',
      line: 'L1',
      setup: 'brook-top-a',
      slots: ['M1-F-001', 'M1-F-002'],
    });
    const floor = story.floor();
    const slot = floor.slots.get(slotKey('L1', 'M1-F-001'));
    expect(slot).toMatchObject({ feeder: 'F-1', entry: entryId(docked) });
    expect(slot?.tapes[0]).toMatchObject({ reel: 'K-1', part: 'R-100', lot: 'LT-1', count: 4000 });
    expect(floor.slots.get(slotKey('L1', 'M1-F-002'))?.tapes[0]?.count).toBeNull();
    expect(floor.reels.get('K-1')?.at).toEqual({ line: 'L1', slot: 'M1-F-001' });
    expect(floor.carts.size).toBe(0);
  });

  test('never overwrites a slot that still carries a reel: that place stays on the cart', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'OLD' }));
    fill(story, 'M1-F-001');
    fill(story, 'M1-F-010', { reel: 'K-3', part: 'U-300' });
    story.tell('cart.docked', {
      cart: 'CART-1',
      line: 'L1',
      setup: 'brook-top-a',
      slots: ['M1-F-001', 'M1-F-010'],
    });
    const floor = story.floor();
    expect(floor.slots.get(slotKey('L1', 'M1-F-001'))?.tapes[0]?.reel).toBe('OLD');
    expect([...(floor.carts.get('CART-1')?.keys() ?? [])]).toEqual(['M1-F-001']);
  });

  test('a reel held at a cart goes onto the cart once a lead clears it, never onto the line', () => {
    const story = beginStory();
    tellPlant(story);
    const held = story.tell('reel.verified', {
      ...verified('M1-F-001', 'R-100', { reel: 'K-5', feeder: 'F-5', verdict: 'held' }),
      reasons: [{ code: 'no-quantity' }],
      cart: 'CART-1',
    });
    expect(story.floor().holds.get(entryId(held))?.facts.cart).toBe('CART-1');
    expect(story.floor().carts.size).toBe(0);
    story.tell('hold.cleared', {
      of: entryId(held),
      line: 'L1',
      slot: 'M1-F-001',
      reason: 'counted',
      by: 'lea',
      checked: 'tablet',
    });
    const floor = story.floor();
    expect(floor.holds.size).toBe(0);
    expect(floor.slots.size).toBe(0);
    expect(floor.carts.get('CART-1')?.get('M1-F-001')).toMatchObject({
      reel: 'K-5',
      feeder: 'F-5',
      part: 'R-100',
      of: entryId(held),
    });
  });

  test('a cleared hold keeps what the cart got for the slot in between', () => {
    const story = beginStory();
    tellPlant(story);
    const held = story.tell('reel.verified', {
      ...verified('M1-F-001', 'R-100', { reel: 'K-5', feeder: 'F-5', verdict: 'held' }),
      reasons: [{ code: 'no-quantity' }],
      cart: 'CART-1',
    });
    fill(story, 'M1-F-001', { reel: 'K-6', feeder: 'F-6' });
    story.tell('hold.cleared', {
      of: entryId(held),
      line: 'L1',
      slot: 'M1-F-001',
      reason: 'counted',
      by: 'lea',
      checked: 'tablet',
    });
    expect(story.floor().holds.size).toBe(0);
    expect(story.floor().carts.get('CART-1')?.get('M1-F-001')?.reel).toBe('K-6');
  });

  test('a place filled for another setup is not loaded by a docking for this one', () => {
    const story = beginStory();
    tellPlant(story);
    fill(story, 'M1-F-001', { setup: 'other' });
    story.tell('cart.docked', { cart: 'CART-1', line: 'L1', setup: 'brook-top-a', slots: ['M1-F-001'] });
    expect(story.floor().slots.size).toBe(0);
    expect(story.floor().carts.get('CART-1')?.has('M1-F-001')).toBe(true);
  });

  test('counts placements from the panel at which it was docked', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('run.started', started('run-1'));
    story.tell('panels.counted', counted('run-1', 7));
    fill(story, 'M1-F-001');
    story.tell('cart.docked', { cart: 'CART-1', line: 'L1', setup: 'brook-top-a', slots: ['M1-F-001'] });
    expect(story.floor().slots.get(slotKey('L1', 'M1-F-001'))?.tapes[0]?.fromPanels).toBe(7);
  });

  test('forgets an emptied place, and the cart with its last one', () => {
    const story = beginStory();
    fill(story, 'M1-F-001');
    fill(story, 'M1-F-002');
    story.tell('cart.emptied', { cart: 'CART-1', line: 'L1', slot: 'M1-F-001' });
    expect([...(story.floor().carts.get('CART-1')?.keys() ?? [])]).toEqual(['M1-F-002']);
    story.tell('cart.emptied', { cart: 'CART-1', line: 'L1', slot: 'M1-F-002' });
    expect(story.floor().carts.has('CART-1')).toBe(false);
  });
});

describe('foldChange()', () => {
  test('never changes a record that an earlier state holds', () => {
    const story = beginStory();
    openList(story);
    begin(story);
    const before = applyAll(emptyState(), story.entries);
    const list = before.checklists.get('list-1');
    const changeover = before.changeovers.get('ch-1');
    const more = story.tell('step.answered', {
      checklist: 'list-1',
      line: 'L1',
      step: 'rails',
      value: 'done',
      unit: null,
    });
    applyAll(before, [more]);
    expect(list?.answers.size).toBe(0);
    expect(before.checklists.get('list-1')?.answers.size).toBe(1);
    expect(before.changeovers.get('ch-1')).toBe(changeover);
  });
});
