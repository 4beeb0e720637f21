// At the end of the line a code is a panel unless the plant knows it as something else.

import { expect, test } from 'vitest';
import { recognise } from '../../../../../shared/floor/recognise.ts';
import { isPanel } from '../../../../../src/app/screens/line/exit-model.ts';
import { beginStory, started, tellPlant } from '../../../../shared/floor/story.ts';

test('what nothing knows is a panel; a slot, a feeder, a reel, a place and a badge are none', () => {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1'));
  story.tell('feeder.known', { feeder: 'FD-07', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  story.tell('person.added', { person: 'ana', name: 'Ana', role: 'operator', badge: 'BADGE-1' });
  const facts = { part: 'R-100', supplierPart: null, quantity: 900, lot: 'LOT7', dateCode: null };
  story.tell('reel.put', { ...facts, reel: 'K1', place: 'A-1', via: 'wedge' });
  const is = (text: string) => isPanel(recognise(story.floor(), 'L1', text));
  expect(['PN-0001', '4711'].map(is)).toEqual([true, true]);
  expect(['M1-F-001', 'FD-07', 'K1', 'A-1', 'BADGE-1'].map(is)).toEqual([false, false, false, false, false]);
});
