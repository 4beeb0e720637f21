// The fewest changes by an integer program over every place of every feeder in every job, solved by HiGHS: it knows nothing of stays.

import loadHighs from 'highs';
import type { AssignQuestion } from '../../../shared/assign/problem.ts';
import { parseSlot } from '../../../shared/floor/address.ts';

/** Fewest feeders put in; null where no assignment exists. */
export async function fewestByProgram(question: AssignQuestion): Promise<number | null> {
  const highs = await loadHighs();
  const banks = question.line.machines.flatMap(({ machine, banks: own }) =>
    own.map((bank) => ({ machine, ...bank })),
  );
  const widthByPart = new Map(
    question.jobs.flatMap(({ parts }) => parts.map(({ part, width }) => [part, width] as const)),
  );
  const parts = [...widthByPart];
  const placesOf = (width: number) =>
    banks.flatMap(({ positions }, b) =>
      Array.from({ length: Math.max(0, positions - width + 1) }, (_, at) => ({ b, at })),
    );
  const isLoaded = (part: string, width: number, place: { b: number; at: number }) =>
    question.loaded.some((one) => {
      const { machine, bank, position } = parseSlot(one.slot);
      const there = banks[place.b]!;
      return (
        one.part === part &&
        one.width === width &&
        machine === there.machine &&
        bank === there.bank &&
        position === place.at + 1
      );
    });
  const rows: string[] = [];
  const names: string[] = [];
  const cost: string[] = [];
  for (const [j, job] of question.jobs.entries()) {
    const covers = new Map<string, string[]>();
    for (const [p, [part, width]] of parts.entries()) {
      const own: string[] = [];
      for (const { b, at } of placesOf(width)) {
        const name = `y${p}_${j}_${b}_${at}`;
        names.push(name);
        own.push(name);
        for (let step = 0; step < width; step++) {
          const cell = `${b} ${at + step}`;
          covers.set(cell, [...(covers.get(cell) ?? []), name]);
        }
        // A feeder that was not there before is put in.
        const before = j === 0 ? (isLoaded(part, width, { b, at }) ? 1 : 0) : `y${p}_${j - 1}_${b}_${at}`;
        const put = `u${p}_${j}_${b}_${at}`;
        cost.push(put);
        rows.push(
          typeof before === 'number' ? `${put} - ${name} >= ${-before}` : `${put} - ${name} + ${before} >= 0`,
        );
      }
      const isNeeded = job.parts.some((one) => one.part === part);
      if (own.length === 0) {
        if (isNeeded) return null;
        continue;
      }
      rows.push(`${own.join(' + ')} ${isNeeded ? '=' : '<='} 1`);
    }
    for (const [, cover] of covers) rows.push(`${cover.join(' + ')} <= 1`);
  }
  const text = `Minimize\n obj: ${cost.join(' + ')}\nSubject To\n${rows.map((row, at) => ` r${at}: ${row}`).join('\n')}\nBinary\n ${names.join('\n ')}\nEnd`;
  const found = highs.solve(text);
  return found.Status === 'Optimal' ? Math.round(found.ObjectiveValue) : null;
}
