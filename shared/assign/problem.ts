// What is asked: a line with positions, what is loaded, and jobs in their order; and the same in numbers.
// Positions of all banks stand side by side in one row, with a blocked one between two banks, so that no feeder reaches over a bank's end.

import { formatSlot, parseSlot, placeKey } from '../floor/address.ts';
import { fail, ok, type Result } from '../kit/result.ts';

/** A line, what stands on it, and what each job needs. */
export interface AssignQuestion {
  readonly line: {
    readonly machines: readonly {
      readonly machine: string;
      readonly banks: readonly { readonly bank: string; readonly positions: number }[];
    }[];
  };
  /** `width`: positions taken, from the slot's own upward. */
  readonly loaded: readonly { readonly slot: string; readonly part: string; readonly width: number }[];
  readonly jobs: readonly {
    readonly id: string;
    readonly parts: readonly { readonly part: string; readonly width: number; readonly perPanel: number }[];
  }[];
}

/** What is wrong with the question; `path` is where, in the question's own words. */
export interface AssignFault {
  readonly code: 'twice' | 'slot-unknown' | 'over-end' | 'overlap';
  readonly path: string;
  readonly found: string;
}

/** A bank in the row of positions. */
export interface BankSpan {
  readonly machine: string;
  readonly bank: string;
  /** First position in the row. */
  readonly from: number;
  readonly positions: number;
}

/** A feeder: one part at one width. */
export interface FeederKind {
  readonly part: string;
  readonly width: number;
  /** Jobs that need it, 1 = the first, ascending. */
  readonly uses: readonly number[];
  /** Positions in the row where it stands loaded; mostly none or one. */
  readonly loadedAt: readonly number[];
  /** Most placements per panel over the jobs. */
  readonly perPanel: number;
}

/** The question in numbers. */
export interface AssignModel {
  readonly banks: readonly BankSpan[];
  /** Length of the row, blocked positions included. */
  readonly length: number;
  /** 1 = no feeder may stand there. */
  readonly blocked: Uint8Array;
  /** How many positions feeders may take. */
  readonly capacity: number;
  readonly jobs: number;
  readonly feeders: readonly FeederKind[];
  /** The slot's text for a position in the row. */
  readonly slotAt: (position: number) => string;
}

function spansOf(question: AssignQuestion): Result<readonly BankSpan[], AssignFault> {
  const banks: BankSpan[] = [];
  const seen = new Set<string>();
  let from = 0;
  for (const [m, { machine, banks: own }] of question.line.machines.entries()) {
    for (const [b, { bank, positions }] of own.entries()) {
      const key = placeKey(formatSlot({ machine, bank, position: 1 }));
      if (seen.has(key))
        return fail({ code: 'twice', path: `line.machines[${m}].banks[${b}]`, found: `${machine} ${bank}` });
      seen.add(key);
      banks.push({ machine, bank, from, positions });
      from += positions + 1;
    }
  }
  return ok(banks);
}

/** How slots are numbered in the loaded list: as many digits as its own have, three where nothing is loaded. */
function digitsOf(loaded: AssignQuestion['loaded']): number {
  const numbers = loaded.flatMap(({ slot }) => /(\d+)\D*$/.exec(slot)?.[1] ?? []);
  const padded = numbers.find((number) => number.startsWith('0'));
  if (padded !== undefined) return padded.length;
  return numbers.length === 0 ? 3 : Math.min(...numbers.map((number) => number.length));
}

/** Puts the question in numbers, or says where it contradicts itself. */
export function modelOf(question: AssignQuestion): Result<AssignModel, AssignFault> {
  const spans = spansOf(question);
  if (!spans.ok) return spans;
  const banks = spans.value;
  const length = banks.reduce((sum, { positions }) => sum + positions + 1, 0);
  const blocked = new Uint8Array(length);
  const texts = new Map<number, string>();
  const positionByKey = new Map<string, number>();
  const digits = digitsOf(question.loaded);
  for (const { machine, bank, from, positions } of banks) {
    for (let at = 0; at < positions; at++) {
      const slot = formatSlot({ machine, bank, position: at + 1 });
      positionByKey.set(placeKey(slot), from + at);
      texts.set(
        from + at,
        slot.replace(/\d+$/, () => String(at + 1).padStart(digits, '0')),
      );
    }
    blocked[from + positions] = 1;
  }
  const placed = placeLoaded(question, { positionByKey, blocked, texts });
  if (!placed.ok) return placed;
  const feeders = feedersOf(question, placed.value);
  if (!feeders.ok) return feeders;
  return ok({
    banks,
    length,
    blocked,
    capacity: length - banks.length,
    jobs: question.jobs.length,
    feeders: feeders.value,
    slotAt: (position) => texts.get(position) ?? '',
  });
}

const keyOf = (part: string, width: number) => `${part}\u0000${width}`;

/** Positions of what is loaded, by feeder; the loaded slots keep their text. */
function placeLoaded(
  question: AssignQuestion,
  row: {
    readonly positionByKey: ReadonlyMap<string, number>;
    readonly blocked: Uint8Array;
    readonly texts: Map<number, string>;
  },
): Result<ReadonlyMap<string, number[]>, AssignFault> {
  const taken = new Map<number, string>();
  const placed = new Map<string, number[]>();
  for (const [at, { slot, part, width }] of question.loaded.entries()) {
    const path = `loaded[${at}].slot`;
    const position = parseSlot(slot).position === null ? undefined : row.positionByKey.get(placeKey(slot));
    if (position === undefined) return fail({ code: 'slot-unknown', path, found: slot });
    for (let step = 0; step < width; step++) {
      if (position + step >= row.blocked.length || row.blocked[position + step] === 1)
        return fail({ code: 'over-end', path, found: slot });
      const other = taken.get(position + step);
      if (other !== undefined) return fail({ code: 'overlap', path, found: `${slot} and ${other}` });
      taken.set(position + step, slot);
    }
    row.texts.set(position, slot);
    const key = keyOf(part, width);
    placed.set(key, [...(placed.get(key) ?? []), position]);
  }
  return ok(placed);
}

function feedersOf(
  question: AssignQuestion,
  loaded: ReadonlyMap<string, readonly number[]>,
): Result<readonly FeederKind[], AssignFault> {
  const byKey = new Map<string, { part: string; width: number; uses: number[]; perPanel: number }>();
  const ids = new Set<string>();
  for (const [j, { id, parts }] of question.jobs.entries()) {
    if (ids.has(id)) return fail({ code: 'twice', path: `jobs[${j}].id`, found: id });
    ids.add(id);
    const own = new Set<string>();
    for (const [p, { part, width, perPanel }] of parts.entries()) {
      if (own.has(part)) return fail({ code: 'twice', path: `jobs[${j}].parts[${p}].part`, found: part });
      own.add(part);
      const key = keyOf(part, width);
      const feeder = byKey.get(key) ?? { part, width, uses: [], perPanel: 0 };
      feeder.uses.push(j + 1);
      feeder.perPanel = Math.max(feeder.perPanel, perPanel);
      byKey.set(key, feeder);
    }
  }
  return ok([...byKey].map(([key, feeder]) => ({ ...feeder, loadedAt: loaded.get(key) ?? [] })));
}
