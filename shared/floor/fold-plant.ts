// The plant as it was last described: tablets, lines and their rules, feeders, approvals, setups, sweeps, and who took note of what.

import type { EntryOf } from './kinds.ts';
import { type FloorState, needKey } from './state.ts';

/** Kinds that this fold handles. */
type PlantEntry = EntryOf<
  | 'tablet.opened'
  | 'tablet.named'
  | 'line.defined'
  | 'line.ruled'
  | 'line.climate-ruled'
  | 'line.panels-ruled'
  | 'line.idle-ruled'
  | 'line.crewed'
  | 'feeder.known'
  | 'feeder.withdrawn'
  | 'supplier.approved'
  | 'supplier.withdrawn'
  | 'setup.taken'
  | 'setup.chosen'
  | 'sweep.started'
  | 'sweep.ended'
  | 'warning.raised'
  | 'warning.acknowledged'
  | 'entry.corrected'
>;

/** Applies one entry to what is known of the plant. */
export function foldPlant(state: FloorState, entry: PlantEntry): void {
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
    case 'line.defined':
      state.lines.set(entry.payload.line, entry.payload);
      return;
    case 'line.ruled':
      state.rules.set(entry.payload.line, entry.payload);
      return;
    case 'line.climate-ruled': {
      const { line, celsius, humidity } = entry.payload;
      state.climates.set(line, { celsius, humidity });
      return;
    }
    case 'line.panels-ruled':
      state.inLines.set(entry.payload.line, entry.payload);
      return;
    case 'line.idle-ruled':
      state.idles.set(entry.payload.line, entry.payload.minutes);
      return;
    case 'line.crewed':
      state.crews.set(entry.payload.line, entry.payload.operators);
      return;
    case 'feeder.known':
      state.feeders.set(entry.payload.feeder, entry.payload);
      return;
    case 'feeder.withdrawn':
      state.feeders.delete(entry.payload.feeder);
      return;
    case 'supplier.approved':
      approve(state, entry.payload.supplierPart, entry.payload.part);
      return;
    case 'supplier.withdrawn': {
      const left = (state.approvals.get(entry.payload.supplierPart) ?? []).filter(
        (part) => part !== entry.payload.part,
      );
      if (left.length > 0) state.approvals.set(entry.payload.supplierPart, left);
      else state.approvals.delete(entry.payload.supplierPart);
      return;
    }
    case 'setup.taken':
      state.setups.set(entry.payload.setup, { ...entry.payload, takenMs: entry.hlc.ms });
      for (const slot of entry.payload.slots) {
        for (const supplierPart of slot.supplierParts) approve(state, supplierPart, slot.part);
      }
      return;
    case 'setup.chosen':
      if (state.setups.has(entry.payload.setup)) state.chosen.set(entry.payload.line, entry.payload.setup);
      return;
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
    case 'entry.corrected':
      state.corrected.add(entry.payload.of);
      return;
    default:
      entry satisfies never;
  }
}

function approve(state: FloorState, supplierPart: string, part: string): void {
  const there = state.approvals.get(supplierPart) ?? [];
  if (!there.includes(part)) state.approvals.set(supplierPart, [...there, part]);
}
