// What the line looks like now, as far as the log says. Only the fold writes it; nobody stores it twice.
// Method: maps of frozen records; the fold replaces records and never changes one, so that a copy of the maps is a snapshot.
// A deep tree of nested maps was refused: copying it for every late entry of another tablet would cost more than folding.

import type { LabelRule } from '../labels/rules.ts';
import type { ClockReading } from '../log/entry.ts';
import type { Airing } from './airing.ts';
import type { Block } from './blocks.ts';
import type { ChecklistTemplate, Signature } from './checklist.ts';
import type { PayloadOf, VerdictReason } from './kinds.ts';
import { emptyPanels, type PanelState } from './panel-state.ts';
import type { Tallied } from './tally.ts';
import type { ConflictKind, CountBasis, Role, StopReason, WarningLevel } from './vocabulary.ts';

/** Who belongs to the plant; `pin` verifies a PIN away from the server, null where none is set. */
export interface Person {
  readonly person: string;
  readonly name: string;
  readonly role: Role;
  readonly badge: string;
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

/** A line as it was last described: machines, banks, positions. */
export type Line = Readonly<PayloadOf<'line.defined'>>;
/** The figures and rules of a line as they were last set. */
export type LineRules = Readonly<PayloadOf<'line.ruled'>>;
/** A feeder as it was last described. */
export type Feeder = Readonly<PayloadOf<'feeder.known'>>;
/** What one product side wants on each slot, in one revision; it never changes once taken. */
export type Setup = Readonly<PayloadOf<'setup.taken'>> & { readonly takenMs: number };

/** A site rule for labels, and who approved it when. */
export interface TaughtRule {
  readonly rule: LabelRule;
  readonly by: string | null;
  readonly atMs: number;
}

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
  readonly phase: RunPhase;
  readonly startedMs: number;
  /** When the present phase began. */
  readonly sinceMs: number;
  readonly stopReason: StopReason | null;
  /** The latest counts, newest last: [entry id, ms, panels added, tally after it]. Enough for the panel time and for taking one back. */
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
}

/** What a splice showed: after `placed` placements the parts left up to the old tape's end lay between `low` and `high`. */
export interface Joint {
  readonly placed: number;
  readonly low: number;
  readonly high: number;
  /** Parts on the tape joined then, null where nobody knows, and the variance of that. */
  readonly tail: number | null;
  readonly tailVariance: number;
}

/** Everything put on a slot since its last true count. */
export interface Ledger {
  /** Names the ledger: the entry of the load or of the count that began it. */
  readonly chain: string;
  /** Parts put on in all, null where a count is unknown; `variance` of that. */
  readonly parts: number | null;
  readonly variance: number;
  /** Placements that the slot's own figures no longer hold; with `usedPlacements` they are all since the ledger began. */
  readonly dropped: number;
  /** The newest splice, where feeder lengths and pitch are known. */
  readonly joint: Joint | null;
}

/** What a finished reel, or a chain of joined ones, showed of a feeder's losses: raw, so that the reckoning may change. */
export interface Finished {
  readonly chain: string;
  /** The entry that told the end. */
  readonly entry: string;
  readonly atMs: number;
  readonly line: string;
  readonly slot: string;
  /** Empty where feeders are not known. */
  readonly feeder: string;
  readonly part: string;
  readonly startParts: number;
  readonly startSd: number;
  readonly endParts: number;
  readonly endSd: number;
  readonly placements: number;
  /** How the end was told: a count, or a splice that bounds it. */
  readonly told: 'count' | 'splice';
}

/** A reel's own figures for counting it by wound tape or by weight, learnt from a full one of its part. */
export interface FullReel {
  readonly part: string;
  readonly measured: { readonly parts: number; readonly outerMm: number; readonly hubMm: number } | null;
  readonly weighed: { readonly parts: number; readonly massG: number; readonly emptyG: number } | null;
}

/** What is on one slot. */
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
  readonly ledger: Ledger;
  /** The newest entry that changed this slot. */
  readonly entry: string;
  readonly atMs: number;
  /** What was here before that entry, for taking it back; only one step deep is kept. */
  readonly before: SlotState | null;
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

/** What a person answered to one step of a checklist. */
export interface StepAnswer {
  readonly value: string | number | null;
  /** Who, in order; more than one where a step wants several signatures. */
  readonly by: readonly string[];
  readonly atMs: number;
  /** The lead who let a mandatory step be skipped, and why; null where it was done. */
  readonly skipped: { readonly by: string; readonly reason: string } | null;
  /** Signatures of different people; absent where the step has none. */
  readonly signed?: readonly Signature[];
}

/** A checklist that was opened, with its answers. */
export interface Checklist extends Readonly<PayloadOf<'checklist.opened'>> {
  readonly openedMs: number;
  readonly openedBy: string | null;
  /** The tablet that has it in hand. */
  readonly tablet: string;
  readonly answers: ReadonlyMap<string, StepAnswer>;
  readonly closedMs: number | null;
}

/** The change of a line from one setup to the next, from the last good panel to the release. */
export interface Changeover extends Readonly<PayloadOf<'changeover.began'>> {
  readonly beganMs: number;
  readonly releasedMs: number | null;
  readonly releasedBy: string | null;
  /** Newest measurement and newest look of each slot. */
  readonly measured: readonly (Readonly<PayloadOf<'panel.measured'>> & {
    readonly atMs: number;
    readonly by: string | null;
  })[];
  readonly looked: readonly (Readonly<PayloadOf<'panel.looked'>> & {
    readonly atMs: number;
    readonly by: string | null;
  })[];
}

/** A feeder made ready off the line. */
export type CartPlace = Readonly<PayloadOf<'cart.filled'>> & { readonly atMs: number };

/** The order of jobs that somebody kept for a line, who and when. */
export type KeptPlan = Readonly<PayloadOf<'plan.kept'>> & {
  readonly by: string | null;
  readonly atMs: number;
};

/** Who took note of a warning, and how loud it was then. */
export interface Acknowledgement {
  readonly level: WarningLevel;
  readonly by: string | null;
  readonly atMs: number;
}

/** The floor as the log says. */
export interface FloorState extends PanelState {
  readonly tablets: Map<string, Tablet>;
  readonly people: Map<string, Person>;
  readonly lines: Map<string, Line>;
  readonly rules: Map<string, LineRules>;
  /** Line -> the highest temperature (°C) and relative humidity (%) of its floor, where somebody entered them. */
  readonly climates: Map<string, { readonly celsius: number; readonly humidity: number }>;
  /** Line -> minutes without a touch after which whoever is signed in is signed out, where somebody set them. */
  readonly idles: Map<string, number>;
  readonly feeders: Map<string, Feeder>;
  /** Rule -> the newest version of a site rule for labels that follow no standard. */
  readonly labelRules: Map<string, TaughtRule>;
  /** Supplier part -> site parts that it is approved for. */
  readonly approvals: Map<string, readonly string[]>;
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
  readonly airings: Map<string, Airing>;
  readonly holds: Map<string, Hold>;
  readonly blocks: Map<string, Block>;
  readonly sweeps: Map<string, Sweep>;
  readonly conflicts: Map<string, Conflict>;
  /** `slotKey#need` -> who took note. */
  readonly acknowledged: Map<string, Acknowledgement>;
  /** `slotKey#need` -> loudest level raised so far and when it is due. */
  readonly raised: Map<string, { readonly level: WarningLevel; readonly atMs: number; readonly due: string }>;
  readonly corrected: Set<string>;
  /** Line -> people who share its splices; one where nobody said. */
  readonly crews: Map<string, number>;
  /** `template` -> its versions, oldest first. */
  readonly templates: Map<string, readonly ChecklistTemplate[]>;
  readonly checklists: Map<string, Checklist>;
  /** All changeovers, oldest first. */
  readonly changeovers: Map<string, Changeover>;
  /** Line -> changeover that is not released. */
  readonly changing: Map<string, string>;
  /** Cart -> slot -> what is ready for it. */
  readonly carts: Map<string, ReadonlyMap<string, CartPlace>>;
  /** Line -> the newest order of jobs kept. */
  readonly plans: Map<string, KeptPlan>;
  /** Part -> what finished reels showed of its losses, oldest first. */
  readonly finished: Map<string, readonly Finished[]>;
  /** Part -> a full reel of it, measured or weighed. */
  readonly fullReels: Map<string, FullReel>;
}

/** The state before any entry. */
export function emptyState(): FloorState {
  return {
    ...emptyPanels(),
    tablets: new Map(),
    people: new Map(),
    lines: new Map(),
    rules: new Map(),
    climates: new Map(),
    idles: new Map(),
    feeders: new Map(),
    labelRules: new Map(),
    approvals: new Map(),
    setups: new Map(),
    chosen: new Map(),
    runs: new Map(),
    current: new Map(),
    slots: new Map(),
    takenOff: new Map(),
    reels: new Map(),
    airings: new Map(),
    holds: new Map(),
    blocks: new Map(),
    sweeps: new Map(),
    conflicts: new Map(),
    acknowledged: new Map(),
    raised: new Map(),
    corrected: new Set(),
    crews: new Map(),
    templates: new Map(),
    checklists: new Map(),
    changeovers: new Map(),
    changing: new Map(),
    carts: new Map(),
    plans: new Map(),
    finished: new Map(),
    fullReels: new Map(),
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
export function slotKey(line: string, slot: string): string {
  return `${line}/${slot}`;
}

/** Where a warning's need stands in the maps. */
export function needKey(line: string, slot: string, need: string): string {
  return `${line}/${slot}#${need}`;
}

/** Position of the newest folded entry; with the state it makes a snapshot. */
export interface FoldPosition {
  readonly hlc: ClockReading;
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
}
