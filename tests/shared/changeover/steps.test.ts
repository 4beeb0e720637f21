import { describe, expect, test } from 'vitest';
import { diffSetups, type PlacedFeeder } from '../../../shared/changeover/diff.ts';
import { orderSteps, type StepPlan } from '../../../shared/changeover/steps.ts';
import { positionsOf } from '../../../shared/floor/address.ts';
import { type Chance, chanceBelow, seededChance } from '../../../shared/kit/chance.ts';

const slot = (number: number) => `M1-F-${String(number).padStart(3, '0')}`;
const feeder = (number: number, part: string, width = 1): PlacedFeeder => ({
  slot: slot(number),
  part,
  width,
});

function plan(loaded: readonly PlacedFeeder[], wanted: readonly PlacedFeeder[]): StepPlan {
  const diff = diffSetups(loaded, wanted);
  if (!diff.ok) throw new Error(JSON.stringify(diff.error));
  return orderSteps(diff.value);
}

/** Carries the steps out on a bare machine; throws where a step cannot be done; returns what stands where. */
function carryOut(
  loaded: readonly PlacedFeeder[],
  wanted: readonly PlacedFeeder[],
  made: StepPlan,
): Map<string, PlacedFeeder> {
  const on = new Map(loaded.map((one) => [one.slot, one]));
  const off: PlacedFeeder[] = [];
  const widths = new Map(wanted.map((one) => [one.slot, one.width]));
  const lift = (from: string, part: string): PlacedFeeder => {
    const one = on.get(from);
    if (one?.part !== part) throw new Error(`${part} is not on ${from}`);
    on.delete(from);
    return one;
  };
  const put = (one: PlacedFeeder, to: string): void => {
    const needs = new Set(positionsOf(to, one.width));
    for (const other of on.values()) {
      if (positionsOf(other.slot, other.width).some((position) => needs.has(position))) {
        throw new Error(`${one.part} does not fit on ${to}: ${other.part} is in the way`);
      }
    }
    on.set(to, { ...one, slot: to });
  };
  for (const step of made.steps) {
    if (step.act === 'takeOut') lift(step.slot, step.part);
    if (step.act === 'park') off.push(lift(step.slot, step.part));
    if (step.act === 'move') put(lift(step.slot, step.part), step.to ?? '');
    if (step.act === 'putIn') put(feeder(0, step.part, widths.get(step.slot) ?? 1), step.slot);
    if (step.act === 'unpark') {
      const width = widths.get(step.slot) ?? 1;
      const at = off.findIndex((one) => one.part === step.part && one.width === width);
      const one = off.splice(at, 1)[0];
      if (one === undefined) throw new Error(`${step.part} is not parked`);
      put(one, step.slot);
    }
  }
  expect(off).toEqual([]);
  return on;
}

/**
 * Fewest parked by trying everything, for the fewest handlings: every way of pairing equal feeders with as many taken
 * out, and every subset of moves parked, smallest first, played greedily (a move that can be done never hinders).
 */
function fewestByTrying(loaded: readonly PlacedFeeder[], wanted: readonly PlacedFeeder[]): number {
  const diff = diffSetups(loaded, wanted);
  if (!diff.ok) throw new Error('faulty');
  const { move, takeOut } = diff.value;
  const sources = [...move.map((one) => ({ slot: one.from, part: one.part, width: one.width })), ...takeOut];
  let best = move.length;
  const tryPairing = (pairs: { from: string; to: string; width: number }[], used: Set<string>): void => {
    const one = move[pairs.length];
    if (one === undefined) {
      for (let subset = 0; subset < 1 << pairs.length; subset++) {
        const size = subset.toString(2).replaceAll('0', '').length;
        if (size < best && canFinish(pairs, subset)) best = size;
      }
      return;
    }
    for (const source of sources) {
      if (source.part !== one.part || source.width !== one.width || used.has(source.slot)) continue;
      used.add(source.slot);
      tryPairing([...pairs, { from: source.slot, to: one.to, width: one.width }], used);
      used.delete(source.slot);
    }
  };
  tryPairing([], new Set());
  return best;
}

function canFinish(pairs: readonly { from: string; to: string; width: number }[], parked: number): boolean {
  const waiting = new Set(pairs.map((_, at) => at));
  const inPlace = new Set([...waiting].filter((at) => ((parked >> at) & 1) === 0));
  for (let moved = true; moved; ) {
    moved = false;
    for (const at of waiting) {
      const one = pairs[at];
      if (one === undefined) continue;
      const needs = new Set(positionsOf(one.to, one.width));
      const isFree = [...inPlace].every((other) => {
        const held = pairs[other];
        return (
          other === at || held === undefined || !positionsOf(held.from, held.width).some((x) => needs.has(x))
        );
      });
      if (!isFree) continue;
      waiting.delete(at);
      inPlace.delete(at);
      moved = true;
    }
  }
  return waiting.size === 0;
}

/** Two layouts of one bank that share most of their parts. */
function randomLayouts(chance: Chance): { loaded: PlacedFeeder[]; wanted: PlacedFeeder[] } {
  const size = 5 + chanceBelow(chance, 8);
  const widthOf = (part: number) => (part < 5 ? 1 : part < 8 ? 2 : 3);
  const layout = (): PlacedFeeder[] => {
    const parts = Array.from({ length: 10 }, (_, at) => ({ at, key: chance() })).sort(
      (x, y) => x.key - y.key,
    );
    const placed: PlacedFeeder[] = [];
    let at = 1;
    for (const { at: part } of parts) {
      if (chance() < 0.03) at += 1;
      if (at + widthOf(part) - 1 > size) break;
      placed.push(feeder(at, `P${chance() < 0.15 && part > 0 && part < 5 ? 0 : part}`, widthOf(part)));
      at += widthOf(part);
    }
    return placed;
  };
  return { loaded: layout(), wanted: layout() };
}

describe('orderSteps()', () => {
  test('does nothing when nothing changes', () => {
    const made = plan([feeder(1, 'A')], [feeder(1, 'A')]);
    expect(made.steps).toEqual([]);
    expect(made.parked).toBe(0);
  });

  test('ends a chain of moves in the free slot without parking', () => {
    const made = plan([feeder(1, 'A'), feeder(2, 'B')], [feeder(2, 'A'), feeder(3, 'B')]);
    expect(made.steps).toEqual([
      { act: 'move', slot: slot(2), part: 'B', to: slot(3) },
      { act: 'move', slot: slot(1), part: 'A', to: slot(2) },
    ]);
    expect(made.parked).toBe(0);
  });

  test('parks one feeder for two that change places', () => {
    const made = plan([feeder(1, 'A'), feeder(2, 'B')], [feeder(1, 'B'), feeder(2, 'A')]);
    expect(made.parked).toBe(1);
    expect(made.steps.map((step) => step.act)).toEqual(['park', 'move', 'unpark']);
  });

  test('moves a wide feeder by one position without parking, although its places overlap', () => {
    const made = plan([feeder(1, 'A', 3)], [feeder(2, 'A', 3)]);
    expect(made.steps).toEqual([{ act: 'move', slot: slot(1), part: 'A', to: slot(2) }]);
  });

  test('parks one wide feeder where two narrow ones would be two', () => {
    const loaded = [feeder(1, 'W', 2), feeder(3, 'a'), feeder(4, 'b')];
    const made = plan(loaded, [feeder(3, 'W', 2), feeder(1, 'a'), feeder(2, 'b')]);
    expect(made.parked).toBe(1);
    expect(made.steps[0]).toEqual({ act: 'park', slot: slot(1), part: 'W', to: null });
  });

  test('lets equal feeders trade places so that a cycle opens into a free slot', () => {
    const loaded = [feeder(1, 'A'), feeder(2, 'B'), feeder(5, 'A')];
    const wanted = [feeder(1, 'B'), feeder(2, 'A'), feeder(6, 'A')];
    expect(plan(loaded, wanted).parked).toBe(0);
  });

  test('takes the other of two equal feeders out where that opens a cycle', () => {
    const loaded = [feeder(1, 'A'), feeder(2, 'B'), feeder(3, 'A')];
    const wanted = [feeder(1, 'B'), feeder(2, 'A'), feeder(3, 'C')];
    const made = plan(loaded, wanted);
    expect([made.parked, made.isProven]).toEqual([0, true]);
    expect(made.diff.takeOut).toEqual([feeder(1, 'A')]);
    const after = carryOut(loaded, wanted, made);
    for (const one of wanted) expect(after.get(one.slot)).toMatchObject({ part: one.part });
  });

  test('opens the cycles of a bank of equal feeders, too many to try every trade of them', () => {
    // Seven pairs change places; each holds one of seven equal feeders, and seven more of those move to free slots.
    const pairs = Array.from({ length: 7 }, (_, at) => [2 * at + 1, 2 * at + 2] as const);
    const loaded = [
      ...pairs.flatMap(([one, other]) => [feeder(one, 'A'), feeder(other, `B${other}`)]),
      ...pairs.map(([one]) => feeder(50 + one, 'A')),
    ];
    const wanted = [
      ...pairs.flatMap(([one, other]) => [feeder(other, 'A'), feeder(one, `B${other}`)]),
      ...pairs.map(([one]) => feeder(80 + one, 'A')),
    ];
    const made = plan(loaded, wanted);
    expect([made.parked, made.isProven]).toEqual([0, true]);
    const after = carryOut(loaded, wanted, made);
    for (const one of wanted) expect(after.get(one.slot)).toMatchObject({ part: one.part });
    // Without a free slot one must be parked, and nobody tried every trade.
    const full = plan(loaded.slice(0, 14), wanted.slice(0, 14));
    expect(full.parked).toBeGreaterThan(0);
    carryOut(loaded.slice(0, 14), wanted.slice(0, 14), full);
  });

  test('takes out and puts in within one walk along the bank', () => {
    const loaded = [feeder(1, 'A'), feeder(2, 'B'), feeder(3, 'C')];
    const made = plan(loaded, [feeder(1, 'D'), feeder(3, 'E')]);
    expect(made.steps.map((step) => `${step.act} ${step.slot}`)).toEqual([
      'takeOut M1-F-001',
      'putIn M1-F-001',
      'takeOut M1-F-003',
      'putIn M1-F-003',
    ]);
  });

  test('parks the proven minimum and can be carried out on 500 random cases', () => {
    const chance = seededChance(20260302);
    let withParking = 0;
    for (let round = 0; round < 500; round++) {
      const { loaded, wanted } = randomLayouts(chance);
      const made = plan(loaded, wanted);
      const after = carryOut(loaded, wanted, made);
      for (const one of wanted)
        expect(after.get(one.slot)).toMatchObject({ part: one.part, width: one.width });
      expect(made.isProven).toBe(true);
      expect(made.parked, JSON.stringify({ round, loaded, wanted })).toBe(fewestByTrying(loaded, wanted));
      if (made.parked > 0) withParking++;
    }
    expect(withParking).toBeGreaterThan(100);
  });
});
