// A further lane of a conveyor that nobody needs any more is taken away; what it built stays its own, and one that builds or answers for something stays.

import { expect, test } from 'vitest';
import { laneHeld } from '../../../shared/floor/lane-held.ts';
import { laneLine, lanesTaking, linesFeeding } from '../../../shared/floor/lanes.ts';
import { lookAtLine } from '../../../shared/floor/slot-right.ts';
import { payloadExamples } from './examples.ts';
import {
  beginStory,
  brookSetup,
  counted,
  type Story,
  started,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from './story.ts';

const lane2 = laneLine('L1', 2);

/** Lane 2 is told, with a setup that takes from a slot of both and from one of its own. */
function twoLanes(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.defined', { line: lane2, name: 'Right', zone: 'UTC', machines: [] });
  const slots = ['M1-F-001', 'M1-F-020'].map((slot) => wantedSlot(slot, 'R-100'));
  story.tell('setup.taken', { ...brookSetup, setup: 'right', line: lane2, slots });
  story.tell('setup.chosen', { line: lane2, setup: 'right' });
  return story;
}

/** Lane 2 builds ten panels and ends its run. */
function built(story: Story): void {
  story.tell('run.started', started('r2', { line: lane2, setup: 'right' }));
  story.tell('panels.counted', { ...counted('r2', 10), line: lane2 });
  story.tell('run.ended', { run: 'r2', line: lane2, panels: 10, note: '' });
}

test('a lane goes with its setup, and is known as one that fed there', () => {
  const story = twoLanes();
  built(story);
  story.tell('lane.withdrawn', { line: lane2 });
  const floor = story.floor();
  expect([...floor.lines.keys()]).not.toContain(lane2);
  expect(lanesTaking(floor, 'L1')).toEqual([]);
  expect(linesFeeding(floor, 'L1')).toEqual(['L1', lane2]);
  expect(floor.runs.get('r2')).toMatchObject({ line: lane2, done: 10 });
});

test('a lane that never built leaves nothing but its name, and takes the rules of then when it is told again', () => {
  const story = twoLanes();
  story.tell('line.idle-ruled', { line: 'L1', minutes: 5 });
  story.tell('lane.withdrawn', { line: lane2 });
  expect(linesFeeding(story.floor(), 'L1')).toEqual(['L1']);
  expect(story.floor().lanesGone.get(lane2)?.name).toBe('Right');
  story.tell('line.idle-ruled', { line: 'L1', minutes: 9 });
  story.tell('setup.chosen', { line: lane2, setup: 'right' });
  expect(story.floor().idles.get(lane2)).toBe(9);
});

test('a lane that builds stays, as does the line itself', () => {
  const story = twoLanes();
  story.tell('run.started', started('r2', { line: lane2, setup: 'right' }));
  story.tell('lane.withdrawn', { line: lane2 });
  story.tell('lane.withdrawn', { line: 'L1' });
  expect([...story.floor().lines.keys()]).toEqual(expect.arrayContaining(['L1', lane2]));
});

test('a lane stays for which another tablet had loaded something unheard', () => {
  const story = twoLanes();
  const own = verified('M1-F-020', 'R-100', { reel: 'K2', line: lane2, setup: 'right' });
  story.tell('lane.withdrawn', { line: lane2 }, { at: 102 });
  story.tell('reel.verified', own, { tablet: 'T2', at: 101 });
  const both = verified('M1-F-001', 'R-100', { reel: 'K1', line: lane2, setup: 'right' });
  story.tell('reel.verified', both, { tablet: 'T2', at: 103 });
  const floor = story.floor();
  expect(floor.lines.has(lane2)).toBe(true);
  expect(floor.chosen.get(lane2)).toBe('right');
  expect(lookAtLine(floor, 'L1', 'brook-top-a').surplus).toEqual([]);
});

test('a lane that was taken away comes back with what another tablet begins on it, by its name', () => {
  const story = twoLanes();
  story.tell('lane.withdrawn', { line: lane2 });
  story.tell('setup.chosen', { line: lane2, setup: 'right' });
  expect(story.floor().lines.get(lane2)?.name).toBe('Right');
  expect(story.floor().lanesGone.size).toBe(0);
});

test('laneHeld() says what keeps a lane', () => {
  const story = twoLanes();
  expect(laneHeld(story.floor(), lane2)).toBeNull();
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  expect(laneHeld(story.floor(), lane2)).toBeNull();
  story.tell('reel.verified', verified('M1-F-020', 'R-100', { reel: 'K2', line: lane2, setup: 'right' }));
  expect(laneHeld(story.floor(), lane2)).toEqual({ why: 'reels', slots: ['M1-F-020'] });
  story.tell('run.started', started('r2', { line: lane2, setup: 'right' }));
  expect(laneHeld(story.floor(), lane2)).toEqual({ why: 'runs' });
  story.tell('run.ended', { run: 'r2', line: lane2, panels: 10, note: '' });
  story.tell('reel.unloaded', unloaded('M1-F-020', { reel: 'K2' }));
  expect(laneHeld(story.floor(), lane2)).toBeNull();
  story.tell('reel.verified', {
    ...verified('M1-F-020', 'R-100', { reel: 'K3', line: lane2, setup: 'right' }),
    verdict: 'held',
  });
  expect(laneHeld(story.floor(), lane2)).toEqual({ why: 'open' });
});

test('laneHeld() names a handover until another lead has taken it', () => {
  const story = twoLanes();
  const signed = { ...payloadExamples['shift.handed'], handover: 'h1', line: lane2, left: [], more: 0 };
  story.tell('shift.handed', { ...signed, by: 'lea' });
  expect(laneHeld(story.floor(), lane2)).toEqual({ why: 'open' });
  story.tell('shift.taken', {
    ...payloadExamples['shift.taken'],
    handover: 'h1',
    line: lane2,
    by: 'max',
  });
  expect(laneHeld(story.floor(), lane2)).toBeNull();
});

test('laneHeld() names a changeover and a sweep while they go on', () => {
  const story = twoLanes();
  const changeover = { changeover: 'x', line: lane2, setup: 'right', from: null, product: 'Fell' };
  story.tell('changeover.began', { ...changeover, lastPanel: null });
  expect(laneHeld(story.floor(), lane2)).toEqual({ why: 'open' });
  story.tell('changeover.dropped', { changeover: 'x', line: lane2, reason: 'put off' });
  expect(laneHeld(story.floor(), lane2)).toBeNull();
  story.tell('sweep.started', { line: lane2, sweep: 's' });
  expect(laneHeld(story.floor(), lane2)).toEqual({ why: 'open' });
  story.tell('sweep.ended', { line: lane2, sweep: 's', seen: 0, missing: [] });
  expect(laneHeld(story.floor(), lane2)).toBeNull();
});

const open = { why: 'open' } as const;

test('laneHeld() names a checklist until it is closed, but none of a changeover that is over or of a slot, which nobody could close', () => {
  const story = twoLanes();
  const list = { ...payloadExamples['checklist.opened'], checklist: 'c', line: lane2 };
  story.tell('checklist.opened', { ...list, changeover: null });
  expect(laneHeld(story.floor(), lane2)).toEqual(open);
  story.tell('checklist.closed', { ...payloadExamples['checklist.closed'], checklist: 'c', line: lane2 });
  expect(laneHeld(story.floor(), lane2)).toBeNull();
  const changeover = { changeover: 'x', line: lane2, setup: 'right', from: null, product: 'Fell' };
  story.tell('changeover.began', { ...changeover, lastPanel: null });
  story.tell('checklist.opened', { ...list, checklist: 'd', changeover: 'x' });
  expect(laneHeld(story.floor(), lane2)).toEqual(open);
  story.tell('changeover.dropped', { changeover: 'x', line: lane2, reason: 'put off' });
  expect(laneHeld(story.floor(), lane2)).toBeNull();
  // The list of a splice is offered after that splice alone.
  story.tell('checklist.opened', { ...list, checklist: 'e', changeover: null, slot: 'M1-F-001' });
  expect(laneHeld(story.floor(), lane2)).toBeNull();
});

test('laneHeld() names paste on its stencil until it came off; paste on that of the other lane keeps nothing', () => {
  const story = twoLanes();
  const told = payloadExamples['jar.told'];
  story.tell('jar.known', payloadExamples['jar.known']);
  story.tell('jar.told', told);
  expect(laneHeld(story.floor(), lane2)).toBeNull();
  story.tell('jar.told', { ...told, line: lane2 });
  expect(laneHeld(story.floor(), lane2)).toEqual(open);
  story.tell('jar.told', { ...told, says: 'off', line: lane2 });
  expect(laneHeld(story.floor(), lane2)).toBeNull();
});

test('laneHeld() names a counting station, a feeder made ready and a cart until they are the lane’s no more', () => {
  const story = twoLanes();
  const ofLane = { line: lane2, setup: 'right', slot: 'M1-F-020' };
  story.tell('line.counted-by', { line: lane2, station: 'exit' });
  expect(laneHeld(story.floor(), lane2)).toEqual(open);
  story.tell('line.counted-by', { line: lane2, station: null });
  expect(laneHeld(story.floor(), lane2)).toBeNull();
  story.tell('feeder.readied', { ...payloadExamples['feeder.readied'], ...ofLane });
  expect(laneHeld(story.floor(), lane2)).toEqual(open);
  story.tell('feeder.stripped', payloadExamples['feeder.stripped']);
  expect(laneHeld(story.floor(), lane2)).toBeNull();
  story.tell('cart.filled', { ...payloadExamples['cart.filled'], ...ofLane });
  expect(laneHeld(story.floor(), lane2)).toEqual(open);
  story.tell('cart.emptied', { cart: 'C1', line: lane2, slot: 'M1-F-020' });
  expect(laneHeld(story.floor(), lane2)).toBeNull();
});
