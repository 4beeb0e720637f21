// A line of one machine told in few words: reels on its first slot, panels counted one by one.

import { compareEntries } from '../../../shared/log/order.ts';
import { tracePlaces } from '../../../shared/trace/ask.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { beginStory, counted, type Story, tellPlant, verified } from '../floor/story.ts';

/** The slot that is spoken of. */
export const slot = 'M1-F-001';

/** A line of one machine, which panels leave so many counts before they are counted. */
export function begun(least = 0, most = 0): Story {
  const story = beginStory();
  tellPlant(story, { rules: { labelShare: 0 } });
  story.tell('line.tape-ruled', { line: 'L1', trailerMm: 0, leaderMm: null });
  story.tell('line.panels-ruled', { line: 'L1', machines: [{ machine: 'M1', least, most }], missed: 0 });
  return story;
}
/** A reel is loaded. */
export const load = (story: Story, reel: string | null, more: Parameters<typeof verified>[2] = {}) =>
  story.tell('reel.verified', verified(slot, 'R-100', { reel, lot: `LOT-${reel}`, ...more }));
/** A reel is spliced. */
export const splice = (story: Story, reel: string, more: Parameters<typeof verified>[2] = {}) =>
  load(story, reel, { act: 'splice', run: 'r1', cut: 0, ...more });
/** Panels counted one by one. */
export function build(story: Story, panels: number, run = 'r1') {
  for (let panel = 0; panel < panels; panel++) story.tell('panels.counted', counted(run, 1));
}
/** Panels entered all at once: all but one of them may have passed long before. */
export const enter = (story: Story, panels: number) => story.tell('panels.counted', counted('r1', panels));
/** A run ends. */
export const end = (story: Story, run: string, panels: number) =>
  story.tell('run.ended', { run, line: 'L1', panels, note: '' });
/** The log as stretches. */
export const indexOf = (story: Story) => traceLog([...story.entries].sort(compareEntries));
/** Where a reel is: run, panels surely, panels perhaps. */
export const placesOf = (story: Story, reel: string) =>
  tracePlaces(indexOf(story), { reel }).map(({ run, sure, possible }) => [
    run,
    sure && [sure.first, sure.last],
    possible && [possible.first, possible.last],
  ]);
