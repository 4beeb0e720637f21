// What is a label that the camera passed over: a reel that the list wants, one that may not be used, one that stands on the line, or
// something else? Pure. Refused: rules of its own: what a label says is the desk's reading, whether a reel serves a slot is asked of
// `fits.ts`, as both pick lists and the verdict do.

import { type DeskView, emptyDesk, type ReelInHand } from '../../../shared/desk/model.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import { dateCodeReasons } from '../../../shared/floor/age-limit.ts';
import {
  ageReasons,
  blockReasons,
  type FitCode,
  type FitLife,
  type FitReason,
  fits,
  fitVerdicts,
  partFits,
} from '../../../shared/floor/fits.ts';
import { siteRules } from '../../../shared/floor/fold-labels.ts';
import { isLongGone, reelOf } from '../../../shared/floor/gone-reels.ts';
import type { SetupSlot } from '../../../shared/floor/kinds.ts';
import { sharesSlots, standingAt } from '../../../shared/floor/lanes.ts';
import { plantDay } from '../../../shared/floor/plant-day.ts';
import { recognise } from '../../../shared/floor/recognise.ts';
import type { Reel } from '../../../shared/floor/state.ts';
import { parseLabel } from '../../../shared/labels/label.ts';
import type { ScannedCode } from '../../../shared/labels/scan.ts';

/** What is to be found: these reels, or any reel of these parts, each with the slots that it goes to. */
export interface FindList {
  /** The setup that they are for; null where nothing is wanted: then what may not be used is told alone. */
  readonly setup: string | null;
  readonly reels: ReadonlyMap<string, readonly string[]>;
  readonly parts: ReadonlyMap<string, readonly string[]>;
}

/** What a label is. `barred`: it may not be used as it is. `stands`: it is on a slot of this line by the log. */
export type FoundThing =
  | { readonly is: 'slot' | 'feeder'; readonly text: string; readonly slot: string | null }
  | { readonly is: 'thing'; readonly text: string }
  | { readonly is: 'unknown' }
  | {
      readonly is: 'wanted' | 'barred' | 'stands' | 'other';
      readonly reel: ReelInHand;
      readonly text: string;
      /** Where it goes, or stands. */
      readonly slots: readonly string[];
      readonly why: FitCode | null;
    };

export type FoundReel = Extract<FoundThing, { readonly reel: ReelInHand }>;

/** What the model looks at besides the label. */
export interface FindView extends DeskView {
  readonly list: FindList;
  readonly nowMs: number;
  /** What is left of a reel's floor life as a part; null where it has no limit. */
  readonly lifeOf: (reel: Reel, part: string) => FitLife | null;
}

/** True where a code alone says all that a label says: an envelope, several facts at once, or a thing that the plant knows. */
export function isAloneFor({ text, portion }: ScannedCode, { floor, line }: DeskView): boolean {
  if (portion !== undefined) return false;
  if (recognise(floor, line, text).length > 0) return true;
  const { part, supplierPart, quantity, lot, reel } = parseLabel([text], { rules: siteRules(floor) });
  const others = [quantity, lot, reel].filter((each) => each !== null).length;
  return (part !== null || supplierPart !== null) && others > 0;
}

/**
 * What a code claims to be: its data identifier, where it may begin with one. Two codes with one claim are of two labels; in a full
 * picture two labels that are taken for one would be worse than one that is taken for two, so that a doubtful identifier counts.
 */
export function panClaim({ text }: ScannedCode): string | null {
  if (text.startsWith('[)>')) return 'envelope';
  return /^(1P|1T|3S|4S|9D|10D|16D|30P|31P)(?=.)/.exec(text)?.[1] ?? /^[PQST](?=.)/.exec(text)?.[0] ?? null;
}

/** What a label is; null for what is nobody's business here: a badge, a panel. */
export function foundThing(codes: readonly ScannedCode[], view: FindView): FoundThing | null {
  const { floor, line } = view;
  const [only] = codes;
  const known = only !== undefined && codes.length === 1 ? recognise(floor, line, only.text)[0] : undefined;
  switch (known?.is) {
    case 'slot':
      return { is: 'slot', text: known.slot, slot: sharesSlots(known.line, line) ? known.slot : null };
    case 'feeder':
      return { is: 'feeder', text: known.feeder, slot: slotOfFeeder(known.feeder, view) };
    case 'cart':
      return { is: 'thing', text: known.cart };
    case 'place':
      return { is: 'thing', text: known.place };
    case 'person':
    case 'panel':
      return null;
    default: {
      const reel = reelRead(codes, view);
      return reel === null ? { is: 'unknown' } : foundReel(reel, view);
    }
  }
}

/** The slot of the line on which a feeder stands by the log; null where it stands on none, or carries several. */
function slotOfFeeder(feeder: string, { floor, line }: DeskView): string | null {
  const own = standingAt(floor, line).filter((slot) => slot.feeder === feeder);
  return own.length === 1 ? (own[0]?.slot ?? null) : null;
}

/** The reel that a label is of, as the desk reads it; null where it names neither part nor reel, or is doubtful. */
export function reelRead(codes: readonly ScannedCode[], view: DeskView): ReelInHand | null {
  const { reel, old, question } = takeScan(emptyDesk, { codes, via: 'camera', atMs: 0 }, view);
  if (question !== null) return question.ask === 'came-before' ? question.reel : null;
  const read = reel ?? old;
  return read === null || (read.part === null && read.supplierPart === null) ? null : read;
}

function foundReel(reel: ReelInHand, view: FindView): FoundReel {
  const { floor, line, list } = view;
  const text = reel.part ?? reel.supplierPart ?? '';
  const at = reel.reel === null ? null : (floor.reels.get(reel.reel)?.at ?? null);
  const against = reasonsAgainst(reel, view);
  const stands = at !== null && sharesSlots(at.line, line) ? [at.slot] : [];
  if (against !== null) return { is: 'barred', reel, text, slots: stands, why: against };
  if (stands.length > 0) return { is: 'stands', reel, text, slots: stands, why: null };
  const asked = slotsAsked(reel, view);
  if (asked.length === 0 || list.setup === null) return { is: 'other', reel, text, slots: [], why: null };
  const { setup } = list;
  const age = ageOf(reel, view);
  const answers = asked.map((wanted) => ({
    wanted,
    fit: fits(floor, { line, setup, wanted }, { ...reel, expires: age.expires }, age),
  }));
  const good = answers.filter(({ fit }) => fit.verdict === 'accepted').map(({ wanted }) => wanted.slot);
  if (good.length > 0) return { is: 'wanted', reel, text, slots: good, why: null };
  const why = speaking(answers.flatMap(({ fit }) => fit.reasons));
  return { is: 'barred', reel, text, slots: [], why };
}

/** Why a reel may not be used, whatever for: blocked, too old, out too long; null where nothing speaks against it. */
function reasonsAgainst(reel: ReelInHand, view: FindView): FitCode | null {
  const { floor, line } = view;
  const { part } = reel;
  const age = ageOf(reel, view);
  const dated = part === null ? [] : dateCodeReasons(floor, { line, part }, reel, { today: age.today });
  return speaking([
    ...blockReasons(floor, reel, part),
    ...(reel.reel !== null && isLongGone(floor, reel.reel)
      ? [{ code: 'reel-gone', reel: reel.reel } as const]
      : []),
    ...ageReasons({ expires: age.expires }, age),
    ...dated,
  ]);
}

function speaking(reasons: readonly FitReason[]): FitCode | null {
  return reasons.find(({ code }) => fitVerdicts[code] !== 'accepted')?.code ?? null;
}

function ageOf(reel: ReelInHand, { floor, line, nowMs, lifeOf }: FindView) {
  const known = reel.reel === null ? undefined : reelOf(floor, reel.reel);
  return {
    today: plantDay(floor, line, nowMs),
    expires: reel.expires ?? (reel.reel === null ? null : (floor.expiries.get(reel.reel) ?? null)),
    floorLife: known === undefined ? null : lifeOf(known, reel.part ?? known.part ?? ''),
  };
}

/** The slots for which the list asks for this reel: by its id, else by a part that the slot takes. */
function slotsAsked(reel: ReelInHand, { floor, line, list }: FindView): readonly SetupSlot[] {
  const setup = floor.setups.get(list.setup ?? '');
  if (setup === undefined) return [];
  const byId = reel.reel === null ? undefined : list.reels.get(reel.reel);
  const asked = new Set(byId ?? [...list.parts.values()].flat());
  return setup.slots.filter(
    (wanted) =>
      asked.has(wanted.slot) &&
      (byId !== undefined || partFits(floor, { line, setup: setup.setup, wanted }, reel).takes),
  );
}
