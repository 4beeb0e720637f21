// What of the floor can be found, and by which texts. Method: one list of findable things a kind, told apart where nothing else does by
// what people look for first: reels that stand on a slot, then those in the store, then used ones; slots in walking order.

import { compareSlots } from '../floor/address.ts';
import { placeOf } from '../floor/fold-places.ts';
import { isReelKnown } from '../floor/gone-reels.ts';
import { feedersOf } from '../floor/lanes.ts';
import { hasOwnId } from '../floor/reel-id.ts';
import { type FloorState, type Reel, slotKey } from '../floor/state.ts';
import { compareText } from '../log/order.ts';
import type { Findable } from './index-of-texts.ts';

/** Kinds of things that can be found, in the order in which they are told. */
export const thingKinds = [
  'reel',
  'slot',
  'part',
  'supplier-part',
  'lot',
  'panel',
  'feeder',
  'person',
  'setup',
  'entry',
] as const;
export type ThingKind = (typeof thingKinds)[number];

/** One thing, by its name in the floor; an entry by its id. */
export type Thing =
  | { readonly kind: 'reel'; readonly reel: string }
  | { readonly kind: 'slot'; readonly line: string; readonly slot: string }
  | { readonly kind: 'part'; readonly part: string }
  | { readonly kind: 'supplier-part'; readonly supplierPart: string }
  | { readonly kind: 'lot'; readonly lot: string }
  | { readonly kind: 'panel'; readonly serial: string }
  | { readonly kind: 'feeder'; readonly feeder: string }
  | { readonly kind: 'person'; readonly person: string }
  | { readonly kind: 'setup'; readonly setup: string }
  | { readonly kind: 'entry'; readonly entry: string };

/** A thing with its texts. */
export type FindableThing = Findable<ThingKind, Thing>;

const given = (...texts: readonly (string | null | undefined)[]): readonly string[] =>
  texts.filter((text): text is string => text != null && text !== '');

/** All of the floor that can be found. Cost: linear in reels, slots of setups and codes, and sorting. */
export function floorThings(floor: FloorState): readonly FindableThing[] {
  return [
    ...reelThings(floor),
    ...slotThings(floor),
    ...partThings(floor),
    ...lotThings(floor),
    ...panelThings(floor),
    ...feederThings(floor),
    ...[...floor.people.values()].map(
      ({ person, name, badge }): FindableThing => ({
        kind: 'person',
        thing: { kind: 'person', person },
        names: [name],
        about: [],
        whole: badge === '' ? [] : [badge],
      }),
    ),
    ...[...floor.setups.values()].map(
      ({ setup, product, revision, source }): FindableThing => ({
        kind: 'setup',
        thing: { kind: 'setup', setup },
        names: [product, `${product} ${revision}`],
        about: given(source),
      }),
    ),
  ];
}

/** A reel of this very id that was used up so long ago that the floor has no more of it than that; empty where there is none. */
export function goneThings(floor: FloorState, text: string): readonly FindableThing[] {
  const reel = text.trim();
  if (floor.reels.has(reel) || !hasOwnId(reel) || !isReelKnown(floor, reel)) return [];
  return [{ kind: 'reel', thing: { kind: 'reel', reel }, names: [reel], about: [] }];
}

function reelThings(floor: FloorState): readonly FindableThing[] {
  const turn = ({ at, count }: Reel) => (at !== null ? 0 : count === 0 ? 2 : 1);
  return [...floor.reels.values()]
    .sort((a, b) => turn(a) - turn(b) || compareText(a.reel, b.reel))
    .map((reel) => ({
      kind: 'reel',
      thing: { kind: 'reel', reel: reel.reel },
      names: hasOwnId(reel.reel) ? [reel.reel] : [],
      about: given(reel.part, reel.supplierPart, reel.lot, placeOf(reel)),
    }));
}

/** Slots that a chosen setup uses, and loaded ones, each once, whichever lanes feed from it; told of the line itself where that wants it. */
function slotThings(floor: FloorState): readonly FindableThing[] {
  const known = new Map<string, { readonly line: string; readonly slot: string; readonly parts: string[] }>();
  for (const [line, setup] of floor.chosen)
    for (const { slot, part } of floor.setups.get(setup)?.slots ?? []) {
      const key = slotKey(line, slot);
      const parts = known.get(key)?.parts ?? [];
      if (!parts.includes(part)) parts.push(part);
      if (!known.has(key) || feedersOf(line) === line) known.set(key, { line, slot, parts });
    }
  for (const [key, { line, slot }] of floor.slots)
    if (!known.has(key)) known.set(key, { line, slot, parts: [] });
  return [...known]
    .sort(([, a], [, b]) => compareText(a.line, b.line) || compareSlots(a.slot, b.slot))
    .map(([key, { line, slot, parts }]) => {
      const loaded = floor.slots.get(key);
      return {
        kind: 'slot',
        thing: { kind: 'slot', line, slot },
        names: [slot],
        about: given(...parts, loaded?.feeder, ...(loaded?.tapes.map((tape) => tape.part) ?? [])),
      };
    });
}

function partThings(floor: FloorState): readonly FindableThing[] {
  const parts = new Set<string>(floor.parts.keys());
  const bySupplier = new Map<string, Set<string>>();
  const approve = (supplierPart: string, part: string | null) => {
    const known = bySupplier.get(supplierPart) ?? new Set();
    if (part !== null) known.add(part);
    bySupplier.set(supplierPart, known);
  };
  for (const { slots } of floor.setups.values()) {
    for (const { part, alternates, supplierParts } of slots) {
      for (const each of [part, ...alternates]) parts.add(each);
      for (const each of supplierParts) approve(each, part);
    }
  }
  for (const [supplierPart, approved] of floor.approvals)
    for (const part of approved) approve(supplierPart, part);
  for (const { part, supplierPart } of floor.reels.values()) {
    if (part !== null) parts.add(part);
    if (supplierPart !== null) approve(supplierPart, part);
  }
  return [
    ...[...parts]
      .sort(compareText)
      .map(
        (part): FindableThing => ({ kind: 'part', thing: { kind: 'part', part }, names: [part], about: [] }),
      ),
    ...[...bySupplier]
      .sort(([a], [b]) => compareText(a, b))
      .map(
        ([supplierPart, of]): FindableThing => ({
          kind: 'supplier-part',
          thing: { kind: 'supplier-part', supplierPart },
          names: [supplierPart],
          about: [...of],
        }),
      ),
  ];
}

function lotThings(floor: FloorState): readonly FindableThing[] {
  const lots = new Set<string>();
  for (const { lot } of floor.reels.values()) if (lot !== null) lots.add(lot);
  for (const { tapes } of floor.slots.values()) for (const { lot } of tapes) if (lot !== null) lots.add(lot);
  for (const { lot } of floor.blocks.values()) if (lot !== null) lots.add(lot);
  return [...lots]
    .sort(compareText)
    .map((lot) => ({ kind: 'lot', thing: { kind: 'lot', lot }, names: [lot], about: [] }));
}

/** Panels by their own codes: those of each line's present run and the one before, seen ones and held ones, newest first. */
function panelThings(floor: FloorState): readonly FindableThing[] {
  const serials = new Set<string>();
  for (const [key, { run }] of floor.codes) serials.add(key.slice(run.length + 1));
  for (const { serial } of floor.seen.values()) serials.add(serial);
  for (const { held } of floor.contained.values()) for (const serial of held.keys()) serials.add(serial);
  return [...serials]
    .reverse()
    .map((serial) => ({ kind: 'panel', thing: { kind: 'panel', serial }, names: [serial], about: [] }));
}

function feederThings(floor: FloorState): readonly FindableThing[] {
  const feeders = new Set<string>(floor.feeders.keys());
  for (const { feeder } of floor.slots.values()) if (feeder !== null) feeders.add(feeder);
  return [...feeders].sort(compareText).map((feeder) => ({
    kind: 'feeder',
    thing: { kind: 'feeder', feeder },
    names: [feeder],
    about: given(floor.typed.get(feeder)?.type),
  }));
}
