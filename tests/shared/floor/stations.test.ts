// Who counts on a line, and how many panels that gives: totals of devices, hand counts beside them and in their place, corrections.
// The properties play a line whose true number of panels is known and ask for that number.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countedBy } from '../../../shared/floor/counters.ts';
import { applyAll } from '../../../shared/floor/fold.ts';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { workingTime } from '../../../shared/forecast/working-time.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { runPace } from '../../../shared/outlook/run-pace.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { beginStory, counted, idOf, type Story, started, startMs, type Telling, tellPlant } from './story.ts';

const STATION = { station: 'exit', line: 'L1' } as const;

function tellStation(story: Story, telling: Telling = {}): void {
  const known = { machine: null, at: 'out', means: 'counter', version: '0.1.0', address: '' } as const;
  story.tell('station.known', { ...STATION, ...known }, { tablet: 'LINK', who: null, ...telling });
}

function begin(): Story {
  const story = beginStory();
  tellPlant(story);
  tellStation(story);
  say(story, 'a', 100);
  story.tell('line.counted-by', { line: 'L1', station: 'exit' });
  story.tell('run.started', started('run-1'));
  return story;
}

function say(
  story: Story,
  boot: string,
  total: number,
  more: { readonly serial?: string; readonly skipped?: number; readonly once?: true } & Telling = {},
): Entry {
  const { serial = null, skipped = null, once, ...telling } = more;
  const plain = { ...STATION, boot, total, serial, skipped };
  const facts = once ? { ...plain, once } : plain;
  return story.tell('station.counted', facts, { tablet: 'LINK', who: null, ...telling });
}

function miss(story: Story, told: 'link' | 'tablet' = 'link', telling: Telling = {}): void {
  const since = new Date(startMs + 1000).toISOString();
  const tablet = told === 'link' ? 'LINK' : 'T1';
  story.tell('station.silent', { ...STATION, since, told }, { tablet, ...telling });
}

const doneIn = (state: FloorState, run = 'run-1') => state.runs.get(run)?.done;
const counterOf = (state: FloorState) => state.counters.get('L1');

describe('a total that the link itself keeps of panels named one by one', () => {
  const once = true as const;

  test('a code that the run has counted is no further panel, from the station or from a hand; in the next run it is', () => {
    const story = begin();
    say(story, 'a', 101, { serial: 'P1', once });
    say(story, 'a', 102, { serial: 'P2', once });
    say(story, 'a', 103, { serial: 'P1', once });
    // Told again after a kill: the same total and code.
    say(story, 'a', 103, { serial: 'P1', once });
    say(story, 'a', 105, { serial: 'P2', once });
    expect(doneIn(story.floor())).toBe(3);
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 3, note: '' });
    story.tell('run.started', started('run-2'));
    say(story, 'a', 106, { serial: 'P1', once });
    expect(doneIn(story.floor(), 'run-2')).toBe(1);
    expect(doneIn(story.floor())).toBe(3);
    // A device's own total stands, whatever its codes say.
    say(story, 'a', 107, { serial: 'P1' });
    expect(doneIn(story.floor(), 'run-2')).toBe(2);
  });

  test('takes the place of codes that people scanned while the same boot was silent, each once', () => {
    const story = begin();
    say(story, 'a', 101, { serial: 'P1', once });
    miss(story);
    for (const serial of ['P2', 'P3']) story.tell('panels.counted', counted('run-1', 1, serial));
    expect(doneIn(story.floor())).toBe(3);
    for (const [total, serial] of [
      [102, 'P2'],
      [103, 'P3'],
      [104, 'P4'],
    ] as const)
      say(story, 'a', total, { serial, once });
    expect(doneIn(story.floor())).toBe(4);
  });

  test('adds nothing for a panel that people scanned in a silence behind which another boot begins', () => {
    const story = begin();
    miss(story);
    for (const serial of ['P1', 'P2']) story.tell('panels.counted', counted('run-1', 1, serial));
    say(story, 'b', 0);
    say(story, 'b', 1, { serial: 'P2', once });
    say(story, 'b', 2, { serial: 'P3', once });
    expect(doneIn(story.floor())).toBe(3);
  });
});

describe('who counts on a line', () => {
  test('a station’s total counts by what it rises above the highest known; twice, late and lower adds nothing', () => {
    const story = begin();
    for (const total of [101, 103, 102, 103, 103]) say(story, 'a', total);
    expect(doneIn(story.floor())).toBe(3);
    expect(counterOf(story.floor())?.outside).toBe(0);
  });

  test('without a lead’s word people count, and what a station says is only known', () => {
    const story = beginStory();
    tellPlant(story);
    tellStation(story);
    story.tell('run.started', started('run-1'));
    say(story, 'a', 100);
    say(story, 'a', 120);
    story.tell('panels.counted', counted('run-1', 2));
    expect(doneIn(story.floor())).toBe(2);
    expect(story.floor().stations.get('exit')?.boots).toMatchObject([{ boot: 'a', total: 120 }]);
  });

  test('hand counts beside a station are kept and shown, and not added; taking one back changes the number shown alone', () => {
    const story = begin();
    say(story, 'a', 104);
    const one = story.tell('panels.counted', counted('run-1', 1));
    story.tell('panels.counted', counted('run-1', 2));
    expect(doneIn(story.floor())).toBe(4);
    expect(counterOf(story.floor())?.beside).toBe(3);
    story.tell('entry.corrected', { of: idOf(one), line: 'L1', slot: null, reason: 'twice' });
    expect(doneIn(story.floor())).toBe(4);
    expect(counterOf(story.floor())?.beside).toBe(2);
    story.tell('run.started', started('run-2'));
    expect(counterOf(story.floor())?.beside).toBe(0);
  });

  test('“panels = N” corrects, and what the station counts from then on is added', () => {
    const story = begin();
    say(story, 'a', 110);
    const why = { run: 'run-1', line: 'L1', reason: 'counted on the rack' };
    story.tell('panels.corrected', { ...why, panels: 12 });
    expect(doneIn(story.floor())).toBe(12);
    say(story, 'a', 113);
    expect(doneIn(story.floor())).toBe(15);
    story.tell('panels.corrected', { ...why, panels: 5 });
    say(story, 'a', 114);
    expect(doneIn(story.floor())).toBe(6);
  });

  test('while it is silent +1 counts; back in the same boot its own number takes the place of those', () => {
    const story = begin();
    say(story, 'a', 110);
    miss(story);
    story.tell('panels.counted', counted('run-1', 1));
    const hand = story.tell('panels.counted', counted('run-1', 6));
    expect(doneIn(story.floor())).toBe(17);
    say(story, 'a', 119);
    expect(doneIn(story.floor())).toBe(19);
    expect(counterOf(story.floor())).toMatchObject({
      standIn: [],
      both: [{ hand: 7, machine: 9, stands: 'machine' }],
    });
    // Replaced, it cannot be taken off once more.
    story.tell('entry.corrected', { of: idOf(hand), line: 'L1', slot: null, reason: 'late' });
    expect(doneIn(story.floor())).toBe(19);
    say(story, 'a', 120);
    expect(doneIn(story.floor())).toBe(20);
  });

  test('back in the same boot with fewer than people counted, its own number stands', () => {
    const story = begin();
    say(story, 'a', 110);
    miss(story);
    story.tell('panels.counted', counted('run-1', 5));
    say(story, 'a', 110);
    expect(doneIn(story.floor())).toBe(10);
    say(story, 'a', 112);
    expect(doneIn(story.floor())).toBe(12);
  });

  test('a new boot lets hand counts stand, and a lead sees both; the larger counts', () => {
    const fewer = begin();
    say(fewer, 'a', 110);
    miss(fewer);
    fewer.tell('panels.counted', counted('run-1', 5));
    say(fewer, 'b', 3);
    expect(doneIn(fewer.floor())).toBe(15);
    expect(counterOf(fewer.floor())?.both).toMatchObject([{ hand: 5, machine: 3, stands: 'hand' }]);
    say(fewer, 'b', 4);
    expect(doneIn(fewer.floor())).toBe(16);
    // Two panels more of the boot before, told late: people had counted that while.
    say(fewer, 'a', 112);
    expect(doneIn(fewer.floor())).toBe(16);

    const more = begin();
    say(more, 'a', 110);
    miss(more);
    more.tell('panels.counted', counted('run-1', 5));
    say(more, 'b', 8);
    expect(doneIn(more.floor())).toBe(18);
    expect(counterOf(more.floor())?.both).toMatchObject([{ hand: 5, machine: 8, stands: 'machine' }]);
  });

  test('a power cut without a silence: the new boot’s total adds, and late words of the old one too', () => {
    const story = begin();
    say(story, 'a', 103);
    say(story, 'b', 1);
    say(story, 'a', 105);
    say(story, 'b', 2);
    expect(doneIn(story.floor())).toBe(7);
  });

  test('a tablet that was away itself and said “silent” changes nothing where the log has the station’s beats', () => {
    const story = begin();
    say(story, 'a', 105, { at: 100 });
    miss(story, 'tablet', { at: 200 });
    story.tell('panels.counted', counted('run-1', 3), { at: 201 });
    say(story, 'a', 109, { at: 220 });
    expect(doneIn(story.floor())).toBe(9);
    expect(counterOf(story.floor())?.beside).toBe(3);
    miss(story, 'tablet', { at: 900 });
    story.tell('panels.counted', counted('run-1', 3), { at: 901 });
    expect(doneIn(story.floor())).toBe(12);
  });

  test('the tablet finds a station silent by its own clock before the log says so', () => {
    const story = begin();
    say(story, 'a', 105, { at: 100 });
    const at = (seconds: number) => countedBy(story.floor(), 'L1', startMs + seconds * 1000);
    expect(at(400)).toMatchObject({ by: 'station', station: { station: 'exit' } });
    expect(at(461)).toMatchObject({ by: 'silent', isTold: false, sinceMs: startMs + 100_000 });
    miss(story, 'link', { at: 470 });
    expect(at(471)).toMatchObject({ by: 'silent', isTold: true });
    story.tell('line.counted-by', { line: 'L1', station: null });
    expect(at(480)).toEqual({ by: 'hand' });
  });

  test('a second device under one name is taken off again and counts no more', () => {
    const story = begin();
    say(story, 'a', 103);
    say(story, 'x', 50);
    say(story, 'a', 104);
    expect(doneIn(story.floor())).toBe(54);
    story.tell('station.doubled', { ...STATION, boot: 'x', kept: 'a' }, { tablet: 'LINK' });
    say(story, 'x', 60);
    say(story, 'a', 105);
    expect(doneIn(story.floor())).toBe(5);
  });

  test('what passed before a station became the counter, or while it was long unheard then, is of no run', () => {
    const story = beginStory();
    tellPlant(story);
    tellStation(story);
    story.tell('line.counted-by', { line: 'L1', station: 'exit' });
    story.tell('run.started', started('run-1'));
    say(story, 'a', 900);
    expect(doneIn(story.floor())).toBe(0);
    say(story, 'a', 902);
    expect(doneIn(story.floor())).toBe(2);
    story.tell('line.counted-by', { line: 'L1', station: null });
    story.tell('line.counted-by', { line: 'L1', station: 'exit' }, { at: 5000 });
    say(story, 'a', 990);
    expect(doneIn(story.floor())).toBe(2);
  });

  test('panels still in the line come out after the run’s end; beyond what it holds they are of no run', () => {
    const story = begin();
    say(story, 'a', 110);
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 10, note: '' });
    say(story, 'a', 113);
    expect(doneIn(story.floor())).toBe(13);
    say(story, 'a', 200);
    expect(doneIn(story.floor())).toBe(28);
    expect(counterOf(story.floor())?.outside).toBe(72);
  });

  test('late counts go to the run that went on at their own clock reading', () => {
    const story = begin();
    say(story, 'a', 110, { at: 50 });
    story.tell('run.started', started('run-2'), { at: 60 });
    say(story, 'a', 111, { at: 70 });
    say(story, 'a', 115, { at: 55, tablet: 'LINK-2' });
    expect(doneIn(story.floor())).toBe(15);
    expect(doneIn(story.floor(), 'run-2')).toBe(0);
  });

  test('trace, pace and skipped boards read the same counts', () => {
    const story = begin();
    for (let panel = 1; panel <= 30; panel += 1)
      say(story, 'a', 100 + panel, { serial: `SN-${panel}`, at: 20 + panel * 40 });
    // One message was lost and its code came late; a code seen again names no second panel.
    say(story, 'a', 132, { serial: 'SN-32', at: 1300 });
    say(story, 'a', 131, { serial: 'SN-31', at: 1301 });
    say(story, 'a', 133, { serial: 'SN-5', at: 1340 });
    const index = traceLog([...story.entries].sort(compareEntries));
    expect(index.serials.get('SN-31')).toMatchObject([{ run: 'run-1', panel: 31 }]);
    expect(index.serials.get('SN-32')).toMatchObject([{ run: 'run-1', panel: 32 }]);
    expect(index.serials.get('SN-5')).toMatchObject([{ panel: 5 }]);
    const run = index.state.runs.get('run-1');
    expect(run?.done).toBe(33);
    expect(run && runPace(run, workingTime([])).seconds).toBeCloseTo(40, 0);
  });
});

// A line that is played: each panel is one the device may see. The device keeps its total over lost messages; a power cut begins a boot.
interface Act {
  readonly is: 'panel' | 'say' | 'cut' | 'silent' | 'hand' | 'away';
  readonly old: number;
}
const actArb: fc.Arbitrary<Act> = fc.record({
  is: fc.constantFrom('panel', 'panel', 'panel', 'say', 'say', 'cut', 'silent', 'hand', 'away'),
  old: fc.nat(3),
});

/** Plays acts; `cuts`: power cuts begin another boot. Gives the story and the true number of panels. */
function play(acts: readonly Act[], cuts: boolean): { readonly story: Story; readonly panels: number } {
  const story = begin();
  let [boot, total, panels, at] = ['a', 100, 0, 10];
  const said: [string, number][] = [];
  for (const { is, old } of acts) {
    at += 5;
    if (is === 'panel') {
      panels += 1;
      total += 1;
    } else if (is === 'say') {
      said.push([boot, total]);
      // Some come late, and some come twice.
      const [of, sum] = said[Math.max(0, said.length - 1 - old)] ?? [boot, total];
      say(story, of, sum, { at });
    } else if (is === 'cut' && cuts) {
      // The last word before the cut came through: the device kept its total.
      say(story, boot, total, { at });
      [boot, total] = [`${boot}+`, 0];
    } else if (is === 'silent' && !cuts) miss(story, 'link', { at });
    else if (is === 'hand') story.tell('panels.counted', counted('run-1', 1), { tablet: 'T2', at });
    else if (is === 'away') miss(story, 'tablet', { at, tablet: 'T3' });
  }
  say(story, boot, total, { at: at + 5 });
  return { story, panels };
}

/** How entries reach one tablet: in any order, cut into pages, some twice. */
function arrivals(entries: readonly Entry[]): fc.Arbitrary<readonly (readonly Entry[])[]> {
  const mixed = fc.shuffledSubarray([...entries], { minLength: entries.length, maxLength: entries.length });
  return fc.tuple(mixed, fc.integer({ min: 1, max: 9 })).map(([order, page]) => {
    const sent = [...order, ...order.slice(0, 5)];
    return Array.from({ length: Math.ceil(sent.length / page) }, (_, at) =>
      sent.slice(at * page, (at + 1) * page),
    );
  });
}

/** A tablet as its store does it. */
function receive(pages: readonly (readonly Entry[])[]): FloorState {
  const held = new Map<string, Entry>();
  let replica = createReplica();
  for (const page of pages) {
    const fresh = page.filter((entry) => !held.has(idOf(entry)));
    for (const entry of fresh) held.set(idOf(entry), entry);
    if (!foldIn(replica, fresh)) {
      replica = createReplica();
      foldIn(replica, [...held.values()]);
    }
  }
  return replica.state;
}

describe('over all histories', () => {
  test('one boot: the count is exact at its last word, whatever was lost, late, doubled, silent or counted by hand', () => {
    fc.assert(
      fc.property(fc.array(actArb, { minLength: 5, maxLength: 60 }), (acts) => {
        const { story, panels } = play(acts, false);
        expect(doneIn(story.floor())).toBe(panels);
      }),
      { numRuns: 120 },
    );
  });

  test('power cuts: the count is exact where each boot’s last word came through', () => {
    fc.assert(
      fc.property(fc.array(actArb, { minLength: 5, maxLength: 60 }), (acts) => {
        const { story, panels } = play(
          acts.filter(({ is }) => is !== 'hand'),
          true,
        );
        expect(doneIn(story.floor())).toBe(panels);
      }),
      { numRuns: 120 },
    );
  });

  test('whatever order entries arrive in, every tablet has the same numbers', () => {
    const told = fc
      .tuple(fc.array(actArb, { minLength: 5, maxLength: 40 }), fc.boolean())
      .map(([acts, cuts]) => play(acts, cuts).story.entries)
      .chain((entries) => fc.tuple(fc.constant(entries), arrivals(entries)));
    fc.assert(
      fc.property(told, ([entries, pages]) => {
        const all = applyAll(emptyState(), [...entries].sort(compareEntries));
        const one = receive(pages);
        expect(one.runs).toEqual(all.runs);
        expect(one.counters).toEqual(all.counters);
        expect(one.stations).toEqual(all.stations);
      }),
      { numRuns: 100 },
    );
  });
});
