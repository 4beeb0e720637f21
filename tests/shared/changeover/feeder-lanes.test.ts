// Feeders with several lanes in a changeover: what a hand does, carried out on a bare machine of feeders and the reels that hang on them.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { diffSetups, everyLaneOf, type PlacedFeeder } from '../../../shared/changeover/diff.ts';
import { type ChangeStep, orderSteps, type StepPlan } from '../../../shared/changeover/steps.ts';

const place = (position: number, lane = '') => `M1-F-${String(position).padStart(3, '0')}${lane}`;
const on = (slot: string, part: string, width = 1): PlacedFeeder => ({ slot, part, width });

function plan(loaded: readonly PlacedFeeder[], wanted: readonly PlacedFeeder[]): StepPlan {
  const diff = diffSetups(loaded, wanted);
  if (!diff.ok) throw new Error(JSON.stringify(diff.error));
  return orderSteps(diff.value);
}

/** A feeder as a thing: where it stands, what it takes, and the part on each of its lanes (`''`: it has one and no name for it). */
interface Thing {
  position: number;
  readonly width: number;
  readonly lanes: Map<string, string>;
}

/** `M1-F-014B` is lane B of position 14; told apart here by hand, as the product's own reading is what is tried. */
function placeOf(slot: string): { readonly position: number; readonly lane: string } {
  const [, digits = '', lane = ''] = /^M1-F-(\d{3})([A-C]?)$/.exec(slot) ?? [];
  return { position: Number(digits), lane };
}

function thingsOf(placed: readonly PlacedFeeder[]): Thing[] {
  const things: Thing[] = [];
  for (const { slot, part, width } of placed) {
    const { position, lane } = placeOf(slot);
    const there = lane === '' ? undefined : things.find((one) => one.position === position);
    if (there) there.lanes.set(lane, part);
    else things.push({ position, width, lanes: new Map([[lane, part]]) });
  }
  return things;
}

const overlaps = (a: Thing, b: Thing) =>
  a.position < b.position + b.width && b.position < a.position + a.width;

/** The machine, to which steps are done one by one; each throws where a hand could not do it. */
class Machine {
  readonly things: Thing[];
  readonly #widths: ReadonlyMap<string, number>;
  readonly #parked: Thing[] = [];

  constructor(loaded: readonly PlacedFeeder[], wanted: readonly PlacedFeeder[]) {
    this.things = thingsOf(loaded);
    this.#widths = new Map(wanted.map(({ slot, width }) => [slot, width]));
  }

  at(slot: string): Thing {
    const { position } = placeOf(slot);
    const there = this.things.find((one) => one.position === position);
    if (!there) throw new Error(`no feeder on ${slot}`);
    return there;
  }

  /** Everything that the step says hangs on the feeder, and nothing else. */
  #named(step: ChangeStep): Map<string, string> {
    const all = [{ slot: step.slot, part: step.part }, ...(step.lanes ?? [])];
    return new Map(all.map(({ slot, part }) => [placeOf(slot).lane, part]));
  }

  #lift(step: ChangeStep): Thing {
    const there = this.at(step.slot);
    expect(Object.fromEntries(there.lanes)).toEqual(Object.fromEntries(this.#named(step)));
    this.things.splice(this.things.indexOf(there), 1);
    return there;
  }

  #put(thing: Thing, slot: string): void {
    thing.position = placeOf(slot).position;
    const other = this.things.find((one) => overlaps(one, thing));
    if (other) throw new Error(`${slot} is taken by the feeder on ${other.position}`);
    this.things.push(thing);
  }

  carryOut(step: ChangeStep): void {
    const { lane } = placeOf(step.slot);
    if (step.laneOnly) {
      const { lanes } = this.at(step.slot);
      expect(lanes.get(lane) ?? null).toBe(step.act === 'takeOut' ? step.part : null);
      if (step.act === 'takeOut') lanes.delete(lane);
      else lanes.set(lane, step.part);
      return;
    }
    if (step.act === 'takeOut') this.#lift(step);
    if (step.act === 'park') this.#parked.push(this.#lift(step));
    if (step.act === 'move') this.#put(this.#lift(step), step.to ?? '');
    if (step.act === 'unpark') {
      const named = JSON.stringify([...this.#named(step)].sort());
      const at = this.#parked.findIndex(({ lanes }) => JSON.stringify([...lanes].sort()) === named);
      const [thing] = this.#parked.splice(at, 1);
      if (at < 0 || !thing) throw new Error(`${step.part} is not parked`);
      this.#put(thing, step.slot);
    }
    if (step.act === 'putIn') {
      const width = this.#widths.get(step.slot) ?? 1;
      this.#put({ position: 0, width, lanes: this.#named(step) }, step.slot);
    }
  }
}

type Stood = { readonly width: number; readonly lanes: Readonly<Record<string, string>> } | null;
const parts = fc.constantFrom('P', 'Q', 'R', 'S');
/** What may stand on the positions of a bank one after the other: nothing, a feeder of one or two positions, one with lanes. */
const stood: fc.Arbitrary<Stood> = fc.oneof(
  fc.constant(null),
  fc.record({ width: fc.constantFrom(1, 2), lanes: fc.record({ '': parts }) }),
  fc.record({
    width: fc.constantFrom(1, 2),
    lanes: fc.record({ A: parts, B: parts, C: parts }, { requiredKeys: [] }),
  }),
);

function layOut(row: readonly Stood[]): PlacedFeeder[] {
  let position = 1;
  return row.flatMap((each) => {
    const at = position;
    position += each?.width ?? 1;
    if (each === null) return [];
    return Object.entries(each.lanes).map(([lane, part]) => on(place(at, lane), part, each.width));
  });
}

/** Two setups that have much in common: the second is the first with some of its feeders replaced. */
const setups = fc
  .tuple(fc.array(stood, { maxLength: 6 }), fc.array(fc.option(stood, { freq: 2 }), { maxLength: 6 }))
  .map(([row, other]) => {
    const next = Array.from({ length: Math.max(row.length, other.length) }, (_, at) => {
      const [before, after] = [row[at] ?? null, other[at] ?? null];
      return after ?? before;
    });
    return { loaded: layOut(row), wanted: layOut(next) };
  });

describe('a changeover with feeders of several lanes', () => {
  test('can be carried out in every case, ends in what is wanted, and touches no reel that it keeps', () => {
    fc.assert(
      fc.property(setups, ({ loaded, wanted }) => {
        const made = plan(loaded, wanted);
        const machine = new Machine(loaded, wanted);
        const untouched = [...made.diff.keep, ...made.diff.stay].flatMap((one) =>
          everyLaneOf(one).map((slot) => {
            const { lane } = placeOf(slot);
            return { slot, lane, thing: machine.at(slot), reel: machine.at(slot).lanes.get(lane) };
          }),
        );
        for (const step of made.steps) {
          machine.carryOut(step);
          for (const { slot, lane, thing, reel } of untouched) {
            expect(machine.at(slot)).toBe(thing);
            expect(machine.at(slot).lanes.get(lane)).toBe(reel);
          }
        }
        for (const { slot, part } of wanted)
          expect(machine.at(slot).lanes.get(placeOf(slot).lane), slot).toBe(part);
        // Nobody would handle more than by clearing the bank and filling it anew, reel by reel.
        expect(made.steps.length).toBeLessThanOrEqual(loaded.length + wanted.length + made.parked);
      }),
      { numRuns: 1000 },
    );
  });

  test('tells every reel of both setups once: kept, moved, out, in or left', () => {
    fc.assert(
      fc.property(setups, ({ loaded, wanted }) => {
        const { diff } = plan(loaded, wanted);
        const from = diff.move.flatMap((one) => [one.from, ...(one.lanes ?? []).map((lane) => lane.from)]);
        const to = diff.move.flatMap((one) => [one.to, ...(one.lanes ?? []).map((lane) => lane.to)]);
        const kept = diff.keep.map(({ slot }) => slot);
        const slots = (list: readonly PlacedFeeder[]) => list.flatMap(everyLaneOf);
        expect([...kept, ...from, ...slots(diff.takeOut), ...slots(diff.stay)].sort()).toEqual(
          loaded.map(({ slot }) => slot).sort(),
        );
        expect([...kept, ...to, ...slots(diff.putIn)].sort()).toEqual(wanted.map(({ slot }) => slot).sort());
      }),
      { numRuns: 600 },
    );
  });

  test('keeps lane A and changes the reel on lane B, with the feeder where it is', () => {
    const made = plan(
      [on(place(5, 'A'), 'P'), on(place(5, 'B'), 'Q')],
      [on(place(5, 'A'), 'P'), on(place(5, 'B'), 'R')],
    );
    expect(made.diff.keep.map(({ slot }) => slot)).toEqual([place(5, 'A')]);
    expect(made.steps).toEqual([
      { act: 'takeOut', slot: place(5, 'B'), part: 'Q', to: null, laneOnly: true },
      { act: 'putIn', slot: place(5, 'B'), part: 'R', to: null, laneOnly: true },
    ]);
  });

  test('takes all three reels out with their feeder, in one handling', () => {
    const lanes = ['A', 'B', 'C'].map((lane, at) => on(place(5, lane), `P${at}`));
    const made = plan(lanes, [on(place(5), 'W')]);
    expect(made.steps).toEqual([
      {
        act: 'takeOut',
        slot: place(5, 'A'),
        part: 'P0',
        to: null,
        lanes: [
          { slot: place(5, 'B'), part: 'P1' },
          { slot: place(5, 'C'), part: 'P2' },
        ],
      },
      { act: 'putIn', slot: place(5), part: 'W', to: null },
    ]);
  });

  test('moves a feeder with both of its reels, and only where both are wanted on the same lanes', () => {
    const loaded = [on(place(5, 'A'), 'P'), on(place(5, 'B'), 'Q')];
    const made = plan(loaded, [on(place(9, 'A'), 'P'), on(place(9, 'B'), 'Q')]);
    expect(made.steps).toEqual([
      {
        act: 'move',
        slot: place(5, 'A'),
        part: 'P',
        to: place(9, 'A'),
        lanes: [{ slot: place(5, 'B'), part: 'Q' }],
      },
    ]);
    const crossed = plan(loaded, [on(place(9, 'A'), 'Q'), on(place(9, 'B'), 'P')]);
    expect(crossed.diff.move).toEqual([]);
    expect(plan(loaded, [on(place(9), 'P')]).diff.move).toEqual([]);
  });

  test('has a wide feeder with lanes give way to what is wanted on its other positions', () => {
    const made = plan([on(place(5, 'A'), 'P', 2), on(place(5, 'B'), 'Q', 2)], [on(place(6), 'W')]);
    expect(made.steps.map(({ act }) => act)).toEqual(['takeOut', 'putIn']);
    expect(made.steps[0]?.lanes).toEqual([{ slot: place(5, 'B'), part: 'Q' }]);
  });

  test('leaves a reel that nobody wants on its lane, beside one that is put on the other', () => {
    const made = plan([on(place(5, 'A'), 'P')], [on(place(5, 'B'), 'Q')]);
    expect(made.diff.stay.map(({ slot }) => slot)).toEqual([place(5, 'A')]);
    expect(made.steps).toEqual([{ act: 'putIn', slot: place(5, 'B'), part: 'Q', to: null, laneOnly: true }]);
  });

  test('says that a feeder and a lane of another cannot be on one position', () => {
    const both = diffSetups([], [on(place(5), 'P'), on(place(5, 'B'), 'Q')]);
    expect(both).toMatchObject({ ok: false, error: [{ code: 'overlap', slot: place(5, 'B') }] });
    const wide = diffSetups([], [on(place(5, 'A'), 'P', 2), on(place(6), 'Q')]);
    expect(wide).toMatchObject({ ok: false, error: [{ code: 'overlap', slot: place(6) }] });
  });
});
