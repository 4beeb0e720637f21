// What ends a step of a guide, what is something else, and what it has nothing to do with.

import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../../shared/log/entry.ts';
import {
  type GuideStep,
  goOnAt,
  seeEntry,
  seenBefore,
  seePlace,
} from '../../../../src/app/frame/guide-model.ts';
import { beginStory, tellPlant, verified } from '../../../shared/floor/story.ts';

const entry = (kind: string, payload: object) => ({ kind, payload }) as unknown as Entry; // what a step reads of one
const judged = (verdict: string, act = 'load') => entry('reel.verified', { verdict, act, slot: 'M1-F-001' });
const over = { ends: true, about: 'M1-F-001' };
const other = { ends: false };

describe('seeEntry()', () => {
  test.each<[GuideStep, Entry, object | null]>([
    ['first', judged('accepted'), over],
    ['first', judged('refused'), other],
    ['wrong', judged('refused'), over],
    ['wrong', judged('held'), other],
    ['second', judged('accepted', 'splice'), over],
    ['splice', judged('accepted'), other],
    ['splice', judged('refused', 'splice'), other],
    ['splice', judged('accepted', 'splice'), over],
    ['splice', judged('accepted', 'refill'), over],
    ['answer', judged('accepted', 'splice'), over],
    ['answer', judged('accepted', 'load'), other],
    ['answer', entry('warning.acknowledged', { slot: 'M1-F-001' }), over],
    ['warning', entry('warning.raised', { slot: 'M1-F-001' }), over],
    ['warning', judged('accepted'), null],
    ['run', entry('run.started', {}), { ends: true, about: '' }],
    ['hold', judged('held'), over],
    ['hold', judged('accepted'), other],
    ['clear', entry('hold.cleared', { slot: 'M1-F-001' }), over],
    ['clear', entry('hold.declined', { slot: 'M1-F-001' }), over],
    ['export', entry('log.exported', {}), { ends: true, about: '' }],
    ['take', entry('setup.taken', { product: 'Tide gauge' }), { ends: true, about: 'Tide gauge' }],
    ['look', entry('setup.taken', { product: 'Tide gauge' }), null],
    ['first', entry('warning.raised', {}), null],
  ])('%s', (step, told, wanted) => {
    expect(seeEntry(step, told)).toEqual(wanted);
  });
});

test('a page that was opened ends the steps that ask for it', () => {
  expect(seePlace('open', { screen: 'plant', rest: ['sheet'] })).toEqual({ ends: true, about: '' });
  expect(seePlace('look', { screen: 'plant', rest: ['setups'] })).toEqual({ ends: true, about: '' });
  expect(seePlace('open', { screen: 'plant', rest: ['setups'] })).toBe(null);
  expect(seePlace('take', { screen: 'plant', rest: ['sheet'] })).toBe(null);
});

test('what is so already when a step begins ends it', () => {
  const story = beginStory();
  tellPlant(story);
  const floor = story.floor();
  expect(seenBefore('run', floor, 'L1', [])).toBe(null);
  const raised = entry('warning.raised', { line: 'L1', slot: 'M1-F-001' });
  expect(seenBefore('warning', floor, 'L1', [raised])).toEqual(over);
  expect(seenBefore('warning', floor, 'L2', [raised])).toBe(null);
  expect(seenBefore('answer', floor, 'L1', [raised])).toBe(null);
});

test('a decision without a held reel goes back to holding one', () => {
  const story = beginStory();
  tellPlant(story);
  expect(goOnAt('lead', 1, story.floor())).toBe(0);
  story.tell('reel.verified', { ...verified('M1-F-001', 'R-100'), verdict: 'held' });
  expect(goOnAt('lead', 1, story.floor())).toBe(1);
  expect(goOnAt('operator', 1, story.floor())).toBe(1);
});
