// Several files of one log read as one: a month each, and an export of what came since. An entry may lie in more than one of them.

import type { Omitted } from '../../shared/log/chain.ts';
import { chainId, type Entry, entryId } from '../../shared/log/entry.ts';
import { compareText } from '../../shared/log/order.ts';
import { type CommandIo, NotUnderstood } from './command.ts';
import { readLogFile } from './log-file.ts';

/** What several files hold together. */
export interface LogFiles {
  /** Each once. */
  readonly entries: readonly Entry[];
  /** What one of them says that it leaves out, whether or not another has it. */
  readonly omitted: readonly Omitted[];
}

/** Reads all files. Refuses what is no log, and two files that have different entries under one name. */
export async function readLogFiles(files: readonly string[], io: CommandIo): Promise<LogFiles> {
  const omitted: Omitted[] = [];
  const byId = new Map<string, { readonly entry: Entry; readonly file: string }>();
  for (const file of files) {
    const { entries, omitted: leftOut, faults } = await readLogFile(file, io);
    const broken = faults.find((fault) => fault.entry === null);
    if (broken)
      throw new NotUnderstood(
        `${file}: line ${broken.row}: expected ${broken.wanted}, found ${broken.found || 'nothing'}`,
      );
    for (const stretch of leftOut) omitted.push(stretch);
    for (const entry of entries) {
      const id = entryId(entry);
      const before = byId.get(id);
      // Twice in one file is for its check to tell.
      if (before && before.file !== file && before.entry.hash !== entry.hash)
        throw new NotUnderstood(
          `${file}: entry ${id} is another than in ${before.file}: not files of one log`,
        );
      if (!before) byId.set(id, { entry, file });
    }
  }
  return { entries: [...byId.values()].map(({ entry }) => entry), omitted };
}

/** Stretches of one chain that are told one by one; of more only how many there are. */
const TOLD_MOST = 5;

/** What the files lack of each chain, up to the last entry that one of them has or says it leaves out. */
export function gapsIn({ entries, omitted }: LogFiles): readonly string[] {
  const chains = new Map<string, { readonly seqs: number[]; end: number }>();
  const chainOf = (id: string) => {
    const chain = chains.get(id) ?? { seqs: [], end: 0 };
    chains.set(id, chain);
    return chain;
  };
  for (const entry of entries) {
    const chain = chainOf(chainId(entry));
    chain.seqs.push(entry.seq);
    chain.end = Math.max(chain.end, entry.seq);
  }
  for (const stretch of omitted) {
    const chain = chainOf(chainId(stretch));
    chain.end = Math.max(chain.end, stretch.toSeq);
  }
  return [...chains]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([id, { seqs, end }]) => sayGaps(id, stretchesBetween(seqs, end)));
}

interface Gap {
  readonly from: number;
  readonly to: number;
}

function stretchesBetween(seqs: readonly number[], end: number): readonly Gap[] {
  const gaps: Gap[] = [];
  let last = 0;
  for (const seq of [...[...seqs].sort((a, b) => a - b), end + 1]) {
    if (seq > last + 1) gaps.push({ from: last + 1, to: seq - 1 });
    last = seq;
  }
  return gaps;
}

function sayGaps(chain: string, gaps: readonly Gap[]): readonly string[] {
  const [first, last] = [gaps[0], gaps.at(-1)];
  if (gaps.length <= TOLD_MOST || !first || !last)
    return gaps.map(({ from, to }) => `entries ${from} to ${to} of ${chain} are in none of the files`);
  const count = gaps.reduce((all, { from, to }) => all + to - from + 1, 0);
  return [
    `${count} entries of ${chain}, in ${gaps.length} stretches between ${first.from} and ${last.to}, are in none of the files`,
  ];
}
