// What the simulated people do with reels, and the entries that they leave: load, splice, unload, change over. Every reel is
// put to the app's own verdict before it goes on; sometimes a hand takes the wrong reel first, and the log keeps the refusal.

import { chanceBelow } from '../shared/kit/chance.ts';
import { entryId } from '../shared/log/entry.ts';
import { compareSlots } from '../shared/setup/address.ts';
import type { SetupSlot } from '../shared/setup/kinds.ts';
import { slotKey } from '../shared/setup/state.ts';
import type { VerifyAct } from '../shared/setup/vocabulary.ts';
import { verifyReel } from '../shared/verdict/verify.ts';
import type { Agenda } from './agenda.ts';
import type { DemoLog } from './log.ts';
import { peopleOf } from './people.ts';
import { placesOf } from './places.ts';
import { wish } from './plant.ts';
import { readSymbols } from './reels.ts';
import { lineId } from './setups.ts';
import { fetchReel, makeSlot, type StockReel, takeFeeder, takeNew, type World } from './world.ts';

/** Who works on the line, and when each is free. */
export interface Hand {
  readonly person: string;
  freeMs: number;
}

/** The shift as it goes. */
export interface Floor {
  readonly world: World;
  readonly log: DemoLog;
  readonly agenda: Agenda;
  readonly hands: readonly Hand[];
  readonly lead: string;
  setup: string;
  run: string | null;
  panels: number;
}

/** The hands of a shift: two operators. */
export function shiftHands(): Hand[] {
  return peopleOf('operator')
    .slice(0, 2)
    .map((person) => ({ person: person.person, freeMs: 0 }));
}

/** A reel put to the verdict, and the entry written. Returns the entry's id and whether it was accepted. */
export function verifyAndWrite(
  floor: Floor,
  asked: {
    readonly act: VerifyAct;
    readonly slot: string;
    readonly feeder: string | null;
    readonly reel: StockReel;
  },
  by: { readonly who: string; readonly atMs: number },
): { readonly id: string; readonly verdict: 'accepted' | 'refused' | 'held' } {
  const { log } = floor;
  const facts = readSymbols(asked.reel.label.symbols);
  const known = facts.reel === null ? undefined : log.state.reels.get(facts.reel);
  const answer = verifyReel(log.state, {
    ...{ act: asked.act, line: lineId, setup: floor.setup, slot: asked.slot, feeder: asked.feeder },
    reel: facts,
    today: new Date(by.atMs).toISOString().slice(0, 10),
  });
  const counted = known?.count ?? null;
  const entry = log.write(
    wish('reel.verified', {
      ...{
        act: asked.act,
        line: lineId,
        setup: floor.setup,
        run: floor.run,
        slot: asked.slot,
        feeder: asked.feeder,
      },
      ...{ reel: facts.reel, part: answer.part, supplierPart: facts.supplierPart },
      ...{ quantity: counted ?? facts.quantity, lot: facts.lot, dateCode: facts.dateCode },
      codes: asked.reel.label.symbols.map((symbol) => symbol.text),
      verdict: answer.verdict,
      reasons: answer.reasons.map((reason) => ({ ...reason })),
      panels: floor.panels,
      via: 'wedge',
      basis: counted === null ? 'label' : 'counted-down',
    }),
    { atMs: by.atMs, who: by.who },
  );
  return { id: entryId(entry), verdict: answer.verdict };
}

/** Loads a slot; `quantity`: what is printed on a new reel, without it whatever the store hands out. */
export function loadSlot(
  floor: Floor,
  wanted: SetupSlot,
  by: { readonly who: string; readonly atMs: number; readonly quantity?: number },
): void {
  const { world } = floor;
  const feeder = takeFeeder(world, wanted);
  const reel =
    by.quantity === undefined ? fetchReel(world, wanted.part) : takeNew(world, wanted.part, by.quantity);
  if (world.chance() < 0.02) takeWrongReel(floor, wanted, { ...by, feeder });
  putOn(floor, { act: 'load', slot: wanted.slot, feeder, reel }, by);
  const slot = makeSlot(world, wanted, feeder);
  slot.tapes.push({ label: reel.label, left: reel.left, opensMs: null, closesMs: null });
  world.slots.set(wanted.slot, slot);
  world.truth.feeders.push({ slot: wanted.slot, feeder, loss: slot.loss });
}

/** Joins a new reel's tape to the running one. */
export function spliceSlot(
  floor: Floor,
  slot: string,
  by: { readonly who: string; readonly atMs: number },
): void {
  const there = floor.world.slots.get(slot);
  if (!there) throw new RangeError(`Cannot splice as slot must be loaded: current value is ${slot}`);
  const reel = fetchReel(floor.world, there.wanted.part);
  putOn(floor, { act: 'splice', slot, feeder: null, reel }, by);
  there.tapes.push({ label: reel.label, left: reel.left, opensMs: null, closesMs: null });
}

/** A reel that must be right: anything but `accepted` is a fault of the plant's data. */
function putOn(
  floor: Floor,
  asked: Parameters<typeof verifyAndWrite>[1],
  by: { readonly who: string; readonly atMs: number },
): void {
  const { verdict, id } = verifyAndWrite(floor, asked, by);
  if (verdict !== 'accepted')
    throw new RangeError(`Cannot load as reel must be accepted: current value is ${verdict} by ${id}`);
}

function takeWrongReel(
  floor: Floor,
  wanted: SetupSlot,
  by: { readonly who: string; readonly atMs: number; readonly feeder: string },
): void {
  const others = placesOf(floor.log.state, floor.setup).filter(
    (slot) => slot.part !== wanted.part && slot.tapeWidthMm === wanted.tapeWidthMm,
  );
  const other = others[chanceBelow(floor.world.chance, others.length)];
  if (!other) return;
  const label = floor.world.store.next(other.part, 1000);
  const asked = { act: 'load', slot: wanted.slot, feeder: by.feeder, reel: { label, left: 1000 } } as const;
  const lastMs = floor.log.entries.at(-1)?.hlc.ms ?? 0;
  verifyAndWrite(floor, asked, { who: by.who, atMs: Math.max(lastMs, by.atMs - 12_000) });
}

/** Takes a slot's reel off; what is left on the running tape goes back to the store's opened reels. */
export function unloadSlot(
  floor: Floor,
  slot: string,
  by: { readonly who: string; readonly atMs: number; readonly empty: boolean },
): void {
  const { world, log } = floor;
  const there = log.state.slots.get(slotKey(lineId, slot));
  const truth = world.slots.get(slot);
  if (!there || !truth)
    throw new RangeError(`Cannot unload as slot must be loaded: current value is ${slot}`);
  const last = there.tapes.at(-1);
  log.write(
    wish('reel.unloaded', {
      ...{ line: lineId, run: floor.run, slot, feeder: there.feeder },
      ...{
        reel: last?.reel.startsWith('~') ? null : (last?.reel ?? null),
        part: last?.part ?? null,
        lot: last?.lot ?? null,
      },
      quantity: by.empty ? 0 : null,
      basis: by.empty ? 'typed' : null,
      panels: floor.panels,
      via: 'wedge',
    }),
    { atMs: by.atMs, who: by.who },
  );
  world.slots.delete(slot);
  const feeder = log.state.feeders.get(truth.feeder);
  if (feeder) world.freeFeeders.push(feeder);
  const tape = truth.tapes.at(-1);
  if (!tape || tape.left === 0) return;
  const part = truth.wanted.part;
  world.stock.set(part, [...(world.stock.get(part) ?? []), { label: tape.label, left: tape.left }]);
}

/** Slots to take off and to put on so that the line carries a setup, in walking order. */
export function changesFor(
  floor: Floor,
  setup: string,
): { readonly off: string[]; readonly on: SetupSlot[] } {
  const wanted = new Map(placesOf(floor.log.state, setup).map((slot) => [slot.slot, slot]));
  const off: string[] = [];
  for (const [slot, there] of floor.world.slots) {
    const next = wanted.get(slot);
    if (next?.part === there.wanted.part) floor.world.slots.set(slot, { ...there, wanted: next });
    else off.push(slot);
  }
  const stay = new Set([...floor.world.slots.keys()].filter((slot) => !off.includes(slot)));
  const on = [...wanted.values()].filter((slot) => !stay.has(slot.slot) && slot.perPanel > 0);
  return { off: off.sort(compareSlots), on: on.sort((a, b) => compareSlots(a.slot, b.slot)) };
}

/** Lets all hands do a list of acts, the earliest free first. Returns when the last is done. */
export function shareOut(
  floor: Floor,
  acts: readonly ((by: { readonly who: string; readonly atMs: number }) => void)[],
  from: { readonly fromMs: number; readonly seconds: number },
): number {
  for (const hand of floor.hands) hand.freeMs = Math.max(hand.freeMs, from.fromMs);
  for (const act of acts) {
    const hand = floor.hands.reduce((first, other) => (other.freeMs < first.freeMs ? other : first));
    hand.freeMs += from.seconds * 1000 * (0.7 + 0.6 * floor.world.chance());
    floor.agenda.at(hand.freeMs, (atMs) => act({ who: hand.person, atMs }));
  }
  const doneMs = Math.max(from.fromMs, ...floor.hands.map((hand) => hand.freeMs));
  floor.agenda.advance(doneMs);
  return doneMs;
}
