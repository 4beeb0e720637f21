// What each product wants on each slot of the invented line. Method: every part has a home, machine by machine in the order
// of the parts list; a product keeps its parts at home, but some neighbours swap places, so that a changeover has feeders to
// keep, move, take out and put in.

import { formatSlot, parseSlot } from '../shared/floor/address.ts';
import type { PayloadOf, SetupSlot } from '../shared/floor/kinds.ts';
import { familyOf, type PartRow, partRows, supplierPartsOf } from './parts.ts';

/** The line's name in every entry. */
export const lineId = 'L2';

/** Positions, 8 mm each, of every bank. */
export const bankPositions = 60;

/** Machines and their banks in walking order. */
export const machines = ['M1', 'M2', 'M3'] as const;
export const banks = ['F', 'R'] as const;

/** One product side. */
export interface Product {
  readonly setup: string;
  readonly product: string;
  readonly side: 'top' | 'bottom';
  readonly revision: string;
  /** Picks this product's placements per panel out of a part's row. */
  readonly perPanel: (row: PartRow) => number;
  /** Alternates that this product allows: the same value to a closer tolerance or a higher voltage. */
  readonly alternates: Readonly<Record<string, readonly string[]>>;
  /** Of every so many parts that fit each other's places, two have swapped them; 0 = none. */
  readonly swapEvery: number;
  /** On the list for a variant, not on this order's panels. */
  readonly variantOnly: readonly string[];
}

/** The products, the one that runs first in front. */
export const products = [
  {
    setup: 'tide-gauge-top-C',
    product: 'Tide gauge controller',
    side: 'top',
    revision: 'C',
    perPanel: (row) => row[2],
    alternates: { '10-0402-103': ['10-0402-1002'], '12-0603-104': ['12-0603-104H'] },
    swapEvery: 0,
    variantOnly: ['22-0603-B', '25-0023-113', '10-0603-3R3'],
  },
  {
    setup: 'greenhouse-node-top-F',
    product: 'Greenhouse node',
    side: 'top',
    revision: 'F',
    perPanel: (row) => row[3],
    alternates: { '12-0603-105': ['12-0603-105H'] },
    swapEvery: 9,
    variantOnly: [],
  },
  {
    setup: 'pump-driver-bottom-B',
    product: 'Pump driver',
    side: 'bottom',
    revision: 'B',
    perPanel: (row) => row[4],
    alternates: { '10-0603-103': ['10-0603-1002'] },
    swapEvery: 6,
    variantOnly: [],
  },
] as const satisfies readonly Product[];

/** Where every part lives: the fuller bank waits. Throws where a machine is too small: a fault of the parts list. */
function homes(): ReadonlyMap<string, string> {
  const home = new Map<string, string>();
  const used = new Map<string, number>();
  for (const [part, , ...usage] of partRows) {
    if (usage.every((perPanel) => perPanel === 0)) continue;
    const { machine, positions } = familyOf(part);
    const [front, rear] = banks.map((bank) => used.get(`${machine}-${bank}`) ?? 0) as [number, number]; // two banks
    const bank = front <= rear ? 'F' : 'R';
    const taken = Math.min(front, rear);
    if (taken + positions > bankPositions) {
      throw new RangeError(`Cannot place part as ${machine} must have room: current value is ${part}`);
    }
    home.set(part, formatSlot({ machine, bank, position: taken + 1 }));
    used.set(`${machine}-${bank}`, taken + positions);
  }
  return home;
}

/** The slot of each part that a product uses. */
function places(product: Product): ReadonlyMap<string, string> {
  const home = homes();
  const used = partRows.filter((row) => product.perPanel(row) > 0).map((row) => row[0]);
  const place = new Map(used.map((part) => [part, home.get(part) ?? '']));
  if (product.swapEvery === 0) return place;
  const waiting = new Map<string, string[]>();
  for (const part of used) {
    const { machine, positions } = familyOf(part);
    const kind = `${machine}/${positions}`;
    const group = [...(waiting.get(kind) ?? []), part];
    waiting.set(kind, group.length === product.swapEvery ? [] : group);
    const [one, , other] = group;
    if (group.length !== product.swapEvery || one === undefined || other === undefined) continue;
    place.set(one, home.get(other) ?? '').set(other, home.get(one) ?? '');
  }
  return place;
}

function toSlot(product: Product, row: PartRow, slot: string): SetupSlot {
  const part = row[0];
  const { tapeWidthMm, pitchMm, positions, bodyMm, msl, polarity, critical } = familyOf(part);
  const variant = product.variantOnly.includes(part);
  return {
    slot,
    part,
    perPanel: variant ? 0 : product.perPanel(row),
    tapeWidthMm,
    pitchMm,
    positions,
    alternates: [...(product.alternates[part] ?? [])],
    supplierParts: [...supplierPartsOf(part)],
    bodyMm,
    ...(variant ? { note: 'Variant S only: not placed on this order' } : {}),
    ...(msl === undefined ? {} : { msl }),
    ...(polarity === undefined ? {} : { polarity }),
    ...(critical === undefined ? {} : { critical }),
  };
}

/** A product's setup sheet as an engineer took it in. */
export function takenSetup(product: Product): PayloadOf<'setup.taken'> {
  const place = places(product);
  const slots = partRows
    .filter((row) => product.perPanel(row) > 0)
    .map((row) => toSlot(product, row, place.get(row[0]) ?? ''))
    .sort((a, b) => (a.slot < b.slot ? -1 : 1));
  const { setup, side, revision } = product;
  return { setup, product: product.product, side, revision, line: lineId, slots, source: `${setup}.csv` };
}

/** Positions that a slot's feeder covers, as `machine-bank-number` texts. */
export function coveredPositions(slot: Pick<SetupSlot, 'slot' | 'positions'>): readonly string[] {
  const address = parseSlot(slot.slot);
  const { position } = address;
  if (position === null)
    throw new RangeError(`Cannot cover positions as slot must be an address: current value is ${slot.slot}`);
  return Array.from({ length: slot.positions }, (_, step) =>
    formatSlot({ ...address, position: position + step }),
  );
}
