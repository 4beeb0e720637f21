// A line as its form holds it: name, zone and the ranges of its banks; what keeps it from being saved, and what saving writes.

import { compareNatural } from '../../../../../shared/floor/address.ts';
import type { DraftEntry, EntryOf } from '../../../../../shared/floor/kinds.ts';
import { feedersOf, laneLine } from '../../../../../shared/floor/lanes.ts';
import {
  lostSlots,
  machinesOf,
  type RangesFault,
  rangesOf,
  type SlotRange,
  slotsInUse,
} from '../../../../../shared/floor/slot-ranges.ts';
import { type FloorState, type Line, THE_PLANT } from '../../../../../shared/floor/state.ts';
import { isZone } from '../../../../../shared/kit/zone.ts';
import { firstRulesDraft } from '../rules-form.ts';

type Machines = EntryOf<'line.defined'>['payload']['machines'];

/** What a person types of a line. */
export interface LineForm {
  /** The line that is changed; null for a new one. */
  readonly line: string | null;
  readonly name: string;
  readonly zone: string;
  readonly ranges: readonly SlotRange[];
  /** Names of the further lanes of its conveyor, from the second on; empty where it has one. */
  readonly lanes: readonly string[];
}

/** The most lanes that a conveyor can be told with. */
export const MOST_LANES = 9;

/** How a lane is called that has no name of its own yet, by its line's name and its number from 1 on. */
type LaneName = (line: string, lane: number) => string;

/** The form with one further lane. The line itself is the first lane: with the second it gets a name by which it is told from that. */
export function withLane(form: LineForm, called: LaneName): LineForm {
  const line = nameOfLine(form.name.trim(), called);
  const lanes = [...form.lanes, called(line, form.lanes.length + 2)];
  return { ...form, name: form.lanes.length === 0 ? called(line, 1) : form.name, lanes };
}

/** The form without its last lane; with the last further one goes the line's name as a first lane. */
export function withoutLane(form: LineForm, called: LaneName): LineForm {
  const lanes = form.lanes.slice(0, -1);
  return { ...form, name: lanes.length === 0 ? nameOfLine(form.name, called) : form.name, lanes };
}

/** The name of the line within that of its first lane, as this form composed it. */
function nameOfLine(first: string, called: LaneName): string {
  const [before = '', after = ''] = called('|', 1).split('|');
  const isOurs = first.startsWith(before) && first.endsWith(after);
  return isOurs ? first.slice(before.length, first.length - after.length) : first;
}

/** The further lanes of a line's conveyor that are told already, in their order. */
export function lanesTold(floor: FloorState, line: string | null): readonly Line[] {
  if (line === null) return [];
  return Array.from({ length: MOST_LANES - 1 }, (_, at) => floor.lines.get(laneLine(line, at + 2))).flatMap(
    (lane) => lane ?? [],
  );
}

/** The lines that are no lane of another that is told: a line of an old plant may be called as a lane would be. */
export function ownLines({ lines }: Pick<FloorState, 'lines'>): readonly Line[] {
  return [...lines.values()].filter(({ line }) => feedersOf(line) === line || !lines.has(feedersOf(line)));
}

const isBlank = ({ first, last }: SlotRange) => first.trim() === '' && last.trim() === '';

/** The zone that is most likely meant: the plant's own, that of its first line, this tablet's. */
export function zoneOfPlant(floor: FloorState): string {
  return (
    floor.plant.get(THE_PLANT)?.zone ??
    [...floor.lines.values()][0]?.zone ??
    Intl.DateTimeFormat().resolvedOptions().timeZone
  );
}

/** A new line, or one that is there, as a form. `name`: what a new line is called by its number. */
export function formOf(floor: FloorState, line: Line | null, name: (number: number) => string): LineForm {
  if (line) {
    const lanes = lanesTold(floor, line.line).map((lane) => lane.name);
    return { line: line.line, name: line.name, zone: line.zone, ranges: rangesOf(line), lanes };
  }
  return {
    line: null,
    name: name(ownLines(floor).length + 1),
    zone: zoneOfPlant(floor),
    ranges: [{ first: '', last: '' }],
    lanes: [],
  };
}

/** What keeps a line from being saved. */
export type LineObstacle =
  | { readonly code: 'name-missing' | 'lanes-alike' | 'zone-unknown' | 'no-banks' }
  | { readonly code: 'ranges'; readonly faults: readonly RangesFault[] }
  /** Slots that setups want or that stand loaded have no place any more. */
  | { readonly code: 'lost'; readonly slots: readonly string[] };

/** The line's record as the form tells it, or what keeps it from being saved. */
export type ReadLine =
  | { readonly machines: Machines; readonly obstacle: null }
  | { readonly machines: Machines | null; readonly obstacle: LineObstacle };

/** Reads a form. Rows that are left empty tell nothing. `bankName`: what people call a bank. */
export function readLine(form: LineForm, floor: FloorState, bankName: (bank: string) => string): ReadLine {
  const told = form.ranges.flatMap((range, at) => (isBlank(range) ? [] : [{ range, at }]));
  const read = machinesOf(
    told.map(({ range }) => range),
    bankName,
  );
  if (!read.ok) {
    const faults = read.error.map(({ at, code }) => ({ at: told[at]?.at ?? at, code }));
    return { machines: null, obstacle: { code: 'ranges', faults } };
  }
  const machines = keepUntold(form, floor, read.value);
  const names = [form.name, ...form.lanes].map((name) => name.trim());
  if (names.includes('')) return { machines, obstacle: { code: 'name-missing' } };
  if (new Set(names).size < names.length) return { machines, obstacle: { code: 'lanes-alike' } };
  if (!isZone(form.zone.trim())) return { machines, obstacle: { code: 'zone-unknown' } };
  if (told.length === 0) return { machines, obstacle: { code: 'no-banks' } };
  const before = slotsInUse(floor, form.line).filter(
    (slot) => lostSlots(floor.lines.get(form.line ?? '') ?? { machines: [] }, [slot]).length === 0,
  );
  const slots = [...lostSlots({ machines }, before)].sort(compareNatural);
  return { machines, obstacle: slots.length > 0 ? { code: 'lost', slots } : null };
}

/** What the form does not show stays as it was: names of machines and banks, and banks whose places have no number. */
function keepUntold({ line }: LineForm, floor: FloorState, machines: Machines): Machines {
  const there = floor.lines.get(line ?? '')?.machines ?? [];
  const merged = machines.map((machine) => {
    const known = there.find((each) => each.machine === machine.machine);
    const banks = machine.banks.map((bank) => ({
      ...bank,
      name: known?.banks.find((each) => each.bank === bank.bank)?.name ?? bank.name,
    }));
    const unnumbered = known?.banks.filter(({ positions }) => positions === 0) ?? [];
    return { ...machine, name: known?.name ?? machine.name, banks: [...banks, ...unnumbered] };
  });
  const kept = there
    .filter(({ machine }) => machines.every((each) => each.machine !== machine))
    .map((machine) => ({ ...machine, banks: machine.banks.filter(({ positions }) => positions === 0) }))
    .filter(({ banks }) => banks.length > 0);
  return [...merged, ...kept];
}

/**
 * What saving writes: the line, its first rules where it is new, the further lanes of its conveyor, and which of those that are told (`before`) are
 * taken away.
 */
export function lineDrafts(
  form: LineForm,
  line: string,
  machines: Machines,
  before: readonly Pick<Line, 'line'>[],
): readonly DraftEntry[] {
  const defined = (id: string, name: string): DraftEntry => ({
    kind: 'line.defined',
    payload: { line: id, name: name.trim(), zone: form.zone.trim(), machines },
  });
  return [
    defined(line, form.name),
    ...(form.line === null ? [firstRulesDraft(line)] : []),
    ...form.lanes.map((name, at) => defined(laneLine(line, at + 2), name)),
    ...before
      .slice(form.lanes.length)
      .map((lane): DraftEntry => ({ kind: 'lane.withdrawn', payload: { line: lane.line } })),
  ];
}
