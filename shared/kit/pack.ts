// Values with maps and sets as JSON, and back. Method: what JSON has no word for stands as a marked object. The engine's own
// structured clone was passed over: it has no text that may leave the process. What travels is packed closely: many records of one
// shape as a table (pack-table.ts).

import { isRecord, tableOf, untable } from './pack-table.ts';

/** Marks an object that stands for something else; a plain object with a key of this name is wrapped. */
const MARK = '$';

/** A value as JSON can hold it: maps, sets and infinity marked. Cost: linear in what it holds. */
export function packValue(value: unknown): unknown {
  return packed(value, false);
}

/** The same in fewer bytes, for what travels: records of one shape have their fields named once. Two equal values may be packed otherwise. */
export function packClosely(value: unknown): unknown {
  return packed(value, true);
}

function packed(value: unknown, isClose: boolean): unknown {
  const inner = (item: unknown) => packed(item, isClose);
  if (value instanceof Map) {
    const table = isClose ? tableOf([...value.values()], inner) : null;
    if (table) return { [MARK]: 'records', of: [[...value.keys()], table] };
    return { [MARK]: 'map', of: [...value].map(([key, item]) => [key, inner(item)]) };
  }
  if (value instanceof Set) return { [MARK]: 'set', of: [...value].map(inner) };
  if (Array.isArray(value)) {
    const table = isClose ? tableOf(value, inner) : null;
    return table ? { [MARK]: 'rows', of: table } : value.map(inner);
  }
  if (value === Number.POSITIVE_INFINITY) return { [MARK]: 'endless' };
  if (!isRecord(value)) return value;
  const fields = Object.fromEntries(Object.entries(value).map(([key, item]) => [key, inner(item)]));
  return Object.hasOwn(fields, MARK) ? { [MARK]: 'plain', of: fields } : fields;
}

/** Levels of lists, maps and objects in what is unpacked: far more than a state has, and what any browser can keep. */
const LEVELS_MOST = 200;

/** The value that was packed. Throws a TypeError where a mark is not as it is written here, or where the value is nested deeper than can be kept. */
export function unpackValue(value: unknown): unknown {
  return unpackWithin(value, LEVELS_MOST);
}

function unpackWithin(value: unknown, levels: number): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (levels <= 0)
    throw new TypeError(`Cannot read a state: it must have ${LEVELS_MOST} levels at most: it has more`);
  const inner = (item: unknown) => unpackWithin(item, levels - 1);
  // A value in a record of a table lies two levels down: in the list or map, and in the record.
  const inRecord = (item: unknown) => unpackWithin(item, levels - 2);
  if (Array.isArray(value)) return value.map(inner);
  const { [MARK]: mark, of } = value as Record<string, unknown>; // an object out of JSON
  if (mark === undefined) return unpackObject(value, inner);
  if (mark === 'endless') return Number.POSITIVE_INFINITY;
  if (mark === 'plain') return unpackObject(of as object, inner); // written above; anything else throws or fails the checks
  if (mark === 'rows') return untable(of, inRecord);
  if (mark === 'records') return unpackRecords(of, inner, inRecord);
  if (mark !== 'set' && mark !== 'map')
    throw new TypeError(
      `Cannot read a state: mark must be one of this format: current value is ${String(mark)}`,
    );
  if (!Array.isArray(of)) throw new TypeError('Cannot read a state: a map or set must hold a list');
  if (mark === 'set') return new Set(of.map(inner));
  return new Map(of.map(([key, item]: [unknown, unknown]) => [inner(key), inner(item)]));
}

function unpackRecords(
  of: unknown,
  inner: (item: unknown) => unknown,
  inRecord: (item: unknown) => unknown,
): unknown {
  const [keys, table] = Array.isArray(of) ? of : [];
  const records = untable(table, inRecord);
  if (!Array.isArray(keys) || keys.length !== records.length)
    throw new TypeError('Cannot read a state: a table must have a key for each record');
  return new Map(keys.map((key, at) => [inner(key), records[at]]));
}

function unpackObject(value: object, inner: (item: unknown) => unknown): object {
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, inner(item)]));
}
