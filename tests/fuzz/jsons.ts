// Mutations of JSON, on its tree and as text: what a tree of values cannot say (a key twice, numbers beyond any, half a character, nesting
// deeper than a stack) stands in it as raw text.

import { type Plan, pick, placeIn, type Step, timesOf } from './plan.ts';
import { mutateText, oddTexts } from './texts.ts';

type Tree = { raw: string } | { items: Tree[] } | { fields: [string, Tree][] };
type Holder = { items: Tree[] } | { fields: [string, Tree][] };

const NEST_BITS = 14;
const REPEAT_BITS = 11;
/** Samples are small; a case that grew beyond this is cut off. */
const MOST = 400_000;

const rawValues: readonly string[] = [
  'null',
  'true',
  '0',
  '-0',
  '-1',
  '1.5',
  '1e400',
  '1e-400',
  '9007199254740992',
  '9007199254740991',
  '4398046511104',
  '2147483648',
  '123456789012345678901234567890',
  '""',
  '[]',
  '{}',
  '[[]]',
  '"\\ud800"',
  '"\\udc00x"',
  '"\\u0000"',
  '{"__proto__":{"x":1}}',
  '{"length":1e9}',
  '"2026-02-30T25:61:00Z"',
  '"0000-01-01T00:00:00Z"',
  '"9999-12-31T23:59:59.999+14:00"',
  '"2026-03-02T06:00:00+99:99"',
  ...oddTexts.map((text) => JSON.stringify(text)),
];

const keys: readonly string[] = [
  '__proto__',
  'constructor',
  'toJSON',
  'length',
  '0',
  '',
  '\ud800',
  'then',
  '$',
];

/** JSON text of a sample after the plan's steps; most of it still is JSON. */
export function mutateJson(samples: readonly unknown[], plan: Plan): string {
  const root: { items: Tree[] } = { items: [treeOf(pick(samples, plan.sample))] };
  const onText: Step[] = [];
  for (const step of plan.steps) {
    if (step[0] < 3) onText.push(step);
    else stepTree(root, samples, step);
  }
  const text = textOf(root.items[0] ?? { raw: '' }).slice(0, MOST);
  if (onText.length === 0) return text;
  const form = { samples: [text], parts: /([[\]{},:"])/, odd: rawValues };
  // Only what is done to characters: the tree has its own steps.
  return mutateText(form, { sample: 0, steps: onText.map(([act, a, b, c]) => [(act + b) % 34, a, b, c]) });
}

function stepTree(root: { items: Tree[] }, samples: readonly unknown[], [act, a, b, c]: Step): void {
  const spots = spotsIn(root);
  const spot = spots[placeIn(spots.length - 1, a)];
  const other = spots[placeIn(spots.length - 1, b)];
  if (!spot || !other) return;
  const value = at(spot);
  if (act < 20) put(spot, { raw: pick(rawValues, b) });
  else if (act < 26) drop(spot);
  else if (act < 32) {
    const swapped = at(other);
    put(other, copyOf(value));
    put(spot, copyOf(swapped));
  } else if (act < 38) double(spot, timesOf(c, REPEAT_BITS));
  else if (act < 44) rename(spot, b % 2 === 0 ? pick(keys, c) : keyOf(other));
  else if (act < 50) {
    const graft = spotsIn({ items: [treeOf(pick(samples, c))] });
    put(spot, at(pick(graft, b)));
  } else if (act < 53) {
    const depth = timesOf(c, NEST_BITS);
    const [open, close] = b % 2 === 0 ? ['[', ']'] : ['{"a":', '}'];
    put(spot, { raw: open.repeat(depth) + textOf(value) + close.repeat(depth) });
  } else if (act < 56) put(spot, { raw: JSON.stringify('x'.repeat(timesOf(c, 16))) });
  else if (act < 60) put(spot, { raw: bend(textOf(value), b, c) });
  else if ('fields' in value) value.fields.push([pick(keys, b), { raw: pick(rawValues, c) }]);
  else if ('items' in value) value.items.push({ raw: pick(rawValues, c) });
  else put(spot, { items: [value] });
}

/** A number one off or turned, a text with one character changed. */
function bend(text: string, b: number, c: number): string {
  const number = Number(text);
  if (text !== '' && Number.isFinite(number))
    return String(pick([number + 1, number - 1, -number, number * 1e6, number + 0.5], b));
  if (!text.startsWith('"') || text.length < 3) return pick(rawValues, c);
  const place = 1 + placeIn(text.length - 3, b);
  return `${text.slice(0, place)}${JSON.stringify(String.fromCharCode(c)).slice(1, -1)}${text.slice(place + 1)}`;
}

interface Spot {
  readonly holder: Holder;
  readonly index: number;
}

function spotsIn(root: Holder): readonly Spot[] {
  const spots: Spot[] = [];
  const walk = (holder: Holder) => {
    const children = 'items' in holder ? holder.items : holder.fields.map(([, child]) => child);
    for (const [index, child] of children.entries()) {
      spots.push({ holder, index });
      if (!('raw' in child)) walk(child);
    }
  };
  walk(root);
  return spots;
}

function at({ holder, index }: Spot): Tree {
  const found = 'items' in holder ? holder.items[index] : holder.fields[index]?.[1];
  return found ?? { raw: 'null' };
}

function keyOf({ holder, index }: Spot): string {
  return 'fields' in holder ? (holder.fields[index]?.[0] ?? '') : String(index);
}

function put({ holder, index }: Spot, value: Tree): void {
  if ('items' in holder) holder.items[index] = value;
  else holder.fields[index] = [holder.fields[index]?.[0] ?? '', value];
}

function drop({ holder, index }: Spot): void {
  if ('items' in holder) holder.items.splice(index, 1);
  else holder.fields.splice(index, 1);
}

function rename({ holder, index }: Spot, key: string): void {
  if ('fields' in holder) holder.fields[index] = [key, holder.fields[index]?.[1] ?? { raw: 'null' }];
}

function double(spot: Spot, times: number): void {
  const { holder, index } = spot;
  const value = at(spot);
  // Copies of one text: a repeated branch is written once.
  const copy: Tree = { raw: textOf(value) };
  if ('items' in holder) for (let n = 0; n < times; n += 1) holder.items.push(copy);
  else holder.fields.push([holder.fields[index]?.[0] ?? '', copy]);
}

/** A branch without its tree, so that none ever holds itself. */
function copyOf(tree: Tree): Tree {
  return { raw: textOf(tree) };
}

function treeOf(value: unknown): Tree {
  if (Array.isArray(value)) return { items: value.map(treeOf) };
  if (typeof value !== 'object' || value === null) return { raw: JSON.stringify(value) ?? 'null' };
  return {
    fields: Object.entries(value).flatMap(([key, child]): [string, Tree][] =>
      child === undefined ? [] : [[key, treeOf(child)]],
    ),
  };
}

function textOf(tree: Tree): string {
  if ('raw' in tree) return tree.raw;
  if ('items' in tree) return `[${tree.items.map(textOf).join(',')}]`;
  return `{${tree.fields.map(([key, child]) => `${JSON.stringify(key)}:${textOf(child)}`).join(',')}}`;
}
