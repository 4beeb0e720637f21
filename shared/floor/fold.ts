// From the log to the floor: applies entries, in folding order, to the state. The same entries give the same state on every
// tablet and server. An entry that does not fit what is there (unload of an empty slot, clearing of nothing) changes nothing:
// it stays in the log, and what contradicts is kept as a conflict until a lead settles it.

import type { Entry } from '../log/entry.ts';
import { foldBlocks } from './blocks.ts';
import { foldAirings } from './fold-airings.ts';
import { foldChange } from './fold-change.ts';
import { foldLabels } from './fold-labels.ts';
import { foldLoss } from './fold-loss.ts';
import { foldMaterial } from './fold-material.ts';
import { foldPlaces } from './fold-places.ts';
import { foldRun } from './fold-run.ts';
import { type FloorEntry, readFloorEntry } from './kinds.ts';
import { foldPeople } from './people.ts';
import { type FloorState, needKey } from './state.ts';

/** Applies one entry. Returns false where this version does not know the kind or the payload does not fit it. */
export function applyEntry(state: FloorState, entry: Entry): boolean {
  const known = readFloorEntry(entry);
  if (!known) return false;
  applyFloorEntry(state, known);
  return true;
}

/** Applies one checked entry. */
export function applyFloorEntry(state: FloorState, entry: FloorEntry): void {
  foldPeople(state.people, entry);
  foldPlant(state, entry);
  foldLabels(state, entry);
  foldRun(state, entry);
  foldLoss(state, entry);
  foldAirings(state, entry); // before the material: a hold that is cleared is gone after it
  foldMaterial(state, entry);
  foldBlocks(state, entry);
  foldPlaces(state, entry);
  foldChange(state, entry);
}

/** Applies entries that are already in folding order. */
export function applyAll(state: FloorState, entries: readonly Entry[]): FloorState {
  for (const entry of entries) applyEntry(state, entry);
  return state;
}

function foldPlant(state: FloorState, entry: FloorEntry): void {
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
      return; // other kinds belong to other folds
  }
}

function approve(state: FloorState, supplierPart: string, part: string): void {
  const there = state.approvals.get(supplierPart) ?? [];
  if (!there.includes(part)) state.approvals.set(supplierPart, [...there, part]);
}
