// What is computed from many parts is computed once: entries that say nothing of them leave what it rests on as it is, and those that do change it.

import { expect, test } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import type { EntryKind, PayloadOf } from '../../../shared/floor/kinds.ts';
import { lookAlikeGrounds } from '../../../shared/floor/look-alikes.ts';
import { readPartList } from '../../../shared/sheet/part-list.ts';
import { textToRows } from '../../../shared/sheet/text.ts';
import { sameList } from '../../../src/app/same-list.ts';
import {
  compareList,
  listEntries,
  listGrounds,
} from '../../../src/app/screens/plant/parts/part-list-model.ts';
import { beginStory, brookSetup, started, tellPlant, verified } from '../../shared/floor/story.ts';

test('sameList() keeps the list before while it holds the same things in the same order', () => {
  const [one, other] = [{}, {}];
  const before = [one, other];
  expect(sameList(before, [one, other])).toBe(before);
  for (const now of [[one], [other, one], [one, {}], [one, other, one]])
    expect(sameList(before, now)).toBe(now);
});

/** One floor that goes on, as a tablet's does. */
function floorWithList() {
  const story = beginStory();
  tellPlant(story);
  const floor = story.floor();
  const tell = <K extends EntryKind>(kind: K, payload: PayloadOf<K>) =>
    void applyAll(floor, [story.tell(kind, payload)]);
  const take = (text: string) => {
    const { changed } = compareList(floor, readPartList(textToRows(text).rows).parts);
    for (const { kind, payload } of listEntries(
      changed.map(({ part }) => part),
      'parts.csv',
    ))
      tell(kind, payload as never); // its own payload
  };
  return { floor, tell, take };
}

const list = (value: string, maker = 'ZR-1') => `Part;Value;Package;MPN\nR-100;${value};0402;${maker}`;

test('look-alikes of a setup rest on its slots and on what the list says of their parts', () => {
  const { floor, tell, take } = floorWithList();
  const grounds = () => lookAlikeGrounds(floor, 'brook-top-a');
  take(list('10k'));
  const before = grounds();
  tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  tell('run.started', started('r1'));
  take('Part;Value\nX-1;1k'); // a part of no slot
  expect(sameList(before, grounds())).toBe(before);
  take(list('22k'));
  const listed = grounds();
  expect(sameList(before, listed)).toBe(listed);
  tell('setup.taken', { ...brookSetup, slots: brookSetup.slots.slice(1) });
  expect(sameList(listed, grounds())).not.toBe(listed);
});

test('what a list changes rests on what is known of its parts and on makers', () => {
  const { floor, tell, take } = floorWithList();
  const rows = readPartList(textToRows(list('10k')).rows).parts;
  const grounds = () => listGrounds(floor, rows);
  take(list('10k'));
  const before = grounds();
  tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  tell('run.started', started('r1'));
  expect(sameList(before, grounds())).toBe(before);
  take(list('22k'));
  const valued = grounds();
  expect(sameList(before, valued)).toBe(valued);
  take(list('22k', 'ZR-2'));
  expect(sameList(valued, grounds())).not.toBe(valued);
});
