// What the state holds of stations: what each has told, and who counts on a line. Shapes only.

import type { PayloadOf } from './kinds.ts';
import type { Side, UnsureResult } from './vocabulary.ts';

/** Whiles in which a station stood that are kept of it. */
export const STOOD_KEPT = 64;

/** The highest total that is known of a device since it was switched on. */
export interface BootTotal {
  readonly boot: string;
  readonly total: number;
  /** What of it was counted in the line's newest run. */
  readonly run: string | null;
  readonly counted: number;
}

/** Panels that rose together: the totals `to - panels + 1` to `to` are the places `tally - panels + 1` to `tally` of the run. */
export interface Advance {
  readonly boot: string;
  readonly to: number;
  readonly run: string;
  readonly tally: number;
  readonly panels: number;
}

/** What a link did not take. */
export interface Noticed {
  readonly what: string;
  readonly said: string;
  readonly times: number;
  readonly atMs: number;
}

/** Where a machine and the log say different things of one tape: both are kept, and somebody looks. */
export interface Found {
  /** The machine's entry that it came of. */
  readonly entry: string;
  readonly what: 'tape-differs' | 'empty-early' | 'told-late' | 'life-expired' | 'life-restored';
  /** The line's slot; as the machine names it where the line has no such slot. */
  readonly slot: string;
  /** The reel as the machine has it, and as the log has it; null where one does not say. */
  readonly machine: string | null;
  readonly here: string | null;
  /** Parts left by the log's own count, and one deviation; null where that is not known or not what it is about. */
  readonly parts: number | null;
  readonly sd: number | null;
  readonly atMs: number;
}

/** A station as it was last described, and what it has told. */
export interface Station extends Readonly<PayloadOf<'station.known'>> {
  /** What people call it; null: by its own name. */
  readonly name: string | null;
  /** The link that speaks for it. */
  readonly tablet: string;
  /** The newest boot last. */
  readonly boots: readonly BootTotal[];
  readonly advances: readonly Advance[];
  /** Boots of other devices under its name: they do not count. */
  readonly foreign: readonly string[];
  /** When it was last heard, ms since 1970; null never. */
  readonly heardMs: number | null;
  /** Since when it is silent, as somebody told; null while it is not. */
  readonly silentSinceMs: number | null;
  /** As of SEMI E58; null where it never said. */
  readonly state: number | null;
  /** Whiles in which it was not working: [from, to] in ms, the last may be open (to = null), and the state. Newest last. */
  readonly stood: readonly (readonly [fromMs: number, toMs: number | null, code: number])[];
  /** What it has activated, and when it told; null where it never said. */
  readonly recipe: {
    readonly recipe: string;
    readonly revision: string | null;
    readonly atMs: number;
  } | null;
  readonly noticed: readonly Noticed[];
  /** Newest last. */
  readonly found: readonly Found[];
}

/** A count by hand on a line that a station counts. */
export interface HandCount {
  readonly entry: string;
  readonly run: string;
  readonly add: number;
}

/** What people and the station counted for one and the same while, and which of it stands. */
export interface BothCounts {
  readonly run: string;
  readonly atMs: number;
  readonly hand: number;
  readonly machine: number;
  readonly stands: 'hand' | 'machine';
}

/** The station that counts on a line. */
export interface Counter {
  readonly station: string;
  /** Since when, and who said so. */
  readonly sinceMs: number;
  readonly by: string | null;
  /** Hand counts that were added while it was silent, and may be replaced when it is back. */
  readonly standIn: readonly HandCount[];
  /** Panels that people counted in the newest silence beyond what another boot told of it: late words of the boot before are among them. */
  readonly covered: number;
  /** Hand counts of the line's newest run that stand beside it and were not added: how many panels, and the latest of them. */
  readonly beside: number;
  readonly besides: readonly HandCount[];
  /** Where both told of one while, newest last. */
  readonly both: readonly BothCounts[];
  /** Panels that it counted while nothing was being built; they are in no run. */
  readonly outside: number;
}

/** Faults of picking that a machine told of a slot while one run was built with one feeder there. */
export interface PickFaults {
  readonly run: string | null;
  readonly feeder: string | null;
  readonly times: number;
  /** When the first of them was, ms since 1970. */
  readonly sinceMs: number;
}

/** A place on a machine, and what the machine believes to be there. */
export type BelievedPlace = NonNullable<PayloadOf<'machine.loaded'>['places']>[number];

/** What a machine believes to be loaded, by its newest report that has come whole. */
export interface Believed {
  readonly line: string;
  readonly report: string;
  /** When it last said so, ms since 1970. */
  readonly atMs: number;
  /** A place that is not named is empty. */
  readonly whole: boolean;
  readonly places: readonly BelievedPlace[];
  /** Slot, as `placeKey` has it -> the reels that stood there by the scans when it last said so. */
  readonly seen: readonly (readonly [string, string])[];
}

/** A report of which pages are still to come. */
export interface BelievedPages {
  readonly report: string;
  readonly pages: number;
  readonly places: readonly BelievedPlace[];
  readonly next: number;
}

/** Answers of a link to its machine: whether it may, what it says where nobody can know, and what it said last. */
export interface Interlock {
  readonly on: boolean;
  readonly unsure: UnsureResult;
  /** The entry that said so; null before any. */
  readonly ruled: string | null;
  /** What each place was answered last, and when the newest was told; null before the first. */
  readonly last: { readonly atMs: number; readonly results: PayloadOf<'station.answered'>['results'] } | null;
}

/** A setup that a machine asks for. */
export interface SetupOffer {
  readonly line: string;
  readonly report: string;
  /** When it first asked for it, ms since 1970. */
  readonly atMs: number;
  /** As the machine calls it; null where it does not. */
  readonly recipe: string | null;
  readonly revision: string | null;
  readonly rows: PayloadOf<'setup.offered'>['wants'];
}

/** An offer of which pages are still to come. */
export interface SetupOfferPages {
  readonly report: string;
  readonly pages: number;
  readonly rows: PayloadOf<'setup.offered'>['wants'];
  readonly next: number;
}

/** The part of the floor's state that is about stations. */
export interface StationState {
  readonly stations: Map<string, Station>;
  /** `recipeKey` -> what an engineer said that it builds. */
  readonly recipes: Map<string, { readonly product: string; readonly side: Side }>;
  /** Line -> the station that counts there; absent: people count. */
  readonly counters: Map<string, Counter>;
  /** `slotKey` -> what a machine placed and spoiled there since the slot's ledger of that name began. */
  readonly partsUsed: Map<
    string,
    { readonly chain: string; readonly used: number; readonly spoiled: number }
  >;
  /** `slotKey` -> faults of picking there. */
  readonly pickFaults: Map<string, PickFaults>;
  /** Station -> what its machine believes to be loaded. */
  readonly believed: Map<string, Believed>;
  /** Station -> what its link may answer, where an engineer said; and what it answered last. */
  readonly interlocks: Map<string, Interlock>;
  /** `slotKey` -> the reel that was refused there last, `''` for one without an id; gone with the next reel that is let on. */
  readonly refused: Map<string, string>;
  /** Station -> the setup that its machine asks for, and the one that is coming in. */
  readonly offers: Map<string, SetupOffer>;
  readonly offerPages: Map<string, SetupOfferPages>;
  /** Station -> the report that is coming in. */
  readonly believedPages: Map<string, BelievedPages>;
}

/** The part before any entry. */
export function emptyStations(): StationState {
  return {
    stations: new Map(),
    recipes: new Map(),
    counters: new Map(),
    partsUsed: new Map(),
    pickFaults: new Map(),
    believed: new Map(),
    believedPages: new Map(),
    interlocks: new Map(),
    refused: new Map(),
    offers: new Map(),
    offerPages: new Map(),
  };
}
