// What is told of a run that ended long ago, whose single counts are gone: no panel is left out that was in question before, and none is
// sure that was not.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { suspectPanels } from '../../../shared/trace/suspects.ts';
import { counted, started, startMs, unloaded } from '../floor/story.ts';
import { begun, end, indexOf, load, slot } from './line-story.ts';

const day = 86_400;

test('panels built after a moment are told as widely as before, or more widely', () => {
  let wider = 0;
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(1, 1, 1, 4, -1), { minLength: 3, maxLength: 25 }),
      fc.nat(3),
      (adds, most) => {
        const story = begun(0, most);
        load(story, 'K1', {});
        story.tell('run.started', started('r1'), { at: 100 });
        for (const [at, add] of adds.entries())
          story.tell('panels.counted', counted('r1', add), { at: 110 + 10 * at });
        const endS = 120 + 10 * adds.length;
        end(story, 'r1', 0);
        story.tell('reel.unloaded', unloaded(slot));
        const before = indexOf(story);
        for (let later = 1; later <= 30; later++)
          story.tell('run.started', started(`later-${later}`), { at: endS + later * day });
        const after = indexOf(story);
        if (adds.length > 2) expect(after.state.runs.get('r1')?.counts.length).toBeLessThanOrEqual(2);
        for (let second = 95; second <= endS; second += 5) {
          const question = {
            cause: 'floor-life',
            material: { reel: 'K1' },
            afterMs: startMs + second * 1000,
          } as const;
          const [was] = suspectPanels(before, question).runs;
          const [is] = suspectPanels(after, question).runs;
          if (was) {
            expect(is?.possible.first).toBeLessThanOrEqual(was.possible.first);
            expect(is?.possible.last).toBeGreaterThanOrEqual(was.possible.last);
          }
          if (is?.sure) {
            expect(was?.sure?.first).toBeLessThanOrEqual(is.sure.first);
            expect(was?.sure?.last).toBeGreaterThanOrEqual(is.sure.last);
          }
          if (is && is.possible.first < (was?.possible.first ?? 0)) wider += 1;
        }
      },
    ),
    { numRuns: 60 },
  );
  expect(wider).toBeGreaterThan(0);
});
