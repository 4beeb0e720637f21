// What the simulated people do with reels, and the entries that they leave: load, splice, unload, change over. Every reel is
// put to the app's own verdict before it goes on; sometimes a hand takes the wrong reel first, and the log keeps the refusal.

import { compareSlots } from '../shared/floor/address.ts';
import { isLimited } from '../shared/floor/exposure.ts';
import type { SetupSlot } from '../shared/floor/kinds.ts';
import { plantDay } from '../shared/floor/plant-day.ts';
import { ownIdOf } from '../shared/floor/reel-id.ts';
import { slotKey } from '../shared/floor/state.ts';
import type { VerifyAct } from '../shared/floor/vocabulary.ts';
import { wantedOn } from '../shared/floor/wanted.ts';
import { chanceBelow, chanceNormal } from '../shared/kit/chance.ts';
import { DAY_MS } from '../shared/kit/moment.ts';
import { entryId } from '../shared/log/entry.ts';
import { moistureOfSlot, reelLife } from '../shared/moisture/reel-life.ts';
import { verifyReel } from '../shared/verdict/verify.ts';
import type { Agenda } from './agenda.ts';
import type { DemoLog } from './log.ts';
import { familyOf } from './parts.ts';
import { peopleOf } from './people.ts';
import { placesOf } from './places.ts';
import { draft } from './plant.ts';
import { readSymbols } from './reels.ts';
import { lineId } from './setups.ts';
import { shelfOf } from './shelves.ts';
import { fetchReel, makeSlot, type StockReel, takeFeeder, takeNew, type World } from './world.ts';

/** Share of loads at which the wrong reel is taken first. */
const WRONG_REEL = 0.02;
/** Share of reels that the store weighs when they come back. */
const WEIGHED = 0.3;

/** How long after it came off a reel lies on its shelf again. */
const PUT_AWAY_MS = 8 * 60_000;

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
  /** Who minds the store. */
  readonly handler: string;
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
  by: By,
): { readonly id: string; readonly verdict: 'accepted' | 'refused' | 'held' } {
  const { log } = floor;
  const facts = readSymbols(asked.reel.label.symbols);
  const known = facts.reel === null ? undefined : log.state.reels.get(facts.reel);
  const answer = verifyReel(log.state, {
    act: asked.act,
    line: lineId,
    setup: floor.setup,
    slot: asked.slot,
    feeder: asked.feeder,
    reel: facts,
    today: plantDay(log.state, lineId, by.atMs),
    floorLife: leftOfLife(floor, facts, { slot: asked.slot, atMs: by.atMs }),
  });
  const counted = known?.count ?? null;
  const entry = log.write(
    draft('reel.verified', {
      act: asked.act,
      line: lineId,
      setup: floor.setup,
      run: floor.run,
      slot: asked.slot,
      feeder: asked.feeder,
      reel: facts.reel,
      part: answer.part,
      supplierPart: facts.supplierPart,
      quantity: counted ?? facts.quantity,
      lot: facts.lot,
      dateCode: facts.dateCode,
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

/** What is left of a reel's floor life; null where its parts bear any time out of the bag. */
function leftOfLife(
  { log, setup }: Floor,
  { reel, part: taken }: { readonly reel: string | null; readonly part: string | null },
  at: { readonly slot: string; readonly atMs: number },
) {
  const part = moistureOfSlot(log.state, wantedOn(log.state, setup, at.slot), taken);
  const left = reelLife(log.state, reel, { line: lineId, part, nowMs: at.atMs })?.leftSeconds ?? null;
  return left === null ? null : { leftSeconds: left, neededSeconds: null };
}

/** Who acts, and when. */
export interface By {
  readonly who: string;
  readonly atMs: number;
}

/** Loads a slot; `quantity`: what is printed on a new reel, without it whatever the store hands out. `expired`: a lead must decide. */
export function loadSlot(
  floor: Floor,
  wanted: SetupSlot,
  by: By & { readonly quantity?: number; readonly expired?: boolean },
): void {
  const { world } = floor;
  const { quantity, expired = false } = by;
  const feeder = takeFeeder(world, wanted);
  const expires = plantDay(floor.log.state, lineId, by.atMs - 9 * DAY_MS);
  const reel =
    quantity === undefined
      ? fetchReel(world, wanted)
      : takeNew(world, wanted.part, { quantity, ...(expired ? { expires } : {}) });
  if (world.chance() < WRONG_REEL) takeWrongReel(floor, wanted, { ...by, feeder });
  const { verdict, id } = verifyAndWrite(floor, { act: 'load', slot: wanted.slot, feeder, reel }, by);
  const putOn = () => {
    const slot = makeSlot(world, wanted, feeder);
    slot.tapes.push({ label: reel.label, left: reel.left, opensMs: null, closesMs: null });
    world.slots.set(wanted.slot, slot);
    world.truth.feeders.push({ slot: wanted.slot, feeder, loss: slot.loss });
  };
  if (verdict === 'accepted') putOn();
  else if (verdict === 'held' && expired) clearLater(floor, { id, slot: wanted.slot, atMs: by.atMs, putOn });
  else throw notTaken(verdict, id);
}

/** The lead comes, looks and takes the reel. */
function clearLater(
  floor: Floor,
  held: { readonly id: string; readonly slot: string; readonly atMs: number; readonly putOn: () => void },
): void {
  const { lead } = floor;
  floor.agenda.at(held.atMs + (60 + 90 * floor.world.chance()) * 1000, (atMs) => {
    floor.log.write(
      draft('hold.cleared', {
        of: held.id,
        line: lineId,
        slot: held.slot,
        by: lead,
        checked: 'tablet',
        reason: 'Solderability tried on ten parts, all wetted',
      }),
      { atMs, who: lead },
    );
    held.putOn();
  });
}

function notTaken(verdict: string, id: string): RangeError {
  return new RangeError(`Cannot load as reel must be accepted: current value is ${verdict} by ${id}`);
}

/** Joins a new reel's tape to the running one. */
export function spliceSlot(floor: Floor, slot: string, by: By): void {
  const there = floor.world.slots.get(slot);
  if (!there) throw new RangeError(`Cannot splice as slot must be loaded: current value is ${slot}`);
  const reel = fetchReel(floor.world, there.wanted);
  const { verdict, id } = verifyAndWrite(floor, { act: 'splice', slot, feeder: null, reel }, by);
  if (verdict !== 'accepted') throw notTaken(verdict, id);
  there.tapes.push({ label: reel.label, left: reel.left, opensMs: null, closesMs: null });
}

function takeWrongReel(floor: Floor, wanted: SetupSlot, by: By & { readonly feeder: string }): void {
  const others = placesOf(floor.log.state, floor.setup).filter(
    (slot) =>
      slot.part !== wanted.part &&
      !wanted.alternates.includes(slot.part) &&
      slot.tapeWidthMm === wanted.tapeWidthMm,
  );
  const other = others[chanceBelow(floor.world.chance, others.length)];
  if (!other) return;
  const label = floor.world.store.next(other.part, { quantity: 1000 });
  const asked = { act: 'load', slot: wanted.slot, feeder: by.feeder, reel: { label, left: 1000 } } as const;
  const lastMs = floor.log.entries.at(-1)?.hlc.ms ?? 0;
  verifyAndWrite(floor, asked, { who: by.who, atMs: Math.max(lastMs, by.atMs - 12_000) });
}

/** Takes a slot's reel off; what is left on the running tape goes back to the store's opened reels. */
export function unloadSlot(floor: Floor, slot: string, by: By & { readonly empty: boolean }): void {
  const { world, log } = floor;
  const there = log.state.slots.get(slotKey(lineId, slot));
  const truth = world.slots.get(slot);
  if (!there || !truth)
    throw new RangeError(`Cannot unload as slot must be loaded: current value is ${slot}`);
  const last = there.tapes.at(-1);
  log.write(
    draft('reel.unloaded', {
      line: lineId,
      run: floor.run,
      slot,
      feeder: there.feeder,
      reel: ownIdOf(last?.reel),
      part: last?.part ?? null,
      lot: last?.lot ?? null,
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
  // What a lead let through once is not put back for others to take.
  if (!tape || tape.left === 0 || tape.label.expires) return;
  const part = truth.wanted.part;
  const back: StockReel = { label: tape.label, left: tape.left };
  world.stock.set(part, [...(world.stock.get(part) ?? []), back]);
  putAwayLater(floor, part, { back, atMs: by.atMs });
  if (world.chance() < WEIGHED) weighLater(floor, part, { back, atMs: by.atMs });
}

/** The store puts a reel that came back on its shelf, unless somebody took it again before. */
function putAwayLater(
  floor: Floor,
  part: string,
  from: { readonly back: StockReel; readonly atMs: number },
): void {
  const { world, log } = floor;
  const place = shelfOf(part);
  const { reel, supplierPart, lot, dateCode } = readSymbols(from.back.label.symbols);
  if (place === null || reel === null) return;
  floor.agenda.at(from.atMs + PUT_AWAY_MS, (atMs) => {
    if (!world.stock.get(part)?.includes(from.back)) return;
    const facts = { reel, part, supplierPart, lot, dateCode, quantity: null, place };
    const put = draft('reel.put', { ...facts, via: 'wedge' });
    const by = { atMs, who: floor.handler, tablet: 'demo0-store' } as const;
    log.write(put, by);
    if (!isLimited(familyOf(part).msl)) return;
    const dry = { air: 'dry', from: new Date(atMs).toISOString(), celsius: null, humidity: 5 } as const;
    const { place: _shelf, ...reelFacts } = facts;
    log.write(draft('reel.aired', { ...reelFacts, ...dry, via: 'wedge' }), by);
  });
}

/** The store weighs a reel that came back, unless somebody took it again before. */
function weighLater(
  floor: Floor,
  part: string,
  from: { readonly back: StockReel; readonly atMs: number },
): void {
  const { world, log } = floor;
  const { back } = from;
  floor.agenda.at(from.atMs + (10 + 15 * world.chance()) * 60_000, (atMs) => {
    if (!world.stock.get(part)?.includes(back)) return;
    // A pocket scale on small parts: half a percent of a full reel, common practice.
    const sd = Math.max(1, 0.005 * familyOf(part).full);
    const quantity = Math.max(0, Math.round(chanceNormal(world.chance, back.left, sd)));
    log.write(
      draft('reel.counted', {
        line: null,
        slot: null,
        reel: back.label.reel,
        part,
        lot: back.label.lot,
        quantity,
        sd,
        basis: 'weighed',
        panels: floor.panels,
      }),
      { atMs, who: floor.handler, tablet: 'demo0-store' },
    );
  });
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
  acts: readonly ((by: By) => void)[],
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
