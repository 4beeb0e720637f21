// Random questions of places for feeders, what an assignment really costs when it is acted out, and two plain ways to assign for comparison.

import type { Assignment } from '../../../shared/assign/assign.ts';
import type { AssignQuestion } from '../../../shared/assign/problem.ts';
import { parseSlot } from '../../../shared/floor/address.ts';
import { type Chance, chanceBelow, seededChance } from '../../../shared/kit/chance.ts';

function between(chance: Chance, low: number, high: number): number {
  return low + chanceBelow(chance, high - low + 1);
}

function shuffled<T>(chance: Chance, list: readonly T[]): T[] {
  const result = [...list];
  for (let at = result.length - 1; at > 0; at--) {
    const other = chanceBelow(chance, at + 1);
    [result[at], result[other]] = [result[other]!, result[at]!];
  }
  return result;
}

/** At most 12 parts and 3 jobs on a line that is nearly full, with a random load. */
export function smallCase(seed: number): AssignQuestion {
  const chance = seededChance(seed);
  const parts = Array.from({ length: between(chance, 5, 12) }, (_, at) => ({
    part: `P-${String(at + 1).padStart(2, '0')}`,
    width: [1, 1, 1, 2, 2, 3][chanceBelow(chance, 6)]!,
    perPanel: between(chance, 1, 40),
  }));
  const jobs = Array.from({ length: between(chance, 2, 3) }, (_, at) => ({
    id: `J${at + 1}`,
    parts: shuffled(chance, parts).slice(0, between(chance, 2, Math.max(2, parts.length - 2))),
  }));
  const need = Math.max(...jobs.map((job) => job.parts.reduce((sum, { width }) => sum + width, 0)));
  const machines = between(chance, 1, 2);
  const banks = between(chance, 1, 2);
  const each = Math.max(
    4,
    Math.ceil((need + between(chance, 0, 3)) / (machines * banks)) + (machines * banks > 1 ? 1 : 0),
  );
  const line = {
    machines: Array.from({ length: machines }, (_, m) => ({
      machine: `M${m + 1}`,
      banks: Array.from({ length: banks }, (_, b) => ({ bank: 'FR'[b]!, positions: each })),
    })),
  };
  return { line, loaded: randomLoad(chance, line, parts), jobs };
}

function randomLoad(
  chance: Chance,
  line: AssignQuestion['line'],
  parts: readonly { readonly part: string; readonly width: number }[],
): AssignQuestion['loaded'] {
  const loaded: { slot: string; part: string; width: number }[] = [];
  const open = shuffled(chance, parts);
  for (const { machine, banks } of line.machines) {
    for (const { bank, positions } of banks) {
      let at = 1;
      while (at <= positions) {
        const next = chance() < 0.6 ? open.pop() : undefined;
        if (next === undefined || at + next.width - 1 > positions) {
          at++;
          continue;
        }
        loaded.push({
          slot: `${machine}-${bank}-${String(at).padStart(3, '0')}`,
          part: next.part,
          width: next.width,
        });
        at += next.width;
      }
    }
  }
  return loaded;
}

/** A family of boards: common parts and parts of their own, on a line of three machines that does not hold them all at once. */
export function boardFamily(seed: number): AssignQuestion {
  const chance = seededChance(seed);
  const boards = between(chance, 4, 8);
  const part = (name: string) => ({
    part: name,
    width: [1, 1, 1, 1, 2, 2, 3, 4][chanceBelow(chance, 8)]!,
    perPanel: between(chance, 1, 60),
  });
  const pool = Array.from({ length: between(chance, 60, 120) }, (_, at) =>
    part(`C-${String(at).padStart(3, '0')}`),
  );
  const common = pool.slice(0, Math.floor(pool.length / 4));
  const jobs = Array.from({ length: boards }, (_, at) => ({
    id: `B${at + 1}`,
    parts: shuffled(chance, [
      ...common.filter(() => chance() < 0.8),
      ...pool.slice(common.length).filter(() => chance() < 0.35),
    ]),
  }));
  const need = Math.max(...jobs.map((job) => job.parts.reduce((sum, { width }) => sum + width, 0)));
  const positions = Math.ceil((need * (1.1 + chance() * 0.35)) / 6) + 3;
  const line = {
    machines: [1, 2, 3].map((m) => ({
      machine: `M${m}`,
      banks: ['F', 'R'].map((bank) => ({ bank, positions })),
    })),
  };
  return { line, loaded: [], jobs };
}

/** Cells of a feeder, as machine-bank keys with a position each. */
function cellsOf(slot: string, width: number): readonly string[] {
  const { machine, bank, position } = parseSlot(slot);
  return Array.from({ length: width }, (_, step) => `${machine}-${bank}-${(position ?? 0) + step}`);
}

/**
 * Acts an assignment out feeder by feeder and counts what is put in. Throws where a part has no place, a feeder stands over a bank's end, or two feeders of a
 * job overlap.
 */
export function actOut(question: AssignQuestion, jobs: Pick<Assignment, 'jobs'>['jobs']): readonly number[] {
  const cells = new Set(
    question.line.machines.flatMap(({ machine, banks }) =>
      banks.flatMap(({ bank, positions }) =>
        Array.from({ length: positions }, (_, at) => `${machine}-${bank}-${at + 1}`),
      ),
    ),
  );
  interface Standing {
    readonly part: string;
    readonly width: number;
    readonly cells: readonly string[];
  }
  let standing: readonly Standing[] = question.loaded.map(({ slot, part, width }) => ({
    part,
    width,
    cells: cellsOf(slot, width),
  }));
  return question.jobs.map(({ id, parts }, at) => {
    const job = jobs[at];
    if (job?.id !== id) throw new Error(`job ${id} is not where it belongs`);
    const wanted = parts.map(({ part, width }): Standing => {
      const slot = job.slots.find((one) => one.part === part)?.slot ?? '';
      return { part, width, cells: cellsOf(slot, width) };
    });
    const taken = new Set<string>();
    for (const cell of wanted.flatMap((one) => one.cells)) {
      if (!cells.has(cell)) throw new Error(`${id}: ${cell} is not on the line`);
      if (taken.has(cell)) throw new Error(`${id}: ${cell} is taken twice`);
      taken.add(cell);
    }
    const isThere = (one: Standing) =>
      standing.some(
        ({ part, width, cells: own }) => part === one.part && width === one.width && own[0] === one.cells[0],
      );
    const changes = wanted.filter((one) => !isThere(one)).length;
    standing = [...wanted, ...standing.filter((one) => one.cells.every((cell) => !taken.has(cell)))];
    return changes;
  });
}

/** Each job for itself, its parts in a given order from the first slot of the line on. */
export function assignPlainly(
  question: AssignQuestion,
  compare: (a: { part: string; perPanel: number }, b: { part: string; perPanel: number }) => number,
): Assignment['jobs'] {
  return question.jobs.map(({ id, parts }) => {
    const left = question.line.machines.flatMap(({ machine, banks }) =>
      banks.map(({ bank, positions }) => ({ machine, bank, positions, next: 1 })),
    );
    const slots = [...parts].sort(compare).map(({ part, width }) => {
      const bank = left.find((one) => one.next + width - 1 <= one.positions);
      if (bank === undefined) throw new Error(`${id}: no room for ${part}`);
      const slot = `${bank.machine}-${bank.bank}-${String(bank.next).padStart(3, '0')}`;
      bank.next += width;
      return { slot, part };
    });
    return { id, slots, changes: 0 };
  });
}
