// What may leave the state of a changeover that is over? A plant that grows old has thousands of them, and each new tablet would be handed all answers
// to all their steps. Method: by a rule of the entries alone, as a list is opened or a changeover begins: a week after its end a list keeps who
// opened it and when it was closed, without its answers, which nothing can change any more; a changeover keeps, of what was measured, the newest of each
// part, which the next measurement begins with, and nothing of what was looked at. All of it stays in the log. Refused: to drop lists and changeovers
// whole, since times are compared with those of before, and an old entry of the log names its step by its list.

import { type Changeover, type ChangeState, type Checklist, isDropped } from './state-change.ts';
import type { HandoverState } from './state-handover.ts';

/** How long after its end a changeover is kept whole, ms. Chosen here. */
export const OVER_AFTER_MS = 7 * 24 * 3_600_000;

/** How long a list that nobody closed is told at least after its changeover is over, ms: a day, so that each shift was told it once. Chosen here. */
export const LIST_TOLD_MS = 24 * 3_600_000;

/** Since when a changeover is over, ms since 1970: released, cancelled, or followed by another on its line; null while it goes on. */
export function overSince(
  { changing, changeovers }: Pick<ChangeState, 'changing' | 'changeovers'>,
  changeover: Changeover,
): number | null {
  const { line, releasedMs, dropped } = changeover;
  if (changing.get(line) === changeover.changeover) return null;
  const ended = releasedMs ?? dropped?.atMs ?? null;
  if (ended !== null) return ended;
  const ofLine = [...changeovers.values()].filter((each) => each.line === line);
  return ofLine[ofLine.indexOf(changeover) + 1]?.beganMs ?? changeover.beganMs;
}

/**
 * True for a list that waits to be closed: that nobody closed, and whose changeover, where it is of one, goes on, is over for less than a day, or is
 * in no handover yet that was signed since, as over a weekend.
 */
export function isListOpen(
  state: Pick<ChangeState, 'changing' | 'changeovers'> & HandoverState,
  list: Pick<Checklist, 'closedMs' | 'changeover' | 'line'>,
  nowMs: number,
): boolean {
  if (list.closedMs !== null) return false;
  const changeover = state.changeovers.get(list.changeover ?? '');
  const overMs = changeover ? overSince(state, changeover) : null;
  if (overMs === null || nowMs - overMs < LIST_TOLD_MS) return true;
  return !(state.handovers.get(list.line) ?? []).some(({ atMs }) => atMs > overMs);
}

/**
 * True where no signature of a list can be taken back any more: its changeover is released, or the list, where it is of none that counts, is closed.
 */
export function isSignedForGood(
  { changeovers }: Pick<ChangeState, 'changeovers'>,
  { changeover, closedMs }: Pick<Checklist, 'changeover' | 'closedMs'>,
): boolean {
  const its = changeovers.get(changeover ?? '');
  return its === undefined || isDropped(its) ? closedMs !== null : its.releasedMs !== null;
}

type Measured = Changeover['measured'][number];

/** Takes it out. Cost: one walk over all lists and changeovers. */
export function forgetAnswers(state: Pick<ChangeState, 'checklists' | 'changeovers'>, nowMs: number): void {
  for (const [id, list] of state.checklists)
    if (list.answers.size > 0 && isOver(state, list, nowMs))
      state.checklists.set(id, { ...list, answers: new Map() });
  // What is not released may yet be cancelled, and what was measured in it does not count then. One that was cancelled is kept whole, whether another
  // tablet released it or may be found to have: a lead says which counts. Few are.
  const isReleased = ({ releasedMs, dropped }: Changeover) => releasedMs !== null && dropped === null;
  const released = [...state.changeovers.values()].filter(isReleased);
  const newest = newestMeasured(released);
  for (const [id, changeover] of state.changeovers) {
    if (!isReleased(changeover) || !isLongAgo(changeover.releasedMs, nowMs)) continue;
    const measured = changeover.measured.filter((each) => newest.has(each));
    if (measured.length < changeover.measured.length || changeover.looked.length > 0)
      state.changeovers.set(id, { ...changeover, measured, looked: [] });
  }
}

const isLongAgo = (endedMs: number | null, nowMs: number) =>
  endedMs !== null && nowMs - endedMs >= OVER_AFTER_MS;

/** A list that was closed long ago, in a changeover that was released long ago or in none: a signature under it stays for good. */
function isOver({ changeovers }: Pick<ChangeState, 'changeovers'>, list: Checklist, nowMs: number): boolean {
  const changeover = list.changeover === null ? undefined : changeovers.get(list.changeover);
  const isOfNone = changeover === undefined || isDropped(changeover);
  return isLongAgo(list.closedMs, nowMs) && (isOfNone || isLongAgo(changeover.releasedMs, nowMs));
}

/** The newest measurements of each part; of one moment all. */
function newestMeasured(changeovers: readonly Changeover[]): ReadonlySet<Measured> {
  const all = changeovers.flatMap(({ measured }) => measured);
  const last = new Map<string, number>();
  for (const { part, atMs } of all) last.set(part, Math.max(atMs, last.get(part) ?? atMs));
  return new Set(all.filter(({ part, atMs }) => last.get(part) === atMs));
}
