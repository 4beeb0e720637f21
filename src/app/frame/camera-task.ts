// What the camera's view says about the task in hand: what is wanted, what the label in view has told, what each code is called.
// Pure, and by the desk's own reading: what stands on the picture is what a scan of it would do. Refused: rules of its own, as the
// picture would then promise what the desk does not keep.

import {
  type Desk,
  type DeskView,
  deskAct,
  deskWells,
  emptyDesk,
  type LabelPiece,
  missingPieces,
  type Well,
} from '../../../shared/desk/model.ts';
import { namedIn } from '../../../shared/desk/named-in.ts';
import { arePieces } from '../../../shared/desk/pieces.ts';
import { expectation, takeScan } from '../../../shared/desk/take-scan.ts';
import { siteRules } from '../../../shared/floor/fold-labels.ts';
import { isReelKnown } from '../../../shared/floor/gone-reels.ts';
import { wantedOn } from '../../../shared/floor/wanted.ts';
import { parseLabel } from '../../../shared/labels/label.ts';
import { joinPortions } from '../../../shared/labels/portions.ts';
import type { ScannedCode } from '../../../shared/labels/scan.ts';
import { splitSeparateCode } from '../../../shared/labels/separate-codes.ts';

/** What the card tells of a label, in the order in which it stands. */
export const labelFacts = ['part', 'quantity', 'lot', 'reel'] as const;
export type LabelFact = (typeof labelFacts)[number];

/** What has been read of a label; null = not read. */
export interface LabelTold {
  readonly part: string | null;
  readonly quantity: number | null;
  readonly lot: string | null;
  readonly reel: string | null;
  /** What it still has to say before it can be judged without a question. */
  readonly missing: readonly (LabelPiece | 'part')[];
}

/** What a single code is. `label`: it says several things at once. */
export type CodeName =
  | { readonly is: 'slot' | 'feeder' | 'cart' | 'place' | 'reel' | 'lot' | 'part'; readonly text: string }
  | { readonly is: 'quantity'; readonly quantity: number }
  | { readonly is: 'badge' | 'panel' | 'label' | 'date' | 'other' };

/**
 * What a code is by the lists of the plant and by the label's own identifiers; null where neither knows it. `company`: the codes
 * that are in view with it, as an identifier in front is believed by what stands beside it.
 */
export function nameOfCode(
  code: ScannedCode,
  view: DeskView,
  company: readonly ScannedCode[] = [code],
): CodeName | null {
  const known = namedIn(view, code.text)[0];
  switch (known?.is) {
    case 'slot':
      return { is: 'slot', text: known.slot };
    case 'feeder':
      return { is: 'feeder', text: known.feeder };
    case 'cart':
      return { is: 'cart', text: known.cart };
    case 'place':
      return { is: 'place', text: known.place };
    case 'reel':
      return { is: 'reel', text: known.reel };
    case 'person':
      return { is: 'badge' };
    case 'panel':
      return { is: 'panel' };
    default:
      return nameOfField(code, view) ?? nameInCompany(code, view, company);
  }
}

function nameOfField(code: ScannedCode, view: DeskView): CodeName | null {
  const { fields, part, supplierPart, quantity, lot, reel, dateCode, ...reading } = readLabel([code], view);
  if (fields.length > 1 || reading.rules.length > 0) return { is: 'label' };
  if (part !== null || supplierPart !== null) return { is: 'part', text: part ?? supplierPart ?? '' };
  if (quantity !== null) return { is: 'quantity', quantity };
  if (lot !== null) return { is: 'lot', text: lot };
  if (reel !== null) return { is: 'reel', text: reel };
  if (dateCode !== null) return { is: 'date' };
  return fields.length > 0 ? { is: 'other' } : null;
}

/** What a code with an identifier in front is on the label that it stands on. */
function nameInCompany(
  { text }: ScannedCode,
  view: DeskView,
  company: readonly ScannedCode[],
): CodeName | null {
  const { id, value } = splitSeparateCode(text);
  const { fields, part, supplierPart, lot, reel, dateCode } = readLabel(ofLabel(company, view), view);
  if (id === null || !fields.some((field) => field.id === id && field.value === value)) return null;
  if (value === part || value === supplierPart) return { is: 'part', text: value };
  if (value === lot) return { is: 'lot', text: value };
  if (value === reel) return { is: 'reel', text: value };
  return { is: value === dateCode ? 'date' : 'other' };
}

function readLabel(codes: readonly ScannedCode[], view: DeskView) {
  return parseLabel(
    codes.map(({ text }) => text),
    { expected: expectation(view), rules: siteRules(view.floor) },
  );
}

/** The codes that are no slot, feeder, badge, panel, cart or place of the plant. */
function ofLabel(codes: readonly ScannedCode[], view: DeskView): readonly ScannedCode[] {
  return codes.filter(({ text }) => namedIn(view, text).every(({ is }) => is === 'reel'));
}

/** What a label says by the codes read of it so far; null where they say nothing of a reel. */
export function toldByCodes(codes: readonly ScannedCode[], view: DeskView): LabelTold | null {
  const own = ofLabel(codes, view);
  if (own.length === 0) return null;
  const { reel: found, question } = takeScan(emptyDesk, { codes: own, via: 'camera', atMs: 0 }, view);
  const reel = question?.ask === 'came-before' ? question.reel : found;
  if (reel !== null) {
    const { part, supplierPart, quantity, lot } = reel;
    return { part: part ?? supplierPart, quantity, lot, reel: reel.reel, missing: missingPieces(reel) };
  }
  const reading = readLabel(own, view);
  const { quantity, lot } = reading;
  if (reading.fields.length === 0) return null;
  return { part: null, quantity, lot, reel: reading.reel, missing: ['part'] };
}

/** What the reel on the desk has told; null where there is none. */
export function toldByDesk({ reel, partial }: Desk): LabelTold | null {
  const inHand = reel ?? partial;
  if (inHand === null) return null;
  const { part, supplierPart, quantity, lot } = inHand;
  return { part: part ?? supplierPart, quantity, lot, reel: inHand.reel, missing: missingPieces(inHand) };
}

/** A lot that is not read yet is worth this many quiet frames: some two seconds. */
const LOT_FRAMES = 14;

/**
 * Quiet frames to wait for more of a label whose facts are codes of their own; null = half a label, which waits for a person.
 * `usual`: frames for everything else, such as a slot, a badge or a label that one code tells whole.
 */
export function framesToWait(
  codes: readonly ScannedCode[],
  view: DeskView | null,
  usual: number,
): number | null {
  if (joinPortions(codes).missing !== null) return null;
  const own = view === null ? [] : ofLabel(codes, view);
  if (view === null || own.length === 0 || own.length < codes.length) return usual;
  const texts = own.map(({ text }) => text);
  if (!arePieces(texts, readLabel(own, view))) return usual;
  const told = toldByCodes(own, view);
  if (told === null || told.missing.length === 0) return usual;
  // The id of a reel that the log knows says it all.
  if (told.reel !== null && isReelKnown(view.floor, told.reel) && told.part !== null) return usual;
  return told.missing.some((piece) => piece !== 'lot') ? null : LOT_FRAMES;
}

/** What the task in hand still wants, the next thing first; empty where anything may be scanned. */
export function wantedThings(desk: Desk, view: DeskView | null): readonly (Well | 'new-reel' | 'badge')[] {
  if (desk.told?.tell === 'sign-in') return ['badge'];
  if (view === null || isIdle(desk)) return [];
  const isSplice = desk.slot !== null && deskAct(desk, view) === 'splice';
  return deskWells(desk, view)
    .filter(({ filled }) => !filled)
    .map(({ well }) => (isSplice && well === 'reel' ? 'new-reel' : well));
}

/** True where nothing was scanned yet. */
export function isIdle({ slot, feeder, reel, partial }: Desk): boolean {
  return slot === null && feeder === null && reel === null && partial === null;
}

/** The slot in hand with the part that the setup wants on it; null where no slot is in hand. */
export function slotInHand(desk: Desk, view: DeskView | null): { slot: string; part: string | null } | null {
  if (desk.slot === null || view === null) return null;
  const setup = view.floor.chosen.get(view.line);
  const part = setup === undefined ? null : (wantedOn(view.floor, setup, desk.slot)?.part ?? null);
  return { slot: desk.slot, part };
}
