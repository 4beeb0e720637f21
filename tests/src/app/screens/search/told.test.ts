// What a find says of itself, by what the floor says of it.

import { expect, test, vi } from 'vitest';
import { beginStory, tellPlant } from '../../../../shared/floor/story.ts';

vi.stubGlobal('location', { hash: '' });
const { tell } = await import('../../../../../src/app/screens/search/told.ts');

test('a part names the slots that take it, as an alternate too, in walking order', () => {
  const story = beginStory();
  tellPlant(story);
  const slotsOf = (part: string) => {
    const told = tell({ kind: 'part', part }, { floor: story.floor(), entries: new Map(), zone: 'UTC' });
    return told?.facts.slice(1);
  };
  expect(slotsOf('C-200')).toEqual(['M1-F-002']);
  expect(slotsOf('C-201')).toEqual(['M1-F-002']);
  expect(slotsOf('R-100')).toEqual(['M1-F-001', 'M1-R-003']);
  expect(slotsOf('Z-9')).toEqual([]);
});
