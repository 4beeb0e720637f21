// What a scan says of a reel that is put away, cut or joined, or of a jar: by the plant's own rules for labels too.

import { siteRules } from '../../../../shared/floor/fold-labels.ts';
import { reelOf } from '../../../../shared/floor/gone-reels.ts';
import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { parseLabel } from '../../../../shared/labels/label.ts';
import { joinPortions } from '../../../../shared/labels/portions.ts';
import type { LabelReading } from '../../../../shared/labels/reading.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import type { PutReel } from './PutAway.tsx';

/** Reads the label of a scan; where symbols of one message are missing, it says nothing. */
export function readLabel(floor: FloorState, { codes }: Pick<Scan, 'codes'>): LabelReading {
  const texts = joinPortions(codes).codes.map(({ text }) => text);
  return parseLabel(texts, { rules: siteRules(floor) });
}

/** What a label says of a reel, and what the log knows besides; without `reel` where it has no id, null where it is no reel's. */
export function readReel(
  floor: FloorState,
  scan: Pick<Scan, 'codes'>,
): PutReel | Omit<PutReel, 'reel'> | null {
  const reading = readLabel(floor, scan);
  const only = scan.codes[0]?.text.trim() ?? '';
  const known = reelOf(floor, reading.reel ?? only);
  const { part, supplierPart, quantity, lot, dateCode } = reading;
  const facts = {
    part: part ?? known?.part ?? null,
    supplierPart: supplierPart ?? known?.supplierPart ?? null,
    quantity: quantity ?? known?.count ?? null,
    lot: lot ?? known?.lot ?? null,
    dateCode: dateCode ?? known?.dateCode ?? null,
  };
  if (reading.reel !== null) return { ...facts, reel: reading.reel };
  if (known !== undefined) return { ...facts, reel: known.reel };
  return part === null && supplierPart === null ? null : facts;
}

/** A jar whose label was scanned and that the log does not know. */
export type NewJar = PayloadOf<'jar.known'>;

/** A jar whose label has no id. */
export type NamelessJar = Omit<NewJar, 'jar'> & { readonly jar: null };

/** What the label of a jar says; null where it is of no paste that is known. */
export function readJar(floor: FloorState, scan: Pick<Scan, 'codes' | 'via'>): NewJar | NamelessJar | null {
  const { reel: jar, part, supplierPart, lot, expires } = readLabel(floor, scan);
  const paste = [part, supplierPart].find((each) => each !== null && floor.pasteRules.has(each));
  if (paste == null) return null;
  const facts = { paste, lot, expires, via: scan.via };
  return jar === null ? { ...facts, jar } : { ...facts, jar };
}
