// What a machine believes to be loaded: asked for where the link's file says so, or taken where the machine tells it by itself; into the log
// when it differs from what was told last, and every five minutes that it still says so.
// Refused: a report each time that it is asked, which a year's log would not hold.

import { createHash } from 'node:crypto';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import type { Now, WriteEntry } from '../station-desk.ts';
import type { Answered } from './ask.ts';
import type { Place } from './messages.ts';

/** It is asked so often, ms. */
export const ASK_EVERY_MS = 60_000;
/** After a word that something was loaded or taken out it is asked once that is over for so long, ms. */
const MOVED_QUIET_MS = 2_000;
/** A machine that did not answer is asked again after so long, ms. */
const ASK_AGAIN_MS = 300_000;
/** What it still says is told so often, ms. */
export const SAYS_AGAIN_MS = 300_000;
/** Places of one entry, and of one report. */
const PAGE = 200;
export const PLACES_MOST = 4_000;

type Row = NonNullable<PayloadOf<'machine.loaded'>['places']>[number];

/** What a machine said to be loaded. */
export interface Loaded {
  readonly places: readonly Place[];
  /** All of it was asked for and could be read. */
  readonly whole: boolean;
}

/** What is known of a machine's load. */
export interface LoadedDesk {
  /** Takes an answer; resolves when it is in the log. */
  readonly take: (loaded: Loaded, now: Now) => Promise<unknown>;
  /** Something was loaded or taken out. */
  readonly moved: (now: Now) => void;
  /** The machine is there to be asked. */
  readonly heard: (now: Now) => void;
  readonly tick: (now: Now) => void;
}

/** What it works with. `ask`: null where the link's file does not let it ask; `read`: an answer's load, or why it is none. */
export interface LoadedWorld {
  readonly station: string;
  readonly line: string;
  readonly write: WriteEntry;
  readonly slotOf: (place: Place) => string | null;
  readonly ask: (() => Promise<Answered>) | null;
  readonly read: (answer: Answered) => Loaded | string;
  readonly notice: (what: 'not-answered' | 'loads-cut', said: string, now: Now) => Promise<unknown>;
  readonly now: () => Now;
  readonly onFault: (error: unknown) => void;
}

/** Opens it. */
export function openLoaded(world: LoadedWorld): LoadedDesk {
  const { station, line, write, notice, onFault } = world;
  let told: { readonly report: string; atMs: number } | null = null;
  /** When to ask next, ms of `Now`; null: not before it is heard. */
  let askMs: number | null = null;
  let isAsking = false;

  const take = async (loaded: Loaded, now: Now): Promise<void> => {
    const rows = rowsOf(loaded.places, world.slotOf);
    const cut = rows.length > PLACES_MOST ? notice('loads-cut', String(rows.length), now) : null;
    const places = rows.slice(0, PLACES_MOST);
    const whole = loaded.whole && cut === null && rows.length > 0;
    const report = nameOf(places, whole);
    if (told?.report === report) {
      if (now.ms - told.atMs < SAYS_AGAIN_MS) return;
      told.atMs = now.ms;
      await write('machine.loaded', { station, line, report, page: 0, pages: 1, whole, places: null });
      return;
    }
    told = { report, atMs: now.ms };
    const pages = Math.max(1, Math.ceil(places.length / PAGE));
    const writing = Array.from({ length: pages }, (_, page) => {
      const some = places.slice(page * PAGE, (page + 1) * PAGE);
      return write('machine.loaded', { station, line, report, page, pages, whole, places: some });
    });
    await Promise.all([cut, ...writing]);
  };
  const askNow = async (): Promise<void> => {
    if (world.ask === null || isAsking) return;
    isAsking = true;
    const answer = await world.ask();
    isAsking = false;
    const now = world.now();
    const loaded = world.read(answer);
    askMs = now.ms + (typeof loaded === 'string' ? ASK_AGAIN_MS : ASK_EVERY_MS);
    await (typeof loaded === 'string' ? notice('not-answered', loaded, now) : take(loaded, now));
  };
  return {
    take,
    moved: ({ ms }) => {
      askMs = ms + MOVED_QUIET_MS;
    },
    heard: ({ ms }) => {
      askMs ??= ms;
    },
    tick: ({ ms }) => {
      if (askMs === null || ms < askMs || isAsking) return;
      askMs = ms + ASK_AGAIN_MS;
      askNow().catch(onFault);
    },
  };
}

/** Rows in one order, so that the same load has the same name; a place without any name is left out. */
function rowsOf(places: readonly Place[], slotOf: LoadedWorld['slotOf']): readonly Row[] {
  const rows = places.flatMap((place) => {
    const slot = slotOf(place);
    return slot === null ? [] : [{ slot, reel: place.reel, part: place.part, feeder: place.feeder }];
  });
  const text = (row: Row) => JSON.stringify([row.slot, row.reel, row.part, row.feeder]);
  return rows
    .map((row) => ({ row, key: text(row) }))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .map(({ row }) => row);
}

function nameOf(places: readonly Row[], whole: boolean): string {
  return createHash('sha256')
    .update(JSON.stringify([places, whole]))
    .digest('base64url')
    .slice(0, 16);
}
