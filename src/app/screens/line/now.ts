// What to do on the line now: the walk to make, and the warnings that a person takes note of by going. Pure.

import { loudestOf, type SlotOutlook } from '../../../../shared/outlook/line.ts';
import type { PlannedWalk, WalkPlan } from '../../../../shared/outlook/walks.ts';

/** What comes first. */
export interface Now {
  /** The walk to make and its number in the plan, from 1; null where no walk is planned that serves it. */
  readonly walk: { readonly walk: PlannedWalk; readonly number: number } | null;
  /** The loudest open warning; null where none is open. */
  readonly loudest: SlotOutlook | null;
  /** What a person takes note of who goes now: the open warnings of the walk, else the loudest alone. */
  readonly waiting: readonly SlotOutlook[];
  /** Open warnings that this walk does not serve. */
  readonly elsewhere: number;
}

/** `open`: warnings that nobody has taken note of; `plan`: null until the first one is made. */
export function nowOf(open: readonly SlotOutlook[], plan: WalkPlan | null): Now {
  const walks = plan?.walks ?? [];
  const loudest = loudestOf(open);
  const serves = (walk: PlannedWalk, { slot }: SlotOutlook) =>
    walk.splices.some((splice) => splice.slot.slot === slot);
  const at = loudest === null ? 0 : walks.findIndex((walk) => serves(walk, loudest));
  const walk = walks[at];
  const waiting =
    loudest === null ? [] : walk === undefined ? [loudest] : open.filter((slot) => serves(walk, slot));
  return {
    walk: walk === undefined ? null : { walk, number: at + 1 },
    loudest,
    waiting,
    elsewhere: open.length - waiting.length,
  };
}

/** The moment by which the first splice of a walk must be done, ms: its window closes, or without one its tape may end. */
export function dueBy(walk: PlannedWalk): number {
  return Math.min(
    ...walk.splices.map(({ slot }) => slot.forecast.windowMs?.closes ?? slot.forecast.runOutMs.early),
  );
}
