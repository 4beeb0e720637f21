// What the log is told of a label that the camera passed over: one entry each, with how it was seen. Pure.

import type { DeskView, ReelInHand } from '../../../shared/desk/model.ts';
import type { Draft } from '../../../shared/floor/draft.ts';
import type { DraftEntry } from '../../../shared/floor/kinds.ts';
import { openSweep } from '../../../shared/floor/progress.ts';
import type { PannedLabel } from '../scan/pan.ts';
import type { FoundReel } from './find-model.ts';
import type { SlotSeen, Swept, Vote } from './find-sweep.ts';

/** What is told besides the label itself. */
interface Sighting {
  readonly line: string;
  readonly reel: ReelInHand;
  /** Why it may not be used; null where nothing speaks against it. */
  readonly why: string | null;
  /** The slot that it was seen to belong to; null where none was looked for. */
  readonly hung: { readonly slot: string; readonly vote: Vote } | null;
  /** The verdict that was made of it; null where none was. */
  readonly of: string | null;
}

/** The entry of one label. */
export function sightedDraft(
  { looks, copies }: Pick<PannedLabel, 'looks' | 'copies'>,
  { line, reel, why, hung, of }: Sighting,
): DraftEntry {
  return {
    kind: 'reel.sighted',
    payload: {
      line,
      reel: reel.reel,
      part: reel.part,
      supplierPart: reel.supplierPart,
      quantity: reel.labelQuantity,
      lot: reel.lot,
      dateCode: reel.dateCode,
      codes: [...reel.codes],
      looks,
      copies,
      slot: hung?.slot ?? null,
      feeder: hung?.vote.feeder ?? null,
      belongs: hung?.vote.by ?? null,
      reasons: why === null ? [] : [{ code: why }],
      of,
      via: 'camera',
    },
  };
}

/**
 * The entries of slots that are surely seen with their reel and that the sweep has not yet; none where no sweep goes on, as an ended one
 * takes nothing in: the same would be written look after look. `known`: what a slot's label came to; null where it is not judged.
 */
export function sweepDrafts(
  { floor, line }: DeskView,
  seen: readonly SlotSeen[],
  known: (
    seen: Extract<SlotSeen, { readonly is: 'one' }>,
  ) => { readonly swept: Swept; readonly label: PannedLabel } | null,
): readonly Draft[] {
  const sweep = openSweep(floor, line);
  if (sweep === null) return [];
  const drafts: Draft[] = [];
  for (const of of seen) {
    if (of.is === 'several' || sweep.seen.includes(of.slot)) continue;
    const judged = known(of);
    if (judged?.swept.is !== 'ticked') continue;
    const at = drafts.length;
    const { label, swept } = judged;
    const sighting = { line, reel: swept.reel, why: null, hung: { slot: of.slot, vote: of.vote } };
    drafts.push(...swept.drafts, (before) => sightedDraft(label, { ...sighting, of: before[at] ?? null }));
  }
  return drafts;
}

/** The entries of a pass: every reel that was read, each once. */
export function passDrafts(
  line: string,
  found: Iterable<PannedLabel>,
  reelOf: (key: string) => FoundReel | null,
): readonly DraftEntry[] {
  return [...found].flatMap((label) => {
    const thing = reelOf(label.key);
    if (thing === null) return [];
    return [sightedDraft(label, { line, reel: thing.reel, why: thing.why, hung: null, of: null })];
  });
}
