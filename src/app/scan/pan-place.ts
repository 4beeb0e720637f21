// Which reel label belongs to which slot in a picture of a bank?
// Method: in the slots' own directions as printed, the reel hangs below its slot: a reel belongs to the nearest slot above it in its
// column, and a slot to the one reel of its column. Where no column is clear, but as many slots as reels stand in a row each and all
// slots between the first and the last are there, they belong in that order, as long as none is nearer to a neighbour's.
// Refused: the nearest label in any direction, which is the neighbour's wherever tapes hang low; and a best guess: what is not clear
// is asked.

import type { Belonging } from '../../../shared/labels/scan.ts';
import type { Point, Quad } from '../../worker/decode-protocol.ts';
import { centreOf, longestSide } from './movement.ts';

/** A label with the name under which it is known. */
export interface Placed {
  readonly key: string;
  readonly quad: Quad;
}

export interface Pair {
  readonly slot: string;
  readonly reel: string;
  readonly by: Belonging;
}

/** Slots with their reel, and slots that more than one reel may belong to. */
export interface Belongs {
  readonly pairs: readonly Pair[];
  readonly unclear: readonly { readonly slot: string; readonly reels: readonly string[] }[];
}

/** Within this share of the distance between two slots a reel is in a slot's column; beyond the second share it is in none of it. */
const IN_COLUMN = 0.35;
const OUT_OF_COLUMN = 0.65;
/** A row needs so many for its order to say anything. */
const LEAST_IN_ROW = 3;
/** Slots whose labels lean apart by more than this are no bank (cosine of some 25 degrees). */
const ALIKE = 0.9;

interface Spot {
  readonly key: string;
  /** Along the row of slots and down from it. */
  readonly u: number;
  readonly v: number;
}

/**
 * Which reel belongs to which slot. `slots`: labels of slots (or of feeders that stand on them), each key once; `isRow`: whether these
 * slots are all that a bank has between the first and the last of them.
 */
export function belongTogether(
  slots: readonly Placed[],
  reels: readonly Placed[],
  isRow: (slots: readonly string[]) => boolean,
): Belongs {
  const down = downOf(slots);
  if (down === null || reels.length === 0) return { pairs: [], unclear: [] };
  const spotOf = ({ key, quad }: Placed): Spot => {
    const { x, y } = centreOf(quad);
    return { key, u: x * down.y - y * down.x, v: x * down.x + y * down.y };
  };
  const tops = slots.map(spotOf);
  const hung = reels.map(spotOf);
  const pitch = pitchOf(tops, slots);
  const owners = new Map<string, { readonly slot: string; readonly isClear: boolean }>();
  for (const reel of hung) {
    const above = tops.filter((top) => top.v < reel.v);
    const near = above.filter((top) => Math.abs(top.u - reel.u) <= IN_COLUMN * pitch);
    const owner = near.reduce<Spot | null>(
      (best, top) => (best === null || top.v > best.v ? top : best),
      null,
    );
    if (owner === null) continue;
    // A slot half a column away and no higher than the owner may be meant as well.
    const rivals = above.filter(
      (top) =>
        top !== owner &&
        Math.abs(top.u - reel.u) > IN_COLUMN * pitch &&
        Math.abs(top.u - reel.u) < OUT_OF_COLUMN * pitch &&
        top.v > owner.v - pitch,
    );
    owners.set(reel.key, { slot: owner.key, isClear: rivals.length === 0 });
  }
  const pairs: Pair[] = [];
  const unclear: { slot: string; reels: readonly string[] }[] = [];
  for (const { key: slot } of tops) {
    const own = [...owners].filter(([, owner]) => owner.slot === slot);
    const [only, ...more] = own;
    if (only === undefined) continue;
    if (more.length === 0 && only[1].isClear) pairs.push({ slot, reel: only[0], by: 'nearest-below' });
    else unclear.push({ slot, reels: own.map(([reel]) => reel) });
  }
  if (pairs.length === 0) {
    const byOrder = inOrder(tops, hung, { pitch, isRow });
    if (byOrder.length > 0) return { pairs: byOrder, unclear: [] };
  }
  return { pairs, unclear };
}

/** The way down of the slots' labels as printed; null where they do not agree on one. */
function downOf(slots: readonly Placed[]): Point | null {
  const ways = slots.map(({ quad: [topLeft, topRight, bottomRight, bottomLeft] }) => {
    const x = bottomLeft.x + bottomRight.x - topLeft.x - topRight.x;
    const y = bottomLeft.y + bottomRight.y - topLeft.y - topRight.y;
    const length = Math.hypot(x, y);
    return length === 0 ? { x: 0, y: 0 } : { x: x / length, y: y / length };
  });
  const [x, y] = [ways.reduce((sum, way) => sum + way.x, 0), ways.reduce((sum, way) => sum + way.y, 0)];
  const length = Math.hypot(x, y);
  return length === 0 || length < ALIKE * ways.length ? null : { x: x / length, y: y / length };
}

/** The distance from a slot to the next: the middle one of the picture; of a slot alone, the width of its own label. */
function pitchOf(tops: readonly Spot[], slots: readonly Placed[]): number {
  const alone = Math.min(...slots.map(({ quad }) => longestSide(quad)));
  const along = [...tops].sort((one, other) => one.u - other.u);
  const gaps = along
    .slice(1)
    .map((top, at) => top.u - (along[at]?.u ?? top.u))
    .filter((gap) => gap > alone / 4)
    .sort((one, other) => one - other);
  return gaps[Math.floor(gaps.length / 2)] ?? alone;
}

/** Slots and reels by their order in two rows; none where anything speaks against it. */
function inOrder(
  tops: readonly Spot[],
  hung: readonly Spot[],
  { pitch, isRow }: { readonly pitch: number; readonly isRow: (slots: readonly string[]) => boolean },
): readonly Pair[] {
  if (tops.length < LEAST_IN_ROW || tops.length !== hung.length) return [];
  const spread = (spots: readonly Spot[]) =>
    Math.max(...spots.map(({ v }) => v)) - Math.min(...spots.map(({ v }) => v));
  if (spread(tops) > pitch || spread(hung) > pitch) return [];
  const above = [...tops].sort((one, other) => one.u - other.u);
  const below = [...hung].sort((one, other) => one.u - other.u);
  if (!isRow(above.map(({ key }) => key))) return [];
  const pairs = above.map((top, at) => ({ top, reel: below[at] ?? top }));
  // Half a column away or more, the order may as well be off by one.
  if (pairs.some(({ top, reel }) => Math.abs(top.u - reel.u) >= pitch / 2 || reel.v <= top.v)) return [];
  return pairs.map(({ top, reel }): Pair => ({ slot: top.key, reel: reel.key, by: 'bank-order' }));
}

/** The outline of several codes together, upright in the way of the first. */
export function boxOf(quads: readonly Quad[]): Quad {
  const [first] = quads;
  if (first === undefined)
    throw new RangeError('Cannot outline as there must be a code: current value is 0 codes');
  if (quads.length === 1) return first;
  const side = { x: first[1].x - first[0].x, y: first[1].y - first[0].y };
  const length = Math.hypot(side.x, side.y) || 1;
  const [cos, sin] = [side.x / length, side.y / length];
  const spots = quads.flat().map(({ x, y }) => ({ u: x * cos + y * sin, v: y * cos - x * sin }));
  const [left, right] = [Math.min(...spots.map(({ u }) => u)), Math.max(...spots.map(({ u }) => u))];
  const [top, bottom] = [Math.min(...spots.map(({ v }) => v)), Math.max(...spots.map(({ v }) => v))];
  const back = (u: number, v: number): Point => ({ x: u * cos - v * sin, y: u * sin + v * cos });
  return [back(left, top), back(right, top), back(right, bottom), back(left, bottom)];
}
