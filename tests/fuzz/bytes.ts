// Mutations of bytes: as they are, by the parts of a zip, and by tag, length and content of a certificate (ITU-T X.690).

import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { type Plan, pick, placeIn, type Step, timesOf } from './plan.ts';
import { mutateText, type TextForm } from './texts.ts';

const MOST = 262_144;
/** Numbers that a length may lie with. */
const lengths = [0, 1, 0x7f, 0x80, 0xff, 0x7fff, 0xffff, 0x7fffffff, 0x80000000, 0xfffffffe, 0xffffffff];

/** Bytes of a sample after the plan's steps. */
export function mutateBytes(samples: readonly Uint8Array[], plan: Plan): Uint8Array<ArrayBuffer> {
  let bytes = pick(samples, plan.sample);
  for (const step of plan.steps) bytes = stepBytes(bytes, samples, step).subarray(0, MOST);
  return Uint8Array.from(bytes);
}

function stepBytes(bytes: Uint8Array, samples: readonly Uint8Array[], [act, a, b, c]: Step): Uint8Array {
  const at = placeIn(bytes.length, a);
  const to = Math.min(bytes.length, at + (b % 256));
  if (act < 20) {
    const changed = Uint8Array.from(bytes);
    if (at < bytes.length) changed[at] = act < 12 ? (changed[at] ?? 0) ^ (1 << (b % 8)) : b;
    return changed;
  }
  if (act < 36) {
    const changed = Uint8Array.from(bytes);
    if (at + 4 > bytes.length) return changed;
    new DataView(changed.buffer).setUint32(at, pick(lengths, c), b % 2 === 0);
    return changed;
  }
  if (act < 44) return joined(bytes.subarray(0, at), bytes.subarray(to));
  if (act < 52) return joined(bytes.subarray(0, to), bytes.subarray(at));
  if (act < 60) {
    const other = pick(samples, c);
    return joined(bytes.subarray(0, at), other.subarray(placeIn(other.length, b)));
  }
  return bytes.subarray(0, at);
}

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return Uint8Array.from(Buffer.concat(parts));
}

/** A zip with one of its texts mutated, or its own bytes. */
export function mutateZip(
  zips: readonly Uint8Array[],
  form: Omit<TextForm, 'samples'>,
  plan: Plan,
): Uint8Array<ArrayBuffer> {
  const [[act, a, b] = [0, 0, 0], ...steps] = plan.steps;
  if (act < 20 || steps.length === 0) return mutateBytes(zips, plan);
  const parts = unzipSync(pick(zips, plan.sample));
  const names = Object.keys(parts);
  // The parts with cells and texts are asked as often as all others together.
  const cells = names.filter((name) => /sheet\d|sharedStrings|workbook\.xml/.test(name));
  const name = pick(b % 2 === 0 ? cells : names, a);
  if (act < 24) {
    const { [name]: _, ...others } = parts;
    return Uint8Array.from(zipSync(others, { level: 0 }));
  }
  const samples = [
    strFromU8(parts[name] ?? new Uint8Array()),
    ...cells.map((one) => strFromU8(parts[one] ?? new Uint8Array())),
  ];
  const text = mutateText({ samples, parts: form.parts, odd: form.odd }, { sample: 0, steps });
  return Uint8Array.from(zipSync({ ...parts, [name]: strToU8(text) }, { level: 0 }));
}

interface Tlv {
  tag: number;
  children: Tlv[] | null;
  content: Uint8Array;
  /** Another length than the content's; null tells the truth. */
  lie: number | null;
}

/** DER of a sample after the plan's steps. */
export function mutateDer(samples: readonly Uint8Array[], plan: Plan): Uint8Array<ArrayBuffer> {
  const root: Tlv = {
    tag: 0x30,
    children: readAll(pick(samples, plan.sample)),
    content: new Uint8Array(),
    lie: null,
  };
  for (const step of plan.steps) stepDer(root, samples, step);
  return Uint8Array.from(Buffer.concat((root.children ?? []).map(write)).subarray(0, MOST));
}

function stepDer(root: Tlv, samples: readonly Uint8Array[], [act, a, b, c]: Step): void {
  const spots = spotsOf(root);
  const spot = spots[placeIn(spots.length - 1, a)];
  const other = spots[placeIn(spots.length - 1, b)];
  if (!spot || !other) return;
  const { list, index } = spot;
  const value = list[index];
  if (!value) return;
  if (act < 10) value.tag = b % 256;
  else if (act < 20) value.lie = pick(lengths, b);
  else if (act < 30) {
    value.children = null;
    value.content = stepBytes(value.content, [value.content], [c % 64, b, c, a]);
  } else if (act < 38) list.splice(index, 1);
  else if (act < 46) for (let n = 0; n < timesOf(c, 8); n += 1) list.push(value);
  else if (act < 54) {
    const moved = other.list[other.index];
    if (moved) list[index] = { ...moved, children: null, content: bodyOf(moved) };
  } else if (act < 60) {
    const graft = spotsOf({
      tag: 0,
      children: readAll(pick(samples, c)),
      content: new Uint8Array(),
      lie: null,
    });
    const one = graft[placeIn(graft.length - 1, b)];
    const moved = one?.list[one.index];
    if (moved) list[index] = moved;
  } else {
    let content = write(value);
    for (let n = 0; n < timesOf(c, 7); n += 1)
      content = write({ tag: 0x30, children: null, content, lie: null });
    list[index] = { tag: 0x30, children: null, content, lie: null };
  }
}

function spotsOf(root: Tlv): readonly { readonly list: Tlv[]; readonly index: number }[] {
  return (root.children ?? []).flatMap((child, index, list) => [{ list, index }, ...spotsOf(child)]);
}

function readAll(bytes: Uint8Array): Tlv[] {
  const all: Tlv[] = [];
  for (let at = 0; at + 2 <= bytes.length; ) {
    const tag = bytes[at] ?? 0;
    const first = bytes[at + 1] ?? 0;
    const wide = first >= 0x80 ? first - 0x80 : 0;
    let length = wide === 0 ? first : 0;
    for (let n = 0; n < wide; n += 1) length = length * 256 + (bytes[at + 2 + n] ?? 0);
    const from = at + 2 + wide;
    const content = bytes.subarray(from, from + length);
    const isNested = (tag & 0x20) !== 0;
    all.push({ tag, children: isNested ? readAll(content) : null, content, lie: null });
    at = from + length;
  }
  return all;
}

function bodyOf({ children, content }: Tlv): Uint8Array {
  return children ? Uint8Array.from(Buffer.concat(children.map(write))) : content;
}

function write(tlv: Tlv): Uint8Array {
  const body = bodyOf(tlv);
  return joined(Uint8Array.of(tlv.tag, ...lengthBytes(tlv.lie ?? body.length)), body);
}

function lengthBytes(length: number): readonly number[] {
  if (length < 0x80) return [length];
  const bytes: number[] = [];
  for (let rest = length; rest > 0; rest = Math.floor(rest / 256)) bytes.unshift(rest % 256);
  return [0x80 + bytes.length, ...bytes];
}
