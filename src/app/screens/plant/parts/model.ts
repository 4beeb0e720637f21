// What the lists of parts, feeders and blocks show for a search, and what a scan puts into their fields.

import { setupFaults } from '../../../../../shared/changeover/diff.ts';
import { loadedFeeders } from '../../../../../shared/changeover/loaded.ts';
import { compareSlots } from '../../../../../shared/floor/address.ts';
import type { BlockFacts } from '../../../../../shared/floor/blocks.ts';
import { isUnderBlock } from '../../../../../shared/floor/blocks.ts';
import { siteRules } from '../../../../../shared/floor/fold-labels.ts';
import { reelOf } from '../../../../../shared/floor/gone-reels.ts';
import { holdsBadge } from '../../../../../shared/floor/recognise.ts';
import { ownIdOf } from '../../../../../shared/floor/reel-id.ts';
import type { Feeder, FloorState } from '../../../../../shared/floor/state.ts';
import { wantedOn } from '../../../../../shared/floor/wanted.ts';
import { parseLabel } from '../../../../../shared/labels/label.ts';
import type { Scan } from '../../../../../shared/labels/scan.ts';
import { compareText } from '../../../../../shared/log/order.ts';

/** What a scan says, as far as these lists care; `raw` is the first code as it came. */
export interface ScannedThing {
  readonly raw: string;
  readonly part: string | null;
  readonly supplierPart: string | null;
  readonly lot: string | null;
  readonly reel: string | null;
}

/** Reads a scan; null for a badge, which signs in whatever page is open, and for nothing. */
export function readScan(floor: FloorState, line: string | null, scan: Scan): ScannedThing | null {
  const raw = scan.codes[0]?.text.trim() ?? '';
  if (raw === '' || holdsBadge(floor, line, [raw])) return null;
  const sitesParts = new Set(
    [...floor.setups.values()].flatMap(({ slots }) => slots.map(({ part }) => part)),
  );
  const reading = parseLabel(
    scan.codes.map(({ text }) => text),
    {
      rules: siteRules(floor),
      expected: { parts: sitesParts, supplierParts: new Set(floor.approvals.keys()) },
    },
  );
  const known = reelOf(floor, reading.reel ?? raw);
  const isPart = sitesParts.has(raw);
  return {
    raw,
    part: reading.part ?? (isPart ? raw : null) ?? known?.part ?? null,
    supplierPart:
      reading.supplierPart ?? (floor.approvals.has(raw) ? raw : null) ?? known?.supplierPart ?? null,
    lot: reading.lot ?? known?.lot ?? null,
    reel: reading.reel ?? (known ? raw : null),
  };
}

/** True where every word of the search stands in one of the texts, whatever its case. */
export function matches(search: string, texts: readonly (string | null)[]): boolean {
  const found = texts.filter((text) => text !== null).map((text) => text.toLowerCase());
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => word === '' || found.some((text) => text.includes(word)));
}

/** A site part with the supplier parts that stand for it. */
export interface ApprovedPart {
  readonly part: string;
  readonly supplierParts: readonly string[];
  /** Slots of all setups that want it. */
  readonly slots: number;
}

/** Site parts with what is approved for them, by number; parts that a setup wants stand here also where nothing is approved. */
export function approvedParts(floor: FloorState): readonly ApprovedPart[] {
  const byPart = new Map<string, { supplierParts: string[]; slots: number }>();
  const at = (part: string) => {
    const there = byPart.get(part) ?? { supplierParts: [], slots: 0 };
    byPart.set(part, there);
    return there;
  };
  for (const setup of floor.setups.values()) for (const { part } of setup.slots) at(part).slots += 1;
  for (const [supplierPart, parts] of floor.approvals)
    for (const part of parts) at(part).supplierParts.push(supplierPart);
  return [...byPart]
    .map(([part, { supplierParts, slots }]) => ({
      part,
      slots,
      supplierParts: supplierParts.sort(compareText),
    }))
    .sort((a, b) => compareText(a.part, b.part));
}

/** What keeps a supplier part from being approved; null = nothing. */
export type ApproveObstacle = 'partMissing' | 'supplierMissing' | 'same' | 'already';

export function approveObstacle(
  floor: FloorState,
  part: string,
  supplierPart: string,
): ApproveObstacle | null {
  if (supplierPart.trim() === '') return 'supplierMissing';
  if (part.trim() === '') return 'partMissing';
  if (part.trim() === supplierPart.trim()) return 'same';
  return floor.approvedByHand.get(supplierPart.trim())?.includes(part.trim()) ? 'already' : null;
}

/** Where a feeder is now: on a slot of a line, or ready on a cart for one; the reel in it, null where it has no name. */
export interface FeederPlace {
  readonly line: string;
  readonly slot: string;
  /** Null on the line. */
  readonly cart: string | null;
  readonly part: string;
  readonly reel: string | null;
}

/** Where a feeder is, null where nobody put it anywhere. */
export function feederPlace(floor: FloorState, feeder: string): FeederPlace | null {
  for (const { feeder: there, line, slot, tapes } of floor.slots.values()) {
    if (there !== feeder) continue;
    const tape = tapes.at(-1);
    const reel = ownIdOf(tape?.reel);
    return { line, slot, cart: null, part: tape?.part ?? '', reel };
  }
  for (const places of floor.carts.values())
    for (const { cart, feeder: there, line, slot, part, reel } of places.values())
      if (there === feeder) return { line, slot, cart, part, reel };
  return null;
}

/** What stops fitting on the line where a loaded feeder becomes another. */
export interface FeederMisfit {
  readonly place: FeederPlace;
  /** Tape width that the setup of the slot wants, mm; null where the feeder still has it. */
  readonly wantsMm: number | null;
  /** Slots that it would reach into. */
  readonly neighbours: readonly string[];
}

/** What a loaded feeder would no longer fit if it were described so; null where nothing. */
export function feederMisfit(floor: FloorState, next: Feeder): FeederMisfit | null {
  const place = feederPlace(floor, next.feeder);
  if (!place || place.cart !== null) return null;
  const wanted = wantedOn(floor, floor.chosen.get(place.line) ?? '', place.slot);
  const width = wanted?.tapeWidthMm ?? null;
  const wantsMm = width === null || width === next.tapeWidthMm ? null : width;
  const changed = { ...floor, feeders: new Map(floor.feeders).set(next.feeder, next) };
  const clashes = setupFaults(loadedFeeders(changed, place.line), 'loaded').filter(
    (fault) => fault.slot === place.slot || fault.with?.slot === place.slot,
  );
  const neighbours = clashes.flatMap((fault) =>
    [fault.slot, fault.with?.slot].filter((slot) => slot !== undefined && slot !== place.slot),
  ) as string[]; // just filtered
  return wantsMm === null && neighbours.length === 0 ? null : { place, wantsMm, neighbours };
}

/** Feeders of a list against those known: what is new, what changes, how many stay. */
export function compareFeeders(
  floor: FloorState,
  feeders: readonly Feeder[],
): { readonly fresh: readonly Feeder[]; readonly changed: readonly Feeder[]; readonly same: number } {
  const fresh: Feeder[] = [];
  const changed: Feeder[] = [];
  for (const feeder of feeders) {
    const there = floor.feeders.get(feeder.feeder);
    if (!there) fresh.push(feeder);
    else if (!isSameFeeder(there, feeder)) changed.push(feeder);
  }
  return { fresh, changed, same: feeders.length - fresh.length - changed.length };
}

function isSameFeeder(a: Feeder, b: Feeder): boolean {
  const pitches = (feeder: Feeder) => [...feeder.pitchesMm].sort((one, two) => one - two).join();
  return a.tapeWidthMm === b.tapeWidthMm && a.positions === b.positions && pitches(a) === pitches(b);
}

/** What is blocked, by kind. */
export const blockKinds = ['reel', 'lot', 'part'] as const;
export type BlockKind = (typeof blockKinds)[number];

/** What a block names, in words of its own fields. */
export function blockTarget(block: BlockFacts): { readonly kind: BlockKind; readonly value: string } {
  const kind = blockKinds.find((each) => block[each] !== null) ?? 'reel';
  return { kind, value: block[kind] ?? '' };
}

/** Slots that carry blocked material now, in walking order. */
export function blockedSlots(floor: FloorState, block: BlockFacts): readonly string[] {
  const under = [...floor.slots.values()].filter((slot) =>
    slot.tapes.some((tape) => isUnderBlock(floor, block, tape)),
  );
  return under.map(({ slot }) => slot).sort(compareSlots);
}

/** What keeps a block from being written; null = nothing. */
export type BlockObstacle = 'valueMissing' | 'reasonMissing' | 'already';

export function blockObstacle(
  floor: FloorState,
  kind: BlockKind,
  texts: { readonly value: string; readonly reason: string },
): BlockObstacle | null {
  const value = texts.value.trim();
  if (value === '') return 'valueMissing';
  if ([...floor.blocks.values()].some((block) => block[kind] === value)) return 'already';
  return texts.reason.trim() === '' ? 'reasonMissing' : null;
}
