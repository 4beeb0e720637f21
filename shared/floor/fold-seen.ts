// How many panels lie between a machine and the place of counting, as scans at both tell it: a panel is scanned where it goes into the
// machine, and again where panels are counted. What was counted between the two had passed the machine before it.
// Method: each panel that was scanned twice in one run is a sample, so many a machine are kept. Refused: to take the samples for the
// range itself. The most that was ever seen is no bound on what can be, so a person enters the range, and samples beyond it widen it.

import { entryId } from '../log/entry.ts';
import type { EntryOf } from './kinds.ts';
import type { FloorState } from './state.ts';
import { codeKey, tallyOf } from './tally.ts';

/** A panel that was scanned before a machine and is not counted yet. */
export interface SeenPanel {
  readonly line: string;
  readonly machine: string;
  readonly serial: string;
  readonly entry: string;
  readonly run: string;
  /** How far the run was counted then. */
  readonly tally: number;
}

/** A panel that was scanned at both places. */
export interface PassedPanel {
  /** The entries that tell it. */
  readonly seen: string;
  readonly counted: string;
  /** Panels done by the machine and not counted, itself among them; below none: counted, and not done by it. */
  readonly between: number;
}

/** Samples kept of a machine. */
const SAMPLES_KEPT = 200;
/** Panels that wait to be counted: more than stand in any line; who never comes is dropped at last. */
const WAITING_KEPT = 600;

type CountedEntry = EntryOf<'panels.counted' | 'station.counted'>;
type SeenEntry = CountedEntry | EntryOf<'panel.seen' | 'entry.corrected'>;

/** Applies one entry to what scans tell of panels in the line; after the runs have taken it. */
export function foldSeen(state: FloorState, entry: SeenEntry): void {
  switch (entry.kind) {
    case 'panel.seen':
      see(state, entry);
      return;
    case 'panels.counted':
    case 'station.counted':
      meet(state, entry);
      return;
    case 'entry.corrected':
      forget(state, entry.payload.of);
      return;
    default:
      entry satisfies never;
  }
}

/** Where a machine's samples stand. */
export function machineKey(line: string, machine: string): string {
  return `${line}#${machine}`;
}

function see(state: FloorState, entry: EntryOf<'panel.seen'>): void {
  const { line, machine, serial } = entry.payload;
  const run = state.runs.get(state.current.get(line) ?? '');
  if (!run) return;
  const tally = tallyOf(run);
  const id = entryId(entry);
  const counted = state.codes.get(codeKey(run.run, serial));
  if (counted) {
    // It and all that were counted since have not reached the machine.
    const between = counted.tally - tally - 1;
    if (run.batches.length === 0)
      addSample(state, { line, machine }, { seen: id, counted: counted.entry, between });
    return;
  }
  const key = `${machineKey(line, machine)}#${serial}`;
  if (state.seen.has(key)) return; // a second scan of it tells nothing new
  state.seen.set(key, { line, machine, serial, entry: id, run: run.run, tally });
  const [oldest] = state.seen.keys();
  if (state.seen.size > WAITING_KEPT && oldest !== undefined) state.seen.delete(oldest);
}

function meet(state: FloorState, entry: CountedEntry): void {
  const { serial, line } = entry.payload;
  if (serial === null || state.seen.size === 0) return;
  for (const [key, seen] of state.seen) {
    if (seen.serial !== serial || seen.line !== line) continue;
    const coded = state.codes.get(codeKey(seen.run, serial));
    if (coded?.entry !== entryId(entry)) continue;
    state.seen.delete(key);
    // Of many counted at once nobody knows when each passed.
    if (state.runs.get(seen.run)?.batches.length !== 0) continue;
    addSample(state, seen, { seen: seen.entry, counted: coded.entry, between: coded.tally - seen.tally });
  }
}

function addSample(
  state: FloorState,
  { line, machine }: Pick<SeenPanel, 'line' | 'machine'>,
  sample: PassedPanel,
): void {
  const key = machineKey(line, machine);
  state.passed.set(key, [...(state.passed.get(key) ?? []), sample].slice(-SAMPLES_KEPT));
}

function forget(state: FloorState, of: string): void {
  for (const [key, { entry }] of state.seen) if (entry === of) state.seen.delete(key);
  for (const [key, samples] of state.passed) {
    const kept = samples.filter(({ seen, counted }) => seen !== of && counted !== of);
    if (kept.length < samples.length) state.passed.set(key, kept);
  }
}

/** What was seen of a machine: panels scanned at both places, and the least and the most that lay between; null where none was. */
export function seenInLine(
  state: Pick<FloorState, 'passed'>,
  line: string,
  machine: string,
): { readonly panels: number; readonly least: number; readonly most: number } | null {
  const samples = state.passed.get(machineKey(line, machine)) ?? [];
  if (samples.length === 0) return null;
  const between = samples.map((sample) => sample.between);
  return { panels: samples.length, least: Math.min(0, ...between), most: Math.max(0, ...between) };
}
