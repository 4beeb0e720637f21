// How does a line stand, at one glance: what is built, whether it runs, where to walk next, what waits? Method: the floor's own answers and the
// outlook and walks that the line's screen uses, boiled down; nothing is foretold here. Refused: a state of its own for this view, as it would
// one day say something else than the line's screen.

import { blockedTapes } from '../floor/blocks.ts';
import { buildingOn } from '../floor/building.ts';
import { countedBy } from '../floor/counters.ts';
import { setupProgress } from '../floor/progress.ts';
import type { FloorState, Setup } from '../floor/state.ts';
import { compareLevels, type StopReason, type WarningLevel } from '../floor/vocabulary.ts';
import { type Outlook, openWarnings } from './line.ts';
import type { WalkPlan } from './walks.ts';

/** How a line stands. `silent`: it is being built, and no panel was counted for longer than is usual; `loading`: a setup is chosen and not loaded yet. */
export const lineStates = ['running', 'stopped', 'silent', 'changing', 'loading', 'ready', 'idle'] as const;
export type LineStateName = (typeof lineStates)[number];

/** A walk to come. Moments in ms since 1970. */
export interface GlanceWalk {
  readonly startMs: number;
  readonly slots: readonly string[];
}

/** A line at one glance. */
export interface LineGlance {
  readonly line: string;
  readonly name: string;
  readonly zone: string;
  readonly state: LineStateName;
  /** Since when it stands so, ms since 1970; null where nobody knows. */
  readonly sinceMs: number | null;
  readonly stopReason: StopReason | null;
  /** What is built, changed to or loaded for. */
  readonly setup: Pick<Setup, 'product' | 'side' | 'revision'> | null;
  readonly run: {
    readonly done: number;
    readonly wanted: number;
    /** Expected end; null where the line does not run or no forecast is possible. */
    readonly endMs: number | null;
  } | null;
  /** Slots that have the right reel, where nothing is being built. */
  readonly loaded: { readonly right: number; readonly of: number } | null;
  readonly counted: {
    readonly by: 'hand' | 'station' | 'silent';
    /** The station's name; null where people count. */
    readonly name: string | null;
    /** The newest count, ms since 1970; null where nothing is being built. */
    readonly lastMs: number | null;
  };
  /** Reels that wait for a lead. */
  readonly holds: number;
  /** Blocked reels that stand on slots. */
  readonly blocked: number;
  /** Walks to come, soonest first; empty where none is laid out. */
  readonly walks: readonly GlanceWalk[];
  /** Splices that no walk reaches, soonest first. */
  readonly missed: readonly { readonly slot: string; readonly byMs: number }[];
  /** Warnings that nobody took note of, and the loudest of them. */
  readonly warnings: { readonly count: number; readonly level: WarningLevel };
}

/** What a glance is made from. `outlook` and `walks`: null where nothing is being built, or it was not looked at yet. */
export interface GlanceAt {
  readonly nowMs: number;
  readonly outlook: Outlook | null;
  readonly walks: WalkPlan | null;
}

/** A line at one glance; null where the floor does not know it. Cost: linear in the slots of its setup where nothing is built, else in warnings. */
export function lineGlance(floor: FloorState, line: string, at: GlanceAt): LineGlance | null {
  const known = floor.lines.get(line);
  if (!known) return null;
  const { outlook, walks } = at;
  const run = buildingOn(floor, line);
  const open = outlook === null ? [] : openWarnings(outlook);
  const counter = countedBy(floor, line, at.nowMs);
  const stands = standsHow(floor, line, at);
  return {
    line,
    name: known.name,
    zone: known.zone,
    ...stands,
    setup: setupOf(floor, line),
    run: run && {
      done: run.done,
      wanted: run.panelsWanted,
      endMs: run.phase === 'running' && outlook !== null ? outlook.runEndMs : null,
    },
    counted: {
      by: counter.by,
      name: counter.by === 'hand' ? null : (counter.station?.name ?? null),
      lastMs: outlook?.counting.lastMs ?? null,
    },
    holds: [...floor.holds.values()].filter((hold) => hold.facts.line === line).length,
    blocked: blockedTapes(floor, line).length,
    walks: (walks?.walks ?? []).map(({ startMs, splices }) => ({
      startMs,
      slots: splices.map(({ slot }) => slot.slot),
    })),
    missed: (walks?.missed ?? []).map(({ slot, byMs }) => ({ slot: slot.slot, byMs })),
    warnings: {
      count: open.length,
      level: open.reduce<WarningLevel>(
        (loudest, { warning }) => (compareLevels(warning.level, loudest) > 0 ? warning.level : loudest),
        'quiet',
      ),
    },
  };
}

type Stands = Pick<LineGlance, 'state' | 'sinceMs' | 'stopReason' | 'loaded'>;

function standsHow(floor: FloorState, line: string, { outlook }: GlanceAt): Stands {
  const none = { stopReason: null, loaded: null };
  const change = floor.changeovers.get(floor.changing.get(line) ?? '');
  const run = buildingOn(floor, line);
  if (run?.phase === 'stopped')
    return { ...none, state: 'stopped', sinceMs: run.sinceMs, stopReason: run.stopReason };
  if (run && outlook?.counting.ceased === true)
    return { ...none, state: 'silent', sinceMs: outlook.counting.lastMs };
  if (run) return { ...none, state: 'running', sinceMs: run.sinceMs };
  if (change) return { ...none, state: 'changing', sinceMs: change.beganMs };
  const { setup, slots, verified } = setupProgress(floor, line);
  if (setup === null) return { ...none, state: 'idle', sinceMs: null };
  const loaded = { right: verified, of: slots.length };
  return { ...none, loaded, state: verified === slots.length ? 'ready' : 'loading', sinceMs: null };
}

function setupOf(floor: FloorState, line: string): LineGlance['setup'] {
  const run = buildingOn(floor, line);
  const change = floor.changeovers.get(floor.changing.get(line) ?? '');
  const id = run?.setup ?? change?.setup ?? floor.chosen.get(line);
  const setup = floor.setups.get(id ?? '');
  if (!setup) return null;
  const { product, side, revision } = setup;
  return { product, side, revision };
}
