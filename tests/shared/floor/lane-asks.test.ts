// What stands on the slots of a conveyor is told alike, whichever of its lanes asks.

import { describe, expect, test } from 'vitest';
import { compareBelieved } from '../../../shared/floor/believed.ts';
import { answerPlaces } from '../../../shared/floor/interlock.ts';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { tapeWidthOn } from '../../../shared/floor/remaining/splices.ts';
import { feederLosses } from '../../../shared/outlook/losses.ts';
import { shiftReport } from '../../../shared/shift/report.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  started,
  startMs,
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
    const within = { fromMs: startMs, toMs: startMs + 3_600_000 };
    const told = (line: string) => shiftReport(story.floor(), [], { line, ...within });
    expect(told('L1').parts.map(({ part }) => part)).toEqual(['C-200']);
    expect(told(lane2).feeders).toEqual(told('L1').feeders);
    expect(told(lane2).parts).toEqual(told('L1').parts);
  });

  test('a machine hears that what another lane needs is verified, though this one’s setup wants nothing there', () => {
    const story = begun();
    const facts = { line: lane2, setup: 'fell-top-b' };
    const slots = [wantedSlot('M1-F-005', 'Z-500')];
    story.tell('setup.taken', { ...brookSetup, ...facts, product: 'Fell', slots });
    story.tell('setup.chosen', facts);
    story.tell('reel.verified', verified('M1-F-005', 'Z-500', { reel: 'K5', ...facts }));
    const asked = (reel: string) => [{ slot: 'M1-F-005', part: 'Z-500', reel, feeder: null }];
    const whys = (reel: string) =>
      ['L1', lane2].map((line) => answerPlaces(story.floor(), line, asked(reel), 'Failed')[0]?.why);
    expect(whys('K5')).toEqual(['verified', 'verified']);
    expect(whys('K9')).toEqual(['unknown-reel', 'unknown-reel']);
    story.tell('setup.chosen', { line: lane2, setup: 'fell-top-a' });
    expect(whys('K5')).toEqual(['not-in-setup', 'not-in-setup']);
  });

  test('a machine hears of a slot that another lane alone wants what that lane hears', () => {
    const [five, facts] = ['M1-F-005', { line: lane2, setup: 'fell-top-b' }];
    const own = (part: string, reel: string) => verified(five, part, { reel, ...facts, lot: 'LOT7' });
    const wrong: Readonly<Record<string, (story: Story) => void>> = {
      blocked: (story) => {
        story.tell('reel.verified', own('Z-500', 'K5'));
        story.tell('material.blocked', {
          block: 'b',
          reel: null,
          lot: 'LOT7',
          part: null,
          reason: 'cracked',
        });
      },
      'other-part': (story) => story.tell('reel.verified', { ...own('X-1', 'K5'), setup: 'another' }),
      held: (story) => story.tell('reel.verified', { ...own('Z-500', 'K5'), verdict: 'held' }),
    };
    for (const [why, tell] of Object.entries(wrong))
      for (const builds of [true, false]) {
        const story = begun();
        story.tell('setup.taken', { ...brookSetup, ...facts, slots: [wantedSlot(five, 'Z-500')] });
        story.tell('setup.chosen', facts);
        if (builds) story.tell('run.started', started('r2', facts));
        tell(story);
        const asked = [{ slot: five, part: null, reel: 'K5', feeder: null }];
        for (const line of ['L1', lane2])
          expect(answerPlaces(story.floor(), line, asked, 'Warning'), `${why} ${line}`).toMatchObject([
            { result: 'Failed', why },
          ]);
        const unset = { ...story.floor(), chosen: new Map([[lane2, facts.setup]]) };
        expect(answerPlaces(unset, 'L1', asked, 'Warning'), why).toMatchObject([{ result: 'Failed', why }]);
      }
  });

  test('a machine hears that the reel of a lane that builds is verified, while another line is only loaded for another part', () => {
    const story = begun();
    const slots = [wantedSlot(slot, 'Y-100')];
    story.tell('setup.taken', { ...brookSetup, setup: 'next', product: 'Next', slots });
    story.tell('setup.chosen', { line: 'L1', setup: 'next' });
    const asked = [{ slot, part: null, reel: 'K1', feeder: null }];
    const heard = (line: string) => answerPlaces(story.floor(), line, asked, 'Failed')[0]?.why;
    expect(heard('L1')).toBe('other-part');
    story.tell('run.started', started('r2', { line: lane2, setup: 'fell-top-a' }));
    expect([heard('L1'), heard(lane2)]).toEqual(['verified', 'verified']);
    // Now L1 would build with it.
    story.tell('run.started', started('r1', { setup: 'next' }));
    expect([heard('L1'), heard(lane2)]).toEqual(['other-part', 'verified']);
  });

  test('a machine that leaves out what stands there differs from the scans', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K3' }));
    for (const [station, line] of [
      ['one', 'L1'],
      ['two', lane2],
    ] as const) {
      const known = { machine: 'M1', at: 'work', means: 'ipc2591', version: '0.1.0', address: '' } as const;
      story.tell('station.known', { station, line, ...known });
      const places = [{ slot, reel: 'K1', part: 'R-100', feeder: null }];
      const report = { report: station, page: 0, pages: 1, whole: true, places };
      story.tell('machine.loaded', { station, line, ...report }, { tablet: 'LINK', who: null });
      expect(
        compareBelieved(story.floor(), station)?.differs.map((each) => each.slot),
        line,
      ).toEqual(['M1-F-002']);
    }
  });

  test('what a splice costs goes by the tape that either lane says is there', () => {
    const story = begun();
    const slots = [wantedSlot('M1-F-005', 'Z-500', { tapeWidthMm: 16 })];
    story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-b', product: 'Fell', line: lane2, slots });
    story.tell('setup.chosen', { line: lane2, setup: 'fell-top-b' });
    const floor = story.floor();
    expect(tapeWidthOn(floor, { line: 'L1', slot: 'M1-F-005', feeder: null })).toBe(16);
    expect(tapeWidthOn(floor, { line: 'L1', slot, feeder: null })).toBe(8);
    expect(tapeWidthOn(floor, { line: 'L1', slot: 'M1-F-006', feeder: null })).toBeNull();
  });

  test('a width that the line’s own setup says is told without a look at the other lines', () => {
    class Unwalked extends Map<string, string> {
      override keys(): MapIterator<string> {
        throw new TypeError('Cannot walk the lines as one of them is asked for');
      }
    }
    const floor = begun().floor();
    const chosen = new Unwalked(floor.chosen);
    expect(tapeWidthOn({ ...floor, chosen }, { line: 'L1', slot, feeder: null })).toBe(8);
  });
});
