// What a handover is signed with: the list as it is at that moment, what it rests on, and the entries.

import { buildingOn } from '../../../../shared/floor/building.ts';
import { lastHandover } from '../../../../shared/floor/held-at-handover.ts';
import type { DraftEntry, PayloadOf } from '../../../../shared/floor/kinds.ts';
import type { HandedKnown, HandedSync } from '../../../../shared/floor/kinds-handover.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Handed } from '../../../../shared/floor/state-handover.ts';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { type OpenList, openNow } from '../../../../shared/handover/open.ts';
import { lineOutlook, type Outlook } from '../../../../shared/outlook/line.ts';
import type { SyncStatus } from '../../sync/ports.ts';

/** When a line is looked at; what was open at a handover is left out. */
interface Look {
  readonly line: string;
  readonly nowMs: number;
  readonly without?: Handed | undefined;
}

/** What is open on a line now. */
export function lookOpen(floor: FloorState, asked: Look): OpenList {
  return openWith(floor, asked, outlookNow(floor, asked));
}

/** What is open on a line, by the outlook that the watch over it has; another is made only where the watch has none of what is built. */
export function lookOpenBy(floor: FloorState, watched: Outlook | null, asked: Look): OpenList {
  const run = buildingOn(floor, asked.line);
  if (run === null) return openWith(floor, asked, null);
  const isOfRun = watched?.line === asked.line && watched.run.run === run.run;
  return openWith(floor, asked, isOfRun ? watched : outlookNow(floor, asked));
}

function outlookNow(floor: FloorState, { line, nowMs }: Look): Outlook | null {
  return lineOutlook(floor, line, { nowMs, calendar: lineCalendar(floor, line, nowMs) });
}

function openWith(floor: FloorState, { line, nowMs, without }: Look, outlook: Outlook | null): OpenList {
  return openNow(floor, { line, nowMs, outlook }, without ?? null);
}

/** Which dialog of the handover is open; for taking over, which handover it is about. */
export type Over = { readonly does: 'hand' } | { readonly does: 'take'; readonly handover: string };

/** The dialog as it stays open: none for a handover that was taken over or replaced meanwhile. `waits`: the handover that nobody has taken over yet. */
export function stillOver(over: Over | null, waits: Handed | null): Over | null {
  return over?.does === 'take' && over.handover !== waits?.handover ? null : over;
}

/** True while nobody has taken over this handover and no newer one stands. */
export function isUntaken(floor: FloorState, { line, handover }: Pick<Handed, 'line' | 'handover'>): boolean {
  const last = lastHandover(floor, line);
  return last?.handover === handover && last.taken === null;
}

/** How a tablet stands to its server. `missing`: entries of the log that have not come yet. */
export interface Standing {
  readonly status: SyncStatus | null;
  readonly missing: number;
}

/** What a list rests on. */
export function knownOf(
  { status, missing }: Standing,
  { spliceMs, lifeMs }: OpenList,
  atMs: number,
): HandedKnown {
  return {
    atMs,
    sync: syncOf(status, missing),
    heardMs: status?.lastAnswerMs ?? null,
    toSend: status?.backlog ?? 0,
    missing,
    spliceMs,
    lifeMs,
  };
}

function syncOf(status: SyncStatus | null, missing: number): HandedSync {
  if (status === null || status.phase === 'alone') return 'alone';
  if (status.phase === 'follower') return 'other-window';
  return status.phase === 'live' && status.backlog === 0 && missing === 0 ? 'in-step' : 'behind';
}

/** Who signs, and where the PIN was checked. */
type Signer = Pick<PayloadOf<'shift.handed'>, 'by' | 'checked'>;

/** The signature of the lead going off, over all that is open now. */
export function handedDraft(
  floor: FloorState,
  asked: Look & { readonly handover: string; readonly note: string; readonly standing: Standing },
  signer: Signer,
): DraftEntry & { readonly kind: 'shift.handed' } {
  const { line, nowMs, handover, note, standing } = asked;
  const list = lookOpen(floor, asked);
  const run = floor.current.get(line) ?? null;
  const known = knownOf(standing, list, nowMs);
  const panels = run === null ? null : (floor.runs.get(run)?.done ?? null);
  const left = [...list.items];
  return {
    kind: 'shift.handed',
    payload: { handover, line, run, panels, note: note.trim(), left, more: list.more, known, ...signer },
  };
}

/** The signature of the lead coming on, over what came up since. */
export function takenDraft(
  floor: FloorState,
  asked: { readonly handed: Handed; readonly nowMs: number; readonly standing: Standing },
  signer: Signer,
): DraftEntry & { readonly kind: 'shift.taken' } {
  const { handed, nowMs, standing } = asked;
  const { handover, line } = handed;
  const list = lookOpen(floor, { line, nowMs, without: handed });
  const known = knownOf(standing, list, nowMs);
  return {
    kind: 'shift.taken',
    payload: { handover, line, came: [...list.items], more: list.more, known, ...signer },
  };
}
