// Warnings of an outlook: raised once a level in the log, so that neither a reload nor another tablet forgets or repeats them; called out
// until somebody takes note.

import { needKey } from '../../../shared/floor/state.ts';
import { formatMoment } from '../../../shared/kit/moment.ts';
import { type Outlook, openWarnings, type SlotOutlook } from '../../../shared/outlook/line.ts';
import type { App } from '../app.ts';
import type { Alarm } from '../device/alarm.ts';

/** An unacknowledged warning calls again after this long. */
const CALL_EVERY_MS: Readonly<Record<'soon' | 'due' | 'late', number>> = {
  soon: 120_000,
  due: 45_000,
  late: 15_000,
};

/** The state of warning. */
export interface Warner {
  readonly app: App;
  readonly alarm: Alarm;
  /** Need and level -> when it last called, ms since 1970. */
  readonly calledAt: Map<string, number>;
  /** Needs and levels that were written down, or are being. */
  readonly raising: Set<string>;
}

const keyOf = ({ line }: Outlook, { slot, need, warning }: SlotOutlook) =>
  `${needKey(line, slot, need)}#${warning.level}`;

/** Makes ready to warn. */
export function createWarner(app: App, alarm: Alarm): Warner {
  return { app, alarm, calledAt: new Map(), raising: new Set() };
}

/** Raises what is new in an outlook. */
export function raiseNew(warner: Warner, next: Outlook, slot: SlotOutlook): void {
  if (slot.warning.announce && slot.warning.level !== 'quiet') void raise(warner, next, slot);
}

/** Calls for all that nobody has taken note of. */
export function callForOpen(warner: Warner, next: Outlook, nowMs: number): void {
  for (const slot of openWarnings(next)) callFor(warner, { next, slot, nowMs });
}

/** Writes a warning down once a level; two tablets may both do so, which says the same thing twice. */
async function raise({ app, raising }: Warner, next: Outlook, slot: SlotOutlook): Promise<void> {
  const { level } = slot.warning;
  const key = keyOf(next, slot);
  if (raising.has(key)) return;
  raising.add(key);
  const due = formatMoment(Math.round(slot.forecast.windowMs?.closes ?? slot.forecast.runOutMs.expected));
  const payload = { line: next.line, slot: slot.slot, need: slot.need, level, due };
  await app.store.append([{ kind: 'warning.raised', payload }], null).catch(() => raising.delete(key)); // tried again at the next look
}

function callFor(
  { alarm, calledAt }: Warner,
  { next, slot, nowMs }: { readonly next: Outlook; readonly slot: SlotOutlook; readonly nowMs: number },
): void {
  const { level } = slot.warning;
  if (level === 'quiet') return;
  const key = keyOf(next, slot);
  // A clock that the server set back makes nobody wait until it is as late as at the last call.
  if (Math.abs(nowMs - (calledAt.get(key) ?? Number.NEGATIVE_INFINITY)) < CALL_EVERY_MS[level]) return;
  calledAt.set(key, nowMs);
  alarm.call(level);
}
