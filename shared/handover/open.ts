// What is open on a line at a moment? Holds, blocked reels, panels held, tablets that disagree, silent stations, changeover, checklists, splices
// and ends of floor life that come soon, slots whose parts nobody knows.
// Method: one list in the order of `handedKinds`, within a kind the soonest first, cut at what one entry holds; what is cut off is counted.

import { blockedTapes } from '../floor/blocks.ts';
import { changeInConflict } from '../floor/dropped-change.ts';
import { isHeld, stillHeld } from '../floor/fold-contain.ts';
import { type HandedItem, handedKinds, mostHanded } from '../floor/kinds-handover.ts';
import { standingAt } from '../floor/lanes.ts';
import { isListOpen } from '../floor/over-change.ts';
import { kindOnSlot, moreBy } from '../floor/packs.ts';
import { type FloorState, type SlotState, slotKey } from '../floor/state.ts';
import type { Handed } from '../floor/state-handover.ts';
import { silentSince } from '../floor/told-states.ts';
import { wantedOn } from '../floor/wanted.ts';
import { compareText } from '../log/order.ts';
import { moistureOfSlot, reelLife } from '../moisture/reel-life.ts';
import { dueSlots, type Outlook } from '../outlook/line.ts';

/** Splices are listed that are due within this time: what nobody has begun before the next shift stands at the line. Made up: no source has a figure. */
const SPLICE_AHEAD_MS = 3_600_000;
/** Floor lives are listed that end within this time: about a shift. Made up: no source has a figure. */
const LIFE_AHEAD_MS = 8 * 3_600_000;

/** When a line is looked at, and its forecast then: null where nothing is being built. Moments in ms since 1970. */
export interface OpenAsked {
  readonly line: string;
  readonly nowMs: number;
  readonly outlook: Outlook | null;
}

/** What is open, and how far the list looks ahead. */
export interface OpenList {
  readonly items: readonly HandedItem[];
  /** Open things that the list has no room for. */
  readonly more: number;
  readonly spliceMs: number | null;
  readonly lifeMs: number;
}

const blank = { slot: null, reel: null, part: null, sinceMs: null, dueMs: null, count: null, why: null };

/** Things that stand on a tape, which is the same on whichever slot its feeder stands. */
const ofTapes: ReadonlySet<HandedItem['what']> = new Set(['blocked', 'splice', 'floor-life']);

/** What names a thing on the list: the same thing has the same key at any moment. */
export function handedKey({
  what,
  of,
  slot,
  reel,
}: Pick<HandedItem, 'what' | 'of' | 'slot' | 'reel'>): string {
  return `${what} ${of} ${(ofTapes.has(what) ? reel : slot) ?? ''}`;
}

/** What the last handover listed, how much more was open then, and what that rested on. */
export type Listed = Pick<Handed, 'more' | 'known'> & { readonly left: readonly HandedItem[] };

/**
 * All that is open on a line. `handed`: what it listed is left out, and what stood open then beyond what it has room for. What that tablet had
 * not heard of is told, however old it is. Cost: the line's slots and what stands open.
 */
export function openNow(floor: FloorState, asked: OpenAsked, handed: Listed | null = null): OpenList {
  const { outlook, nowMs } = asked;
  const lifeMs = nowMs + LIFE_AHEAD_MS;
  const spliceMs = outlook === null ? null : nowMs + SPLICE_AHEAD_MS;
  const listed = new Set((handed?.left ?? []).map(handedKey));
  const all = [
    ...holds(floor, asked),
    ...blocked(floor, asked),
    ...panelsHeld(floor, asked),
    ...conflicts(floor, asked),
    ...silent(floor, asked),
    ...changing(floor, asked),
    ...(outlook === null ? [] : supply(outlook, nowMs + SPLICE_AHEAD_MS)),
    ...lives(floor, asked, lifeMs),
  ].filter((item) => !listed.has(handedKey(item)) && !(handed && wasBeyond(floor, asked.line, handed, item)));
  const first = ({ dueMs, sinceMs }: HandedItem) => dueMs ?? sinceMs ?? 0;
  all.sort(
    (a, b) =>
      handedKinds.indexOf(a.what) - handedKinds.indexOf(b.what) ||
      first(a) - first(b) ||
      compareText(handedKey(a), handedKey(b)),
  );
  const items = all.slice(0, mostHanded);
  return { items, more: all.length - items.length, spliceMs, lifeMs };
}

/** True for a thing that was open at a handover whose list had no room for it: what sorts before the last one listed would stand there. */
function wasBeyond(
  floor: FloorState,
  line: string,
  { left, more, known }: Listed,
  item: HandedItem,
): boolean {
  const last = left.at(-1);
  if (more === 0 || last === undefined) return false;
  const behind = handedKinds.indexOf(item.what) - handedKinds.indexOf(last.what);
  if (behind < 0) return false;
  const { sinceMs, dueMs } = item;
  if (sinceMs !== null) return sinceMs <= known.atMs && (behind > 0 || sinceMs >= (last.sinceMs ?? 0));
  const there = floor.slots.get(slotKey(line, item.slot ?? ''));
  if (there === undefined) return false;
  if (item.what === 'count-unknown') return known.spliceMs !== null && there.atMs <= known.atMs;
  const untilMs = item.what === 'splice' ? known.spliceMs : known.lifeMs;
  const tape = there.tapes.find(({ entry, reel }) => entry === item.of && reel === item.reel);
  const isDueThen = untilMs !== null && dueMs !== null && dueMs <= untilMs;
  return isDueThen && tape !== undefined && tape.atMs <= known.atMs;
}

function holds(floor: FloorState, { line }: OpenAsked): readonly HandedItem[] {
  return [...floor.holds.values()].flatMap(({ entry, facts, atMs, reasons }): HandedItem[] =>
    facts.line === line
      ? [
          {
            ...blank,
            what: 'hold',
            of: entry,
            slot: facts.slot,
            reel: facts.reel,
            part: facts.part ?? facts.supplierPart,
            sinceMs: atMs,
            why: reasons[0]?.code ?? null,
          },
        ]
      : [],
  );
}

function blocked(floor: FloorState, { line }: OpenAsked): readonly HandedItem[] {
  return blockedTapes(floor, line).map(
    ({ slot, tape, block }): HandedItem => ({
      ...blank,
      what: 'blocked',
      of: block.block,
      slot,
      reel: tape.reel,
      part: tape.part,
      sinceMs: block.atMs,
      why: block.reason,
    }),
  );
}

/** Panels held belong to the line of their runs. */
function panelsHeld(floor: FloorState, { line }: OpenAsked): readonly HandedItem[] {
  return [...floor.contained.values()].flatMap((each): HandedItem[] =>
    isHeld(each) && (each.line === line || each.runs.some((run) => run.line === line))
      ? [
          {
            ...blank,
            what: 'panels-held',
            of: each.containment,
            slot: each.slot,
            sinceMs: each.atMs,
            count: stillHeld(each).length,
          },
        ]
      : [],
  );
}

function conflicts(floor: FloorState, { line }: OpenAsked): readonly HandedItem[] {
  return [...floor.conflicts.values()].flatMap((told): HandedItem[] => {
    const { conflict: of, lines, slots, reel, atMs: sinceMs } = told;
    const at = lines.indexOf(line);
    const why = changeInConflict(floor, told)?.product ?? null;
    return at < 0 ? [] : [{ ...blank, what: 'conflict', of, slot: slots[at] ?? null, reel, sinceMs, why }];
  });
}

function silent(floor: FloorState, { line, nowMs }: OpenAsked): readonly HandedItem[] {
  return [...floor.stations.values()].flatMap((station): HandedItem[] => {
    const sinceMs = station.line === line ? silentSince(station, nowMs) : null;
    const why = station.name ?? station.station;
    return sinceMs === null ? [] : [{ ...blank, what: 'station-silent', of: station.station, sinceMs, why }];
  });
}

function changing(floor: FloorState, { line, nowMs }: OpenAsked): readonly HandedItem[] {
  const changeover = floor.changeovers.get(floor.changing.get(line) ?? '');
  const lists = [...floor.checklists.values()].flatMap((each): HandedItem[] =>
    each.line === line && isListOpen(floor, each, nowMs)
      ? [
          {
            ...blank,
            what: 'checklist',
            of: each.checklist,
            slot: each.slot,
            sinceMs: each.openedMs,
            count: each.answers.size,
            why: each.template,
          },
        ]
      : [],
  );
  if (!changeover) return lists;
  const { changeover: of, beganMs: sinceMs, product: why } = changeover;
  return [{ ...blank, what: 'changeover', of, sinceMs, why }, ...lists];
}

function supply(outlook: Outlook, untilMs: number): readonly HandedItem[] {
  const due = dueSlots(outlook).flatMap(({ slot, wanted, loaded, forecast, need }): HandedItem[] => {
    const dueMs = forecast.windowMs?.closes ?? forecast.runOutMs.early;
    if (dueMs > untilMs) return [];
    const reel = loaded.tapes.at(-1)?.reel ?? null;
    const more = moreBy(kindOnSlot(loaded));
    const due = {
      slot,
      reel,
      part: wanted.part,
      dueMs: Math.max(0, dueMs),
      why: more === 'splice' ? null : more,
    };
    return [{ ...blank, what: 'splice', of: need, ...due }];
  });
  const { line } = outlook;
  const unknown = outlook.unknown.map(
    (slot): HandedItem => ({ ...blank, what: 'count-unknown', of: line, slot }),
  );
  return [...due, ...unknown];
}

function lives(floor: FloorState, { line, nowMs }: OpenAsked, untilMs: number): readonly HandedItem[] {
  return standingAt(floor, line).flatMap((there) => livesOn(floor, there, { nowMs, untilMs }));
}

function livesOn(
  floor: FloorState,
  { line, slot, tapes }: SlotState,
  { nowMs, untilMs }: { readonly nowMs: number; readonly untilMs: number },
): readonly HandedItem[] {
  return tapes.flatMap((tape): HandedItem[] => {
    const part = moistureOfSlot(floor, wantedOn(floor, tape.setup, slot), tape.part);
    const life = reelLife(floor, tape.reel, { line, part, openedMs: tape.atMs, nowMs });
    if (life === null || life.endsByMs === null || life.endsByMs > untilMs) return [];
    const { reel, part: named, entry } = tape;
    const dueMs = Math.max(0, life.endsByMs);
    return [{ ...blank, what: 'floor-life', of: entry, slot, reel, part: named, dueMs }];
  });
}
