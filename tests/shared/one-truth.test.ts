// One floor, one truth: what the line, the load list, the change, the pick list, the reel list and the trace say of the same log agrees,
// whatever people did on two tablets. Each is asked through its own door, none through another's figures.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { diffSetups } from '../../shared/changeover/diff.ts';
import { kitList } from '../../shared/changeover/kit.ts';
import { loadedFor } from '../../shared/changeover/loaded.ts';
import { applyAll } from '../../shared/floor/fold.ts';
import { setupProgress, slotPhase } from '../../shared/floor/progress.ts';
import { leftAfterRun, slotEstimate, slotLeft } from '../../shared/floor/remaining.ts';
import { slotRight } from '../../shared/floor/slot-right.ts';
import { emptyState, type FloorState, type Setup, slotKey } from '../../shared/floor/state.ts';
import { perPanelOf } from '../../shared/floor/wanted.ts';
import { lineCalendar } from '../../shared/forecast/line-calendar.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { lineOutlook } from '../../shared/outlook/line.ts';
import { tracePanel } from '../../shared/trace/ask.ts';
import { type TraceIndex, traceLog } from '../../shared/trace/stretches.ts';
import { playShift } from '../truth/play.ts';
import {
  beginStory,
  brookSetup,
  counted,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from './floor/story.ts';

const LINE = 'L1';
const slots = ['M1-F-001', 'M1-F-002', 'M1-F-005', 'M1-F-010', 'M1-R-003'] as const;
/** Reels with what they carry. */
const reels = { K1: 'R-100', K2: 'R-100', K3: 'C-200', K4: 'C-201', K5: 'U-300', K6: 'U-300' } as const;

const actArb = fc.record({
  is: fc.constantFrom(
    ...([
      'load',
      'load',
      'load',
      'splice',
      'splice',
      'sweep',
      'hold',
      'clear',
      'unload',
      'weigh',
      'put',
    ] as const),
    ...(['panels', 'panels', 'panels', 'scan', 'skip', 'scrap', 'start', 'end', 'stop', 'choose'] as const),
    ...(['correct', 'settle', 'block', 'release'] as const),
  ),
  tablet: fc.constantFrom('T1', 'T2'),
  slot: fc.constantFrom(...slots),
  reel: fc.constantFrom(...(Object.keys(reels) as (keyof typeof reels)[])),
  setup: fc.constantFrom('brook-top-a', 'fern'),
  number: fc.integer({ min: 1, max: 40 }),
});
type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

/** A log of two tablets, and how many panels each run counted by its own sums. */
function tell(acts: readonly Act[]): Story {
  const story = beginStory();
  tellPlant(story, { rules: { loss: 0.002 } });
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'fern',
    product: 'Fern',
    boardsPerPanel: 2,
    slots: [
      wantedSlot('M1-F-001', 'R-100'),
      wantedSlot('M1-F-005', 'C-200', { alternates: ['C-201'] }),
      wantedSlot('M1-F-010', 'U-300', { perPanel: 3 }),
      wantedSlot('M1-R-003', 'R-100', { perPanel: 0 }),
    ],
  });
  story.tell('line.panels-ruled', {
    line: LINE,
    machines: [{ machine: 'M1', least: 0, most: 0 }],
    missed: 0,
  });
  for (const act of acts) tellAct(story, act);
  return story;
}

function tellAct(story: Story, act: Act): void {
  const { is, tablet, slot, reel, number } = act;
  const telling = { tablet };
  const floor = story.floor();
  const run = floor.runs.get(floor.current.get(LINE) ?? '') ?? null;
  const setup = floor.chosen.get(LINE) ?? 'brook-top-a';
  const facts = { reel, lot: `LOT-${reel}`, quantity: number * 25, setup, run: run?.run ?? null };
  const verdict = (more: Parameters<typeof verified>[2]) =>
    story.tell('reel.verified', verified(slot, reels[reel], { ...facts, ...more }), telling);
  const there = floor.slots.get(slotKey(LINE, slot));
  switch (is) {
    case 'load':
      verdict({});
      return;
    case 'splice':
      if (there) verdict({ act: 'splice', quantity: number % 5 === 0 ? null : facts.quantity });
      return;
    case 'sweep': {
      const tape = there?.tapes.at(-1);
      if (!tape) return;
      const { part, lot } = tape;
      verdict({ act: 'sweep', part, lot, reel: tape.reel.startsWith('~') ? null : tape.reel });
      return;
    }
    case 'hold':
      verdict({ verdict: 'held', reasons: [{ code: 'no-quantity' }] });
      return;
    case 'clear': {
      const hold = [...floor.holds.values()].at(number % 3);
      if (!hold) return;
      const of = { of: hold.entry, line: LINE, slot: hold.facts.slot ?? slot };
      story.tell('hold.cleared', { ...of, reason: 'seen', by: 'lea', checked: 'tablet' }, telling);
      return;
    }
    case 'unload': {
      const tape = there?.tapes.at(-1);
      if (!tape) return;
      const off = { part: tape.part, lot: tape.lot, reel: tape.reel.startsWith('~') ? null : tape.reel };
      const count = number % 3 === 0 ? null : number * 10;
      const told = { quantity: count, basis: count === null ? null : ('weighed' as const) };
      story.tell('reel.unloaded', unloaded(slot, { ...off, ...told }), telling);
      return;
    }
    case 'weigh': {
      const own = { line: LINE, slot, reel: there?.tapes.at(-1)?.reel ?? reel, part: null, lot: null };
      const count = { quantity: number * 20, sd: 2, basis: 'weighed' as const, panels: 0 };
      story.tell('reel.counted', { ...own, ...count }, telling);
      return;
    }
    case 'put': {
      const where = { place: 'A1', via: 'typed' as const, supplierPart: null, dateCode: null };
      const label = { reel, part: reels[reel], lot: `LOT-${reel}`, quantity: number * 25 };
      story.tell('reel.put', { ...label, ...where }, telling);
      return;
    }
    case 'correct': {
      const kinds = ['reel.verified', 'panels.counted', 'reel.unloaded', 'reel.counted', 'panels.scrapped'];
      const of = story.entries.filter(({ kind }) => kinds.includes(kind)).at(-1 - (number % 4));
      if (of)
        story.tell('entry.corrected', { of: idOf(of), line: LINE, slot: null, reason: 'wrong' }, telling);
      return;
    }
    case 'settle': {
      const conflict = [...floor.conflicts.values()][0];
      if (!conflict) return;
      const keep = conflict.entries[number % conflict.entries.length] ?? null;
      const of = { conflict: conflict.conflict, line: LINE, slot: conflict.slots[0] ?? null };
      story.tell('conflict.settled', { ...of, keep, reason: 'seen', by: 'lea' }, telling);
      return;
    }
    case 'block':
      story.tell(
        'material.blocked',
        { block: `b-${reel}`, reel, lot: null, part: null, reason: 'x' },
        telling,
      );
      return;
    case 'release':
      story.tell('material.released', { block: `b-${reel}`, reason: 'x', by: 'lea' }, telling);
      return;
    default:
      tellRun(story, { ...act, is });
  }
}

function tellRun(
  story: Story,
  act: Omit<Act, 'is'> & {
    readonly is: 'panels' | 'scan' | 'skip' | 'scrap' | 'start' | 'end' | 'stop' | 'choose';
  },
): void {
  const { is, number } = act;
  const telling = { tablet: act.tablet };
  const floor = story.floor();
  const run = floor.runs.get(floor.current.get(LINE) ?? '');
  const newest = run ?? [...floor.runs.values()].at(-1);
  if (is === 'start') {
    const name = `r${floor.runs.size + 1}`;
    story.tell('run.started', started(name, { setup: act.setup }), telling);
  } else if (is === 'choose') {
    if (!run) story.tell('setup.chosen', { line: LINE, setup: act.setup }, telling);
  } else if (newest) {
    const of = { run: newest.run, line: LINE };
    if (is === 'panels') story.tell('panels.counted', counted(newest.run, number), telling);
    // Codes come twice now and then.
    else if (is === 'scan')
      story.tell('panels.counted', counted(newest.run, 1, `SN-${number % 10}`), telling);
    else if (is === 'skip')
      story.tell('panels.counted', { ...counted(newest.run, number), skipped: number % 7 }, telling);
    else if (is === 'scrap')
      story.tell('panels.scrapped', { ...of, panels: 1, serial: null, note: '', via: 'typed' }, telling);
    else if (is === 'end') story.tell('run.ended', { ...of, panels: newest.done, note: '' }, telling);
    else story.tell('run.stopped', { ...of, reason: 'other', note: '' }, telling);
  }
}

const inOrder = (entries: readonly Entry[]) => [...entries].sort(compareEntries);

/** All that a floor says twice, said alike. */
function expectOneTruth(entries: readonly Entry[]): void {
  const sorted = inOrder(entries);
  const floor = applyAll(emptyState(), sorted);
  const index = traceLog(sorted);
  expectReels(floor);
  for (const setup of floor.setups.values()) expectRight(floor, setup);
  const nowMs = Math.max(...sorted.map(({ hlc }) => hlc.ms)) + 60_000;
  expectLeft(floor, nowMs);
  expectCounts(index, floor, sorted);
  expectStretches(index, floor);
  expectNextPanel(sorted, floor);
}

/** A reel stands on the slot where the reel list has it, and on no other, unless it is told as a conflict. */
function expectReels(floor: FloorState): void {
  const told = new Set(
    [...floor.conflicts.values()].flatMap(({ kind, reel }) => (kind === 'reel-on-two-slots' ? [reel] : [])),
  );
  const onSlots = new Map<string, string[]>();
  for (const [key, { tapes }] of floor.slots)
    for (const { reel } of tapes) onSlots.set(reel, [...(onSlots.get(reel) ?? []), key]);
  for (const [reel, keys] of onSlots) {
    const at = floor.reels.get(reel)?.at;
    expect(keys, `${reel} stands where the list has it`).toContain(at ? slotKey(at.line, at.slot) : null);
    if (!told.has(reel)) expect([...new Set(keys)], `${reel} is on one slot`).toHaveLength(1);
  }
  for (const { reel, at } of floor.reels.values())
    if (at)
      expect(onSlots.get(reel) ?? [], `${reel} is where the list has it`).toContain(
        slotKey(at.line, at.slot),
      );
}

/** "Right for the setup" is one answer for the load list, a single slot, the change, and what the pick list counts on the line. */
function expectRight(floor: FloorState, setup: Setup): void {
  const progress = setupProgress(floor, LINE, setup.setup);
  const right = progress.slots.filter(({ phase }) => phase === 'verified').map(({ slot }) => slot);
  for (const { slot, is, phase } of progress.slots) {
    expect(slotRight(floor, LINE, setup.setup, slot)).toBe(is);
    if (floor.chosen.get(LINE) === setup.setup) expect(slotPhase(floor, LINE, slot)).toBe(phase);
  }
  expect(progress.verified).toBe(right.length);
  const { loaded, rule } = loadedFor(floor, LINE, setup.setup);
  const wanted = setup.slots.map(({ slot, part, positions }) => ({ slot, part, width: positions }));
  const diff = diffSetups(loaded, wanted, undefined, rule);
  if (!diff.ok) throw new Error(JSON.stringify(diff.error));
  expect(diff.value.keep.map(({ slot }) => slot).sort()).toEqual([...right].sort());
  const all = [...diff.value.move.map(({ from }) => from)];
  for (const { slot } of [...diff.value.keep, ...diff.value.takeOut, ...diff.value.stay]) all.push(slot);
  const standing = [...floor.slots.values()].filter(({ line }) => line === LINE).map(({ slot }) => slot);
  expect(all.sort(), 'every feeder is told once').toEqual(standing.sort());
  const kit = kitList(floor, setup, { panels: 100, loss: 0.002, nowMs: startMs });
  for (const row of kit)
    for (const here of row.here) {
      const there = floor.slots.get(slotKey(LINE, here.slot));
      expect(here.reel).toBe(there?.tapes.at(-1)?.reel);
      if (here.to === here.slot) expect(right).toContain(here.slot);
      expect(here.amount).toEqual(there ? leftAfterRun(floor, there) : null);
      expect(row.reels.map(({ reel }) => reel)).not.toContain(here.reel);
    }
  for (const { reels: picked } of kit)
    for (const reel of picked)
      expect(floor.reels.get(reel.reel)?.at ?? null, `${reel.reel} is free`).toBeNull();
}

/** The line shows for each slot what is left there, and leaves none out. */
function expectLeft(floor: FloorState, nowMs: number): void {
  const outlook = lineOutlook(floor, LINE, { nowMs, calendar: lineCalendar(floor, LINE, nowMs) });
  const run = floor.runs.get(floor.current.get(LINE) ?? '');
  expect(outlook === null).toBe(run === undefined);
  if (!outlook || !run) return;
  const setup = floor.setups.get(run.setup);
  const used = (setup?.slots ?? []).filter(
    ({ perPanel, slot }) => perPanel > 0 || !floor.slots.has(slotKey(LINE, slot)),
  );
  const said = [...outlook.slots.map(({ slot }) => slot), ...outlook.unknown, ...outlook.empty];
  expect(said.sort()).toEqual(used.map(({ slot }) => slot).sort());
  for (const { slot, estimate, loaded, load } of outlook.slots) {
    expect(loaded).toBe(floor.slots.get(slotKey(LINE, slot)));
    expect(estimate).toEqual(slotEstimate(floor, loaded));
    expect(load.left).toBe(estimate.parts);
  }
  for (const slot of outlook.unknown) {
    const there = floor.slots.get(slotKey(LINE, slot));
    expect(there && slotLeft(floor, there, 0).parts).toBeNull();
  }
  expect(outlook.panelsLeft).toBe(Math.max(0, run.panelsWanted - run.done + run.scrapped));
}

/** Panels done are the sum of what was counted, each code once, less what was taken back; the trace numbers exactly those. */
function expectCounts(index: TraceIndex, floor: FloorState, entries: readonly Entry[]): void {
  for (const run of floor.runs.values()) {
    expect(index.state.runs.get(run.run)?.done).toBe(run.done);
    if (run.done > 0) {
      expect(tracePanel(index, String(run.done), run.run)?.panel).toBe(run.done);
      expect(tracePanel(index, '1', run.run)?.panel).toBe(1);
    }
    expect(tracePanel(index, String(run.done + 1), run.run)).toBeNull();
  }
  const done = [...floor.runs.values()].reduce((sum, run) => sum + run.done, 0);
  expect(done).toBe(sumOfCounts(entries));
}

/** What the log's own counts add up to, over all runs. */
function sumOfCounts(entries: readonly Entry[]): number {
  const counts = new Map<string, { readonly add: number; readonly code: string | null }>();
  const codes = new Set<string>();
  let sum = 0;
  for (const entry of entries) {
    if (entry.kind === 'panels.counted') {
      const { run, add, serial } = entry.payload as { run: string; add: number; serial: string | null };
      const code = serial === null ? null : `${run} ${serial}`;
      if (code !== null && codes.has(code)) continue;
      if (code !== null) codes.add(code);
      counts.set(idOf(entry), { add, code });
      sum += add;
    } else if (entry.kind === 'entry.corrected') {
      const of = String(entry.payload['of']);
      const count = counts.get(of);
      if (!count) continue;
      counts.delete(of);
      if (count.code !== null) codes.delete(count.code);
      sum -= count.add;
    }
  }
  return sum;
}

/** The trace has on each slot that the newest run uses just the tapes that the floor shows there. */
function expectStretches(index: TraceIndex, floor: FloorState): void {
  const newest = [...floor.runs.values()].sort((a, b) => a.startedMs - b.startedMs).at(-1);
  if (!newest) return;
  const traced = new Map<string, string[]>();
  for (const { run, slot, there, entry } of index.stretches)
    if (there && run === newest.run) traced.set(slot, [...(traced.get(slot) ?? []), entry]);
  for (const [, { slot, tapes }] of floor.slots) {
    const isUsed = perPanelOf(floor, newest.setup, slot) > 0;
    const wanted = isUsed ? tapes.map(({ entry }) => entry) : [];
    expect((traced.get(slot) ?? []).sort(), slot).toEqual(wanted.sort());
    traced.delete(slot);
  }
  expect([...traced.keys()], 'slots that are empty').toEqual([]);
}

/** The tape that the line shows as running may be on the next panel, and the trace has nothing there that never stood on the slot. */
function expectNextPanel(entries: readonly Entry[], floor: FloorState): void {
  const run = floor.runs.get(floor.current.get(LINE) ?? '');
  if (!run) return;
  const story = beginStory();
  const last = entries.at(-1);
  const next = story.tell('panels.counted', counted(run.run, 1), {
    tablet: 'T9',
    at: ((last?.hlc.ms ?? startMs) - startMs) / 1000 + 1,
  });
  const panel = tracePanel(traceLog([...entries, next]), String(run.done + 1), run.run);
  for (const loaded of floor.slots.values()) {
    if (perPanelOf(floor, run.setup, loaded.slot) <= 0) continue;
    const lots = panel?.slots.find(({ slot }) => slot === loaded.slot)?.lots ?? [];
    const { runningIndex } = slotEstimate(floor, loaded);
    const running = loaded.tapes[runningIndex];
    const shown = running?.reel.startsWith('~') ? null : (running?.reel ?? null);
    expect(
      lots.map(({ reel }) => reel),
      `${loaded.slot} carries what the line shows`,
    ).toContain(shown);
  }
}

const plain = { tablet: 'T1', setup: 'brook-top-a', number: 1 } as const;
const load = (slot: Act['slot'], reel: Act['reel']): Act => ({ ...plain, is: 'load', slot, reel });
const unload = (slot: Act['slot']): Act => ({ ...plain, is: 'unload', slot, reel: 'K1' });

describe('one truth', () => {
  test('of a reel that two slots hold', () => {
    const [one, two, three] = ['M1-F-001', 'M1-F-005', 'M1-R-003'] as const;
    const settle: Act = { ...plain, is: 'settle', slot: one, reel: 'K1', number: 14 };
    const rows: readonly (readonly [acts: readonly Act[], at: string | null, why: string])[] = [
      [[load(one, 'K3'), load(two, 'K3'), unload(two)], one, 'taken off one, the other still has it'],
      [
        [load(three, 'K3'), load(one, 'K3'), load(three, 'K4'), settle],
        three,
        'loaded over by another, and found there by a lead all the same',
      ],
      [
        [load(three, 'K3'), load(one, 'K3'), load(two, 'K3'), unload(one)],
        two,
        'taken off the second of three: the first and the last still disagree',
      ],
    ];
    for (const [acts, at, why] of rows) {
      const { entries, floor } = tell(acts);
      expectOneTruth(entries);
      expect(floor().reels.get('K3')?.at?.slot ?? null, why).toBe(at);
    }
  });

  test('whatever people do on two tablets', () => {
    fc.assert(
      fc.property(fc.array(actArb, { minLength: 5, maxLength: 60 }), (acts) => {
        expectOneTruth(tell(acts).entries);
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  test('in shifts that are played through', () => {
    for (let seed = 1; seed <= 15; seed++) expectOneTruth(playShift(seed).entries);
  });
});
