// What stands on the slots of a conveyor is told alike, whichever of its lanes asks.

import { describe, expect, test } from 'vitest';
import { answerPlaces } from '../../../shared/floor/interlock.ts';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { feederLosses } from '../../../shared/outlook/losses.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  started,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from './story.ts';

const lane2 = laneLine('L1', 2);
const slot = 'M1-F-001';

/** Both lanes take one part from a slot. */
function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  story.tell('line.defined', { ...line, line: lane2, name: 'Lane 2' });
  const slots = [wantedSlot(slot, 'R-100')];
  story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-a', product: 'Fell', line: lane2, slots });
  story.tell('setup.chosen', { line: lane2, setup: 'fell-top-a' });
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1' }));
  return story;
}

describe('whichever lane asks', () => {
  test('a machine hears that two tablets contradict each other about a slot', () => {
    const story = begun();
    const seen = story.entries.at(-2);
    const twice = verified(slot, 'R-100', { reel: 'K2' });
    story.tell('reel.verified', twice, seen ? { tablet: 'T2', seen } : { tablet: 'T2' });
    expect([...story.floor().conflicts.values()].map(({ kind }) => kind)).toEqual(['slot-loaded-twice']);
    const asked = [{ slot, part: 'R-100', reel: 'K2', feeder: null }];
    for (const line of ['L1', lane2])
      expect(
        answerPlaces(story.floor(), line, asked, 'Failed').map(({ why }) => why),
        line,
      ).toEqual(['in-conflict']);
  });

  test('the feeders of its conveyor have lost what finished reels showed', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K3', feeder: 'F-2', quantity: 5000 }));
    story.tell('run.started', started('a'));
    story.tell('panels.counted', { run: 'a', line: 'L1', add: 400, panels: 400, serial: null, via: 'typed' });
    const off = { part: 'C-200', reel: 'K3', quantity: 4190, basis: 'weighed' as const };
    story.tell('reel.unloaded', unloaded('M1-F-002', off));
    const of = (line: string) => feederLosses(story.floor(), line).map(({ feeder }) => feeder);
    expect(of('L1')).toEqual(['F-2']);
    expect(of(lane2)).toEqual(of('L1'));
  });
});
