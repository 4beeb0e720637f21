// Places with an air of their own, and packages that were cut in two or joined.
// What a new package is, is what the one was that it came from: part, maker, lot, date, place, floor life so far. Refused: joining packages of
// two lots; a trace must be able to say which lot a panel has. What hands did though it was not to be done, such as joining a blocked package whose
// block had not been heard of, is folded all the same: what became of it is under the block too.

import { entryId } from '../log/entry.ts';
import { blockOn } from './blocks.ts';
import { backInUse, goneAs, isReelKnown, reelOf } from './gone-reels.ts';
import type { EntryOf, PayloadOf } from './kinds.ts';
import { addJoined, addPiece } from './made-of.ts';
import { isPackageId, packageIdOf } from './package-name.ts';
import type { FloorState, Reel } from './state.ts';
import type { Air } from './vocabulary.ts';

/** The air at a place; °C and % relative humidity, null where nobody said. */
export interface PlaceAir {
  readonly air: Air;
  readonly celsius: number | null;
  readonly humidity: number | null;
}

/** Kinds that this fold handles. */
type StoreEntry = EntryOf<'place.described' | 'reel.split' | 'reel.merged'>;

/** Applies one entry to places, and to reels cut or joined. */
export function foldStore(state: FloorState, entry: StoreEntry): void {
  switch (entry.kind) {
    case 'place.described': {
      const { place, air, celsius, humidity } = entry.payload;
      if (air === null) state.placeAirs.delete(place);
      else state.placeAirs.set(place, { air, celsius, humidity });
      return;
    }
    case 'reel.split':
      split(state, entry.payload, entryId(entry));
      return;
    case 'reel.merged':
      merge(state, entry.payload);
      return;
    default:
      entry satisfies never;
  }
}

function split(
  state: FloorState,
  { reel, into, part, lot, quantity, left }: PayloadOf<'reel.split'>,
  entry: string,
): void {
  const known = reelOf(state, reel);
  // Of one that was used up long ago the cut itself tells what it is.
  const from = known?.gone ? { ...known, part: known.part ?? part, lot: known.lot ?? lot } : known;
  // The plant's own id of this very cut names nothing else, whoever has scanned it by then.
  const isOwn = isPackageId(into) && into === packageIdOf(entry);
  const isTaken = state.reels.has(into) || (!isOwn && isReelKnown(state, into));
  if (isOwn || !isTaken) addPiece(state, into, reel);
  // Two packages bear one id: the parts may be in either.
  else addJoined(state, into, reel);
  // On a slot it is no longer in anybody's hands; an id that is taken already names another package.
  if (isTaken || (from === undefined ? !isOwn : from.at !== null)) return;
  const counted = { reel: into, count: quantity, sd: 0, basis: 'typed' } as const;
  if (from === undefined) {
    // Of the first nothing was told yet, or a link has forgotten it: the new one is what the cut says of it.
    const facts = { part, supplierPart: null, lot, dateCode: null, at: null };
    state.reels.set(into, { ...counted, ...facts, ...goneAs(state, into) });
  } else {
    const { cameOff: _, ...facts } = from;
    state.reels.set(into, { ...facts, ...counted, ...goneAs(state, into, reel) });
    if (left !== 0) backInUse(state, reel);
    state.reels.set(reel, { ...showingNothing(from), count: left });
  }
  // The maker's label stayed on the first: the plant's own id is the only one that the new one has.
  state.named.set(into, `~${entry}`);
  const byReel: readonly Map<string, unknown>[] = [state.exposures, state.expiries, state.labelTimes];
  for (const map of byReel) if (map.has(reel)) map.set(into, map.get(reel));
}

/** What was put on a reel or cut from it away from the line is no loss: it stays opened, and its next count shows nothing of a feeder. */
function showingNothing(reel: Reel): Reel {
  return reel.cameOff === undefined ? reel : { ...reel, cameOff: null };
}

function merge(state: FloorState, { reel, from, quantity, sd, basis }: PayloadOf<'reel.merged'>): void {
  addJoined(state, reel, from);
  const kept = reelOf(state, reel);
  const gone = reelOf(state, from);
  if (kept === undefined || gone === undefined) return;
  const why = whyNotMerged(state, kept, gone);
  if (why === 'gone') state.reels.set(reel, { ...kept, gone: true });
  // They are one package by now, under the block of either.
  if (why !== null && why !== 'blocked') return;
  backInUse(state, reel);
  state.reels.set(reel, { ...showingNothing(kept), count: quantity, sd, basis });
  state.reels.set(from, { ...showingNothing(gone), count: 0, sd: 0, basis: 'typed' });
}

/** Why two packages may not become one; null where they may. */
export type WhyNotMerged = 'same' | 'on-line' | 'gone' | 'other-part' | 'other-lot' | 'opened' | 'blocked';

/** Why two packages may not become one: on a slot, used up long ago, of another part, maker, lot or date, with a floor life of their own, or blocked; null where they may. */
export function whyNotMerged(state: FloorState, kept: Reel, gone: Reel): WhyNotMerged | null {
  if (kept.reel === gone.reel) return 'same';
  if (kept.at !== null || gone.at !== null) return 'on-line';
  // Of what was used up long ago neither lot nor floor life is known.
  if (kept.gone || gone.gone) return 'gone';
  if (kept.part !== gone.part || kept.supplierPart !== gone.supplierPart) return 'other-part';
  if (kept.lot !== gone.lot || kept.dateCode !== gone.dateCode) return 'other-lot';
  if (state.expiries.get(kept.reel) !== state.expiries.get(gone.reel)) return 'other-lot';
  // The shorter life of two would have to be guessed.
  if (state.exposures.has(kept.reel) || state.exposures.has(gone.reel)) return 'opened';
  return blockOn(state, kept) !== null || blockOn(state, gone) !== null ? 'blocked' : null;
}

/** What putting a reel at a place tells of its floor life; null where it tells nothing. */
export function airAtPlace(state: FloorState, reel: string, place: string): PlaceAir | null {
  // A bag that nobody opened protects its parts anywhere.
  const last = state.exposures.get(reel)?.periods.at(-1);
  if (last === undefined) return null;
  const there = state.placeAirs.get(place);
  const before = state.placeAirs.get(state.reels.get(reel)?.place ?? '');
  if (there === undefined) {
    // Out of a cabinet and onto a shelf is out on the floor; from shelf to shelf changes nothing that was told.
    const leaves = before !== undefined && before.air !== 'floor' && last.air !== 'floor';
    return leaves ? { air: 'floor', celsius: null, humidity: null } : null;
  }
  const isSame = last.air === there.air && last.celsius === there.celsius && last.humidity === there.humidity;
  return isSame ? null : there;
}
