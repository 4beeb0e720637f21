// What the log is told of a step with a jar: what it takes off the stencil with it, and what it leaves there.

import { expect, test } from 'vitest';
import { chosenDrafts, type JarStep, jarAt } from '../../../../../src/app/screens/stock/jar-drafts.ts';
import { beginStory, type Story, startMs } from '../../../../shared/floor/story.ts';

const from = new Date(startMs).toISOString();

function jars(...names: readonly string[]): Story {
  const story = beginStory();
  for (const jar of names)
    story.tell('jar.known', { jar, paste: 'SP-1', lot: `LP-${jar}`, expires: null, via: 'wedge' });
  return story;
}

/** What is told of a step, each with its jar; and the log goes on with it. */
function take(story: Story, name: string, step: JarStep, isHeld = false): readonly string[] {
  const floor = story.floor();
  const jar = floor.jars.get(name);
  if (jar === undefined) throw new Error('the jar is known');
  const at = jarAt(floor, jar, 'L1');
  const reasons = ['stencil-over'];
  const held = isHeld
    ? { kind: 'jar.held' as const, payload: { jar: name, line: 'L1', lot: null, reasons } }
    : null;
  return chosenDrafts(at, step, { held, from }).map((draft) => {
    if (draft.kind === 'jar.held') return `${draft.payload.jar} held`;
    if (draft.kind !== 'jar.told') throw new Error('a jar is told');
    const { jar: of, says, onTop } = draft.payload;
    story.tell(draft.kind, draft.payload);
    return `${of} ${says}${onTop ? ' on top' : ''}`;
  });
}

const onStencil = (story: Story) => story.floor().stencils.get('L1') ?? [];

test('a jar that is put on top says so, and all of it comes off together', () => {
  const story = jars('J1', 'J2');
  expect(take(story, 'J1', { says: 'on' })).toEqual(['J1 on']);
  expect(take(story, 'J2', { says: 'on', there: 'stays' })).toEqual(['J2 on on top']);
  expect(onStencil(story)).toEqual(['J1', 'J2']);
  expect(take(story, 'J1', { says: 'off' })).toEqual(['J2 off', 'J1 off']);
  expect(onStencil(story)).toEqual([]);
});

test('a jar that goes on where all came off takes that off first', () => {
  const story = jars('J1', 'J2');
  take(story, 'J1', { says: 'on' });
  expect(take(story, 'J2', { says: 'on', there: 'came-off' })).toEqual(['J1 off', 'J2 on']);
  expect(onStencil(story)).toEqual(['J2']);
});

test('what came off is told though the jar that was to go on is held', () => {
  const story = jars('J1', 'J2');
  take(story, 'J1', { says: 'on' });
  expect(take(story, 'J2', { says: 'on', there: 'came-off' }, true)).toEqual(['J1 off', 'J2 held']);
  expect(onStencil(story)).toEqual([]);
});

test('a jar whose place another took comes off alone: that which is on the stencil stays', () => {
  const story = jars('J1', 'J2');
  take(story, 'J1', { says: 'on' });
  // An older log: nobody was asked whether the first came off.
  take(story, 'J2', { says: 'on' });
  expect(take(story, 'J1', { says: 'off' })).toEqual(['J1 off']);
  expect(onStencil(story)).toEqual(['J2']);
});
