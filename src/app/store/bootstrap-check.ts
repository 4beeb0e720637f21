// May a bootstrap snapshot be believed? Once all entries that it stands for are here, this tablet folds them itself and compares.
// Method: beside the work in hand and in small pieces, since a year takes minutes; only the result is put in place in turn with
// new entries. Trusting the state for good was refused: a tablet that folded wrongly, or was made to, would pass its error on to
// every tablet that comes after it, and no seal of the log would show it.

import { applyEntry } from '../../../shared/floor/fold.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { packValue } from '../../../shared/kit/pack.ts';
import { compareText } from '../../../shared/log/order.ts';
import { type Bootstrap, isIn } from './bootstrap.ts';
import { countUpTo, type LogDatabase, orderIndex, orderKey } from './database.ts';
import type { FoldVersion } from './this-fold.ts';

/** The log up to the bootstrap snapshot's place, as folded here. */
export interface OwnFold {
  readonly state: FloorState;
  /** Entries in it: those of the bootstrap snapshot, and those that came late and belong before its place. */
  readonly count: number;
  /** Names of the state's parts that are otherwise than in the snapshot; empty where it was right. */
  readonly differs: readonly string[];
}

/** Entries read and folded at once: some hundredths of a second, so that a scan never waits for long. */
const AT_ONCE = 250;
/** Values compared at once. */
const COMPARED_AT_ONCE = 500;

/** Gives the page its turn. */
const turn = () => new Promise<void>((resolve) => setTimeout(resolve));

/** Folds what lies behind a bootstrap snapshot; null where `isOver` says that nobody wants to know any more. */
export async function foldBehind(
  log: LogDatabase,
  bootstrap: Bootstrap,
  { fold, isOver }: { readonly fold: FoldVersion; readonly isOver: () => boolean },
): Promise<OwnFold | null> {
  const isSame = bootstrap.fold === fold.name;
  const compared = isSame ? await foldUpTo(log, bootstrap, { isLate: false, fold, isOver }) : null;
  if (isOver()) return null;
  const differs = compared ? await differences(compared.state, bootstrap.state) : [];
  const there = await countUpTo(log, bootstrap.position);
  // Nothing came late: what was compared is the whole.
  const whole =
    compared?.count === there ? compared : await foldUpTo(log, bootstrap, { isLate: true, fold, isOver });
  return whole && { ...whole, differs };
}

async function foldUpTo(
  log: LogDatabase,
  bootstrap: Bootstrap,
  options: { readonly isLate: boolean; readonly fold: FoldVersion; readonly isOver: () => boolean },
): Promise<{ readonly state: FloorState; readonly count: number } | null> {
  const end = orderKey(bootstrap.position);
  const state = emptyState();
  let count = 0;
  for (let from: readonly (string | number)[] = [-1]; ; ) {
    const rows = await log.entries.where(orderIndex).between(from, end, false, true).limit(AT_ONCE).toArray();
    if (options.isOver()) return null;
    const { trust } = options.fold;
    await trust?.look(rows.map(({ entry }) => entry));
    for (const { entry } of rows) {
      if (!options.isLate && !isIn(bootstrap, entry)) continue;
      applyEntry(state, entry, trust);
      count += 1;
    }
    const last = rows.at(-1);
    if (!last || rows.length < AT_ONCE) return { state, count };
    from = orderKey(last.entry);
    await turn();
  }
}

/**
 * Parts of the state that differ. The snapshot went through JSON, so both are compared as JSON; with keys in order, since an entry
 * that came from the server has them in another order than where it was written.
 */
async function differences(own: FloorState, theirs: FloorState): Promise<readonly string[]> {
  const names: string[] = [];
  const theirParts = new Map<string, unknown>(Object.entries(theirs));
  for (const [name, part] of Object.entries(own)) {
    if (!(await isSame(part, theirParts.get(name)))) names.push(name);
  }
  return names;
}

async function isSame(
  own: ReadonlyMap<string, unknown> | ReadonlySet<string>,
  theirs: unknown,
): Promise<boolean> {
  if (!(theirs instanceof Map || theirs instanceof Set) || theirs.size !== own.size) return false;
  let compared = 0;
  for (const [key, value] of own.entries()) {
    if (!theirs.has(key)) return false;
    if (theirs instanceof Map && textOf(value) !== textOf(theirs.get(key))) return false;
    compared += 1;
    if (compared % COMPARED_AT_ONCE === 0) await turn();
  }
  return true;
}

function textOf(value: unknown): string {
  return JSON.stringify(packValue(value), (_, item: unknown) =>
    typeof item === 'object' && item !== null && !Array.isArray(item)
      ? Object.fromEntries(Object.entries(item).sort(([a], [b]) => compareText(a, b)))
      : item,
  );
}
