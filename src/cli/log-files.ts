// Several files of one log read as one: a month each, and an export of what came since. An entry may lie in more than one of them.

import { chainId, type Entry, entryId } from '../../shared/log/entry.ts';
import { compareText } from '../../shared/log/order.ts';
import { type CommandIo, NotUnderstood } from './command.ts';
import { readLogFile } from './log-file.ts';

/** The entries of all files, each once. Refuses what is no log, and two files that have different entries under one name. */
export async function readLogFiles(files: readonly string[], io: CommandIo): Promise<readonly Entry[]> {
  const byId = new Map<string, { readonly entry: Entry; readonly file: string }>();
  for (const file of files) {
    const { entries, faults } = await readLogFile(file, io);
    const broken = faults.find((fault) => fault.entry === null);
    if (broken)
      throw new NotUnderstood(
        `${file}: line ${broken.row}: expected ${broken.wanted}, found ${broken.found || 'nothing'}`,
      );
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
  return [...byId.values()].map(({ entry }) => entry);
}

/** What the entries lack between the first of each chain and the last that is there, a line each. */
export function gapsIn(entries: readonly Entry[]): readonly string[] {
  const chains = new Map<string, number[]>();
  for (const entry of entries) {
    const seqs = chains.get(chainId(entry)) ?? [];
    chains.set(chainId(entry), seqs);
    seqs.push(entry.seq);
  }
  const gaps: string[] = [];
  for (const [chain, seqs] of [...chains].sort(([a], [b]) => compareText(a, b))) {
    let last = 0;
    for (const seq of seqs.sort((a, b) => a - b)) {
      if (seq > last + 1) gaps.push(`entries ${last + 1} to ${seq - 1} of ${chain} are in none of the files`);
      last = seq;
    }
  }
  return gaps;
}
