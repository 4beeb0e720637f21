// Do Load, Line, Change, the map and the release say the same of a line? On random floors and setups: slot by slot they agree, and once
// the moves are carried out as told, with the verdict asked for each, every slot is right.

import { describe, expect, test } from 'vitest';
import { setupProgress } from '../../../../../shared/floor/progress.ts';
import { type Line, type Setup, type SlotState, slotKey } from '../../../../../shared/floor/state.ts';
import { seededChance } from '../../../../../shared/kit/chance.ts';
import { verifyReel } from '../../../../../shared/verdict/verify.ts';
import { planChange } from '../../../../../src/app/screens/change/model.ts';
import { mapBanks } from '../../../../../src/app/screens/load/model.ts';
import {
  beginStory,
  brookSetup,
  idOf,
  type Story,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from '../../../../shared/floor/story.ts';

const parts = ['R-1', 'R-2', 'C-1', 'C-2', 'U-1'];
type Pick = (below: number) => number;

/** A setup of random slots that do not overlap; some parts have alternates, some feeders are wide. */
function tellSetup(story: Story, setup: string, pick: Pick): Setup {
  const slots = ['F', 'R'].flatMap((bank) => {
    const made = [];
    for (let position = 1 + pick(2); position <= 12; ) {
      const positions = pick(4) === 0 ? 2 : 1;
      const part = parts[pick(parts.length)] ?? '';
      const alternates =
        pick(3) === 0 ? [parts[pick(parts.length)] ?? ''].filter((each) => each !== part) : [];
      const slot = `M1-${bank}-${String(position).padStart(3, '0')}`;
      const pitchMm = pick(5) === 0 ? 2 : 4;
      if (position + positions <= 20) made.push(wantedSlot(slot, part, { positions, alternates, pitchMm }));
      position += positions + pick(3);
    }
    return made;
  });
  story.tell('setup.taken', { ...brookSetup, setup, product: setup, slots });
  return story.floor().setups.get(setup) as Setup; // told just now
}

/** Loads a setup as it asks, with gaps, alternates, and reels that a lead cleared. */
function tellLoads(story: Story, setup: Setup, pick: Pick): void {
  for (const { slot, part, alternates, positions, pitchMm } of setup.slots) {
    const there = story.floor().slots.get(slotKey('L1', slot));
    if (there || pick(6) === 0) continue;
    const feeder = `F-${slot}-${setup.setup}`;
    if (pick(2) === 0)
      story.tell('feeder.known', { feeder, tapeWidthMm: 8, pitchesMm: [pitchMm ?? 4], positions });
    const reel = { setup: setup.setup, feeder, reel: `K-${slot}-${setup.setup}`, lot: `lot-${pick(4)}` };
    if (pick(6) === 0) {
      const facts = verified(slot, parts[pick(parts.length)] ?? '', { ...reel, verdict: 'held' });
      const held = story.tell('reel.verified', facts);
      if (pick(2) === 0) continue;
      const cleared = { of: idOf(held), line: 'L1', slot: null, reason: 'ok', by: 'lea' };
      story.tell('hold.cleared', { ...cleared, checked: 'tablet' });
    } else story.tell('reel.verified', verified(slot, pick(3) === 0 ? (alternates[0] ?? part) : part, reel));
  }
}

/** A line that was built on for one product, half changed to a second, and is to build a third. */
function randomFloor(seed: number): { story: Story; next: Setup } {
  const chance = seededChance(seed);
  const pick: Pick = (below) => Math.floor(chance() * below);
  const story = beginStory();
  tellPlant(story);
  tellLoads(story, tellSetup(story, 'first', pick), pick);
  if (pick(3) === 0)
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'lot-1', part: null, reason: 'quality' });
  return { story, next: tellSetup(story, 'next', pick) };
}

const slotsOf = (all: readonly { readonly slot: string }[]) => all.map(({ slot }) => slot).sort();

function expectOneAnswer(story: Story, next: Setup): void {
  const floor = story.floor();
  const plan = planChange(floor, 'L1', next);
  if (!plan.fits) throw new Error(`fits by construction: ${JSON.stringify(plan.faults)}`);
  const { keep, move, putIn, takeOut, stay } = plan.steps.diff;
  const load = setupProgress(floor, 'L1', next.setup);
  const of = (...phases: readonly string[]) =>
    slotsOf(load.slots.filter(({ phase }) => phases.includes(phase)));
  expect(slotsOf(keep)).toEqual(of('verified'));
  expect(keep).toHaveLength(load.verified);
  expect([...slotsOf(putIn), ...move.map(({ to }) => to)].sort()).toEqual(of('missing', 'held', 'other'));
  const leaves = new Set([...slotsOf(takeOut), ...move.map(({ from }) => from)]);
  for (const { slot } of load.slots.filter(({ phase }) => phase === 'other')) expect(leaves).toContain(slot);
  expect(load.unwanted.filter(({ slot }) => !leaves.has(slot)).map(({ slot }) => slot)).toEqual(
    slotsOf(stay),
  );
  for (const slot of load.inTheWay) expect(leaves).toContain(slot);
  const isDone = load.verified === load.slots.length && load.inTheWay.size === 0;
  expect(plan.steps.steps.length === 0).toBe(isDone);
  const map = mapBanks(floor.lines.get('L1') as Line, load, null).flatMap(({ places }) => places);
  for (const { slot, phase } of map) {
    if (phase === 'other') expect(leaves).toContain(slot);
    if (phase === 'verified' || (phase === 'spare' && !leaves.has(slot))) {
      expect([...slotsOf(keep), ...slotsOf(stay)]).toContain(slot);
    }
  }
}

/** Puts a feeder with its reel on a slot, as the verdict allows. */
function tellPut(story: Story, next: Setup, { feeder, tapes }: SlotState, slot: string): void {
  const tape = tapes.at(-1);
  const { reel, part, lot } = tape ?? { reel: '', part: '', lot: null };
  const asked = { act: 'load', line: 'L1', setup: next.setup, slot, feeder } as const;
  const facts = { reel, part, supplierPart: null, quantity: 1000, lot };
  expect(verifyReel(story.floor(), { ...asked, reel: facts, today: '2026-03-02' }).verdict).toBe('accepted');
  story.tell('reel.verified', verified(slot, part, { setup: next.setup, feeder, reel, lot }));
}

/** Carries out every move of the plan, one after the other. */
function carryOut(story: Story, next: Setup): void {
  const parked = new Map<string, SlotState>();
  const plan = planChange(story.floor(), 'L1', next);
  if (!plan.fits) throw new Error('fits by construction');
  for (const { act, slot, to } of plan.steps.steps) {
    const there = story.floor().slots.get(slotKey('L1', slot));
    if (act === 'putIn') {
      const part = next.slots.find((each) => each.slot === slot)?.part ?? '';
      const reel = { setup: next.setup, reel: `N-${slot}`, feeder: `N-${slot}` };
      story.tell('reel.verified', verified(slot, part, reel));
    } else if (act === 'unpark') {
      const one = parked.get(plan.steps.diff.move.find((move) => move.to === to)?.from ?? '');
      if (!one) throw new Error(`nothing is parked for ${to}`);
      tellPut(story, next, one, to ?? '');
    } else {
      if (!there) throw new Error(`nothing stands on ${slot}`);
      story.tell('reel.unloaded', unloaded(slot));
      if (act === 'move') tellPut(story, next, there, to ?? '');
      if (act === 'park') parked.set(slot, there);
    }
  }
}

describe('what the screens say of a line', () => {
  test('agrees on 200 random floors, and when the moves are done every slot is right', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const { story, next } = randomFloor(seed);
      expectOneAnswer(story, next);
      carryOut(story, next);
      expectOneAnswer(story, next);
      const done = setupProgress(story.floor(), 'L1', next.setup);
      expect(`seed ${seed}: ${done.verified} of ${done.slots.length}`).toBe(
        `seed ${seed}: ${done.slots.length} of ${done.slots.length}`,
      );
    }
  });
});
