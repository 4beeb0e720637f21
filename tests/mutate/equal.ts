// Faults that change nothing anybody could see, each with its reason: kept as a list that is held against the code.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { projectRoot, type SourceFile } from '../source-scan.ts';
import { type Mutant, mutantsOf } from './mutants.ts';

/** One fault that no test can see, and why. */
export interface Equal {
  readonly path: string;
  /** The line it begins on, without the spaces around it. */
  readonly code: string;
  readonly was: string;
  readonly becomes: string;
  /** Which of the faults that read the same in the file; the first where it is not given. */
  readonly nth?: number;
  readonly why: string;
}

const keyOf = ({ path: file, code, was, becomes, nth = 1 }: Omit<Equal, 'why'>) =>
  [file, code, was, becomes, nth].join('\n');

/** The list as it is kept. */
export function readEqual(): readonly Equal[] {
  return JSON.parse(readFileSync(path.join(projectRoot, 'tests/mutate/equal.json'), 'utf8'));
}

/** Asks whether a fault is listed. */
export function listedAmong(list: readonly Equal[]): (mutant: Mutant) => boolean {
  const listed = new Set(list.map(keyOf));
  return (mutant) => listed.has(keyOf(mutant));
}

/** Entries that fit no fault of today's code, and entries without a reason. */
export function staleAmong(list: readonly Equal[], files: readonly SourceFile[]): readonly Equal[] {
  const known = new Set(files.flatMap((file) => mutantsOf(file).map(keyOf)));
  return list.filter((each) => !known.has(keyOf(each)) || each.why.trim() === '');
}
