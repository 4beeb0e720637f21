// When was a slot last seen to be right, which reels were found where they did not belong, and which panels are held for it?
// Method: a check is a reel that was let on by a load, or seen on the slot by a sweep; a splice checks the new reel and not the one that
// feeds. Between the last check and the find anything may have stood there. Panels of a containment that are scanned later, as they come
// out of the line, join it by their place. Refused: a count as the end of what is held, since the last panels are counted last.

import { entryId } from '../log/entry.ts';
import { newestRun } from './building.ts';
import { idSince } from './fold-print.ts';
import type { EntryOf, PayloadOf } from './kinds.ts';
import { sharesSlots } from './lanes.ts';
import { type Material, materialNow } from './made-of.ts';
import { hasOwnId, nameByEntry } from './reel-id.ts';
import { type FloorState, slotKey } from './state.ts';
import { codeKey, tallyOf } from './tally.ts';
import { joins } from './vocabulary.ts';

/** When a slot was last seen to be right. */
export interface Check {
  readonly entry: string;
  readonly atMs: number;
  /** The run then being built, or the one before; null where there was none. */
  readonly run: string | null;
  /** How far that was counted. */
  readonly tally: number;
}

/** A reel that did not belong on its slot. */
export interface Finding {
  readonly entry: string;
  readonly line: string;
  readonly slot: string;
  readonly reel: string | null;
  readonly part: string | null;
  readonly supplierPart: string | null;
  readonly lot: string | null;
  readonly dateCode: string | null;
  readonly who: string | null;
  readonly found: Check;
  /** Null where the slot was never seen to be right. */
  readonly since: Check | null;
  /** When it was right again, or changed; null while it is not. */
  readonly until: Check | null;
  /** What the reel was made of by `until`; null where of itself alone, and while it may stand there still. */
  readonly made: Material | null;
}

/** Panels held until a lead signs them. */
export interface Containment extends Readonly<PayloadOf<'panels.contained'>> {
  readonly entry: string;
  readonly atMs: number;
  readonly who: string | null;
  /** Code -> who signed it and when; null while nobody has. */
  readonly held: ReadonlyMap<string, Signed | null>;
  /** Set where a lead signed all of it, panels without a code among them. */
  readonly signed: Signed | null;
}

/** A lead's signature under a held panel. */
export interface Signed {
  readonly by: string;
  readonly atMs: number;
  readonly reason: string;
}

type ContainEntry = EntryOf<
  | 'reel.verified'
  | 'hold.cleared'
  | 'reel.unloaded'
  | 'panels.counted'
  | 'station.counted'
  | 'panels.contained'
  | 'containment.signed'
  | 'entry.corrected'
>;

/** Applies one entry to checks, finds and held panels; after the material and the runs have taken it. */
export function foldContain(state: FloorState, entry: ContainEntry): void {
  switch (entry.kind) {
    case 'reel.verified':
      takeVerdict(state, entry);
      return;
    case 'hold.cleared':
      endFindings(state, entry, { line: entry.payload.line, slot: entry.payload.slot });
      return;
    case 'reel.unloaded':
      endFindings(state, entry, entry.payload);
      return;
    case 'panels.counted':
    case 'station.counted':
      holdCounted(state, entry);
      return;
    case 'panels.contained':
      state.contained.set(entry.payload.containment, {
        ...entry.payload,
        entry: entryId(entry),
        atMs: entry.hlc.ms,
        who: entry.who,
        held: new Map(entry.payload.codes.map((code) => [code, null])),
        signed: null,
      });
      return;
    case 'containment.signed':
      sign(state, entry);
      return;
    case 'entry.corrected':
      state.findings.delete(entry.payload.of);
      return;
    default:
      entry satisfies never;
  }
}

/** How far the line's newest run is counted at an entry. */
function checkOf(
  state: FloorState,
  entry: Pick<ContainEntry, 'tablet' | 'epoch' | 'seq' | 'hlc'>,
  line: string,
): Check {
  const run = newestRun(state, line);
  const id = entryId(entry);
  return { entry: id, atMs: entry.hlc.ms, run: run?.run ?? null, tally: run ? tallyOf(run) : 0 };
}

function takeVerdict(state: FloorState, entry: EntryOf<'reel.verified'>): void {
  const { act, line, slot, verdict, reel, part, supplierPart, lot, dateCode, cart, readying } = entry.payload;
  if (slot === null || cart !== undefined || readying) return;
  const key = slotKey(line, slot);
  if (verdict === 'accepted') {
    endFindings(state, entry, { line, slot });
    if (!joins(act)) state.checks.set(key, checkOf(state, entry, line));
    return;
  }
  const there = state.slots.get(key);
  const isThere = there?.tapes.some((tape) =>
    reel === null || !hasOwnId(tape.reel) ? tape.part === part && tape.lot === lot : tape.reel === reel,
  );
  if (act !== 'sweep' || !there || isThere) return;
  const found = checkOf(state, entry, line);
  const facts = { line, slot, reel, part, supplierPart, lot, dateCode, who: entry.who };
  const since = state.checks.get(key) ?? null;
  state.findings.set(found.entry, { ...facts, entry: found.entry, found, since, until: null, made: null });
}

/** What stands on the slot from now on is another thing. */
function endFindings(
  state: FloorState,
  entry: EntryOf<'reel.verified' | 'hold.cleared' | 'reel.unloaded'>,
  at: { readonly line: string; readonly slot: string | null },
): void {
  for (const [key, finding] of state.findings) {
    if (!sharesSlots(finding.line, at.line) || finding.slot !== at.slot || finding.until !== null) continue;
    const name = idSince(state, finding.reel ?? nameByEntry(finding.entry));
    const until = checkOf(state, entry, at.line);
    state.findings.set(key, { ...finding, until, made: materialNow(state, name) });
  }
}

/** A panel whose place is held joins what is held when its code is scanned. */
function holdCounted(state: FloorState, entry: EntryOf<'panels.counted' | 'station.counted'>): void {
  const { serial } = entry.payload;
  if (serial === null || state.contained.size === 0) return;
  for (const containment of state.contained.values()) {
    const isHeld = containment.runs.some(({ run, possible }) => {
      const coded = state.codes.get(codeKey(run, serial));
      return coded?.entry === entryId(entry) && coded.tally >= possible.first && coded.tally <= possible.last;
    });
    if (!isHeld || containment.held.has(serial)) continue;
    const held = new Map([...containment.held, [serial, null]]);
    state.contained.set(containment.containment, { ...containment, held, signed: null });
  }
}

function sign(state: FloorState, entry: EntryOf<'containment.signed'>): void {
  const { containment: id, codes, by, reason } = entry.payload;
  const containment = state.contained.get(id);
  if (!containment) return;
  const signed: Signed = { by, reason, atMs: entry.hlc.ms };
  const held = new Map(containment.held);
  for (const code of codes ?? held.keys()) if (held.get(code) === null) held.set(code, signed);
  state.contained.set(id, { ...containment, held, signed: codes === null ? signed : containment.signed });
}

/** Codes of a containment that nobody has signed yet. */
export function stillHeld(containment: Pick<Containment, 'held'>): readonly string[] {
  return [...containment.held].flatMap(([code, signed]) => (signed === null ? [code] : []));
}

/** True while panels of it are held: codes, or panels without one. */
export function isHeld(containment: Pick<Containment, 'held' | 'signed'>): boolean {
  return containment.signed === null || stillHeld(containment).length > 0;
}
