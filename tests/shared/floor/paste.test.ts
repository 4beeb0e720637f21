// Jars of paste by hours worked out by hand: thawing, out of the cold, open, on the stencil; and the lots of paste on the trace.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { jarStand, stencilJar } from '../../../shared/floor/paste.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePanel, tracePlaces } from '../../../shared/trace/ask.ts';
import { PASTE_SLOT, pasteStretches } from '../../../shared/trace/pasted.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { beginStory, counted, type Story, started, startMs, tellPlant } from './story.ts';

const HOUR = 3600;

function begin(rule: Partial<PayloadOf<'paste.ruled'>> = {}): Story {
  const story = beginStory();
  const sheet = { thawHours: 4, outHours: 24, openHours: 12, stencilHours: 3, source: 'sheet' };
  story.tell('paste.ruled', { paste: 'SP-1', ...sheet, ...rule });
  story.tell('jar.known', { jar: 'J1', paste: 'SP-1', lot: 'LP-1', expires: '2026-06-30', via: 'wedge' });
  return story;
}

function tell(
  story: Story,
  says: PayloadOf<'jar.told'>['says'],
  hour: number,
  jar = 'J1',
  line: string | null = null,
  more: Pick<PayloadOf<'jar.told'>, 'onTop'> = {},
): void {
  const from = new Date(startMs + hour * HOUR * 1000).toISOString();
  story.tell('jar.told', { jar, says, from, line, lot: 'LP-1', via: 'typed', ...more }, { at: hour * HOUR });
}

function stand(story: Story, hour: number, today = '2026-03-02') {
  const floor = story.floor();
  const jar = floor.jars.get('J1');
  if (!jar) throw new Error('no jar');
  const { goodUntilMs, thawedMs, ...rest } = jarStand(floor, jar, {
    nowMs: startMs + hour * HOUR * 1000,
    today,
  });
  const inHours = (ms: number | null) => (ms === null ? null : (ms - startMs) / HOUR / 1000);
  return { ...rest, good: inHours(goodUntilMs), thawed: inHours(thawedMs) };
}

describe('the paste on a line’s stencil', () => {
  const at = (story: Story, hour: number, lastsHour: number | null, line = 'L1') =>
    stencilJar(story.floor(), line, {
      nowMs: startMs + hour * HOUR * 1000,
      today: '2026-03-02',
      lastsMs: lastsHour === null ? null : startMs + lastsHour * HOUR * 1000,
    });

  test('is told where its time ends before the run does, and once it is over whatever is built', () => {
    const story = begin();
    expect(at(story, 0, 100)).toBeNull();
    tell(story, 'out', 0);
    tell(story, 'opened', 4);
    tell(story, 'on', 5, 'J1', 'L1');
    // Three hours on the stencil: until hour 8.
    expect(at(story, 6, 8)).toBeNull();
    expect(at(story, 6, 8.5)).toMatchObject({ isOver: false, jar: { jar: 'J1' } });
    expect(at(story, 6, null)).toBeNull();
    expect(at(story, 8.5, null)).toMatchObject({ isOver: true, stand: { faults: ['stencil-over'] } });
    expect(at(story, 8.5, 100, 'L2')).toBeNull();
    tell(story, 'off', 9);
    expect(at(story, 9, 100)).toBeNull();
  });

  test('is told of the jar whose time ends first, also where another was put on top of it', () => {
    const story = begin();
    story.tell('jar.known', { jar: 'J2', paste: 'SP-1', lot: 'LP-2', expires: null, via: 'wedge' });
    tell(story, 'on', 5, 'J1', 'L1');
    tell(story, 'on', 7, 'J2', 'L1', { onTop: true });
    expect(at(story, 7.5, 100)).toMatchObject({ isOver: false, jar: { jar: 'J1' } });
    expect(at(story, 9, 100)).toMatchObject({ isOver: true, jar: { jar: 'J1' } });
    // What lies under another comes off with it alone.
    tell(story, 'off', 9.5);
    expect(at(story, 9.6, 100)).toMatchObject({ isOver: true, jar: { jar: 'J1' } });
    tell(story, 'off', 9.7, 'J2');
    expect(at(story, 9.8, 100)).toBeNull();
  });

  test('is that of the newest jar alone, where nobody told that it was put on top of the one before', () => {
    const story = begin();
    for (const jar of ['J2', 'J3'])
      story.tell('jar.known', { jar, paste: 'SP-1', lot: null, expires: null, via: 'wedge' });
    tell(story, 'on', 5, 'J1', 'L1');
    tell(story, 'on', 7, 'J2', 'L1');
    tell(story, 'on', 8, 'J3', 'L1');
    // Three hours of the first are over at hour 8; those of the third are not.
    expect(story.floor().stencils.get('L1')).toEqual(['J3']);
    expect(at(story, 9, null)).toBeNull();
    // Told late, it takes nothing else with it.
    tell(story, 'off', 9, 'J1', 'L1');
    expect(story.floor().stencils.get('L1')).toEqual(['J3']);
    tell(story, 'off', 10, 'J3', 'L1');
    expect(story.floor().stencils.has('L1')).toBe(false);
  });

  test('is, after any steps, what a list of the jars kept by hand says', () => {
    const step = fc.record({
      jar: fc.constantFrom('J1', 'J2', 'J3', 'J4'),
      does: fc.constantFrom('on' as const, 'on-top' as const, 'off' as const),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 14 }), (steps) => {
        const story = begin();
        for (const jar of ['J2', 'J3', 'J4'])
          story.tell('jar.known', { jar, paste: 'SP-1', lot: null, expires: null, via: 'wedge' });
        let there: readonly string[] = [];
        let off = new Set<string>();
        for (const [at, { jar, does }] of steps.entries()) {
          tell(
            story,
            does === 'off' ? 'off' : 'on',
            1 + at,
            jar,
            'L1',
            does === 'on-top' ? { onTop: true } : {},
          );
          if (does === 'off') off.add(jar);
          else if (does === 'on-top') {
            off.delete(jar);
            there = [...new Set([...there, jar])];
          } else [there, off] = [[jar], new Set()];
          if (there.every((each) => off.has(each))) [there, off] = [[], new Set()];
        }
        expect(story.floor().stencils.get('L1') ?? []).toEqual(there);
      }),
      { numRuns: 200 },
    );
  });

  test('is told where a block or its date keeps it off, though its hours are not over', () => {
    const story = begin();
    tell(story, 'out', 0);
    tell(story, 'on', 5, 'J1', 'L1');
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'LP-1', part: null, reason: 'recall' });
    expect(at(story, 6, null)).toMatchObject({ isOver: true, stand: { faults: ['blocked'] } });
  });
});

describe('a jar of paste', () => {
  test('thaws before it is opened, anew after each time in the cold, whose hours count for nothing', () => {
    const story = begin();
    tell(story, 'out', 1);
    expect(stand(story, 2)).toMatchObject({ phase: 'out', faults: ['too-cold'], thawed: 5, good: 25 });
    expect(stand(story, 5)).toMatchObject({ faults: [] });
    tell(story, 'cold', 6);
    tell(story, 'out', 100);
    // Five of its 24 hours were used before it went back.
    expect(stand(story, 103)).toMatchObject({ faults: ['too-cold'], thawed: 104, good: 119 });
    expect(stand(story, 120)).toMatchObject({ faults: ['out-over'] });
  });

  test('once open ages wherever it is, and on the stencil by hours of its own', () => {
    const story = begin();
    tell(story, 'out', 0);
    tell(story, 'opened', 4);
    expect(stand(story, 5)).toMatchObject({ phase: 'open', faults: [], good: 16 });
    tell(story, 'on', 6, 'J1', 'L1');
    expect(stand(story, 7)).toMatchObject({ phase: 'on', line: 'L1', good: 9 });
    tell(story, 'off', 8);
    tell(story, 'cold', 8.5);
    expect(stand(story, 9)).toMatchObject({ phase: 'open', line: null, good: 16 });
    tell(story, 'on', 10, 'J1', 'L1');
    expect(stand(story, 11.5)).toMatchObject({ faults: ['stencil-over'] });
    expect(stand(story, 17)).toMatchObject({ faults: ['open-over', 'stencil-over'] });
    tell(story, 'empty', 18);
    expect(stand(story, 20)).toMatchObject({ phase: 'empty', faults: [], good: null });
  });

  test('is kept off by its date and by a block on its lot; without a sheet no hours are checked', () => {
    const story = begin();
    tell(story, 'out', 0);
    expect(stand(story, 5, '2026-07-01').faults).toEqual(['expired']);
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'LP-1', part: null, reason: 'recall' });
    expect(stand(story, 5).faults).toEqual(['blocked']);
    const bare = beginStory();
    bare.tell('jar.known', { jar: 'J1', paste: 'SP-9', lot: null, expires: null, via: 'typed' });
    tell(bare, 'opened', 0);
    expect(stand(bare, 1000)).toMatchObject({ faults: [], good: null, isRuled: false });
  });
});

describe('the lots of paste on the trace', () => {
  // One machine and nothing entered: 3 panels a machine, 15 behind it, 3 more before it. 21 panels may lie between printer and count.
  const IN_LINE = 3 + 15 + 3;

  function say(
    story: Story,
    jar: string,
    says: PayloadOf<'jar.told'>['says'],
    more: Pick<PayloadOf<'jar.told'>, 'onTop'> = {},
  ): void {
    const from = new Date(startMs + 60_000).toISOString();
    story.tell('jar.told', { jar, says, from, line: 'L1', lot: null, via: 'typed', ...more });
  }

  /** A hundred panels with the first jar, a hundred after the second came onto the stencil: the first was told to come off, or the second to lie on it. */
  function shift({ isOff = true, onTop = false } = {}): Story {
    const story = begin();
    tellPlant(story);
    story.tell('jar.known', { jar: 'J2', paste: 'SP-1', lot: 'LP-2', expires: null, via: 'wedge' });
    say(story, 'J1', 'on');
    story.tell('run.started', started('r1'));
    story.tell('panels.counted', counted('r1', 100));
    if (isOff) say(story, 'J1', 'off');
    say(story, 'J2', 'on', onTop ? { onTop } : {});
    // One by one at first: a count of many at once may have been begun before the jar was changed.
    story.tell('panels.counted', counted('r1', 1));
    story.tell('panels.counted', counted('r1', 99));
    return story;
  }

  const traced = (story: Story) => traceLog([...story.entries].sort(compareEntries));

  test('answer which panels a lot of paste is on, and what may be either', () => {
    const index = traced(shift());
    const [first] = tracePlaces(index, { lot: 'LP-1' });
    const [second] = tracePlaces(index, { lot: 'LP-2' });
    expect(first).toMatchObject({
      slot: PASTE_SLOT,
      reel: 'J1',
      part: 'SP-1',
      sure: { first: 1, last: 100 },
      possible: { first: 1, last: 100 + IN_LINE },
    });
    expect(second).toMatchObject({
      reel: 'J2',
      sure: { first: 100 + IN_LINE + 1, last: 200 },
      possible: { first: 101, last: 200 },
    });
  });

  test('answer the same where nobody told that the first came off', () => {
    const place = (story: Story, lot: string) =>
      tracePlaces(traced(story), { lot }).map(({ sure, possible, mixed }) => ({ sure, possible, mixed }));
    for (const lot of ['LP-1', 'LP-2'])
      expect(place(shift({ isOff: false }), lot)).toEqual(place(shift(), lot));
  });

  test('stand with the parts of a panel', () => {
    const index = traced(shift());
    const lotsOf = (panel: string) =>
      tracePanel(index, panel)
        ?.slots.find(({ slot }) => slot === PASTE_SLOT)
        ?.lots.map(({ lot, sure }) => [lot, sure]);
    expect(lotsOf('100')).toEqual([['LP-1', true]]);
    expect(lotsOf('110')).toEqual([
      ['LP-1', false],
      ['LP-2', false],
    ]);
    expect(lotsOf('150')).toEqual([['LP-2', true]]);
  });

  test('a jar is on one stencil, and goes on into the next run', () => {
    const story = shift();
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 200, note: '' });
    story.tell('run.started', started('r2'));
    story.tell('panels.counted', counted('r2', 10));
    const index = traced(story);
    expect(index.state.stencils.get('L1')).toEqual(['J2']);
    expect(tracePlaces(index, { lot: 'LP-2', run: 'r2' })).toMatchObject([{ sure: { first: 1, last: 10 } }]);
    expect(tracePlaces(index, { lot: 'LP-1', run: 'r2' })).toEqual([]);
  });

  test('say either where a jar was put on top of another, until all of it came off', () => {
    const story = shift({ isOff: false, onTop: true });
    // What lies under it cannot be taken off alone.
    say(story, 'J1', 'off');
    story.tell('panels.counted', counted('r1', 100));
    say(story, 'J2', 'off');
    story.tell('panels.counted', counted('r1', 1));
    story.tell('panels.counted', counted('r1', 99));
    const index = traced(story);
    const all = { first: 1, last: 300 + IN_LINE };
    expect(tracePlaces(index, { lot: 'LP-1' })).toMatchObject([
      { sure: { first: 1, last: 100 }, possible: all, mixed: true },
    ]);
    expect(tracePlaces(index, { lot: 'LP-2' })).toMatchObject([
      { sure: null, possible: { ...all, first: 101 }, mixed: true },
    ]);
    expect(index.state.stencils.has('L1')).toBe(false);
    const still = shift({ isOff: false, onTop: true });
    still.tell('run.ended', { run: 'r1', line: 'L1', panels: 200, note: '' });
    still.tell('run.started', started('r2'));
    still.tell('panels.counted', counted('r2', 10));
    for (const lot of ['LP-1', 'LP-2'])
      expect(tracePlaces(traced(still), { lot, run: 'r2' })).toMatchObject([
        { sure: null, possible: { first: 1, last: 10 } },
      ]);
  });

  test('are looked at as often as there are runs, not by the square of a line’s life', () => {
    const [like] = shift().floor().pasted.get('L1') ?? [];
    if (like === undefined) throw new Error('a jar is on the stencil');
    /** How often a fact of a jar is read, two jars a run. */
    const readsOf = (runs: number) => {
      let reads = 0;
      const counted = (pasted: typeof like) =>
        new Proxy(pasted, {
          get: (of, name) => {
            reads += 1;
            return Reflect.get(of, name);
          },
        });
      const onLine = Array.from({ length: 2 * runs }, (_, at) =>
        counted({ ...like, run: `r${Math.floor(at / 2)}` }),
      );
      pasteStretches({ ...shift().floor(), pasted: new Map([['L1', onLine]]) });
      return reads;
    };
    expect(readsOf(200)).toBeLessThan(2.1 * readsOf(100));
  });
});
