// The places of a line as the plant writes them: which bank and position a slot's text means, and how a free position is written.
// Method: a text that the plant uses for a place is kept; another position of the bank is written like its neighbours, and read back to be sure that
// it means that place.

import { compareSlots, formatSlot, parseSlot, placeKey, positionsOf } from '../floor/address.ts';
import { NAMELESS, placeOnLine } from '../floor/place.ts';
import { slotLike, toldFirst } from '../floor/slot-ranges.ts';
import type { Line } from '../floor/state.ts';

/** A place on a line: the bank's number in the line's record, both from 0, and the position from 1. */
export interface KnownPlace {
  readonly machine: number;
  readonly bank: number;
  readonly position: number;
  readonly lane: string | null;
}

/** The places of one line. */
export interface LinePlaces {
  readonly line: Pick<Line, 'machines'>;
  /** Where a text stands; null = a place of its own, or none of this line. */
  readonly find: (slot: string) => KnownPlace | null;
  /** How the plant writes a whole position. */
  readonly write: (machine: number, bank: number, position: number) => string;
  /** Texts of lanes and of places of their own that the plant uses, in walking order. */
  readonly others: readonly string[];
}

function findOn(line: Pick<Line, 'machines'>, slot: string): KnownPlace | null {
  const at = placeOnLine(line, slot);
  const machine = line.machines.findIndex((each) => each.machine === at.machine);
  const bank = (line.machines[machine]?.banks ?? []).findIndex((each) => each.bank === at.bank);
  const last = line.machines[machine]?.banks[bank]?.positions ?? 0;
  if (at.position === null || at.position > last) return null;
  return { machine, bank, position: at.position, lane: at.lane };
}

function plainText(line: Pick<Line, 'machines'>, at: Omit<KnownPlace, 'lane'>): string {
  const machine = line.machines[at.machine];
  const bank = machine?.banks[at.bank]?.bank ?? NAMELESS;
  const named = (name: string) => (name === NAMELESS ? null : name);
  return formatSlot({
    machine: named(machine?.machine ?? NAMELESS),
    bank: named(bank),
    position: at.position,
  });
}

/** The places of a line. `texts`: slots as the plant writes them on this line, in setups and on the floor. Cost: linear in both. */
export function linePlaces(line: Pick<Line, 'machines'>, texts: readonly string[]): LinePlaces {
  const textByPlace = new Map<string, string>();
  const sampleByBank = new Map<string, string>();
  const others = new Map<string, string>();
  const bankOf = (at: Pick<KnownPlace, 'machine' | 'bank'>) => `${at.machine}/${at.bank}`;
  for (const text of [...toldFirst(line), ...texts]) {
    const at = findOn(line, text);
    if (at === null || at.lane !== null) {
      if (at !== null || parseSlot(text).position === null) others.set(placeKey(text), text);
      continue;
    }
    textByPlace.set(`${bankOf(at)}/${at.position}`, text);
    // The one with the fewest digits tells how numbers below it are written.
    const sample = sampleByBank.get(bankOf(at));
    if (sample === undefined || text.length < sample.length) sampleByBank.set(bankOf(at), text);
  }
  const write = (machine: number, bank: number, position: number): string => {
    const known = textByPlace.get(`${machine}/${bank}/${position}`);
    if (known !== undefined) return known;
    const sample = sampleByBank.get(`${machine}/${bank}`);
    const written = sample === undefined ? null : slotLike(sample, position);
    const back = written === null ? null : findOn(line, written);
    const isSame = back?.machine === machine && back.bank === bank && back.position === position;
    return written !== null && isSame && back?.lane === null
      ? written
      : plainText(line, { machine, bank, position });
  };
  return {
    line,
    write,
    find: (slot) => findOn(line, slot),
    others: [...others.values()].sort(compareSlots),
  };
}

/** What a feeder on a slot takes of the line, as keys: a lane also names its position, so that a whole feeder there is in its way. */
export function takenKeys(places: LinePlaces, slot: string, width: number): readonly string[] {
  const at = places.find(slot);
  if (at === null) return positionsOf(slot, 1);
  const bank = `${at.machine}/${at.bank}`;
  if (at.lane !== null) return [`${bank}/${at.position}/${at.lane}`];
  return Array.from({ length: width }, (_, step) => `${bank}/${at.position + step}`);
}

/** The key of the whole position that a key of `takenKeys` is of: a lane's without its lane. A place of its own is one, strokes in its text or not. */
export function positionKey(key: string): string {
  return key.endsWith('#') ? key : key.split('/').slice(0, 3).join('/');
}

/** Whether two feeders are in each other's way. */
export function collide(one: readonly string[], other: readonly string[]): boolean {
  // A lane's key goes on where its position's ends.
  return one.some((a) => other.some((b) => a === b || a.startsWith(`${b}/`) || b.startsWith(`${a}/`)));
}

/** Keys of the positions of all banks that hold trays, or of all others. */
export function positionsOfKind({ line }: LinePlaces, isOnTray: boolean): readonly string[] {
  return line.machines.flatMap(({ banks }, m) =>
    banks.flatMap(({ positions, holds }, b) =>
      (holds === 'trays') === isOnTray
        ? Array.from({ length: positions }, (_, at) => `${m}/${b}/${at + 1}`)
        : [],
    ),
  );
}
