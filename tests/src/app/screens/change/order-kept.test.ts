// The order of jobs as the log keeps it: reads back as the list that was kept, the newest counts, each line has its own.

import { describe, expect, test } from 'vitest';
import {
  isSameList,
  keptList,
  keptPayload,
  moveJob,
  type OrderList,
  setByHand,
} from '../../../../../src/app/screens/change/order-model.ts';
import { beginStory } from '../../../../shared/floor/story.ts';

const list: OrderList = {
  jobs: ['a', 'b'].map((id) => ({
    id,
    setup: `s-${id}`,
    panels: 100,
    panelSeconds: 12.5,
    dueMs: id === 'a' ? null : 5,
    isHeld: false,
  })),
  byHand: { takeOut: 1.5, putIn: 2 },
};

describe('a kept order of jobs', () => {
  test('reads back as the list that was kept, with who and when', () => {
    const story = beginStory();
    const told = story.tell('plan.kept', keptPayload('L1', list));
    const plan = story.floor().plans.get('L1');
    expect(isSameList(keptList(plan), list)).toBe(true);
    expect(plan).toMatchObject({ by: told.who, atMs: told.hlc.ms });
  });

  test('is the newest of its line', () => {
    const story = beginStory();
    const turned = moveJob(list, 0, 1);
    story.tell('plan.kept', keptPayload('L2', list));
    story.tell('plan.kept', keptPayload('L1', list));
    story.tell('plan.kept', keptPayload('L1', turned));
    const { plans } = story.floor();
    expect(keptList(plans.get('L1')).jobs.map(({ id }) => id)).toEqual(['b', 'a']);
    expect(keptList(plans.get('L2')).jobs.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(keptList(plans.get('L3')).jobs).toEqual([]);
  });

  test('differs by order, by a held place and by minutes, not by how it was written', () => {
    const held = { ...list, jobs: list.jobs.map((job) => ({ ...job, isHeld: true })) };
    for (const other of [moveJob(list, 0, 1), held, setByHand(list, 'putIn', null)])
      expect(isSameList(list, other)).toBe(false);
    expect(isSameList(list, { byHand: { putIn: 2, takeOut: 1.5 }, jobs: [...list.jobs] })).toBe(true);
    expect(isSameList({ jobs: [] }, setByHand(setByHand({ jobs: [] }, 'putIn', 2), 'putIn', null))).toBe(
      true,
    );
  });
});
