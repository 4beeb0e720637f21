// The plant as it was last described: tablets, lines and their rules, feeders, approvals, setups, sweeps, and who took note of what.

import { defineLane, defineLine, withdrawLane } from './fold-lanes.ts';
import type { EntryOf } from './kinds.ts';
import { linesFeeding } from './lanes.ts';
import { approveMaker, nameMakers, withdrawMaker } from './maker-lists.ts';
import { unsigned } from './passkey.ts';
import { type FloorState, type LineRules, needKey, THE_PLANT } from './state.ts';

type TabletEntry = EntryOf<'tablet.opened' | 'tablet.named'>;

type RuleEntry = EntryOf<
  | 'line.ruled'
  | 'line.calendar-ruled'
  | 'line.climate-ruled'
  | 'line.panels-ruled'
  | 'line.idle-ruled'
  | 'line.age-ruled'
  | 'line.values-ruled'
  | 'line.pictures-ruled'
  | 'line.crewed'
  | 'line.splices-ruled'
>;

type SupplyEntry = EntryOf<'feeder.known' | 'feeder.withdrawn' | 'supplier.approved' | 'supplier.withdrawn'>;

type SetupEntry = EntryOf<'setup.taken' | 'setup.chosen' | 'sweep.started' | 'sweep.ended'>;

type WarningEntry = EntryOf<'warning.raised' | 'warning.acknowledged'>;

/** Kinds that this fold handles. */
type PlantEntry =
  | TabletEntry
  | RuleEntry
  | SupplyEntry
  | SetupEntry
  | WarningEntry
  | EntryOf<'plant.named' | 'line.defined' | 'lane.withdrawn' | 'entry.corrected'>;

/** Applies one entry to what is known of the plant. */
export function foldPlant(state: FloorState, entry: PlantEntry): void {
  switch (entry.kind) {
    case 'tablet.opened':
    case 'tablet.named':
      foldTablet(state, entry);
      return;
    case 'plant.named':
      state.plant.set(THE_PLANT, entry.payload);
      return;
    case 'line.defined':
      defineLine(state, entry.payload);
      return;
    case 'lane.withdrawn':
      withdrawLane(state, entry.payload.line);
      return;
    case 'line.ruled':
    case 'line.calendar-ruled':
    case 'line.climate-ruled':
    case 'line.panels-ruled':
    case 'line.idle-ruled':
    case 'line.age-ruled':
    case 'line.values-ruled':
    case 'line.pictures-ruled':
    case 'line.crewed':
    case 'line.splices-ruled':
      for (const line of ruledBy(state, entry)) foldRule(state, entry, line);
      return;
    case 'feeder.known':
    case 'feeder.withdrawn':
    case 'supplier.approved':
    case 'supplier.withdrawn':
      foldSupply(state, entry);
      return;
    case 'setup.taken':
    case 'setup.chosen':
    case 'sweep.started':
    case 'sweep.ended':
      foldSetup(state, entry);
      return;
    case 'warning.raised':
    case 'warning.acknowledged':
      foldWarning(state, entry);
      return;
    case 'entry.corrected':
      state.corrected.add(entry.payload.of);
      return;
    default:
      entry satisfies never;
  }
}

function foldTablet(state: FloorState, entry: TabletEntry): void {
  switch (entry.kind) {
    case 'tablet.opened': {
      const there = state.tablets.get(entry.tablet);
      state.tablets.set(entry.tablet, {
        tablet: entry.tablet,
        name: entry.payload.name,
        app: entry.payload.app,
        epochs: [...(there?.epochs ?? []), entry.epoch],
      });
      return;
    }
    case 'tablet.named': {
      const there = state.tablets.get(entry.tablet);
      if (there) state.tablets.set(entry.tablet, { ...there, name: entry.payload.name });
      return;
    }
    default:
      entry satisfies never;
  }
}

/** The lines that a rule holds for: every lane of a conveyor, but for the panels in it, which are a lane's own. */
function ruledBy(state: FloorState, { kind, payload }: RuleEntry): readonly string[] {
  return kind === 'line.panels-ruled' ? [payload.line] : linesFeeding(state, payload.line);
}

function foldRule(state: FloorState, entry: RuleEntry, line: string): void {
  switch (entry.kind) {
    case 'line.ruled': {
      const before = state.rules.get(line);
      // A tablet of an older version knows the rules' own shifts alone: what it changes there counts.
      if (before && hoursOf(before) !== hoursOf(entry.payload)) state.calendars.delete(line);
      state.rules.set(line, { ...unsigned(entry.payload), line });
      return;
    }
    case 'line.calendar-ruled':
      state.calendars.set(line, { ...unsigned(entry.payload), line });
      return;
    case 'line.climate-ruled': {
      const { celsius, humidity } = entry.payload;
      state.climates.set(line, { celsius, humidity });
      return;
    }
    case 'line.panels-ruled':
      state.inLines.set(line, { ...unsigned(entry.payload), line });
      return;
    case 'line.idle-ruled':
      state.idles.set(line, entry.payload.minutes);
      return;
    case 'line.age-ruled':
      state.ageLimits.set(line, entry.payload.limits);
      return;
    case 'line.values-ruled': {
      const { line: _, ...rule } = unsigned(entry.payload);
      state.valueRules.set(line, rule);
      return;
    }
    case 'line.pictures-ruled': {
      const { line: _, ...rule } = entry.payload;
      state.pictureRules.set(line, rule);
      return;
    }
    case 'line.crewed':
      state.crews.set(line, entry.payload.operators);
      return;
    case 'line.splices-ruled':
      state.spliceCosts.set(line, entry.payload.costs);
      return;
    default:
      entry satisfies never;
  }
}

function foldSupply(state: FloorState, entry: SupplyEntry): void {
  switch (entry.kind) {
    case 'feeder.known':
      state.feeders.set(entry.payload.feeder, entry.payload);
      return;
    case 'feeder.withdrawn':
      state.feeders.delete(entry.payload.feeder);
      return;
    case 'supplier.approved':
      approveMaker(state, entry.payload.supplierPart, entry.payload.part);
      return;
    case 'supplier.withdrawn': {
      const { supplierPart, part } = entry.payload;
      withdrawMaker(state, { supplierPart, part, atMs: entry.hlc.ms });
      return;
    }
    default:
      entry satisfies never;
  }
}

function foldSetup(state: FloorState, entry: SetupEntry): void {
  switch (entry.kind) {
    case 'setup.taken':
      state.setups.set(entry.payload.setup, { ...entry.payload, takenMs: entry.hlc.ms });
      nameMakers(state, entry.payload);
      return;
    case 'setup.chosen': {
      const { line, setup } = entry.payload;
      if (!state.setups.has(setup)) return;
      defineLane(state, line);
      state.chosen.set(line, setup);
      return;
    }
    case 'sweep.started':
      state.sweeps.set(entry.payload.line, {
        sweep: entry.payload.sweep,
        line: entry.payload.line,
        startedMs: entry.hlc.ms,
        seen: [],
        endedMs: null,
      });
      return;
    case 'sweep.ended': {
      const sweep = state.sweeps.get(entry.payload.line);
      if (sweep?.sweep === entry.payload.sweep)
        state.sweeps.set(entry.payload.line, { ...sweep, endedMs: entry.hlc.ms });
      return;
    }
    default:
      entry satisfies never;
  }
}

function foldWarning(state: FloorState, entry: WarningEntry): void {
  switch (entry.kind) {
    case 'warning.raised': {
      const { line, slot, need, level, due } = entry.payload;
      state.raised.set(needKey(line, slot, need), { level, atMs: entry.hlc.ms, due });
      return;
    }
    case 'warning.acknowledged': {
      const { line, slot, need, level } = entry.payload;
      state.acknowledged.set(needKey(line, slot, need), { level, by: entry.who, atMs: entry.hlc.ms });
      return;
    }
    default:
      entry satisfies never;
  }
}

/** The working hours that a line's rules state, to see whether they changed. */
function hoursOf({ shifts, breaks, stops }: LineRules): string {
  return JSON.stringify([shifts, breaks, stops]);
}
