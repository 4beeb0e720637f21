// What the line looks like now, as far as the log says. Only the fold writes it; nobody stores it twice.
// Method: maps of frozen records; the fold replaces records and never changes one, so that a copy of the maps is a snapshot.
// A deep tree of nested maps was refused: copying it for every late entry of another tablet would cost more than folding.

import type { ClockReading } from '../log/entry.ts';
import type { AgeLimit } from './age-limit.ts';
import type { KnownBadge } from './badge.ts';
import type { Block } from './blocks.ts';
import type { Exposure } from './exposure.ts';
import type { FeederType, LineTape, TypedFeeder } from './feeder-types.ts';
import type { PayloadOf } from './kinds.ts';
import type { VerdictReason } from './kinds-reels.ts';
import { feedersOf, type LaneMark } from './lanes.ts';
import type { WithdrawnMaker } from './maker-lists.ts';
import type { MoistureRuling, PartFacts } from './moisture-rules.ts';
import { emptyPanels, type PanelState } from './panel-state.ts';
import { emptyRights, type RightsState } from './rights.ts';
import { type ChangeState, emptyChange } from './state-change.ts';
import { emptyFeeders, type FeederState } from './state-feeders.ts';
import { emptyHandovers, type HandoverState } from './state-handover.ts';
import type { Finished, FullReel, Instead, Ledger, SkipsSeen } from './state-ledger.ts';
import { emptyRunOuts, type RunOutState } from './state-run-outs.ts';
import { emptyStations, type StationState } from './station-state.ts';
import { emptyStore, type StoreState } from './store-state.ts';
import type { Tallied } from './tally.ts';
import type { TaughtRule } from './taught-rule.ts';
import type { ConflictKind, CountBasis, PackageKind, Role, StopReason } from './vocabulary.ts';

export type { CartPlace, Changeover, Checklist, KeptPlan, StepAnswer } from './state-change.ts';

/** Who belongs to the plant; `pin` verifies a PIN away from the server, null where none is set. */
export interface Person extends KnownBadge {
  readonly person: string;
  readonly name: string;
  readonly role: Role;
  /** A PIN whose check lies outside the log: its name, and the tablet that set it. */
  readonly pinSet?: { readonly pin: string; readonly tablet: string };
  /** The language they chose, of BCP 47; absent where they chose none. */
  readonly language?: string;
  /** What checks the PIN, as older versions wrote it. */
  readonly pin: { readonly salt: string; readonly hash: string; readonly rounds: number } | null;
  /** Set where the newest entry about this person would have left nobody who may add people: the removal or the lower role did not count. */
  readonly stays?: 'removed' | 'role';
}

/** A tablet, and every life of its database that the log knows. */
export interface Tablet {
  readonly tablet: string;
  readonly name: string;
  readonly app: string;
  readonly epochs: readonly string[];
}

export type { FeederWork, Pack, ReadyFeeder } from './state-feeders.ts';
export type { Finished, FullReel, Joint, Ledger, SkipsSeen } from './state-ledger.ts';

/** A line as it was last described: machines, banks, positions. */
export type Line = Readonly<PayloadOf<'line.defined'>>;
/** The plant by name, and the zone of its new lines. */
export type PlantName = Readonly<PayloadOf<'plant.named'>>;
/** The one key of `FloorState.plant`. */
export const THE_PLANT = 'plant';
/** The figures and rules of a line as they were last set. */
export type LineRules = Readonly<PayloadOf<'line.ruled'>>;
/** When a line works, as it was last entered. */
export type LineWeeks = Readonly<PayloadOf<'line.calendar-ruled'>>;
/** Whether and how long pictures of labels are kept, as it was last entered. */
export type PictureRule = Readonly<Omit<PayloadOf<'line.pictures-ruled'>, 'line'>>;
/** A size of labels as it was last entered. */
export type LabelSize = Readonly<PayloadOf<'labels.sized'>>;
/** A feeder as it was last described. */
export type Feeder = Readonly<PayloadOf<'feeder.known'>>;
/** What one product side wants on each slot, in one revision; it never changes once taken, but for makers withdrawn since. */
export type Setup = Readonly<PayloadOf<'setup.taken'>> & {
  readonly takenMs: number;
  readonly withdrawn?: readonly WithdrawnMaker[];
};

/** Where a run stands. */
export type RunPhase = 'running' | 'stopped' | 'ended';

/** A job being built, and how far it is. */
export interface Run extends Tallied {
  readonly run: string;
  readonly line: string;
  readonly setup: string;
  readonly product: string;
  readonly panelsWanted: number;
  readonly panelSeconds: number;
  readonly panelSd: number;
  readonly panelPrefix: string | null;
  /** Panels counted so far. */
  readonly done: number;
  /** Boards entered as skipped so far, and on how many of the panels somebody said. */
  readonly skips: SkipsSeen;
  /** The latest words on skipped boards: [entry id, what it said], for taking one back; a run that ended long ago may keep none. */
  readonly said: readonly (readonly [entry: string, seen: SkipsSeen])[];
  /** Panels of `done` that were scrapped: they took their parts, and as many more are to be built. */
  readonly scrapped: number;
  /** The latest scrapped panels: [entry id, panels], for taking one back. */
  readonly scraps: readonly (readonly [entry: string, panels: number])[];
  readonly phase: RunPhase;
  readonly startedMs: number;
  /** When the present phase began. */
  readonly sinceMs: number;
  readonly stopReason: StopReason | null;
  /** The latest counts, newest last: [entry id, ms, panels added, tally after it]. Enough for the panel time and for taking one back; of a run that ended long ago the last ones alone. */
  readonly counts: readonly (readonly [entry: string, ms: number, add: number, tally: number])[];
  /** Stops since the start: [from, to] in ms; the last may be open (to = null). `isSaid`: true where a person said when it began. */
  readonly stops: readonly (readonly [fromMs: number, toMs: number | null, isSaid?: true])[];
  readonly serials: number;
  readonly lastSerial: string | null;
}

/** One tape on a slot: what the label said when it was joined. */
export interface Tape {
  /** The reel's own id, else `~` and the id of the entry that first named it. */
  readonly reel: string;
  readonly part: string;
  /** The part that the slot wanted then, in `setup`: a reel that a lead cleared stands in for it there, and only there. */
  readonly forPart: string | null;
  readonly setup: string;
  readonly supplierPart: string | null;
  readonly lot: string | null;
  readonly dateCode: string | null;
  /** Parts on it when it was joined, null where nobody knows. */
  readonly count: number | null;
  readonly sd: number;
  readonly basis: CountBasis;
  /** The entry that put it here. */
  readonly entry: string;
  readonly atMs: number;
  /** Panels done in the run when it was joined. */
  readonly fromPanels: number;
  /** The verdict that held it, where a lead cleared it; absent for a reel that was accepted. */
  readonly cleared?: string;
  /** What it comes in; absent for tape. */
  readonly comesIn?: Exclude<PackageKind, 'tape'>;
}

/** What is on one slot. `line`: the one that has the machine, whichever lane of its conveyor the reel was put on for. */
export interface SlotState {
  readonly line: string;
  readonly slot: string;
  readonly feeder: string | null;
  /** Running tape first, joined ones behind it. Never empty. */
  readonly tapes: readonly Tape[];
  /** Placements taken from `tapes` before the present run's part of the count. */
  readonly usedBefore: number;
  readonly sinceRun: string | null;
  readonly sinceDone: number;
  readonly sinceSkips: SkipsSeen;
  /** Where the runs of the conveyor's other lanes stood then; empty or absent where none built from the slot. */
  readonly sinceLanes?: readonly LaneMark[];
  readonly ledger: Ledger;
  /** The newest entry that changed this slot. */
  readonly entry: string;
  readonly atMs: number;
  /** What was here before that entry, for taking it back; only one step deep is kept. */
  readonly before: SlotState | null;
  /** Only of what may come back: what it would change at the slots used in turn with it. */
  readonly instead?: readonly Instead[];
  /** Only of what stands: what it would change there, had nothing stood here since it was put on. */
  readonly without?: readonly Instead[];
}

/** A reel as it was last seen, on a slot or off the line (`at` null). */
export interface Reel {
  readonly reel: string;
  readonly part: string | null;
  readonly supplierPart: string | null;
  readonly lot: string | null;
  readonly dateCode: string | null;
  readonly count: number | null;
  readonly sd: number;
  readonly basis: CountBasis;
  readonly at: { readonly line: string; readonly slot: string } | null;
  /** Where it was put off the line; absent where nobody said. Does not count while it stands on a slot. */
  readonly place?: string;
  /** Set where it came off a slot uncounted: the next count of it tells what the feeder lost. */
  readonly cameOff?: Omit<Finished, 'entry' | 'atMs' | 'endParts' | 'endSd' | 'told'> | null;
  /** Set where it was used up long ago and came back, or was cut off one that was: its floor life until then is not known (gone-reels.ts). */
  readonly gone?: true;
}

/** A verdict that waits for a lead. */
export interface Hold {
  readonly entry: string;
  readonly facts: PayloadOf<'reel.verified'>;
  readonly who: string | null;
  readonly atMs: number;
  readonly reasons: readonly VerdictReason[];
}

/** A walk that checks every loaded slot again; `seen` holds the slots checked so far. */
export interface Sweep {
  readonly sweep: string;
  readonly line: string;
  readonly startedMs: number;
  readonly seen: readonly string[];
  readonly endedMs: number | null;
}

/** Two entries that cannot both be true, until a lead settles it. */
export interface Conflict {
  readonly conflict: string;
  readonly kind: ConflictKind;
  readonly line: string;
  readonly slots: readonly string[];
  /** The line of each of `slots`; one reel can be on slots of two lines. */
  readonly lines: readonly string[];
  readonly reel: string | null;
  /** The entries that contradict each other, in folding order; for a reel on two slots, in the order of `slots`. */
  readonly entries: readonly string[];
  /** For a slot loaded twice: what either entry would leave there; for a splice onto a slot that was unloaded: what the splice left. */
  readonly choices: readonly SlotState[];
  readonly atMs: number;
}

/** The floor as the log says. */
export interface FloorState
  extends PanelState,
    RightsState,
    StationState,
    StoreState,
    FeederState,
    ChangeState,
    HandoverState,
    RunOutState {
  /** Empty where nobody named it. */
  readonly plant: Map<string, PlantName>;
  readonly tablets: Map<string, Tablet>;
  readonly people: Map<string, Person>;
  /** Keys that mark badges, by name: 32 bytes, base64url. */
  readonly badgeKeys: Map<string, string>;
  readonly lines: Map<string, Line>;
  /** Lanes that were taken away again, as they were told: what was built on them stays theirs. `hasBuilt`: a run was begun there. */
  readonly lanesGone: Map<string, Line & { readonly hasBuilt: boolean }>;
  readonly rules: Map<string, LineRules>;
  /** Line -> when it works, where somebody entered it since the shifts of its rules last changed. */
  readonly calendars: Map<string, LineWeeks>;
  /** Line -> the highest temperature (°C) and relative humidity (%) of its floor, where somebody entered them. */
  readonly climates: Map<string, { readonly celsius: number; readonly humidity: number }>;
  /** Line -> minutes without a touch after which whoever is signed in is signed out, where somebody set them. */
  readonly idles: Map<string, number>;
  /** Line -> whether pictures of labels are kept, for how many days and in how much room, where somebody set it. */
  readonly pictureRules: Map<string, PictureRule>;
  readonly feeders: Map<string, Feeder>;
  readonly feederTypes: Map<string, FeederType>;
  /** Feeder -> its type and its own tape lengths, where somebody said. */
  readonly typed: Map<string, TypedFeeder>;
  /** Line -> trailer and leader of its tapes, where somebody said. */
  readonly tapeRules: Map<string, LineTape>;
  /** Rule -> the newest version of a site rule for labels that follow no standard. */
  readonly labelRules: Map<string, TaughtRule>;
  /** Supplier part -> site parts that it stands for, by hand or by any setup; whether it may be used here says `isApprovedMaker()`. */
  readonly approvals: Map<string, readonly string[]>;
  /** Of these, what was approved by hand: it holds for every setup that has no list of its own. */
  readonly approvedByHand: Map<string, readonly string[]>;
  /** Line -> how old parts may be by their date code, class by class. */
  readonly ageLimits: Map<string, readonly AgeLimit[]>;
  /** Reel -> the day after which it must not be used, `YYYY-MM-DD`, where a label said so. */
  readonly expiries: Map<string, string>;
  readonly setups: Map<string, Setup>;
  /** Line -> setup id that it is being made ready for or runs. */
  readonly chosen: Map<string, string>;
  readonly runs: Map<string, Run>;
  /** Line -> run that is not ended. */
  readonly current: Map<string, string>;
  /** `slotKey` -> what is there; empty slots are absent. */
  readonly slots: Map<string, SlotState>;
  /** `slotKey` -> what the newest unload took off, for taking it back. */
  readonly takenOff: Map<string, { readonly entry: string; readonly was: SlotState }>;
  readonly reels: Map<string, Reel>;
  /** Reel -> its floor life so far; reels that are not moisture-sensitive are absent. */
  readonly exposures: Map<string, Exposure>;
  readonly holds: Map<string, Hold>;
  readonly blocks: Map<string, Block>;
  readonly sweeps: Map<string, Sweep>;
  readonly conflicts: Map<string, Conflict>;
  /** Entry -> what it made contradict no more: told again where it is taken back. The newest ones are kept. */
  readonly mended: Map<string, readonly Conflict[]>;
  readonly corrected: Set<string>;
  /** Line -> people who share its splices; one where nobody said. */
  readonly crews: Map<string, number>;
  /** Part -> what finished reels showed of its losses, oldest first. */
  readonly finished: Map<string, readonly Finished[]>;
  /** Part -> a full reel of it, measured or weighed. */
  readonly fullReels: Map<string, FullReel>;
  /** Setup -> boards skipped on its panels, as entered in all of its runs. */
  readonly skips: Map<string, SkipsSeen>;
  /** Line -> parts that a splice costs by width of tape (null: every other), where somebody entered them. */
  readonly spliceCosts: Map<string, PayloadOf<'line.splices-ruled'>['costs']>;
  /** Part -> what is known of its package, where somebody described it. */
  readonly parts: Map<string, PartFacts>;
  /** `MOISTURE_RULES` -> the plant's own values of the moisture standard; empty where it entered none. */
  readonly moisture: Map<string, MoistureRuling>;
  /** Reel -> the time on its label, hours (level 6), and the entry that told it. */
  readonly labelTimes: Map<string, { readonly hours: number; readonly entry: string }>;
  /** Id that the plant gave a package -> what the log called it before. */
  readonly named: Map<string, string>;
  /** `printKey` -> how often that label was given to a printer, and when last. */
  readonly prints: Map<string, { readonly times: number; readonly atMs: number }>;
  /** Sizes of labels that the plant entered, by name. */
  readonly labelSizes: Map<string, LabelSize>;
}

/** The state before any entry. */
export function emptyState(): FloorState {
  return {
    ...emptyPanels(),
    ...emptyStations(),
    ...emptyRights(),
    ...emptyStore(),
    ...emptyChange(),
    ...emptyHandovers(),
    ...emptyRunOuts(),
    plant: new Map(),
    ...emptyFeeders(),
    tablets: new Map(),
    people: new Map(),
    badgeKeys: new Map(),
    lines: new Map(),
    lanesGone: new Map(),
    rules: new Map(),
    calendars: new Map(),
    climates: new Map(),
    idles: new Map(),
    pictureRules: new Map(),
    feeders: new Map(),
    feederTypes: new Map(),
    typed: new Map(),
    tapeRules: new Map(),
    labelRules: new Map(),
    approvals: new Map(),
    approvedByHand: new Map(),
    ageLimits: new Map(),
    expiries: new Map(),
    setups: new Map(),
    chosen: new Map(),
    runs: new Map(),
    current: new Map(),
    slots: new Map(),
    takenOff: new Map(),
    reels: new Map(),
    exposures: new Map(),
    holds: new Map(),
    blocks: new Map(),
    sweeps: new Map(),
    conflicts: new Map(),
    mended: new Map(),
    corrected: new Set(),
    crews: new Map(),
    finished: new Map(),
    fullReels: new Map(),
    skips: new Map(),
    spliceCosts: new Map(),
    parts: new Map(),
    moisture: new Map(),
    labelTimes: new Map(),
    named: new Map(),
    prints: new Map(),
    labelSizes: new Map(),
  };
}

/** A copy that later folding does not touch. Cost: one pointer a record. */
export function copyState(state: FloorState): FloorState {
  const copy: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(state))
    copy[key] = value instanceof Set ? new Set(value) : new Map(value);
  return copy as unknown as FloorState; // same keys, same kinds of container
}

/** Where a slot stands in the maps: `line/slot`. */
export const slotKey = (line: string, slot: string): string => `${feedersOf(line)}/${slot}`;

/** Where a warning's need stands in the maps. */
export function needKey(line: string, slot: string, need: string): string {
  return `${slotKey(line, slot)}#${need}`;
}

/** Position of the newest folded entry; with the state it makes a snapshot. */
export interface FoldPosition {
  readonly hlc: ClockReading;
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
}
