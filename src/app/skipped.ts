// Which boards of the coming panel are skipped, as somebody entered on the Line screen: the next count of the run takes it along, by tap
// or by scan. Where nobody said anything a scan says nothing either; a tap says none once skips are entered in this run at all, and the
// screen shows so.

import { boardsOf } from '../../shared/floor/remaining.ts';
import type { FloorState, Run } from '../../shared/floor/state.ts';
import type { App } from './app.ts';

/** What is entered for the next panel of a run: how many boards are skipped, or which, from 1. */
export interface SkippedNext {
  readonly run: string;
  readonly boards: number | readonly number[];
}

/** What the next tapped count would say of skipped boards; null: nothing. */
export function skippedOnTap(
  floor: FloorState,
  run: Run,
  next: SkippedNext | null,
): SkippedNext['boards'] | null {
  if (boardsOf(floor, run.setup) <= 1) return null;
  if (next?.run === run.run) return next.boards;
  return run.skips.panels > 0 ? 0 : null;
}

/** The fact for one panel's entry, taken out of hand; nothing where nothing is to be said. */
export function takeSkipped(
  app: App,
  run: Run | undefined,
  by: 'tap' | 'scan',
): { readonly skipped?: number | number[] } {
  const next = app.skippedNext.peek();
  if (!run) return {};
  const said = skippedOnTap(app.store.floor(), run, next);
  const boards = by === 'tap' || next?.run === run.run ? said : null;
  if (next?.run === run.run) app.skippedNext.value = null;
  if (boards === null) return {};
  return { skipped: typeof boards === 'number' ? boards : [...boards] };
}
