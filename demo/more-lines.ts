// More lines of the invented plant: each is the same line playing a shift of its own, under names of its own. Method: the shift is played with
// another seed, what it names is renamed, and its chains are sealed anew. Refused: a simulation that knows several lines; its hands never meet.

import type { Entry, Json, JsonObject } from '../shared/log/entry.ts';
import { firstPrev } from '../shared/log/entry.ts';
import { compareEntries } from '../shared/log/order.ts';
import { sealEntry } from '../shared/log/seal.ts';
import { lineId, products } from './setups.ts';
import { openShiftPlay, type ShiftPlay, type ShiftSettings } from './simulate.ts';
import { beaconSetup } from './trays.ts';
import { openLanesPlay } from './two-lanes.ts';

/** The most lines that a demo has. */
export const MOST_LINES = 24;
/** The number of the plant's first line. */
const FIRST_NUMBER = 2;

/**
 * Plays lines on to a moment, ms since 1970; the same or later each time. Returns what came, line by line, not in folding order: all that is not told
 * yet and written before it, and more.
 */
export type LinesPlay = (endMs: number) => readonly Entry[];

/**
 * Opens the shifts of several lines. `lines`: 1 or more; the first is the plant's own, as `simulateShift` plays it.
 * `lanes`: a small line with a conveyor of two lanes stands beside them.
 */
export function openLinesPlay(
  settings: Omit<ShiftSettings, 'hours'>,
  lines: number,
  { lanes = false }: { readonly lanes?: boolean } = {},
): LinesPlay {
  const others = Array.from({ length: lines - 1 }, (_, at) => {
    const play = openShiftPlay({ ...settings, paste: false, seed: settings.seed + 7919 * (at + 1) });
    return newOf(play, renamedFor(FIRST_NUMBER + 1 + at));
  });
  const plays = [
    newOf(openShiftPlay(settings)),
    ...others,
    ...(lanes ? [newOf(openLanesPlay(settings))] : []),
  ];
  return (endMs) => plays.flatMap((playTo) => playTo(endMs));
}

/** The shifts of several lines as one log, in folding order; what they are made of as for `openLinesPlay`. */
export function simulateLines(
  settings: ShiftSettings,
  lines: number,
  beside: { readonly lanes?: boolean } = {},
): readonly Entry[] {
  const entries = openLinesPlay(settings, lines, beside)(settings.startMs + settings.hours * 3_600_000);
  return [...entries].sort(compareEntries);
}

/** Plays on, and returns only what came. */
function newOf(
  { entries, playTo }: Pick<ShiftPlay, 'entries' | 'playTo'>,
  named = (entry: Entry) => entry,
): LinesPlay {
  let given = 0;
  return (endMs) => {
    playTo(endMs);
    const fresh = entries.slice(given).map((entry) => named(entry));
    given = entries.length;
    return fresh;
  };
}

/** Things of which each line has its own: kind of name -> how it is told from the first line's. */
function renamer(number: number): (text: string) => string {
  const setups = new Set<string>([...products.map(({ setup }) => setup), beaconSetup.setup]);
  const own = `L${number}`;
  return (text) => {
    if (text === lineId) return own;
    if (text === `Line ${FIRST_NUMBER}`) return `Line ${number}`;
    if (text === 'Store') return `Store, line ${number}`;
    if (setups.has(text)) return `${text}-${own}`;
    if (/^R-\d+$/.test(text)) return text.replace('R-', `R-${number}-`);
    if (/^F-\d+$/.test(text)) return text.replace('F-', `F-${number}-`);
    // Runs, changes, sweeps and checklists are known by names of the log alone; entries by their tablet.
    return text.replace(/^(~?)demo0-/, `$1demo${number}-`);
  };
}

/** Facts whose value is a name of the log alone. */
const ownNames: readonly string[] = ['run', 'sweep', 'changeover', 'checklist', 'plan', 'containment'];

/** Gives each entry of a line, in its order, the names and the chain of another line. */
function renamedFor(number: number): (entry: Entry) => Entry {
  const rename = renamer(number);
  const value = (json: Json, name: string): Json => {
    if (typeof json === 'string') return ownNames.includes(name) ? `${json}-${number}` : rename(json);
    if (Array.isArray(json)) return json.map((each: Json) => value(each, name));
    if (json === null || typeof json !== 'object') return json;
    return Object.fromEntries(Object.entries(json).map(([key, each]) => [key, value(each, key)]));
  };
  const heads = new Map<string, string>();
  return ({ hash: _, ...entry }) => {
    const tablet = rename(entry.tablet);
    const payload = value(entry.payload, '') as JsonObject; // an object stays one
    const sealed = sealEntry({ ...entry, tablet, payload, prev: heads.get(tablet) ?? firstPrev });
    heads.set(tablet, sealed.hash);
    return sealed;
  };
}
