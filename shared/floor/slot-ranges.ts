// A line told by what stands on its machines: each bank by its first and its last slot, as they are written there. From that come
// the line's record and every slot's text. Method: the last number of the first slot's text is counted up with as many digits as it has;
// each text is read back, so that a place on the line and its text never part.

import { fail, ok, type Result } from '../kit/result.ts';
import { bankOf, compareNatural, parseSlot } from './address.ts';
import type { EntryOf } from './kinds.ts';
import { sharesSlots, standingAt } from './lanes.ts';
import { NAMELESS, placeOnLine } from './place.ts';
import type { FloorState, Line } from './state.ts';

type Machine = EntryOf<'line.defined'>['payload']['machines'][number];
type Bank = Machine['banks'][number];

/** A bank by the texts of its first and its last slot. */
export interface SlotRange {
  readonly first: string;
  readonly last: string;
  /** What stands there instead of feeders; absent: feeders. */
  readonly holds?: Bank['holds'];
}

/** A bank that a range tells; the names are null where the texts leave them out. */
export interface ToldBank {
  readonly machine: string | null;
  readonly bank: string | null;
  readonly positions: number;
  readonly first: string;
}

/** Positions that one bank may have. */
export const MOST_POSITIONS = 500;

/** Why a range tells no bank. */
export type RangeFault =
  /** Both texts must end in a number, without a lane. */
  | 'no-number'
  /** The texts differ before their number. */
  | 'differs'
  /** The first slot's number is not 1. */
  | 'not-from-one'
  /** The last number is below the first. */
  | 'backwards'
  | 'too-many';

/** A slot's text with its last number replaced, padded where the sample is. `position` >= 1. */
export function slotLike(sample: string, position: number): string {
  return sample.replace(/\d+(?=\D*$)/, (digits) =>
    digits.startsWith('0') ? String(position).padStart(digits.length, '0') : String(position),
  );
}

/** Reads what a range tells, or says the first thing that keeps it from telling a bank. */
export function readRange(range: SlotRange): Result<ToldBank, RangeFault> {
  const first = range.first.trim();
  const [from, to] = [parseSlot(first), parseSlot(range.last)];
  if (from.position === null || to.position === null || from.lane !== null || to.lane !== null)
    return fail('no-number');
  if (from.machine !== to.machine || from.bank !== to.bank) return fail('differs');
  if (from.position !== 1) return fail('not-from-one');
  if (to.position < from.position) return fail('backwards');
  if (to.position > MOST_POSITIONS) return fail('too-many');
  const back = parseSlot(slotLike(first, to.position));
  if (back.position !== to.position || back.machine !== to.machine || back.bank !== to.bank)
    return fail('differs');
  return ok({ machine: from.machine, bank: from.bank, positions: to.position, first });
}

/** Why ranges tell no line: which of them, from 0. `twice`: an earlier one tells the same bank. */
export interface RangesFault {
  readonly at: number;
  readonly code: RangeFault | 'twice';
}

/** The machines that ranges tell, in the order told. `bankName`: what people call a bank. Reports every range that is wrong. */
export function machinesOf(
  ranges: readonly SlotRange[],
  bankName: (bank: string) => string,
): Result<Machine[], readonly RangesFault[]> {
  const machines = new Map<string, Map<string, Bank>>();
  const faults: RangesFault[] = [];
  for (const [at, range] of ranges.entries()) {
    const told = readRange(range);
    if (!told.ok) {
      faults.push({ at, code: told.error });
      continue;
    }
    const machine = told.value.machine ?? NAMELESS;
    const bank = told.value.bank ?? NAMELESS;
    const banks = machines.get(machine) ?? new Map<string, Bank>();
    machines.set(machine, banks);
    if (banks.has(bank)) faults.push({ at, code: 'twice' });
    const { positions, first } = told.value;
    const made = { bank, name: bank === NAMELESS ? NAMELESS : bankName(bank), positions, first };
    banks.set(bank, range.holds === undefined ? made : { ...made, holds: range.holds });
  }
  if (faults.length > 0) return fail(faults);
  return ok(
    [...machines].map(([machine, banks]) => ({ machine, name: machine, banks: [...banks.values()] })),
  );
}

/** The text of a bank's first slot: as the plant told it, else the usual way. */
export function firstSlot({ machine }: Pick<Machine, 'machine'>, { bank, first }: Bank): string {
  if (first !== undefined) return first;
  return [machine, bank, '001'].filter((name) => name !== NAMELESS).join('-');
}

/** The ranges that a line's record tells. */
export function rangesOf({ machines }: Pick<Line, 'machines'>): readonly SlotRange[] {
  return machines.flatMap((machine) =>
    machine.banks
      .filter(({ positions }) => positions > 0)
      .map((bank) => {
        const first = firstSlot(machine, bank);
        const range = { first, last: slotLike(first, bank.positions) };
        return bank.holds === undefined ? range : { ...range, holds: bank.holds };
      }),
  );
}

/** Every slot that a line's banks tell by their first text; banks whose texts nobody told have none. */
export function toldSlots({ machines }: Pick<Line, 'machines'>): readonly string[] {
  return machines.flatMap(({ banks }) =>
    banks.flatMap(({ first, positions }) =>
      first === undefined ? [] : Array.from({ length: positions }, (_, step) => slotLike(first, step + 1)),
    ),
  );
}

/** The first slots that a line's banks tell. */
export function toldFirst({ machines }: Pick<Line, 'machines'>): readonly string[] {
  return machines.flatMap(({ banks }) => banks.flatMap(({ first }) => first ?? []));
}

/** Slots of a line as its setups want them, the chosen one first, and as they stand loaded; one may come several times. */
export function slotsInUse(
  floor: Pick<FloorState, 'setups' | 'chosen' | 'slots'>,
  line: string | null,
): readonly string[] {
  const chosen = floor.chosen.get(line ?? '');
  const wanted = [...floor.setups.values()]
    .filter((setup) => line !== null && sharesSlots(setup.line, line))
    .sort((a, b) => Number(b.setup === chosen) - Number(a.setup === chosen))
    .flatMap(({ slots }) => slots.map(({ slot }) => slot));
  const loaded = line === null ? [] : standingAt(floor, line).map(({ slot }) => slot);
  return [...wanted, ...loaded];
}

/** Slots among `used` that have no place on a line any more, in the order given. */
export function lostSlots(line: Pick<Line, 'machines'>, used: Iterable<string>): readonly string[] {
  return [...new Set(used)].filter((slot) => {
    const at = placeOnLine(line, slot);
    const bank = line.machines
      .find(({ machine }) => machine === at.machine)
      ?.banks.find((each) => each.bank === at.bank);
    return bank === undefined || (at.position ?? 0) > bank.positions;
  });
}

/** A word with its last number counted up; without one a 2 behind it. */
function countedUp(word: string): string {
  return /\d/.test(word)
    ? word.replace(/\d+(?=\D*$)/, (digits) => String(Number(digits) + 1).padStart(digits.length, '0'))
    : `${word}2`;
}

/** The ranges of the next machine: those of the last one told, with the number in its name counted up. Empty where no range is whole. */
export function nextMachine(ranges: readonly SlotRange[]): readonly SlotRange[] {
  const told = ranges.flatMap((range) => {
    const read = readRange(range);
    return read.ok && read.value.machine !== null ? [{ range, machine: read.value.machine }] : [];
  });
  const last = told
    .map(({ machine }) => machine)
    .sort(compareNatural)
    .at(-1);
  if (last === undefined) return [];
  const rename = (text: string) => {
    const trimmed = text.trim();
    // The machine stands first in the text, however it is cut.
    return countedUp(trimmed.slice(0, last.length)) + trimmed.slice(last.length);
  };
  return told
    .filter(({ machine }) => machine === last)
    .map(({ range }) => ({ ...range, first: rename(range.first), last: rename(range.last) }));
}

/** The rear bank of a front one as its machine would write it, or the other way round; null where the text names neither. */
export function otherBank({ first, last }: SlotRange): SlotRange | null {
  const told = readRange({ first, last });
  if (!told.ok || told.value.bank === null || !(told.value.bank in across)) return null;
  const wanted = across[told.value.bank as keyof typeof across]; // asked above
  const swap = (text: string) => {
    const words = [...text.trim().matchAll(/\p{L}+/gu)].reverse();
    const word = words.find(([each]) => bankOf(each) === told.value.bank);
    if (word === undefined) return null;
    const put = word[0] === word[0].toLowerCase() ? wanted.toLowerCase() : wanted;
    return text.trim().slice(0, word.index) + put + text.trim().slice(word.index + word[0].length);
  };
  const [swappedFirst, swappedLast] = [swap(first), swap(last)];
  if (swappedFirst === null || swappedLast === null) return null;
  const found = { first: swappedFirst, last: swappedLast };
  const back = readRange(found);
  return back.ok && back.value.bank === wanted ? found : null;
}

const across = { F: 'R', R: 'F' } as const;
