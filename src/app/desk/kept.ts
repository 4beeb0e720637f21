// Half a scan that outlives the browser: the wells of the task in hand are kept on the tablet and come back after a reload, for the person
// who had scanned them and for nobody else. Refused: keeping them in the log, where nothing is said until there is a verdict.

import { effect } from '@preact/signals';
import { type Desk, emptyDesk } from '../../../shared/desk/model.ts';
import type { App } from '../app.ts';
import { keep, readKept } from '../store/preferences.ts';
import type { DeskRun } from './desk.ts';

const KEY = 'desk';
/** Older than this nobody stands in front of the slot any more: a shift. */
const LONGEST_MS = 8 * 3_600_000;

/** What is kept of a desk. */
interface KeptDesk {
  readonly person: string | null;
  readonly line: string | null;
  readonly atMs: number;
  readonly desk: Pick<Desk, 'slot' | 'atSlot' | 'feeder' | 'reel' | 'partial' | 'oldSeen' | 'old'>;
}

const isEmpty = ({ slot, feeder, reel, partial }: KeptDesk['desk']) =>
  slot === null && feeder === null && reel === null && partial === null;

/** The desk that comes back; null where nothing was kept for this person on this line, or it is too old. */
export function deskFrom(
  kept: KeptDesk | null,
  now: { readonly person: string | null; readonly line: string | null; readonly nowMs: number },
): Desk | null {
  if (kept === null || kept.person === null || kept.person !== now.person || kept.line !== now.line)
    return null;
  if (isEmpty(kept.desk) || now.nowMs - kept.atMs > LONGEST_MS) return null;
  return { ...emptyDesk, ...kept.desk, told: { tell: 'came-back', atMs: kept.atMs } };
}

/** Brings back what was kept and keeps what is scanned from now on; what came back waits until its person says to go on. */
export async function keepDesk(app: App, run: DeskRun): Promise<void> {
  const { cache } = app.store;
  const kept = await readKept<KeptDesk>(cache, KEY);
  const isFresh = isEmpty(run.desk.peek()) && run.shown.peek() === null;
  const now = { person: app.person.peek()?.person ?? null, line: app.line.peek(), nowMs: app.clock.nowMs() };
  const back = isFresh ? deskFrom(kept, now) : null;
  if (back) run.desk.value = back;
  let last = '';
  effect(() => {
    const { slot, atSlot, feeder, reel, partial, oldSeen, old } = run.desk.value;
    const person = app.person.value?.person ?? null;
    const desk = { slot, atSlot, feeder, reel, partial, oldSeen, old };
    const text = JSON.stringify([person, desk]);
    if (text === last) return;
    last = text;
    void keep(cache, KEY, { person, line: app.line.peek(), atMs: app.clock.nowMs(), desk });
  });
}
