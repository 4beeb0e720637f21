// What a slot is to carry, by the setups of all lanes that feed from it.

import { expect, test } from 'vitest';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { wantedByLanes } from '../../../shared/floor/wanted.ts';
import { beginStory, brookSetup, tellPlant, wantedSlot } from './story.ts';

test('wantedByLanes() asks the line first, then its lanes in order', () => {
  const story = beginStory();
  tellPlant(story);
  const pitches = { 2: 2, 3: 8 };
  for (const [lane, pitchMm] of Object.entries(pitches)) {
    const line = laneLine('L1', Number(lane));
    story.tell('line.defined', { line, name: `Lane ${lane}`, zone: 'UTC', machines: [] });
    const slots = ['M1-F-001', 'M1-F-030'].map((slot) => wantedSlot(slot, 'R-100', { pitchMm }));
    story.tell('setup.taken', { ...brookSetup, setup: line, line, slots });
    story.tell('setup.chosen', { line, setup: line });
  }
  const pitchOn = (slot: string) => wantedByLanes(story.floor(), { line: 'L1', slot })?.pitchMm ?? null;
  expect(pitchOn('M1-F-001')).toBe(wantedSlot('M1-F-001', 'R-100').pitchMm);
  expect(pitchOn('M1-F-030')).toBe(2);
  expect(pitchOn('M1-F-099')).toBeNull();
});
