// What the running desk works on, and what it shows of it.

import { type Signal, signal } from '@preact/signals';
import { type Desk, type DeskView, emptyDesk, type ReelInHand } from '../../../shared/desk/model.ts';
import type { OpenStep } from '../../../shared/desk/step-offer.ts';
import type { StepScan } from '../../../shared/floor/step-scan.ts';
import type { Verdict, VerifyAct } from '../../../shared/floor/vocabulary.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import type { Reason } from '../../../shared/verdict/reasons.ts';
import type { App } from '../app.ts';

/** A verdict as it is shown: its entry is durable. */
export interface ShownVerdict {
  readonly entry: string;
  readonly act: VerifyAct;
  readonly line: string;
  /** Null where a reel was refused before any slot was scanned. */
  readonly slot: string | null;
  readonly feeder: string | null;
  readonly reel: ReelInHand;
  /** What must be another one before the task goes on. */
  readonly bad: 'reel' | 'feeder';
  readonly atMs: number;
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
  readonly wanted: string | null;
  /** The next slot in walking order after an accepted load. */
  readonly next: string | null;
  /** After a load: true where every slot of the line has what it wants, or stands for another lane. */
  readonly isAllLoaded: boolean;
}

/** A scan step of a checklist that is next on the screen, and what becomes of a scan that is for it. */
export interface StepOnScreen extends OpenStep {
  readonly onScan: (judged: StepScan) => void;
}

/** Who gets what is no part of a verdict. */
export interface DeskOthers {
  readonly onBadge: (person: string) => void;
  readonly onPanel: (run: string, serial: string, scan: Scan) => void;
  /** A reel that the next product does not want was scanned on its slot, of the line that the desk was at: it comes out. */
  readonly onTakeOut: (at: { readonly line: string; readonly slot: string }, scan: Scan) => void;
}

/** Reads labels and judges reels: code that no screen needs to be drawn, so it comes in after the first one. */
export type Judgement = typeof import('../../../shared/desk/judgement.ts');

/** Older than this nobody stands in front of the slot any more: a shift, ms. */
export const longestInHandMs = 8 * 3_600_000;

/** What was in hand on a line when it was left for another. */
export interface LeftDesk {
  readonly desk: Desk;
  /** When it was left, ms since 1970. */
  readonly atMs: number;
}

/** The state of a running desk. */
export interface DeskState {
  readonly app: App;
  readonly others: DeskOthers;
  readonly desk: Signal<Desk>;
  readonly shown: Signal<ShownVerdict | null>;
  readonly busy: Signal<boolean>;
  readonly step: Signal<StepOnScreen | null>;
  /** Scans that came while an entry was being written, or before labels can be read. */
  readonly waiting: Scan[];
  /** What was in hand on lines that were left for another, by line. */
  readonly left: Signal<ReadonlyMap<string, LeftDesk>>;
  /** The line that `desk` is at; null before there is one. */
  line: string | null;
  judgement: Judgement | null;
  loading: Promise<void> | null;
}

/** A desk with nothing on it. */
export function openDesk(app: App, others: DeskOthers): DeskState {
  return {
    app,
    others,
    desk: signal<Desk>(emptyDesk),
    shown: signal<ShownVerdict | null>(null),
    busy: signal(false),
    step: signal<StepOnScreen | null>(null),
    waiting: [],
    left: signal<ReadonlyMap<string, LeftDesk>>(new Map()),
    line: app.line.peek(),
    judgement: null,
    loading: null,
  };
}

/** The floor and the line that the desk is at; null where there is no line yet. A check walks one line, whatever else the tablet serves. */
export function viewOf({ app, desk }: DeskState): DeskView | null {
  const line = app.line.value;
  if (line === null) return null;
  return { floor: app.store.floor(), line, beside: desk.peek().mode === 'work' ? app.beside.value : [] };
}

/** Ends the shown verdict: an accepted one goes on, a refused one keeps slot and feeder for the next reel. */
export function goOn(state: DeskState): void {
  const { shown } = state;
  const last = shown.value;
  shown.value = null;
  if (!last || last.verdict === 'accepted') return;
  const rest = last.bad === 'feeder' ? { feeder: null } : { reel: null, partial: null };
  changeDesk(state, last.line, (desk) => ({ ...desk, ...rest }));
}

/** True where nothing is in hand, and no check goes on either. */
export function isNothingInHand({ mode, slot, feeder, reel, partial }: Desk): boolean {
  return mode === 'work' && slot === null && feeder === null && reel === null && partial === null;
}

/** Lets what is in hand wait on a line that is left; nothing in hand leaves nothing there. */
export function leaveDesk({ app, left }: DeskState, line: string, desk: Desk): void {
  const next = new Map(left.peek());
  if (isNothingInHand(desk)) next.delete(line);
  else next.set(line, { desk, atMs: app.clock.nowMs() });
  left.value = next;
}

/** Changes what is in hand on a line, which may have been left for another meanwhile. */
export function changeDesk(state: DeskState, line: string, change: (desk: Desk) => Desk): void {
  const { desk, left, line: now } = state;
  if (line === now) desk.value = change(desk.value);
  else leaveDesk(state, line, change(left.peek().get(line)?.desk ?? emptyDesk));
}
