// Which slot for each part of one board on a line that stands and builds other boards too?
// Method: a part stays where it stands; else it goes where another setup of the line has it; the rest is placed by the search for places (assign.ts) on
// positions that neither a feeder on the line nor another setup wants, as long as there are such. Where room is short, what is wanted least is given up
// first. What the search placed is then arranged (arrange.ts). Tapes and trays are placed one after the other, each on its own banks. Refused: to move other products' parts, which somebody labelled and loads by.

import type { Line } from '../floor/state.ts';
import { arrange, type Ground } from './arrange.ts';
import { type AssignFailure, type Assignment, assignSlots } from './assign.ts';
import type { SeenPart } from './look-alikes.ts';
import { collide, type LinePlaces, linePlaces, positionsOfKind, takenKeys } from './places.ts';
import type { AssignQuestion } from './problem.ts';

/** A part of the board. `width`: positions that its feeder takes, whole, >= 1. `said`: the slot that a person gave it. */
export interface WantedPart {
  readonly part: string;
  readonly width: number;
  readonly perPanel: number;
  readonly said?: string;
  /** It comes on trays: it stands in banks that hold trays, where the line has some. */
  readonly isOnTray?: boolean;
  /** As the files write them, so that one value in two sizes is kept apart. */
  readonly value?: string;
  readonly package?: string;
}

/** A feeder on the line, or one that a setup of the line wants; `width` in positions. */
export interface PlacedPart {
  readonly slot: string;
  readonly part: string;
  readonly width: number;
}

/** What is asked. */
export interface ProposalQuestion {
  readonly line: Pick<Line, 'machines'>;
  readonly parts: readonly WantedPart[];
  /** What stands on the line now. */
  readonly standing: readonly PlacedPart[];
  /** What other setups of the line want, those that count most first. */
  readonly elsewhere: readonly PlacedPart[];
}

/** Why a part has no slot: its feeder is wider than any bank, or the line is full. */
export type NoSlotReason = 'too-wide' | 'no-room';

/** A part with the slot proposed for it; one of `slot` and `reason` is null. */
export interface ProposedPart {
  readonly part: string;
  readonly slot: string | null;
  readonly reason: NoSlotReason | null;
}

/** A part however its letters are written. */
export const keyOf = (part: string): string => part.toUpperCase();

/** A part whose slot is known; `isFixed`: the search may not move it, since a person said it or it is no whole position of a bank. */
interface SettledPart {
  readonly slot: string;
  readonly keys: readonly string[];
  readonly isFixed: boolean;
}

/** What is settled before any search: what a person said, what stands, what other setups have. */
export function settleFirst(question: ProposalQuestion, places: LinePlaces) {
  const settled = new Map<string, SettledPart>();
  const take = (wanted: WantedPart, slot: string, isSaid = false) => {
    const keys = takenKeys(places, slot, wanted.width);
    const at = places.find(slot);
    const last = at === null ? 0 : (places.line.machines[at.machine]?.banks[at.bank]?.positions ?? 0);
    if (at !== null && at.lane === null && at.position + wanted.width - 1 > last) return;
    if ([...settled.values()].some((other) => collide(other.keys, keys))) return;
    settled.set(keyOf(wanted.part), { slot, keys, isFixed: isSaid || at === null || at.lane !== null });
  };
  for (const wanted of question.parts) if (wanted.said !== undefined) take(wanted, wanted.said, true);
  for (const known of [question.standing, question.elsewhere]) {
    const slotsByPart = new Map<string, string[]>();
    for (const { part, slot } of known) {
      const slots = slotsByPart.get(keyOf(part)) ?? [];
      slots.push(slot);
      slotsByPart.set(keyOf(part), slots);
    }
    for (const wanted of question.parts) {
      for (const slot of slotsByPart.get(keyOf(wanted.part)) ?? [])
        if (!settled.has(keyOf(wanted.part))) take(wanted, slot);
    }
  }
  return settled;
}

type Settled = ReturnType<typeof settleFirst>;

/** Feeders that rather stay where they are: those that stand and another setup wants, then what other setups want, then the rest. */
export function keepOut(question: ProposalQuestion, places: LinePlaces, settled: Settled) {
  const needed = new Set(question.parts.map(({ part }) => keyOf(part)));
  const foreign = (known: readonly PlacedPart[]) => known.filter(({ part }) => !needed.has(keyOf(part)));
  const elsewhere = foreign(question.elsewhere);
  const wanted = new Set(elsewhere.map(({ part, slot }) => `${keyOf(part)} ${slot}`));
  const standing = foreign(question.standing);
  const isWanted = ({ part, slot }: PlacedPart) => wanted.has(`${keyOf(part)} ${slot}`);
  const taken = [...settled.values()].flatMap(({ keys }) => keys);
  const ordered = [...standing.filter(isWanted), ...elsewhere, ...standing.filter((each) => !isWanted(each))];
  return ordered
    .map(({ slot, width }) => takenKeys(places, slot, width))
    .filter((keys) => !collide(keys, taken));
}

/** The line without some positions, each run of free ones a bank of its own; and the way back from its names to the plant's. */
export function freeLine(places: LinePlaces, blocked: ReadonlySet<string>) {
  const back = new Map<string, { machine: number; bank: number; first: number }>();
  const machines = places.line.machines.map(({ banks }, m) => {
    const runs: { bank: string; positions: number }[] = [];
    for (const [b, { positions }] of banks.entries()) {
      let run = 0;
      for (let position = 1; position <= positions + 1; position++) {
        if (position <= positions && !blocked.has(`${m}/${b}/${position}`)) run++;
        else if (run > 0) {
          const bank = `B${runs.length + 1}`;
          back.set(`M${m + 1}-${bank}`, { machine: m, bank: b, first: position - run });
          runs.push({ bank, positions: run });
          run = 0;
        }
      }
    }
    return { machine: `M${m + 1}`, banks: runs };
  });
  return { line: { machines }, back };
}

interface Search {
  readonly places: LinePlaces;
  readonly settled: Settled;
  readonly parts: readonly WantedPart[];
  /** Positions of banks that hold the other kind, trays or feeders. */
  readonly closed: readonly string[];
}

/** Asks the search with these feeders kept out of it. */
function searchWith(
  { places, settled, parts, closed }: Search,
  out: readonly (readonly string[])[],
): Found | AssignFailure {
  const blocked = new Set([...closed, ...out.flat()]);
  const asked = new Set(parts.map(({ part }) => keyOf(part)));
  const shut = new Set(closed);
  const isStill = (part: string, { keys, isFixed }: SettledPart) =>
    isFixed || !asked.has(part) || keys.some((key) => shut.has(key));
  for (const [part, settledPart] of settled) {
    if (!isStill(part, settledPart)) continue;
    const isLane = (places.find(settledPart.slot)?.lane ?? null) !== null;
    // Nothing else may stand at a lane's position.
    for (const key of settledPart.keys) blocked.add(isLane ? key.slice(0, key.lastIndexOf('/')) : key);
  }
  const { line, back } = freeLine(places, blocked);
  const inner = innerSlots(back, places);
  const open = parts.filter(({ part }) => {
    const there = settled.get(keyOf(part));
    return there === undefined || !isStill(keyOf(part), there);
  });
  const loaded = open.flatMap(({ part, width }) => {
    const slot = inner(settled.get(keyOf(part))?.slot ?? null);
    return slot === null ? [] : [{ slot, part, width }];
  });
  const jobs: AssignQuestion['jobs'] = [
    { id: 'board', parts: open.map(({ part, width, perPanel }) => ({ part, width, perPanel })) },
  ];
  const answer = assignSlots({ line, loaded, jobs });
  return answer.ok ? { slots: outerSlots(answer.value, places, back), blocked } : answer.error;
}

/** Slots by part in capitals, and the positions that the search kept out of. */
interface Found {
  readonly slots: ReadonlyMap<string, string>;
  readonly blocked: ReadonlySet<string>;
}

type Back = ReturnType<typeof freeLine>['back'];

/** A plant's slot in the names of the search; null for what the search knows nothing of. */
export function innerSlots(back: Back, places: LinePlaces) {
  const runs = [...back].sort(([, a], [, b]) => b.first - a.first);
  return (slot: string | null): string | null => {
    const at = slot === null ? null : places.find(slot);
    if (at === null || at.lane !== null) return null;
    const run = runs.find(
      ([, { machine, bank, first }]) => machine === at.machine && bank === at.bank && first <= at.position,
    );
    return run === undefined ? null : `${run[0]}-${String(at.position - run[1].first + 1).padStart(3, '0')}`;
  };
}

/** The slots of one job of an answer, as the plant writes them, by part in capitals. */
export function outerSlots(
  answer: Assignment,
  places: LinePlaces,
  back: Back,
  job = 0,
): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { slot, part } of answer.jobs[job]?.slots ?? []) {
    const end = slot.lastIndexOf('-');
    const run = back.get(slot.slice(0, end));
    if (run === undefined) continue;
    const position = run.first + Number(slot.slice(end + 1)) - 1;
    found.set(keyOf(part), places.write(run.machine, run.bank, position));
  }
  return found;
}

const isFound = (answer: ReturnType<typeof searchWith>): answer is Found => 'slots' in answer;

/** The most that can be kept out of the search so that all parts still have a place; null where they have none even with nothing kept out. */
function roomiest(search: Search, out: readonly (readonly string[])[]): Found | null {
  const all = searchWith(search, out);
  if (isFound(all)) return all;
  const none = searchWith(search, []);
  if (!isFound(none)) return null;
  let best: Found = none;
  let [fits, fails] = [0, out.length];
  while (fails - fits > 1) {
    const middle = Math.floor((fits + fails) / 2);
    const answer = searchWith(search, out.slice(0, middle));
    if (isFound(answer)) [best, fits] = [answer, middle];
    else fails = middle;
  }
  return best;
}

/** The parts that fit: without as few as possible of those that nothing settles, widest first, of equal ones the least used. */
function fitting(search: Search): readonly WantedPart[] {
  const isSettled = ({ part }: WantedPart) => search.settled.has(keyOf(part));
  const open = search.parts
    .filter((each) => !isSettled(each))
    .sort((a, b) => a.width - b.width || b.perPanel - a.perPanel);
  const settled = search.parts.filter(isSettled);
  let [fits, fails] = [0, open.length];
  while (fails - fits > 1) {
    const middle = Math.floor((fits + fails) / 2);
    const parts = [...settled, ...open.slice(0, middle)];
    if (isFound(searchWith({ ...search, parts }, []))) fits = middle;
    else fails = middle;
  }
  return [...settled, ...open.slice(0, fits)];
}

/** What stays where it is beside the feeders that are arranged: by position, with its part where that is known. */
function groundFor(
  question: ProposalQuestion,
  { places, settled, closed }: Search,
  found: { readonly blocked: ReadonlySet<string>; readonly moved: readonly WantedPart[] },
): Ground {
  const isMoved = new Set(found.moved.map(({ part }) => keyOf(part)));
  const about = new Map(question.parts.map((each) => [keyOf(each.part), each]));
  const taken = new Map<string, SeenPart | null>([...closed, ...found.blocked].map((key) => [key, null]));
  const stand = (slot: string, width: number, part: SeenPart) => {
    for (const key of takenKeys(places, slot, width)) if (taken.has(key)) taken.set(key, part);
  };
  for (const { slot, part, width } of [...question.elsewhere, ...question.standing])
    stand(slot, width, { part });
  const load = places.line.machines.map(() => 0);
  for (const [key, { slot, keys }] of settled) {
    const part = about.get(key);
    if (part === undefined || isMoved.has(key)) continue;
    for (const each of keys) taken.set(each, part);
    const machine = places.find(slot)?.machine;
    if (machine !== undefined) load[machine] = (load[machine] ?? 0) + part.perPanel;
  }
  return {
    banks: places.line.machines.map(({ banks }) => banks.map(({ positions }) => positions)),
    taken,
    load,
  };
}

/** The slots of a search with its new feeders arranged. */
function arranged(question: ProposalQuestion, search: Search, found: Found): ReadonlyMap<string, string> {
  const { places, settled } = search;
  const moved = search.parts.filter(({ part }) => {
    const slot = found.slots.get(keyOf(part));
    return slot !== undefined && slot !== settled.get(keyOf(part))?.slot;
  });
  const movable = moved.flatMap((each) => {
    const spot = places.find(found.slots.get(keyOf(each.part)) ?? '');
    return spot === null ? [] : [{ ...each, spot }];
  });
  const slots = new Map(found.slots);
  for (const { part, spot } of arrange(movable, groundFor(question, search, { ...found, moved })))
    slots.set(keyOf(part), places.write(spot.machine, spot.bank, spot.position));
  return slots;
}

/** Proposes a slot for each part of a board, in the order of the parts. Deterministic; never fails: a part without a slot says why. It is a proposal for feeders, not a placement program. */
export function proposeSlots(question: ProposalQuestion): readonly ProposedPart[] {
  const texts = [...question.standing, ...question.elsewhere].map(({ slot }) => slot);
  const places = linePlaces(question.line, texts);
  const settled = settleFirst(question, places);
  const out = keepOut(question, places, settled);
  const banks = question.line.machines.flatMap((machine) => machine.banks);
  const hasTrays = banks.some(({ holds, positions }) => holds === 'trays' && positions > 0);
  const proposed = new Map<string, ProposedPart>();
  for (const isOnTray of hasTrays ? [false, true] : [false]) {
    const parts = question.parts.filter((each) => !hasTrays || (each.isOnTray ?? false) === isOnTray);
    const longest = Math.max(
      0,
      ...banks.filter(({ holds }) => (holds === 'trays') === isOnTray).map(({ positions }) => positions),
    );
    const narrow = parts.filter(({ part, width }) => width <= longest || settled.has(keyOf(part)));
    const closed = hasTrays ? positionsOfKind(places, !isOnTray) : [];
    const whole: Search = { places, settled, parts: narrow, closed };
    const fewer = () => ({ ...whole, parts: fitting(whole) });
    const found = roomiest(whole, out) ?? roomiest(fewer(), out);
    const slots = found === null ? new Map<string, string>() : arranged(question, whole, found);
    const isNarrow = new Set(narrow.map(({ part }) => keyOf(part)));
    for (const { part } of parts) {
      const slot = slots.get(keyOf(part)) ?? settled.get(keyOf(part))?.slot ?? null;
      const reason = isNarrow.has(keyOf(part)) ? 'no-room' : 'too-wide';
      proposed.set(keyOf(part), { part, slot, reason: slot === null ? reason : null });
    }
  }
  return question.parts.flatMap(({ part }) => proposed.get(keyOf(part)) ?? []);
}
