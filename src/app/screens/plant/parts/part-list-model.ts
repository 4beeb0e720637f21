// The plant's list of its parts as the page shows and changes it: what is known of a part from wherever it came, what a list that comes in
// changes, the entries that take it in, and a part's form as texts and back.

import type { DraftEntry, PayloadOf } from '../../../../../shared/floor/kinds.ts';
import { partByMakers, productAndPart } from '../../../../../shared/floor/maker-lists.ts';
import { mostShort } from '../../../../../shared/floor/payload-fields.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import type { PackageFamily, PackageKind } from '../../../../../shared/floor/vocabulary.ts';
import { chunksOf } from '../../../../../shared/kit/chunks.ts';
import { compareText } from '../../../../../shared/log/order.ts';
import { parseLengthMm } from '../../../../../shared/sheet/cells.ts';
import { parseBodySize } from '../../../../../shared/sheet/package-text.ts';
import { type ListedPart, type PartRow, parseMonths } from '../../../../../shared/sheet/part-list.ts';
import { parsePrice } from '../../../../../shared/sheet/price.ts';
import { entryBytes } from '../../../../../shared/wire/limits.ts';

/** Every part that the plant's list, a package or a setup names, by number. */
export function knownParts(floor: FloorState): readonly string[] {
  const parts = new Set([...floor.listed.keys(), ...floor.parts.keys()]);
  for (const { slots } of floor.setups.values()) for (const { part } of slots) parts.add(part);
  return [...parts].sort(compareText);
}

/** Makers' numbers by part: approved by hand, then for one product; made once for many parts. */
export function makersByPart(floor: FloorState): ReadonlyMap<string, ListedPart['makers']> {
  const made = new Map<string, ListedPart['makers'][number][]>();
  const add = (part: string, maker: ListedPart['makers'][number]) => {
    const there = made.get(part);
    if (there) there.push(maker);
    else made.set(part, [maker]);
  };
  for (const [supplierPart, parts] of floor.approvedByHand)
    for (const part of parts) add(part, { supplierPart, product: null });
  for (const [key, numbers] of floor.productMakers) {
    const [product, part] = productAndPart(key);
    for (const supplierPart of numbers) add(part, { supplierPart, product });
  }
  return made;
}

/** All that is known of a part, as the list would say it. */
export function partAsListed(floor: FloorState, part: string, makers: ListedPart['makers']): ListedPart {
  const { source: _, ...listed } = floor.listed.get(part) ?? {
    description: null,
    value: null,
    tolerance: null,
    package: null,
    comesIn: null,
    tapeWidthMm: null,
    pitchMm: null,
    ageMonths: null,
    orientation: null,
    source: '',
  };
  const {
    family = null,
    pins = null,
    bodyMm = null,
    bodyXMm = null,
    bodyYMm = null,
    msl = null,
  } = floor.parts.get(part) ?? {};
  const known = { ...listed, part, family, pins, bodyMm, bodyXMm, bodyYMm, msl, makers: [...makers] };
  const cost = floor.prices.get(part);
  return cost === undefined ? known : { ...known, price: { each: cost.each, currency: cost.currency } };
}

/** A part of a list that comes in, laid over what is known. */
export interface ChangedPart {
  readonly part: ListedPart;
  /** Null for a part that is not on the list yet. */
  readonly before: ListedPart | null;
}

/** What `compareList` rests on, thing by thing: the same things have the same answer, whatever else happened on the floor. Cost: rows and makers. */
export function listGrounds(floor: FloorState, rows: readonly PartRow[]): readonly unknown[] {
  const of = ({ part: { part } }: PartRow) => [floor.listed.get(part), floor.parts.get(part)];
  return [
    ...rows.flatMap(of),
    ...[floor.approvedByHand, floor.productMakers].flatMap((makers) => [...makers].flat()),
  ];
}

/** What a list changes: an empty cell changes nothing, and makers are only added. */
export function compareList(
  floor: FloorState,
  rows: readonly PartRow[],
): { readonly changed: readonly ChangedPart[]; readonly fresh: number; readonly same: number } {
  const makers = makersByPart(floor);
  const changed: ChangedPart[] = [];
  for (const { part: told } of rows) {
    const before = partAsListed(floor, told.part, makers.get(told.part) ?? []);
    const part = laidOver(before, told);
    const isListed = floor.listed.has(told.part);
    if (!isListed || differing(part, before).length > 0)
      changed.push({ part, before: isListed ? before : null });
  }
  const fresh = changed.filter(({ before }) => before === null).length;
  return { changed, fresh, same: rows.length - changed.length };
}

function laidOver(before: ListedPart, told: ListedPart): ListedPart {
  const { makers, ...facts } = told;
  const said = Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== null));
  const isThere = (each: ListedPart['makers'][number]) =>
    before.makers.some((one) => one.supplierPart === each.supplierPart && one.product === each.product);
  return { ...before, ...said, makers: [...before.makers, ...makers.filter((each) => !isThere(each))] };
}

/** Facts in which two states of a part differ, by the name of the field. */
export function changedFields({ part, before }: ChangedPart): readonly string[] {
  return before === null ? [] : differing(part, before);
}

function differing(part: ListedPart, before: ListedPart): readonly string[] {
  const names: readonly (readonly [string, readonly (keyof ListedPart)[]])[] = [
    ['description', ['description']],
    ['value', ['value']],
    ['tolerance', ['tolerance']],
    ['package', ['package', 'family']],
    ['pins', ['pins']],
    ['bodySize', ['bodyXMm', 'bodyYMm']],
    ['bodyThickness', ['bodyMm']],
    ['msl', ['msl']],
    ['comesIn', ['comesIn']],
    ['tapeWidth', ['tapeWidthMm']],
    ['pitch', ['pitchMm']],
    ['supplierParts', ['makers']],
    ['ageMonths', ['ageMonths']],
    ['orientation', ['orientation']],
    ['price', ['price']],
  ];
  const differs = (key: keyof ListedPart) => sayValue(part[key]) !== sayValue(before[key]);
  return names.filter(([, keys]) => keys.some(differs)).map(([name]) => name);
}

/** A value as one text, whatever the row of its fields: an entry of another tablet has them in another. */
function sayValue(value: ListedPart[keyof ListedPart]): string {
  if (Array.isArray(value))
    return JSON.stringify(value.map(({ supplierPart, product }) => [supplierPart, product]));
  if (typeof value === 'object' && value !== null && 'each' in value)
    return JSON.stringify([value.each, value.currency]);
  return JSON.stringify(value ?? null);
}

const MOST_PARTS = 200;
/** Well under what one entry may have, in characters; a character may be three bytes. */
const MOST_CHARACTERS = Math.floor(entryBytes / 4);

/**
 * Entries that put parts on the list: so many that each stays under the size of one, and as often as a part's makers need. Prices stand in entries
 * of their own behind them.
 */
export function listEntries(parts: readonly ListedPart[], source: string): readonly DraftEntry[] {
  const entries: DraftEntry[] = [];
  let batch: ListedPart[] = [];
  let characters = 0;
  const end = () => {
    if (batch.length > 0)
      entries.push({ kind: 'parts.listed', payload: { source: source.slice(0, mostShort), parts: batch } });
    batch = [];
    characters = 0;
  };
  const plain = parts.map(({ price: _, ...part }): ListedPart => part);
  for (const part of plain.flatMap(partByMakers)) {
    const { length } = JSON.stringify(part);
    if (batch.length >= MOST_PARTS || characters + length > MOST_CHARACTERS) end();
    batch.push(part);
    characters += length;
  }
  end();
  const prices = parts.flatMap(({ part, price }) => (price === undefined ? [] : [{ part, price }]));
  return [...entries, ...priceEntries(prices, source)];
}

type PricedPart = PayloadOf<'parts.priced'>['parts'][number];

function priceEntries(prices: readonly PricedPart[], source: string): readonly DraftEntry[] {
  return chunksOf(prices, MOST_PARTS).map((parts) => ({
    kind: 'parts.priced',
    payload: { source: source.slice(0, mostShort), parts },
  }));
}

/** A part's form: what is typed as texts. */
export interface PartForm {
  readonly part: string;
  readonly description: string;
  readonly value: string;
  readonly tolerance: string;
  readonly package: string;
  readonly family: PackageFamily | null;
  readonly pins: string;
  readonly bodySize: string;
  readonly bodyThickness: string;
  readonly msl: string | null;
  readonly comesIn: PackageKind | null;
  readonly tapeWidth: string;
  readonly pitch: string;
  readonly ageMonths: string;
  readonly orientation: string;
  /** Of one part. */
  readonly price: string;
  readonly currency: string;
  /** One a line: a maker's number, and behind `;` the product, where it is for one alone. */
  readonly makers: string;
}

/** The form of a part as it is known. */
export function partForm(part: ListedPart): PartForm {
  const text = (value: string | number | null) => (value === null ? '' : String(value));
  return {
    part: part.part,
    description: text(part.description),
    value: text(part.value),
    tolerance: text(part.tolerance),
    package: text(part.package),
    family: part.family,
    pins: text(part.pins),
    bodySize: part.bodyXMm === null || part.bodyYMm === null ? '' : `${part.bodyXMm} x ${part.bodyYMm}`,
    bodyThickness: text(part.bodyMm),
    msl: part.msl,
    comesIn: part.comesIn,
    tapeWidth: text(part.tapeWidthMm),
    pitch: text(part.pitchMm),
    ageMonths: text(part.ageMonths),
    orientation: text(part.orientation),
    price: text(part.price?.each ?? null),
    currency: part.price?.currency ?? '',
    makers: part.makers
      .map(({ supplierPart, product }) => (product === null ? supplierPart : `${supplierPart}; ${product}`))
      .join('\n'),
  };
}

/** The part as typed, or the field that does not say it. Makers that were taken out of the form are told apart: they are withdrawn. */
export function formToPart(form: PartForm): ListedPart | { readonly wrong: string } {
  const text = (value: string) => (value.trim() === '' ? null : value.trim().slice(0, mostShort));
  const part = form.part.trim();
  if (part === '' || part.length > 64) return { wrong: 'part' };
  const wrong: string[] = [];
  const read = <T>(field: keyof PartForm & string, parse: (typed: string) => T | null): T | null => {
    const typed = String(form[field] ?? '').trim();
    if (typed === '') return null;
    const value = parse(typed);
    if (value === null) wrong.push(field);
    return value;
  };
  const length = (typed: string) => {
    const value = parseLengthMm(typed);
    return value !== null && value > 0 ? value : null;
  };
  const pins = read('pins', (typed) => (/^[1-9]\d{0,3}$/.test(typed) ? Number(typed) : null));
  const size = read('bodySize', parseBodySize);
  const bodyMm = read('bodyThickness', length);
  const tapeWidthMm = read('tapeWidth', length);
  const pitchMm = read('pitch', length);
  const ageMonths = read('ageMonths', parseMonths);
  const price = read('price', parsePrice);
  const [first] = wrong;
  if (first !== undefined) return { wrong: first };
  const makers = new Map<string, ListedPart['makers'][number]>();
  for (const line of form.makers.split(/\n/)) {
    const [supplierPart = '', product = ''] = line
      .split(/[;；؛]/)
      .map((each) => each.trim().slice(0, mostShort));
    if (supplierPart === '') continue;
    makers.set(`${supplierPart};${product}`, { supplierPart, product: product === '' ? null : product });
  }
  return {
    part,
    description: text(form.description),
    value: text(form.value),
    tolerance: text(form.tolerance),
    package: text(form.package),
    family: form.family,
    pins,
    bodyMm,
    bodyXMm: size?.[0] ?? null,
    bodyYMm: size?.[1] ?? null,
    msl: form.msl,
    comesIn: form.comesIn,
    tapeWidthMm,
    pitchMm,
    ageMonths,
    orientation: text(form.orientation),
    ...(price === null
      ? {}
      : { price: { each: price.amount, currency: text(form.currency) ?? price.currency } }),
    makers: [...makers.values()],
  };
}

/**
 * What a saved form writes: the part on the list, and each maker's number that was taken out of it, or is good for less than before,
 * withdrawn; what is left of it stands in the list that follows. A price that was taken out is taken away.
 */
export function formEntries(before: ListedPart, part: ListedPart): readonly DraftEntry[] {
  const pairOf = ({ supplierPart, product }: ListedPart['makers'][number]) =>
    `${supplierPart};${product ?? ''}`;
  const left = new Set(part.makers.map(pairOf));
  const gone = new Set(
    before.makers.filter((each) => !left.has(pairOf(each))).map(({ supplierPart }) => supplierPart),
  );
  const isUnpriced = before.part === part.part && before.price !== undefined && part.price === undefined;
  return [
    ...[...gone].map(
      (supplierPart): DraftEntry => ({
        kind: 'supplier.withdrawn',
        payload: { supplierPart, part: part.part },
      }),
    ),
    ...listEntries([part], ''),
    ...(isUnpriced ? priceEntries([{ part: part.part, price: null }], '') : []),
  ];
}
