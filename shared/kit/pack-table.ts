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
  const which: number[] = [];
  for (const value of values) {
    if (!isRecord(value) || value instanceof Map || value instanceof Set) return null;
    // A field that is undefined is none, as in JSON: in a list it would come back as null.
    const fields = Object.entries(value).flatMap(([name, item]) => (item === undefined ? [] : [name]));
    const shape = JSON.stringify(fields);
    let at = shapes.get(shape);
    if (at === undefined) {
      at = shapes.size;
      if (at * ALIKE >= values.length) return null;
      shapes.set(shape, at);
      names.push(fields);
    }
    which.push(at);
  }
  // Packed only now: lists within lists that are no table would each be packed twice.
  const columns = names.map((fields) => fields.map((): unknown[] => []));
  for (const [at, value] of values.entries()) {
    const items = Object.values(value as object).filter((item) => item !== undefined); // records all, seen above
    const lists = columns[which[at] ?? 0] ?? [];
    for (const [field, item] of items.entries()) lists[field]?.push(pack(item));
  }
  return [names, which, columns];
}

/** The records of a table, in order. Throws a TypeError where lists are not as many, or not as long, as fields and records ask for. */
export function untable(table: unknown, unpack: (value: unknown) => unknown): readonly object[] {
  const [shapes, which, columns] = Array.isArray(table) ? table : [];
  if (!Array.isArray(shapes) || !Array.isArray(which) || !Array.isArray(columns)) throw broken();
  if (columns.length !== shapes.length) throw broken();
  const taken = shapes.map(() => 0);
  for (const shape of which as readonly unknown[]) {
    const before = typeof shape === 'number' ? taken[shape] : undefined;
    if (before === undefined) throw broken();
    taken[Number(shape)] = before + 1;
  }
  // Looked at whole before a record is made: what is no table costs nothing.
  for (const [shape, fields] of (shapes as readonly unknown[]).entries()) {
    const lists: unknown = columns[shape];
    if (!Array.isArray(fields) || !Array.isArray(lists) || lists.length !== fields.length) throw broken();
    if (!fields.every((name: unknown) => typeof name === 'string')) throw broken();
    if (!lists.every((list: unknown) => Array.isArray(list) && list.length === taken[shape])) throw broken();
  }
  const made = shapes.map(() => 0);
  return (which as readonly number[]).map((shape) => {
    const at = made[shape] ?? 0;
    made[shape] = at + 1;
    const lists = columns[shape] as readonly (readonly unknown[])[]; // lists, as looked at above
    return Object.fromEntries(
      (shapes[shape] as readonly string[]).map((name, field) => [name, unpack(lists[field]?.[at])]),
    );
  });
}

const broken = () =>
  new TypeError('Cannot read a state: a table must hold a value for each field of each record');
