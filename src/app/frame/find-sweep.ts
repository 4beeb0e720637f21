// A sweep by camera: which slots are seen with their reel? A slot is ticked only where its label, or that of the feeder which stands on
// it by the log, and a reel's label were read and belong together in more than one look, and the reel is the one that the log has
// there. Whatever else is seen is told and asked: a label that hangs beside its slot must neither tick it nor hold its panels. Pure.

import { judgeReel } from '../../../shared/desk/judgement.ts';
import { type DeskView, emptyDesk, type ReelInHand } from '../../../shared/desk/model.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import type { DraftEntry } from '../../../shared/floor/kinds.ts';
import { standingAt } from '../../../shared/floor/lanes.ts';
import { placeOnLine } from '../../../shared/floor/place.ts';
import { hasOwnId } from '../../../shared/floor/reel-id.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import type { Belonging, ScannedCode } from '../../../shared/labels/scan.ts';
import type { Reason } from '../../../shared/verdict/reasons.ts';
import type { LabelInView } from '../scan/pan.ts';
import { belongTogether, type Placed } from '../scan/pan-place.ts';
import type { FoundThing } from './find-model.ts';

/** In how many looks a reel was seen to belong to a slot, and by what. */
export interface Vote {
  readonly looks: number;
  readonly by: Belonging;
  /** The feeder whose label said which slot it is; null where the slot's own label did. */
  readonly feeder: string | null;
}

/** Votes by slot, then by reel label. */
export type Votes = ReadonlyMap<string, ReadonlyMap<string, Vote>>;

/** So many looks must agree before a pair counts. */
const LEAST_LOOKS = 2;

/** The votes with those of one more look. `thingOf`: what a label in view is, by its key. */
export function voteOn(
  votes: Votes,
  inView: readonly LabelInView[],
  at: { readonly view: DeskView; readonly thingOf: (key: string) => FoundThing | null },
): Votes {
  const slots = new Map<string, Placed & { readonly feeder: string | null }>();
  const reels: Placed[] = [];
  const seen = new Set<string>();
  for (const { key, quad } of inView) {
    const thing = key === null ? null : at.thingOf(key);
    if (key === null || thing === null) continue;
    if ('reel' in thing) {
      // The same label twice in one picture belongs to two places: it says nothing of either.
      if (seen.has(key)) reels.splice(0, reels.length, ...reels.filter((each) => each.key !== key));
      else reels.push({ key, quad });
      seen.add(key);
    } else if ((thing.is === 'slot' || thing.is === 'feeder') && thing.slot !== null) {
      if (thing.is === 'slot' || !slots.has(thing.slot))
        slots.set(thing.slot, { key: thing.slot, quad, feeder: thing.is === 'slot' ? null : thing.text });
    }
  }
  const { pairs, unclear } = belongTogether([...slots.values()], reels, (row) => isBankRow(row, at.view));
  const next = new Map([...votes].map(([slot, own]) => [slot, new Map(own)]));
  const vote = (slot: string, reel: string, by: Belonging) => {
    const own = next.get(slot) ?? new Map<string, Vote>();
    const feeder = slots.get(slot)?.feeder ?? null;
    own.set(reel, { looks: (own.get(reel)?.looks ?? 0) + 1, by, feeder });
    next.set(slot, own);
  };
  for (const { slot, reel, by } of pairs) vote(slot, reel, by);
  for (const { slot, reels: several } of unclear)
    for (const reel of several) vote(slot, reel, 'nearest-below');
  return next;
}

/** True where these slots are all that their bank has in use between the first and the last of them. */
function isBankRow(slots: readonly string[], { floor, line }: DeskView): boolean {
  const here = floor.lines.get(line);
  if (here === undefined) return false;
  const places = slots.map((slot) => placeOnLine(here, slot));
  const [first] = places;
  if (
    first === undefined ||
    places.some(({ machine, bank }) => machine !== first.machine || bank !== first.bank)
  )
    return false;
  const positions = places.flatMap(({ position }) => (position === null ? [] : [position]));
  if (positions.length !== slots.length) return false;
  const [low, high] = [Math.min(...positions), Math.max(...positions)];
  const inUse = standingAt(floor, line).filter((each) => {
    const { machine, bank, position } = placeOnLine(here, each.slot);
    return (
      machine === first.machine &&
      bank === first.bank &&
      position !== null &&
      position >= low &&
      position <= high
    );
  });
  const isSorted = (way: 1 | -1) =>
    positions.every((position, at) => at === 0 || way * (position - (positions[at - 1] ?? 0)) > 0);
  return inUse.length === slots.length && (isSorted(1) || isSorted(-1));
}

/** A slot with the one reel that belongs to it, or with several that may. */
export type SlotSeen =
  | { readonly is: 'one'; readonly slot: string; readonly reel: string; readonly vote: Vote }
  | { readonly is: 'several'; readonly slot: string; readonly reels: readonly string[] };

/** What the votes come to, slot by slot; slots seen too seldom are left out. */
export function slotsSeen(votes: Votes): readonly SlotSeen[] {
  const strong = [...votes].map(([slot, own]) => ({
    slot,
    reels: [...own].filter(([, { looks }]) => looks >= LEAST_LOOKS),
  }));
  const claims = new Map<string, number>();
  for (const { reels } of strong) for (const [reel] of reels) claims.set(reel, (claims.get(reel) ?? 0) + 1);
  return strong.flatMap(({ slot, reels }): SlotSeen[] => {
    const [only, ...more] = reels;
    if (only === undefined) return [];
    const [reel, vote] = only;
    if (more.length === 0 && claims.get(reel) === 1) return [{ is: 'one', slot, reel, vote }];
    return [{ is: 'several', slot, reels: reels.map(([each]) => each) }];
  });
}

/** What a slot seen with a reel comes to. */
export type Swept =
  | { readonly is: 'ticked'; readonly reel: ReelInHand; readonly drafts: readonly DraftEntry[] }
  /** Nothing speaks against it, but the label does not say that it is the reel which the log has there. */
  | { readonly is: 'unsure'; readonly reel: ReelInHand }
  | { readonly is: 'against'; readonly reel: ReelInHand; readonly why: Reason }
  | { readonly is: 'not-read' };

/** The line must have a setup chosen. */
export function sweptSlot(
  view: DeskView,
  { slot, codes }: { readonly slot: string; readonly codes: readonly ScannedCode[] },
  nowMs: number,
): Swept {
  const begun = { ...emptyDesk, mode: 'sweep' as const, slot, atSlot: true };
  const desk = takeScan(begun, { codes, via: 'camera', atMs: nowMs }, view);
  const { reel } = desk;
  if (reel === null || desk.question !== null || desk.slot !== slot) return { is: 'not-read' };
  const { answer, drafts } = judgeReel(view, { ...desk, slot, reel }, nowMs);
  const [why] = answer.reasons;
  if (answer.verdict !== 'accepted' && why !== undefined) return { is: 'against', reel, why };
  return isLogged(view, slot, reel) ? { is: 'ticked', reel, drafts } : { is: 'unsure', reel };
}

/** True where the label says that it is the reel which the log has on the slot: by its id; where the tape came without one, by part and lot. */
function isLogged({ floor, line }: DeskView, slot: string, reel: ReelInHand): boolean {
  const tapes = floor.slots.get(slotKey(line, slot))?.tapes ?? [];
  return tapes.some((tape) =>
    hasOwnId(tape.reel)
      ? tape.reel === reel.reel
      : reel.reel === null &&
        (tape.part === reel.part ||
          (tape.supplierPart !== null && tape.supplierPart === reel.supplierPart)) &&
        tape.lot === reel.lot,
  );
}
