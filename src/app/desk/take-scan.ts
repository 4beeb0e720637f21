// Puts scans on the desk: what the plant knows goes first, the rest is one label. Apart from the desk's shape, since reading
// labels is much code that no screen needs to be drawn. Pure: a scan and the floor in, the next desk out.

import { parseLabel } from '../../../shared/labels/label.ts';
import type { LabelReading } from '../../../shared/labels/reading.ts';
import { parseSlot } from '../../../shared/setup/address.ts';
import { siteRules } from '../../../shared/setup/fold-labels.ts';
import { slotPhase } from '../../../shared/setup/progress.ts';
import { recognise } from '../../../shared/setup/recognise.ts';
import { slotKey } from '../../../shared/setup/state.ts';
import type { Source } from '../../../shared/setup/vocabulary.ts';
import type { Scan } from '../scan/scan.ts';
import { type Desk, type DeskView, deskAct, deskWells, type ReelInHand, takeKnown } from './model.ts';

/** Puts a scan on the desk. Every code of the scan is looked at; what the plant knows goes first, the rest is one label. */
export function takeScan(desk: Desk, scan: Scan, view: DeskView): Desk {
  let next: Desk = { ...desk, told: null, question: null, via: scan.via };
  const label: string[] = [];
  for (const code of scan.codes) {
    const known = recognise(view.floor, view.line, code.text).filter((each) => each.is !== 'reel');
    if (known.length > 1) return { ...next, question: { ask: 'which', text: code.text, options: known } };
    const only = known[0];
    if (only) next = takeKnown(next, only);
    else label.push(code.text);
  }
  return label.length > 0 ? takeLabel(next, label, scan.via, view) : next;
}

/** Puts a label's codes on the desk: as the old reel where one is wanted, else as the reel in hand. */
export function takeLabel(desk: Desk, codes: readonly string[], via: Source, view: DeskView): Desk {
  const reading = parseLabel(codes, {
    expected: expectation(view),
    rules: siteRules(view.floor),
  });
  const reel = reelInHand(reading, codes, via, view);
  const asked = reel.questions[0];
  if (asked && reel.part === null && reel.supplierPart === null) {
    return { ...desk, reel, question: { ask: 'meaning', question: asked } };
  }
  if (reel.part === null && reel.supplierPart === null && reel.reel === null) {
    if (reading.fields.length === 0) return takeUnknown(desk, codes, view);
    return { ...desk, told: { tell: 'half-label', text: codes.join(' ') } };
  }
  if (desk.slot !== null && !desk.atSlot && deskAct(desk, view) === 'splice')
    return takeOldReel(desk, reel, view);
  if (desk.slot !== null && comesOut(desk.slot, view) && isOnSlot(reel, desk.slot, view)) {
    return { ...desk, told: { tell: 'take-out', slot: desk.slot } };
  }
  return { ...desk, reel };
}

/** True where a changeover is open and the slot carries what the next product does not want there. */
function comesOut(slot: string, view: DeskView): boolean {
  if (!view.floor.changing.has(view.line) || !view.floor.slots.has(slotKey(view.line, slot))) return false;
  const phase = slotPhase(view.floor, view.line, slot);
  return phase === null || phase === 'other';
}

/** True where the label is of a reel that the log has on the slot; without an id, part and lot decide. */
function isOnSlot(reel: ReelInHand, slot: string, view: DeskView): boolean {
  const loaded = view.floor.slots.get(slotKey(view.line, slot))?.tapes ?? [];
  return loaded.some(
    (tape) =>
      (reel.reel !== null && tape.reel === reel.reel) ||
      (tape.reel.startsWith('~') &&
        (tape.part === reel.part || tape.supplierPart === reel.supplierPart) &&
        (reel.lot === null || tape.lot === null || reel.lot === tape.lot)),
  );
}

/** Codes that no list knows and that are no label: what was scanned stays on the desk, and the code is told. */
function takeUnknown(desk: Desk, codes: readonly string[], view: DeskView): Desk {
  const text = codes.join(' ').trim();
  if (parseSlot(text)) return { ...desk, told: { tell: 'unknown-slot', slot: text } };
  const feederWanted = deskWells(desk, view).some(({ well, filled }) => well === 'feeder' && !filled);
  if (desk.slot !== null && feederWanted && /^[\w./-]{2,24}$/.test(text)) {
    const options = [{ is: 'feeder', feeder: text }] as const;
    return { ...desk, question: { ask: 'unlisted-feeder', text, options } };
  }
  return { ...desk, told: { tell: 'unknown-code', text } };
}

function takeOldReel(desk: Desk, reel: ReelInHand, view: DeskView): Desk {
  const loaded = view.floor.slots.get(slotKey(view.line, desk.slot ?? ''))?.tapes ?? [];
  if (isOnSlot(reel, desk.slot ?? '', view)) return { ...desk, atSlot: true };
  const last = loaded.at(-1);
  return {
    ...desk,
    told: {
      tell: 'old-reel-differs',
      slot: desk.slot ?? '',
      found: reel.reel ?? reel.part ?? reel.supplierPart,
      loaded: last === undefined ? null : last.reel.startsWith('~') ? last.part : last.reel,
    },
  };
}

function expectation(view: DeskView) {
  const setup = view.floor.setups.get(view.floor.chosen.get(view.line) ?? '');
  const parts = new Set<string>();
  for (const slot of setup?.slots ?? []) {
    parts.add(slot.part);
    for (const alternate of slot.alternates) parts.add(alternate);
  }
  return { parts, supplierParts: new Set(view.floor.approvals.keys()) };
}

function reelInHand(
  reading: LabelReading,
  codes: readonly string[],
  via: Source,
  view: DeskView,
): ReelInHand {
  const bare = codes.length === 1 ? codes[0]?.trim() : undefined;
  const knownId = bare !== undefined && view.floor.reels.has(bare) ? bare : null;
  const id = reading.reel ?? knownId;
  const known = id === null ? undefined : view.floor.reels.get(id);
  const isPieces = reading.unit === null || /^(pcs?|pce|ea|nar|st|stk|c62)$/i.test(reading.unit);
  return {
    codes,
    via,
    reel: id,
    part: reading.part ?? known?.part ?? null,
    supplierPart: reading.supplierPart ?? known?.supplierPart ?? null,
    quantity: known?.count ?? (isPieces ? reading.quantity : null),
    basis: known?.count != null ? known.basis : reading.quantity === null ? null : 'label',
    lot: reading.lot ?? known?.lot ?? null,
    dateCode: reading.dateCode ?? known?.dateCode ?? null,
    expires: reading.expires,
    msl: reading.msl,
    questions: reading.ambiguous,
  };
}
