// Which material must not be used, and which of it stands on a slot all the same? A block names a reel, a lot or a part; what it names is
// under it wherever it is, on a slot too, and so is what was cut off from it or joined with it, before the block or after. A lead may let one reel run on
// where it stands, for a reason; the block itself stays.
// Method: each package bears what it was made of; a block is compared with that, by reel, lot and part as the trace compares them. Refused: a list of pieces on the block, which knew nothing of a cut before it.

import type { EntryOf, PayloadOf } from './kinds.ts';
import { linesFeeding, standingAt } from './lanes.ts';
import { madeOf } from './made-of.ts';
import type { FloorState, SlotState, Tape } from './state.ts';
import { doneSince } from './tally.ts';
import { perPanelOf } from './wanted.ts';

/** What a package is named by. */
const facts = ['reel', 'lot', 'part'] as const;

/** Material that must not be used: by reel, lot or part. */
export type BlockFacts = Readonly<PayloadOf<'material.blocked'>>;
/** A block that stands. */
export interface Block extends BlockFacts {
  readonly atMs: number;
  /** Panels done then in each run that was being built. */
  readonly done: readonly (readonly [run: string, panels: number])[];
  /** Tapes, by the entry that put them on their slot, that a lead let run there all the same. */
  readonly letRun: readonly string[];
}

/** Applies one entry to the blocks. */
export function foldBlocks(
  state: FloorState,
  entry: EntryOf<'material.blocked' | 'material.released' | 'blocked.let-run'>,
): void {
  switch (entry.kind) {
    case 'material.blocked': {
      const done = [...state.current.values()].map((run) => [run, state.runs.get(run)?.done ?? 0] as const);
      const facts = { ...entry.payload, atMs: entry.hlc.ms, done, letRun: [] };
      state.blocks.set(entry.payload.block, facts);
      return;
    }
    case 'material.released':
      state.blocks.delete(entry.payload.block);
      return;
    case 'blocked.let-run': {
      const block = state.blocks.get(entry.payload.block);
      if (block) state.blocks.set(block.block, { ...block, letRun: [...block.letRun, entry.payload.of] });
      return;
    }
    default:
      entry satisfies never;
  }
}

/** What a block is compared with: a package, as its label or the log names it. */
type Named = { readonly [fact in 'reel' | 'lot' | 'part']: string | null };
type Known = Pick<FloorState, 'madeOf' | 'reels' | 'forgotten'>;

/** A package and all whose parts are in it, as far as they are known by now. */
function packagesIn(state: Known, own: Named): readonly Named[] {
  const of = own.reel === null ? [] : madeOf(state, own.reel).of;
  if (of.length === 0) return [own];
  const told = of.map((reel) => {
    const { lot = null, part = null } = state.reels.get(reel) ?? state.forgotten.get(reel) ?? {};
    return { reel, lot, part };
  });
  return [own, ...told];
}

/** Every name that a block gives must fit one of a package and what is in it. A block that gives none fits nothing. */
function fitsBlock(block: Pick<Block, 'reel' | 'lot' | 'part'>, all: readonly Named[]): boolean {
  const names = facts.filter((fact) => block[fact] !== null);
  return names.length > 0 && names.every((fact) => all.some((each) => each[fact] === block[fact]));
}

/**
 * True where a block names the package or what is in it by cuts and joins: every name given must fit one of these, as a lot that nobody told of
 * a piece is told of what it was cut off from.
 */
export function isUnderBlock(
  state: Known,
  block: Pick<Block, 'reel' | 'lot' | 'part'>,
  reel: Named,
): boolean {
  return fitsBlock(block, packagesIn(state, reel));
}

/** The block that a reel falls under, null where none does. */
export function blockOn(state: FloorState, reel: Named): string | null {
  if (state.blocks.size === 0) return null;
  const all = packagesIn(state, reel);
  for (const block of state.blocks.values()) if (fitsBlock(block, all)) return block.block;
  return null;
}

/**
 * Answers for many reels whether a block may be on them, so that only those are asked about which a name of a block fits: its reel, else its lot,
 * else its part, of the package or of what is in it. True for every reel that `blockOn` has a block for.
 */
export function mayBeBlocked(state: FloorState): (reel: Named) => boolean {
  if (state.blocks.size === 0) return () => false;
  const [reels, lots, parts] = [new Set<string | null>(), new Set<string | null>(), new Set<string | null>()];
  for (const block of state.blocks.values()) {
    if (block.reel !== null) reels.add(block.reel);
    else if (block.lot !== null) lots.add(block.lot);
    else if (block.part !== null) parts.add(block.part);
  }
  const mayBe = ({ reel, lot, part }: Named) => reels.has(reel) || lots.has(lot) || parts.has(part);
  return (reel) => packagesIn(state, reel).some(mayBe);
}

/** A blocked reel that stands on a slot. */
export interface BlockedTape {
  readonly line: string;
  readonly slot: string;
  readonly tape: Tape;
  readonly block: Block;
  /** The run being built there, null where none is. */
  readonly run: string | null;
  /**
   * Panels counted in that run since the reel was put there, and since the block; the smaller of the two counts where the reel came after
   * the block. All of them may carry the reel's parts; which surely do is the trace's answer.
   */
  readonly sinceLoaded: number;
  readonly sinceBlocked: number;
  /** True where an earlier run of the line may have taken from it already: panels of that may carry it too. */
  readonly wasThereBefore: boolean;
}

/** Blocked reels on the slots of a line that no lead has let run there. Cost: slots times blocks. */
export function blockedTapes(state: FloorState, line: string): readonly BlockedTape[] {
  if (state.blocks.size === 0) return [];
  return standingAt(state, line).flatMap(({ slot, tapes }) =>
    tapes.flatMap((tape) => blockedTape(state, { line, slot }, tape)),
  );
}

function blockedTape(
  state: FloorState,
  { line, slot }: Pick<SlotState, 'line' | 'slot'>,
  tape: Tape,
): readonly BlockedTape[] {
  const all = packagesIn(state, tape);
  // One warning a reel: the oldest block on it that nobody overruled.
  const block = [...state.blocks.values()].find(
    (each) => !each.letRun.includes(tape.entry) && fitsBlock(each, all),
  );
  if (!block) return [];
  const run = state.runs.get(state.current.get(line) ?? '') ?? null;
  const wasThereBefore = fedRunBefore(state, { line, slot }, tape);
  if (run === null) {
    const none = { run: null, sinceLoaded: 0, sinceBlocked: 0, wasThereBefore };
    return [{ line, slot, tape, block, ...none }];
  }
  const doneAtBlock = block.done.find(([id]) => id === run.run)?.[1] ?? 0;
  // Of a lane's own panels the tape tells nothing where another lane may have asked for it.
  const doneAtLoad = linesFeeding(state, line).length > 1 ? null : tape.fromPanels;
  const sinceLoaded = tape.atMs < run.startedMs ? run.done : doneSince(run, tape.atMs, doneAtLoad);
  const sinceBlocked = Math.min(sinceLoaded, doneSince(run, block.atMs, doneAtBlock));
  return [{ line, slot, tape, block, run: run.run, sinceLoaded, sinceBlocked, wasThereBefore }];
}

/** True where a run of the line that is over went on after the reel came, and took from its slot or may have: what that wanted is not known. */
function fedRunBefore(
  state: FloorState,
  { line, slot }: Pick<SlotState, 'line' | 'slot'>,
  tape: Tape,
): boolean {
  for (const { line: its, setup, phase, sinceMs } of state.runs.values())
    if (
      its === line &&
      phase === 'ended' &&
      sinceMs > tape.atMs &&
      (!state.setups.has(setup) || perPanelOf(state, setup, slot) > 0)
    )
      return true;
  return false;
}
