// Many records of few shapes as a table: each field's name stands once, and a field's values stand beside each other, where a packer of
// bytes finds most of what they have in common. Records of several shapes stand in one table, so that their order is kept.

/** Fewer records than this are no table: it would not be smaller. */
const FEWEST = 8;
/** Records of a shape at the least, on the whole. */
const ALIKE = 4;

/** `shapes`: names of fields; `which`: the shape of each record; `columns`: by shape and field, the values in the order of the records. */
export type RecordTable = readonly [
  shapes: readonly (readonly string[])[],
  which: readonly number[],
  columns: readonly (readonly (readonly unknown[])[])[],
];

/** True for an object that is no list; maps and sets count too. */
export function isRecord(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Records as a table, their values through `pack`; null where they are few, of many shapes, or not all records. */
export function tableOf(values: readonly unknown[], pack: (value: unknown) => unknown): RecordTable | null {
  if (values.length < FEWEST) return null;
  const shapes = new Map<string, number>();
  const names: string[][] = [];
  const columns: unknown[][][] = [];
  const which: number[] = [];
  for (const value of values) {
    if (!isRecord(value) || value instanceof Map || value instanceof Set) return null;
    const fields = Object.keys(value);
    const shape = JSON.stringify(fields);
    let at = shapes.get(shape);
    if (at === undefined) {
      at = shapes.size;
      if (at * ALIKE >= values.length) return null;
      shapes.set(shape, at);
      names.push(fields);
      columns.push(fields.map(() => []));
    }
    which.push(at);
    for (const [field, item] of Object.values(value).entries()) columns[at]?.[field]?.push(pack(item));
  }
  return [names, which, columns];
}

/** The records of a table, in order. Throws a TypeError where a list is missing, too short or too long. */
export function untable(table: unknown, unpack: (value: unknown) => unknown): readonly object[] {
  const [shapes, which, columns] = Array.isArray(table) ? table : [];
  if (!Array.isArray(shapes) || !Array.isArray(which) || !Array.isArray(columns)) throw broken();
  const taken = shapes.map(() => 0);
  const records = which.map((shape: unknown) => {
    const at = typeof shape === 'number' ? taken[shape] : undefined;
    const fields: unknown = shapes[Number(shape)];
    const lists: unknown = columns[Number(shape)];
    if (at === undefined || !Array.isArray(fields) || !Array.isArray(lists)) throw broken();
    taken[Number(shape)] = at + 1;
    return Object.fromEntries(
      fields.map((name: unknown, field) => {
        const list: unknown = lists[field];
        if (typeof name !== 'string' || !Array.isArray(list) || at >= list.length) throw broken();
        return [name, unpack(list[at])];
      }),
    );
  });
  const isWhole = columns.every(
    (lists: unknown, shape) =>
      Array.isArray(lists) &&
      lists.every((list: unknown) => Array.isArray(list) && list.length === taken[shape]),
  );
  if (!isWhole || columns.length !== shapes.length) throw broken();
  return records;
}

const broken = () =>
  new TypeError('Cannot read a state: a table must hold a value for each field of each record');
