// By which texts is an entry found? By the codes and names in it that people read, and by who did it; never by ids that only the log knows.

import { hasOwnId } from '../floor/reel-id.ts';
import type { FloorState } from '../floor/state.ts';
import { type Entry, entryId, type Json } from '../log/entry.ts';
import type { FindableThing } from './floor-things.ts';

/** Facts whose texts are printed, spoken or written by people. */
const readFacts: readonly string[] = [
  'slot',
  'slots',
  'reel',
  'part',
  'supplierPart',
  'lot',
  'feeder',
  'serial',
  'codes',
  'product',
  'cart',
  'place',
  'name',
  'reason',
  'note',
];

const textsIn = (value: Json | undefined): readonly string[] =>
  typeof value === 'string'
    ? [value]
    : Array.isArray(value)
      ? value.filter((each) => typeof each === 'string')
      : [];

/** The texts of an entry's facts, as written. */
export function textsOfEntry({ payload }: Pick<Entry, 'payload'>): readonly string[] {
  return readFacts.flatMap((fact) => textsIn(payload[fact])).filter((text) => text !== '' && hasOwnId(text));
}

/** Entries as things to be found; they are told in the order given. `floor`: who somebody is. */
export function entryThings(
  entries: readonly Entry[],
  floor: Pick<FloorState, 'people'>,
): readonly FindableThing[] {
  return entries.map((entry) => {
    const person = floor.people.get(entry.who ?? '')?.name;
    return {
      kind: 'entry',
      thing: { kind: 'entry', entry: entryId(entry) },
      names: [],
      about: [...textsOfEntry(entry), ...(person === undefined ? [] : [person])],
    };
  });
}
