import { expect, test } from 'vitest';
import { doneSteps, nextStep, steps } from '../../../../../../src/app/screens/plant/begin/model.ts';
import { beginStory, wantedSlot } from '../../../../../shared/floor/story.ts';

const tablet = { scannerTested: false, labelTested: false, practised: false };

test('each step is done by what the log or the tablet knows, and the first that is not comes next', () => {
  const story = beginStory();
  const next = (of = tablet) => nextStep(doneSteps(story.floor(), of));
  const person = { badge: 'B', pinSet: 'p1' };
  expect(next()).toBe('plant');
  story.tell('plant.named', { name: 'Fell Works', zone: 'UTC' });
  expect(next()).toBe('engineer');
  story.tell('person.added', { ...person, person: 'ana', name: 'Ana', role: 'engineer' });
  expect(next()).toBe('line');
  story.tell('line.defined', { line: 'L1', name: 'one', zone: 'UTC', machines: [] });
  expect(next()).toBe('people');
  story.tell('person.added', { ...person, person: 'bo', name: 'Bo', role: 'operator', badge: 'C' });
  expect(next()).toBe('product');
  const setup = { setup: 's', product: 'Fell', side: 'top', revision: '1', line: 'L1', source: 'x' } as const;
  story.tell('setup.taken', { ...setup, slots: [wantedSlot('M1-F-001', 'A')] });
  expect(next()).toBe('labels');
  const printed = { line: 'L1', reel: null, again: [], size: 'small' };
  story.tell('labels.printed', { ...printed, what: 'badge', names: ['ana'] });
  expect(next()).toBe('labels');
  story.tell('labels.printed', { ...printed, what: 'slot', names: ['M1-F-001'] });
  expect(next()).toBe('scanner');
  const tested = { ...tablet, scannerTested: true };
  expect(next(tested)).toBe('label');
  expect(next({ ...tested, labelTested: true })).toBe('practice');
  expect(next({ ...tested, labelTested: true, practised: true })).toBe('load');
});

test('where all is done nothing comes next', () => {
  expect(nextStep(Object.fromEntries(steps.map((step) => [step, true])) as never)).toBeNull();
});
