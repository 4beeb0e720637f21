// From a board's parts to slots on a line: what is known of each part, where it stands, what was proposed, what a person said, and what that breaks.
// Pure: the floor, the board as it was read and the plan in hand go in; rows to show come out (board-slots.ts makes slots of them).

import { likeness, likenessTells } from '../../../../../shared/assign/look-alikes.ts';
import {
  collide,
  type LinePlaces,
  linePlaces,
  positionKey,
  takenKeys,
} from '../../../../../shared/assign/places.ts';
import type {
  NoSlotReason,
  PlacedPart,
  ProposalQuestion,
  ProposedPart,
} from '../../../../../shared/assign/propose.ts';
import { loadedFeeders } from '../../../../../shared/changeover/loaded.ts';
import { compareSlots, parseSlot, placeKey } from '../../../../../shared/floor/address.ts';
import type { SetupSlot } from '../../../../../shared/floor/kinds.ts';
import type { FloorState, Line, Setup } from '../../../../../shared/floor/state.ts';
import type { Side } from '../../../../../shared/floor/vocabulary.ts';
import type { BoardPart } from '../../../../../shared/sheet/board-parts.ts';
import {
  feederWidths,
  hasTrays,
  knownParts,
  type PartWidth,
  partKey,
  positionsOfPart,
  type SaidWidths,
  widthOfPart,
} from './part-width.ts';

/** The slots of a board as they are in hand, by part in capitals. */
export interface SlotPlan {
  readonly line: string;
  readonly side: Side;
  readonly slots: ReadonlyMap<string, string>;
  /** Parts whose slot a person gave; a new proposal leaves them there. */
  readonly said: ReadonlySet<string>;
  /** Parts that a person left out: not placed by this line. */
  readonly left: ReadonlySet<string>;
  /** Why the proposal has no slot for a part. */
  readonly reasons: ReadonlyMap<string, NoSlotReason>;
}

/** What is wrong with a slot; the first four keep the setup out. */
export type SlotFault =
  | { readonly code: 'overlap'; readonly part: string; readonly slot: string }
  | { readonly code: 'over-end'; readonly positions: number }
  | { readonly code: 'off-line' }
  | { readonly code: 'lane-wide'; readonly positions: number }
  | { readonly code: 'lane-width'; readonly part: string; readonly slot: string }
  /** A feeder where trays stand; a tray where feeders stand, on a line that has places for trays. */
  | { readonly code: 'on-trays' | 'no-tray' }
  /** A part easily taken for the one beside it. */
  | { readonly code: 'look-alike'; readonly part: string; readonly slot: string };

/** One part of the board on its way to a slot. */
export interface SlotRow extends PartWidth {
  /** As the plant's setups write it, where one of them names it; else as the files do. */
  readonly part: string;
  readonly board: BoardPart;
  readonly perPanel: number;
  /** Positions that its feeder takes. */
  readonly positions: number;
  readonly slot: string | null;
  readonly isSaid: boolean;
  readonly isLeft: boolean;
  readonly reason: NoSlotReason | null;
  /** Where the part stands on the line now. */
  readonly standsOn: string | null;
  /** Another product of the line that has the part on this very slot. */
  readonly asIn: string | null;
  readonly faults: readonly SlotFault[];
  /** The newest setup slot that names the part, on any line. */
  readonly known: SetupSlot | null;
}

/** What a list of rows is made of. */
export interface BoardContext {
  readonly floor: FloorState;
  readonly line: string;
  readonly side: Side;
  /** The product in hand: an earlier revision of it counts before other products. */
  readonly product: string;
  readonly widths: SaidWidths;
  readonly plan: SlotPlan | null;
}

/** Lines with at least one position: slots can be found on no other. */
export function linesWithSlots(floor: FloorState): readonly Line[] {
  return [...floor.lines.values()].filter(({ machines }) =>
    machines.some(({ banks }) => banks.some(({ positions }) => positions > 0)),
  );
}

/** Setups of a line that are built now or next: the chosen one, then those of its kept order of jobs. */
function setupsInHand(floor: FloorState, line: string): readonly Setup[] {
  const jobs = floor.plans.get(line)?.jobs.map(({ setup }) => setup) ?? [];
  return [floor.chosen.get(line) ?? '', ...jobs].flatMap((setup) => floor.setups.get(setup) ?? []);
}

/**
 * One revision of each product and side on a line: the product in hand first, then the jobs in hand in their order, in the revision that is to be
 * built, then the newest of all others. What counts first keeps its slots first, so that the jobs in hand have the fewest changes.
 */
export function setupsElsewhere(
  floor: FloorState,
  { line, product, side }: Pick<BoardContext, 'line' | 'product' | 'side'>,
): readonly Setup[] {
  const newest = [...floor.setups.values()]
    .filter((setup) => setup.line === line)
    .sort((a, b) => b.takenMs - a.takenMs);
  const isOwn = (setup: Setup) => partKey(setup.product) === partKey(product) && setup.side === side;
  const byProduct = new Map<string, Setup>();
  for (const setup of [...newest.filter(isOwn), ...setupsInHand(floor, line), ...newest]) {
    const key = `${partKey(setup.product)} ${setup.side}`;
    if (!byProduct.has(key)) byProduct.set(key, setup);
  }
  return [...byProduct.values()];
}

/** Feeders on the line and slots of its other setups, as a proposal wants them. */
export function placesOf(context: BoardContext): {
  readonly standing: readonly PlacedPart[];
  readonly elsewhere: readonly (PlacedPart & { readonly product: string })[];
} {
  const { floor, line } = context;
  return {
    standing: loadedFeeders(floor, line),
    elsewhere: setupsElsewhere(floor, context).flatMap(({ product, slots }) =>
      slots.map(({ slot, part, positions }) => ({ slot, part, width: positions, product })),
    ),
  };
}

/** The line's places as its setups and feeders write them. */
export function boardPlaces(context: BoardContext): LinePlaces | null {
  const known = context.floor.lines.get(context.line);
  if (known === undefined) return null;
  const { standing, elsewhere } = placesOf(context);
  return linePlaces(
    known,
    [...standing, ...elsewhere].map(({ slot }) => slot),
  );
}

/** The parts of one side with their slots as they are in hand, in the order of the files. */
export function slotRows(parts: readonly BoardPart[], context: BoardContext): readonly SlotRow[] {
  const { floor, side, widths, plan } = context;
  const known = knownParts(floor);
  const own = feederWidths(floor);
  const line = floor.lines.get(context.line);
  const trays = line !== undefined && hasTrays(line);
  const listed = new Map([...floor.listed.values()].map((each) => [partKey(each.part), each]));
  const { standing, elsewhere } = placesOf(context);
  const standsOn = new Map([...standing].reverse().map(({ part, slot }) => [partKey(part), slot]));
  const asIn = new Map(
    [...elsewhere]
      .reverse()
      .map(({ part, slot, product }) => [`${partKey(part)} ${placeKey(slot)}`, product]),
  );
  const rows = parts
    .filter((part) => part[side] > 0)
    .map((board): SlotRow => {
      const key = partKey(board.part);
      const said = widths.get(key);
      const there = known.get(key) ?? null;
      const width = widthOfPart(board, there, { said, trays, listed: listed.get(key) ?? null });
      const slot = plan?.slots.get(key) ?? null;
      return {
        ...width,
        board,
        part: there?.about.part ?? board.part,
        perPanel: board[side],
        positions: positionsOfPart(width, there, own),
        slot,
        isSaid: plan?.said.has(key) ?? false,
        isLeft: plan?.left.has(key) ?? false,
        reason: plan?.reasons.get(key) ?? null,
        standsOn: standsOn.get(key) ?? null,
        asIn: slot === null ? null : (asIn.get(`${key} ${placeKey(slot)}`) ?? null),
        faults: [],
        known: there?.about ?? null,
      };
    });
  const places = boardPlaces(context);
  return places === null ? rows : withFaults(rows, places);
}

/** What is wrong with each row's slot. Quadratic in rows that share a bank only, but for the question whether likeness tells anything here. */
function withFaults(rows: readonly SlotRow[], places: LinePlaces): readonly SlotRow[] {
  const placed = rows.flatMap((row) =>
    row.slot === null ? [] : [{ row, slot: row.slot, keys: takenKeys(places, row.slot, row.positions) }],
  );
  const byKey = new Map<string, (typeof placed)[number][]>();
  const tells = likenessTells(rows.map(seenPart));
  for (const each of placed)
    for (const key of each.keys) {
      const there = byKey.get(positionKey(key)) ?? [];
      there.push(each);
      byKey.set(positionKey(key), there);
    }
  const faultsOf = (mine: (typeof placed)[number]): readonly SlotFault[] => {
    const beside = new Set(mine.keys.flatMap((key) => byKey.get(positionKey(key)) ?? []));
    beside.delete(mine);
    const found: SlotFault[] = [...ownFaults(mine.row, mine.slot, places)];
    for (const other of beside) {
      const facts = { part: other.row.part, slot: other.slot };
      if (collide(mine.keys, other.keys)) found.push({ code: 'overlap', ...facts });
      else if (
        mine.row.widthMm !== null &&
        other.row.widthMm !== null &&
        mine.row.widthMm !== other.row.widthMm
      )
        found.push({ code: 'lane-width', ...facts });
    }
    const like = tells ? likeBefore(mine, places, byKey) : null;
    if (like !== null) found.push({ code: 'look-alike', part: like.row.part, slot: like.slot });
    return found;
  };
  const faults = new Map(placed.map((each) => [each.row, faultsOf(each)]));
  return rows.map((row) => ({ ...row, faults: faults.get(row) ?? [] }));
}

function ownFaults({ positions, isOnTray }: SlotRow, slot: string, places: LinePlaces): readonly SlotFault[] {
  const at = places.find(slot);
  // A place without a number is one of its own, and only the plant knows of it.
  if (at === null) return parseSlot(slot).position === null ? [] : [{ code: 'off-line' }];
  if (at.lane !== null) return positions > 1 ? [{ code: 'lane-wide', positions }] : [];
  const bank = places.line.machines[at.machine]?.banks[at.bank];
  const found: SlotFault[] = [];
  if (at.position + positions - 1 > (bank?.positions ?? 0)) found.push({ code: 'over-end', positions });
  if (bank?.holds === 'trays' && !isOnTray) found.push({ code: 'on-trays' });
  if (bank?.holds !== 'trays' && isOnTray && hasTrays(places.line)) found.push({ code: 'no-tray' });
  return found;
}

interface PlacedRow {
  readonly row: SlotRow;
  readonly slot: string;
}

const seenPart = ({ part, board }: SlotRow) => ({ part, value: board.value, package: board.package });

/** A part on the place before this one that is easily taken for it; told on one of the two. */
function likeBefore(
  { row, slot }: PlacedRow,
  places: LinePlaces,
  byKey: ReadonlyMap<string, readonly PlacedRow[]>,
): PlacedRow | null {
  const at = places.find(slot);
  if (at === null) return null;
  const before = byKey.get(`${at.machine}/${at.bank}/${at.position - 1}`) ?? [];
  return before.find((other) => likeness(seenPart(row), seenPart(other.row)) > 0) ?? null;
}

const blocking: readonly SlotFault['code'][] = ['overlap', 'over-end', 'off-line', 'lane-wide'];

/** Whether a fault keeps the setup from being taken in. */
export const isBlocking = ({ code }: SlotFault) => blocking.includes(code);

/** The question for a proposal: what a person said or left out stands. */
export function proposalQuestion(rows: readonly SlotRow[], context: BoardContext): ProposalQuestion | null {
  const line = context.floor.lines.get(context.line);
  if (line === undefined) return null;
  const { standing, elsewhere } = placesOf(context);
  return {
    line: { machines: line.machines },
    parts: rows
      .filter(({ isLeft }) => !isLeft)
      .map((row) => {
        const { positions: width, perPanel, slot, isSaid, isOnTray } = row;
        const wanted = { ...seenPart(row), width, perPanel, isOnTray };
        return isSaid && slot !== null ? { ...wanted, said: slot } : wanted;
      }),
    standing,
    elsewhere: elsewhere.map(({ slot, part, width }) => ({ slot, part, width })),
  };
}

/** A proposal as a plan; what a person said or left out before stands. */
export function planOf(proposed: readonly ProposedPart[], context: BoardContext): SlotPlan {
  const { plan, line, side } = context;
  const said = new Set([...(plan?.said ?? [])].filter((key) => plan?.slots.has(key)));
  const slots = new Map([...(plan?.slots ?? [])].filter(([key]) => said.has(key)));
  const reasons = new Map<string, NoSlotReason>();
  for (const { part, slot, reason } of proposed) {
    if (slot !== null && !said.has(partKey(part))) slots.set(partKey(part), slot);
    if (reason !== null) reasons.set(partKey(part), reason);
  }
  return { line, side, slots, said, reasons, left: plan?.left ?? new Set() };
}

/** Gives a part another slot; a part that stands on it takes the one that becomes free. */
export function moveTo(plan: SlotPlan, part: string, slot: string): SlotPlan {
  const key = partKey(part);
  const slots = new Map(plan.slots);
  const said = new Set(plan.said).add(key);
  const before = slots.get(key);
  const other = [...slots].find(([each, at]) => each !== key && placeKey(at) === placeKey(slot))?.[0];
  slots.set(key, slot);
  if (other !== undefined) {
    said.add(other);
    if (before === undefined) slots.delete(other);
    else slots.set(other, before);
  }
  const left = new Set(plan.left);
  left.delete(key);
  return { ...plan, slots, said, left };
}

/** Leaves a part out of the setup: this line does not place it. Or takes it in again, without a slot. */
export function leaveOut(plan: SlotPlan, part: string, isLeft: boolean): SlotPlan {
  const key = partKey(part);
  const slots = new Map(plan.slots);
  slots.delete(key);
  const said = new Set(plan.said);
  said.delete(key);
  const left = new Set(plan.left);
  if (isLeft) left.add(key);
  else left.delete(key);
  return { ...plan, slots, said, left };
}

/** Why a part is where it is. */
export type SlotWhy = 'stays' | 'moves' | 'new';

/** Whether its feeder stays, comes from another slot of the line, or is put in. */
export function whyOf({ slot, standsOn }: SlotRow): SlotWhy {
  if (standsOn === null) return 'new';
  return slot !== null && placeKey(slot) === placeKey(standsOn) ? 'stays' : 'moves';
}

/** What a plan is against the line of today, in feeders. */
export interface PlanCount {
  readonly stays: number;
  readonly moves: number;
  readonly fresh: number;
  /** Parts without a slot that nobody left out. */
  readonly open: number;
  readonly left: number;
  readonly faulty: number;
}

/** Counts the rows. */
export function countRows(rows: readonly SlotRow[]): PlanCount {
  const placed = rows.filter(({ slot, isLeft }) => slot !== null && !isLeft);
  const of = (why: SlotWhy) => placed.filter((row) => whyOf(row) === why).length;
  return {
    stays: of('stays'),
    moves: of('moves'),
    fresh: of('new'),
    open: rows.filter(({ slot, isLeft }) => slot === null && !isLeft).length,
    left: rows.filter(({ isLeft }) => isLeft).length,
    faulty: placed.filter(({ faults }) => faults.some(isBlocking)).length,
  };
}

/** Feeders on the line that the board does not need and that stand where its feeders go: they must come out. */
export function inTheWay(rows: readonly SlotRow[], context: BoardContext): readonly PlacedPart[] {
  const places = boardPlaces(context);
  if (places === null) return [];
  const needed = new Set(rows.map(({ part }) => partKey(part)));
  const taken = rows.flatMap(({ slot, positions }) =>
    slot === null ? [] : takenKeys(places, slot, positions),
  );
  return placesOf(context).standing.filter(
    ({ part, slot, width }) => !needed.has(partKey(part)) && collide(takenKeys(places, slot, width), taken),
  );
}

/** Rows with a slot in walking order, and those without. */
export function byWalk(rows: readonly SlotRow[]): {
  readonly placed: readonly (SlotRow & { readonly slot: string })[];
  readonly open: readonly SlotRow[];
} {
  const placed = rows.flatMap((row) => (row.slot === null || row.isLeft ? [] : [{ ...row, slot: row.slot }]));
  return {
    placed: placed.sort((a, b) => compareSlots(a.slot, b.slot)),
    open: rows.filter(({ slot, isLeft }) => slot === null || isLeft),
  };
}
