// Scans that arrive while another is being written wait for it, a failure does not stop the next, a double read counts once.

import { expect, test } from 'vitest';
import { oneAtATime } from '../../../../src/app/desk/one-at-a-time.ts';

function slowWork() {
  const begun: string[] = [];
  const ends: { done: () => void; fail: () => void }[] = [];
  const work = (thing: string) =>
    new Promise<void>((resolve, reject) => {
      begun.push(thing);
      ends.push({ done: resolve, fail: () => reject(new Error('not written')) });
    });
  const settle = () => new Promise((resolve) => setImmediate(resolve));
  return { begun, ends, work, settle };
}

test('what comes meanwhile waits, in order, and goes on after a failure', async () => {
  const { begun, ends, work, settle } = slowWork();
  const inbox = oneAtATime(work, (one, other) => one === other);
  for (const thing of ['a', 'b', 'c']) inbox.give(thing);
  expect(begun).toEqual(['a']);
  ends[0]?.fail();
  await settle();
  expect(begun).toEqual(['a', 'b']);
  ends[1]?.done();
  await settle();
  ends[2]?.done();
  await settle();
  inbox.give('d');
  expect(begun).toEqual(['a', 'b', 'c', 'd']);
});

test('a double read of what is in hand counts once, later it counts again', async () => {
  const { begun, ends, work, settle } = slowWork();
  const inbox = oneAtATime(work, (one, other) => one === other);
  for (const thing of ['a', 'a', 'b', 'b', 'a']) inbox.give(thing);
  for (const _ of [0, 1, 2]) {
    ends.at(-1)?.done();
    await settle();
  }
  expect(begun).toEqual(['a', 'b', 'a']);
});

test('forgets what waits when cleared', async () => {
  const { begun, ends, work, settle } = slowWork();
  const inbox = oneAtATime(work, () => false);
  for (const thing of ['a', 'b']) inbox.give(thing);
  inbox.clear();
  ends[0]?.done();
  await settle();
  expect(begun).toEqual(['a']);
});
