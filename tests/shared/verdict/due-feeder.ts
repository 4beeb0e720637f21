// A feeder that is due for care, for the tests of what is said of it.

import { counted, type Story, started, unloaded, verified } from '../floor/story.ts';

/** What the feeder placed before: 200 panels of two parts each, as many as the plant lets it place. */
export function dueFeeder(story: Story): void {
  story.tell('feeder.care-ruled', { type: null, placements: 400 });
  story.tell('run.started', started('r1', { panelsWanted: 500 }));
  const on = { reel: 'K-0', feeder: 'F-9', quantity: 9000, run: 'r1' };
  story.tell('reel.verified', verified('M1-F-001', 'R-100', on));
  story.tell('panels.counted', counted('r1', 200));
  story.tell('run.ended', { run: 'r1', line: 'L1', panels: 200, note: '' });
  story.tell('reel.unloaded', unloaded('M1-F-001', { feeder: 'F-9', reel: 'K-0' }));
}

/** It as a case of the verdict's test. */
export const dueCase = {
  why: 'the feeder has placed as much as the plant lets one place between two cares',
  before: dueFeeder,
  reason: { code: 'feeder-care', feeder: 'F-9', after: 400 },
} as const;
