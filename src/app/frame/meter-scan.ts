// A scan while a measurement is asked for: a meter that types as a scanner does, or a label? Method: badges go on, and what goes on with the label of
// the reel in hand; then what reads as a meter's text is one, whatever the plant calls by such a figure; all else goes on to the desk. Refused: to
// judge a bare figure unasked, since a date code or a quantity of a label looks like one.

import { continuesLabel } from '../../../shared/desk/pieces.ts';
import { isMeterText, namesUnit } from '../../../shared/floor/meter.ts';
import { holdsBadge } from '../../../shared/floor/recognise.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Scan } from '../../../shared/labels/scan.ts';

/** What a meter typed. */
export interface MeterText {
  readonly text: string;
  /** True where it names its unit, so that it is judged at once; else a person says that it is a reading. */
  readonly isSure: boolean;
}

/** So many digits and nothing else are the id of something. */
const ID = /^\d{8,}$/;

/** What a meter typed; null for a scan that goes on to the desk. `codes`: of the label of the reel that is measured. */
export function meterText(
  floor: FloorState,
  at: { readonly line: string | null; readonly codes: readonly string[] },
  scan: Scan,
): MeterText | null {
  const texts = scan.codes.map(({ text }) => text.trim());
  const [text = '', ...others] = texts;
  if (scan.via !== 'wedge' || others.length > 0 || ID.test(text) || !isMeterText(text)) return null;
  if (holdsBadge(floor, at.line, texts) || continuesLabel(at.codes, texts)) return null;
  return { text, isSure: namesUnit(text) };
}
