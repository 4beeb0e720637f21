// A line as its form holds it: name, zone and the ranges of its banks; what keeps it from being saved, and what saving writes.

import { compareNatural } from '../../../../../shared/floor/address.ts';
import type { DraftEntry, EntryOf } from '../../../../../shared/floor/kinds.ts';
import { type LaneHeld, laneHeld } from '../../../../../shared/floor/lane-held.ts';
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
  /** The further lanes of its conveyor by number; empty where it has one. */
  readonly lanes: readonly LaneForm[];
  /** Numbers of the further lanes that were told when the form was opened: what others tell meanwhile is not the form's to take away. */
  readonly opened: readonly number[];
}

/** A further lane. `lane`: its number on the conveyor, 2..9, which its line's id carries: it stays while others come and go. */
export interface LaneForm {
  readonly lane: number;
  readonly name: string;
}

/** The most lanes that a conveyor can be told with. */
export const MOST_LANES = 9;

const furtherLanes = Array.from({ length: MOST_LANES - 1 }, (_, at) => at + 2);

/** How a lane is called that has no name of its own yet, by its line's name and its number from 1 on. */
type LaneName = (line: string, lane: number) => string;

/** The form with one further lane. The line itself is the first lane: with the second it gets a name by which it is told from that. */
export function withLane(form: LineForm, called: LaneName): LineForm {
  const line = nameOfLine(form.name.trim(), called);
  // One that was taken out of the form comes back as itself.
  const lane = [...form.opened, ...furtherLanes].find((each) => !hasLane(form, each));
  if (lane === undefined) return form;
  const lanes = [...form.lanes, { lane, name: called(line, lane) }].sort((a, b) => a.lane - b.lane);
  return { ...form, name: form.lanes.length === 0 ? called(line, 1) : form.name, lanes };
}

/** The form without its last lane; with the last further one goes the line's name as a first lane. */
export function withoutLane(form: LineForm, called: LaneName): LineForm {
  const lanes = form.lanes.slice(0, -1);
  return { ...form, name: lanes.length === 0 ? nameOfLine(form.name, called) : form.name, lanes };
}

const hasLane = ({ lanes }: LineForm, number: number) => lanes.some(({ lane }) => lane === number);

/** The name of the line within that of its first lane, as this form composed it. */
function nameOfLine(first: string, called: LaneName): string {
  const [before = '', after = ''] = called('|', 1).split('|');
  const isOurs = first.startsWith(before) && first.endsWith(after);
  return isOurs ? first.slice(before.length, first.length - after.length) : first;
}

/** A further lane that is told, with its number on the conveyor. */
export interface LaneTold extends Line {
  readonly lane: number;
}

/** The further lanes of a line's conveyor that are told already, by number. */
export function lanesTold({ lines }: Pick<FloorState, 'lines'>, line: string | null): readonly LaneTold[] {
  return furtherLanes.flatMap((lane) => {
    const told = line === null ? undefined : lines.get(laneLine(line, lane));
    return told ? [{ ...told, lane }] : [];
  });
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
    const lanes = lanesTold(floor, line.line).map(({ lane, name: called }) => ({ lane, name: called }));
    const opened = lanes.map(({ lane }) => lane);
    return { line: line.line, name: line.name, zone: line.zone, ranges: rangesOf(line), lanes, opened };
  }
  return {
    line: null,
    name: name(ownLines(floor).length + 1),
    zone: zoneOfPlant(floor),
    ranges: [{ first: '', last: '' }],
    lanes: [],
    opened: [],
  };
}

/** The lanes that saving takes away: those of the form's opening that were taken out of it and are told still. */
function lanesLeft(form: LineForm, floor: Pick<FloorState, 'lines'>): readonly LaneTold[] {
  return lanesTold(floor, form.line).filter(({ lane }) => form.opened.includes(lane) && !hasLane(form, lane));
}

/** The lanes that others told since the form was opened. */
function lanesSince(form: LineForm, floor: Pick<FloorState, 'lines'>): readonly LaneTold[] {
  return lanesTold(floor, form.line).filter(({ lane }) => !form.opened.includes(lane));
}

/** What keeps a line from being saved. */
export type LineObstacle =
  | { readonly code: 'name-missing' | 'lanes-alike' | 'zone-unknown' | 'no-banks' }
  | { readonly code: 'ranges'; readonly faults: readonly RangesFault[] }
  /** A lane that was taken out of the form is in use again. */
  | { readonly code: 'lane-held'; readonly name: string; readonly held: LaneHeld }
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
  const names = [form, ...form.lanes, ...lanesSince(form, floor)].map(({ name }) => name.trim());
  if (names.includes('')) return { machines, obstacle: { code: 'name-missing' } };
  if (new Set(names).size < names.length) return { machines, obstacle: { code: 'lanes-alike' } };
  if (!isZone(form.zone.trim())) return { machines, obstacle: { code: 'zone-unknown' } };
  if (told.length === 0) return { machines, obstacle: { code: 'no-banks' } };
  for (const { line, name } of lanesLeft(form, floor)) {
    const held = laneHeld(floor, line);
    if (held !== null) return { machines, obstacle: { code: 'lane-held', name, held } };
  }
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
 * What saving writes: the line, its first rules where it is new, the further lanes of its conveyor, and which of them are taken away. A lane that others
 * took away since the form was opened stays away, and one that they added stays; a new one in the form then gets the next number.
 */
export function lineDrafts(
  form: LineForm,
  line: string,
  machines: Machines,
  floor: Pick<FloorState, 'lines'>,
): readonly DraftEntry[] {
  const defined = (id: string, name: string): DraftEntry => ({
    kind: 'line.defined',
    payload: { line: id, name: name.trim(), zone: form.zone.trim(), machines },
  });
  return [
    defined(line, form.name),
    ...(form.line === null ? [firstRulesDraft(line)] : []),
    ...lanesToTell(form, floor).map(({ lane, name }) => defined(laneLine(line, lane), name)),
    ...lanesLeft(form, floor).map(
      (lane): DraftEntry => ({ kind: 'lane.withdrawn', payload: { line: lane.line } }),
    ),
  ];
}

function lanesToTell(form: LineForm, floor: Pick<FloorState, 'lines'>): readonly LaneForm[] {
  const there = new Set(lanesTold(floor, form.line).map(({ lane }) => lane));
  const taken = new Set([...there, ...form.opened, ...form.lanes.map(({ lane }) => lane)]);
  return form.lanes.flatMap((lane) => {
    if (form.opened.includes(lane.lane)) return there.has(lane.lane) ? [lane] : [];
    if (!there.has(lane.lane)) return [lane];
    const free = furtherLanes.find((each) => !taken.has(each));
    if (free === undefined) return []; // others have told the most that a conveyor has
    taken.add(free);
    return [{ ...lane, lane: free }];
  });
}
