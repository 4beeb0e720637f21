// A feeder that is due for care: said while it is in hand to be put on, and never in the way of the reel.

import { expect, test } from 'vitest';
import type { FloorState } from '../../../shared/floor/state.ts';
import { type VerifyQuestion, verifyReel } from '../../../shared/verdict/verify.ts';
import { beginStory, type Story, tellPlant } from '../floor/story.ts';
import { dueFeeder } from './due-feeder.ts';

function floorOf(...before: readonly ((story: Story) => void)[]): FloorState {
  const story = beginStory();
  tellPlant(story);
  for (const tell of before) tell(story);
  return story.floor();
}

const ask = (floor: FloorState, more: Partial<VerifyQuestion> = {}) =>
  verifyReel(floor, {
    act: 'load',
    line: 'L1',
    setup: 'brook-top-a',
    slot: 'M1-F-001',
    feeder: 'F-9',
    reel: { reel: 'K-new', part: 'R-100', supplierPart: null, quantity: 5000, lot: 'lot-7' },
    today: '2026-03-02',
    ...more,
  });
const said = (floor: FloorState, more?: Partial<VerifyQuestion>) =>
  ask(floor, more).reasons.map(({ code }) => code);

test('a feeder that is due is said to be, with both figures, and its reel is accepted', () => {
  const { verdict, reasons } = ask(floorOf(dueFeeder));
  expect(verdict).toBe('accepted');
  expect(reasons).toContainEqual({ code: 'feeder-care', feeder: 'F-9', placed: 400, after: 400 });
});

test('nothing is said of care where the feeder is not due, was seen to, or does not come in hand', () => {
  const due = floorOf(dueFeeder);
  expect(said(due, { feeder: 'F-8' })).not.toContain('feeder-care');
  expect(said(due, { feeder: null })).not.toContain('feeder-care');
  expect(said(due, { act: 'splice' })).not.toContain('feeder-care');
  const cared = floorOf(dueFeeder, (story) => story.tell('feeder.cared', { feeder: 'F-9', note: '' }));
  expect(said(cared)).not.toContain('feeder-care');
});
