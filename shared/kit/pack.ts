// Values with maps and sets as JSON, and back. Method: what JSON has no word for stands as a marked object. The engine's own
// structured clone was passed over: it has no text that may leave the process.

/** Marks an object that stands for something else; a plain object with a key of this name is wrapped. */
const MARK = '$';

/** A value as JSON can hold it: maps, sets and infinity marked. Cost: linear in what it holds. */
export function packValue(value: unknown): unknown {
  if (value instanceof Map)
    return { [MARK]: 'map', of: [...value].map(([key, item]) => [key, packValue(item)]) };
  if (value instanceof Set) return { [MARK]: 'set', of: [...value].map(packValue) };
  if (Array.isArray(value)) return value.map(packValue);
  if (value === Number.POSITIVE_INFINITY) return { [MARK]: 'endless' };
  if (typeof value !== 'object' || value === null) return value;
  const packed: Record<string, unknown> = {};
  for (const [key, item] of Object.entries(value)) packed[key] = packValue(item);
  return MARK in packed ? { [MARK]: 'plain', of: packed } : packed;
}

/** The value that was packed. Throws a TypeError where a mark is not as it is written here. */
export function unpackValue(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(unpackValue);
  if (typeof value !== 'object' || value === null) return value;
  const { [MARK]: mark, of } = value as Record<string, unknown>; // an object out of JSON
  if (mark === undefined) return unpackObject(value);
  if (mark === 'endless') return Number.POSITIVE_INFINITY;
  if (mark === 'plain') return unpackObject(of as object); // written above; anything else throws or fails the checks
  if (mark !== 'set' && mark !== 'map')
    throw new TypeError(
      `Cannot read a state: mark must be one of this format: current value is ${String(mark)}`,
    );
  if (!Array.isArray(of)) throw new TypeError('Cannot read a state: a map or set must hold a list');
  if (mark === 'set') return new Set(of.map(unpackValue));
  return new Map(of.map(([key, item]: [unknown, unknown]) => [key, unpackValue(item)]));
}

function unpackObject(value: object): object {
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, unpackValue(item)]));
}
