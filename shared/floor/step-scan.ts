// May this code answer this step of a checklist? A step takes only what it asks for: a feeder, slot or reel must be one of this plant,
// and a code of the site's own (stencil, paste, program) must be nothing that the plant knows as something else.
// Refused: rules for what a stencil's code looks like; every site has its own.

import { parseLabel } from '../labels/label.ts';
import type { ScanWant } from './checklist.ts';
import { siteRules } from './fold-labels.ts';
import { isReelKnown } from './gone-reels.ts';
import { type Recognised, recognise } from './recognise.ts';
import type { FloorState } from './state.ts';

/** What a code turned out to be that its step did not ask for. `part`: a reel's label; `taken`: the answer of another step. */
export type NotWanted = Recognised['is'] | 'part' | 'taken' | 'not-expected' | 'unknown';

/** The answer to keep, or what was scanned instead; `name` is how the plant calls it. */
export type StepScan =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly is: NotWanted; readonly name: string };

/** What the step asks, and the codes that other steps of other wants were answered with. */
export interface StepAsks {
  readonly wants: ScanWant;
  /** The text that must come; null where any will do. */
  readonly expects: string | null;
  readonly taken: readonly string[];
}

/** Judges the codes of one scan; `line` is the checklist's. */
export function judgeStepScan(
  floor: FloorState,
  line: string,
  asks: StepAsks,
  scanned: readonly string[],
): StepScan {
  const texts = scanned.map((text) => text.trim()).filter((text) => text !== '');
  const first = texts[0] ?? '';
  if (asks.expects !== null) {
    if (texts.includes(asks.expects)) return { ok: true, value: asks.expects };
    const what = somethingElse(floor, line, texts);
    return what ?? { ok: false, is: first === '' ? 'unknown' : 'not-expected', name: first };
  }
  if (first === '') return { ok: false, is: 'unknown', name: '' };
  if (asks.wants === 'feeder' || asks.wants === 'slot' || asks.wants === 'reel')
    return ofThisPlant(floor, line, asks.wants, texts);
  const what = somethingElse(floor, line, texts);
  if (what) return what;
  const taken = texts.find((text) => asks.taken.includes(text));
  return taken === undefined ? { ok: true, value: first } : { ok: false, is: 'taken', name: taken };
}

function ofThisPlant(
  floor: FloorState,
  line: string,
  wants: 'feeder' | 'slot' | 'reel',
  texts: readonly string[],
): StepScan {
  for (const text of texts) {
    for (const found of recognise(floor, line, text)) {
      if (found.is === wants) return { ok: true, value: text };
    }
  }
  const reel = wants === 'reel' ? labelOf(floor, texts).reel : null;
  if (reel !== null && isReelKnown(floor, reel)) return { ok: true, value: reel };
  return somethingElse(floor, line, texts) ?? { ok: false, is: 'unknown', name: texts[0] ?? '' };
}

/** What the plant knows one of the codes as; null where it knows none. */
function somethingElse(
  floor: FloorState,
  line: string,
  texts: readonly string[],
): Extract<StepScan, { ok: false }> | null {
  for (const text of texts) {
    // Slots of every line, and panels of this one.
    const found = [...recognise(floor, null, text), ...recognise(floor, line, text)][0];
    if (found) return { ok: false, is: found.is, name: nameOf(floor, found) };
  }
  const { part, supplierPart, reel } = labelOf(floor, texts);
  const named = reel ?? part ?? supplierPart;
  return named === null ? null : { ok: false, is: 'part', name: named };
}

/** What the codes say as a reel's label; a part counts only where the plant knows it. */
function labelOf(
  floor: FloorState,
  texts: readonly string[],
): { readonly part: string | null; readonly supplierPart: string | null; readonly reel: string | null } {
  const parts = new Set([...floor.setups.values()].flatMap(({ slots }) => slots.map(({ part }) => part)));
  const expected = { parts, supplierParts: new Set(floor.approvals.keys()) };
  const reading = parseLabel([...texts], { rules: siteRules(floor), expected });
  const plain = texts.find((text) => parts.has(text) || floor.approvals.has(text)) ?? null;
  const part = reading.part ?? plain;
  const isKnown =
    (part !== null && (parts.has(part) || floor.approvals.has(part))) ||
    (reading.supplierPart !== null && floor.approvals.has(reading.supplierPart)) ||
    (reading.reel !== null && isReelKnown(floor, reading.reel));
  return isKnown
    ? { part, supplierPart: reading.supplierPart, reel: reading.reel }
    : { part: null, supplierPart: null, reel: null };
}

function nameOf(floor: FloorState, found: Recognised): string {
  switch (found.is) {
    case 'slot':
      return found.slot;
    case 'feeder':
      return found.feeder;
    case 'person':
      return floor.people.get(found.person)?.name ?? found.person;
    case 'reel':
      return found.reel;
    case 'cart':
      return found.cart;
    case 'place':
      return found.place;
    case 'panel':
      return found.serial;
  }
}
