// Facts of a handover as the log tells them: what was open, one after the other, and what the list rests on.

import type { HandedItem, HandedKnown } from '../../../../shared/floor/kinds-handover.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Entry, Json } from '../../../../shared/log/entry.ts';
import { formatCount, formatDay } from '../../words/words.ts';
import { handedLine, handedText, knownText } from './handover-text.ts';
import { zoneOf } from './names.ts';
import { nothing, type Say } from './plain-sayings.ts';

function momentOf(entry: Entry, floor: FloorState): (ms: number) => string {
  const line = entry.payload['line'];
  const zone = zoneOf(floor, typeof line === 'string' ? line : null);
  return (ms) => formatDay(ms, zone);
}

/** What was open. */
export const sayHanded: Say = (value: Json, entry, floor) => {
  if (!Array.isArray(value) || value.length === 0) return null;
  const known = entry.payload['known'] as unknown as HandedKnown; // checked when it was written
  const moment = momentOf(entry, floor);
  return (value as unknown as readonly HandedItem[]) // as above
    .map((item) => handedLine(handedText(item, floor, { atMs: known.atMs, moment })))
    .join(' · ');
};

const sayKnown: Say = (value, entry, floor) =>
  value !== null && typeof value === 'object' && !Array.isArray(value)
    ? knownText(value as unknown as HandedKnown, momentOf(entry, floor)).join(' ')
    : null;

/** How the facts that only handovers have are told. */
export const handoverSayings = {
  handover: nothing,
  came: sayHanded,
  more: ((value) => (typeof value === 'number' && value > 0 ? formatCount(value) : null)) as Say,
  known: sayKnown,
} as const;
