// Half a scan that outlives the browser: the wells of the task in hand are kept on the tablet and come back after a reload, for the person
// who had scanned them and for nobody else. Refused: keeping them in the log, where nothing is said until there is a verdict.

import { effect } from '@preact/signals';
import { type Desk, emptyDesk } from '../../../shared/desk/model.ts';
import type { App } from '../app.ts';
import { unlessAwaited } from '../device/awaited.ts';
import { keep, readKept } from '../store/preferences.ts';
import type { DeskRun } from './desk.ts';
import { type LeftDesk, longestInHandMs } from './state.ts';

const KEY = 'desk';

/** What is kept of a desk. */
interface KeptDesk {
  readonly person: string | null;
  readonly line: string | null;
  readonly atMs: number;
  readonly desk: Kept;
  /** What was left on the other line of the tablet, and when; absent where an older version kept it, which knew of no moment either. */
  readonly left?: readonly (readonly [line: string, desk: Kept, atMs?: number])[];
}

type Kept = Pick<Desk, 'slot' | 'atSlot' | 'feeder' | 'reel' | 'partial' | 'oldSeen' | 'old'>;

interface Now {
  readonly person: string | null;
  readonly line: string | null;
  readonly nowMs: number;
}

const isEmpty = ({ slot, feeder, reel, partial }: Kept) =>
  slot === null && feeder === null && reel === null && partial === null;

/** The desk that comes back; null where nothing was kept for this person on this line, or it is too old. */
export function deskFrom(kept: KeptDesk | null, now: Now): Desk | null {
  return isTheirs(kept, now) && kept.line === now.line ? backOf(kept.desk, kept.atMs) : null;
}

/** What comes back on the lines that were left for another, each in its turn. */
export function leftFrom(
  kept: KeptDesk | null,
  now: Now,
): readonly (readonly [line: string, left: LeftDesk])[] {
  if (!isTheirs(kept, now)) return [];
  return (kept.left ?? []).flatMap(([line, desk, atMs = kept.atMs]) => {
    const back = now.nowMs - atMs <= longestInHandMs ? backOf(desk, atMs) : null;
    return back === null || line === now.line ? [] : [[line, { desk: back, atMs }] as const];
  });
}

function isTheirs(kept: KeptDesk | null, now: Now): kept is KeptDesk {
  if (kept === null || kept.person === null || kept.person !== now.person) return false;
  return now.nowMs - kept.atMs <= longestInHandMs;
}

function backOf(desk: Kept, atMs: number): Desk | null {
  return isEmpty(desk) ? null : { ...emptyDesk, ...desk, told: { tell: 'came-back', atMs } };
}

function keptOf({ slot, atSlot, feeder, reel, partial, oldSeen, old }: Desk): Kept {
  return { slot, atSlot, feeder, reel, partial, oldSeen, old };
}

/** Brings back what was kept and keeps what is scanned from now on; what came back waits until its person says to go on. */
export async function keepDesk(app: App, run: DeskRun): Promise<void> {
  const { cache } = app.store;
  const kept = await readKept<KeptDesk>(cache, KEY);
  const isFresh = isEmpty(run.desk.peek()) && run.shown.peek() === null;
  const now = { person: app.person.peek()?.person ?? null, line: app.line.peek(), nowMs: app.clock.nowMs() };
  const back = isFresh ? deskFrom(kept, now) : null;
  if (back) run.desk.value = back;
  run.left.value = new Map([...leftFrom(kept, now), ...run.left.peek()]);
  let last = '';
  const keepNow = () => {
    const desk = keptOf(run.desk.peek());
    const person = app.person.peek()?.person ?? null;
    const line = app.line.peek();
    const left = [...run.left.peek()].map(
      ([other, { desk: waits, atMs }]) => [other, keptOf(waits), atMs] as const,
    );
    const text = JSON.stringify([person, line, desk, left]);
    if (text === last) return;
    last = text;
    void keep(cache, KEY, { person, line, atMs: app.clock.nowMs(), desk, left } satisfies KeptDesk);
  };
  effect(() => {
    app.person.value;
    app.line.value;
    run.left.value;
    // What is in hand is kept at once; that nothing is any more, once its verdict is drawn.
    if (isEmpty(run.desk.value)) unlessAwaited(keepNow);
    else keepNow();
  });
  // A page that goes away draws nothing more.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') keepNow();
  });
  addEventListener('pagehide', keepNow);
}
