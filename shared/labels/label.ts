// Reads every code of one label into what the label says.
// Method: each code is told by its look (GS1 mark, envelope, list of keys, list of pieces, loose code) and handed to that
// look's parser; all put what they find into one basket. A standard goes first; site rules read what follows none.
// Linear in the length of the codes; never throws.

import { type Basket, emptyBasket } from './elements.ts';
import { openEnvelope } from './envelope.ts';
import { gather } from './gather.ts';
import { collectGs1, parseGs1, parseGs1Brackets } from './gs1.ts';
import { collectLoose } from './loose.ts';
import { collectEnvelope } from './opened.ts';
import type { LabelExpectation, LabelReading } from './reading.ts';

/** What a reader may know beside the codes. */
export interface LabelOptions {
  readonly expected?: LabelExpectation | undefined;
}

const GS1_MARKS = new Set([']C1', ']d2', ']Q3', ']e0', ']J1']);
const SYMBOLOGY_LETTERS = 'ACcdEeFGgHIJLMOopPQRSTUXz';

interface Tidied {
  readonly text: string;
  readonly gs1: boolean;
}

/** Takes off what a scanner adds: blanks, line ends, the symbology identifier of ISO/IEC 15424, the stars of Code 39. */
function tidy(code: string): Tidied {
  let text = code.trim();
  let gs1 = false;
  if (text[0] === ']' && text.length >= 3) {
    const mark = text.slice(0, 3);
    if (SYMBOLOGY_LETTERS.includes(mark[1] ?? ' ') && /[0-9A-Za-z]/.test(mark[2] ?? ' ')) {
      gs1 = GS1_MARKS.has(mark);
      text = text.slice(3).trim();
    }
  }
  if (text.length > 2 && text[0] === '*' && text.endsWith('*')) text = text.slice(1, -1).trim();
  return { text, gs1 };
}

/** Reads one code; what is left to be read in company with the others comes back. */
function readCode({ text, gs1 }: Tidied, basket: Basket, options: LabelOptions): readonly string[] {
  const envelope = openEnvelope(text);
  if (envelope !== null) {
    collectEnvelope(envelope, basket, options.expected);
    return [];
  }
  const unmarked = text[0] === '\x1d' ? text.slice(1) : text;
  if (gs1 || isGs1(unmarked, unmarked !== text)) {
    collectGs1(unmarked, basket);
    return [];
  }
  const brackets = text[0] === '(' ? parseGs1Brackets(text) : null;
  if (brackets !== null) {
    basket.elements.push(...brackets);
    return [];
  }
  return [text];
}

/** Whether a code without a GS1 mark is an element string all the same: FNC1 in front or inside, and read to its end. */
function isGs1(text: string, fnc1InFront: boolean): boolean {
  if (!fnc1InFront && !text.includes('\x1d')) return false;
  const first = text.charCodeAt(0);
  if (!(first >= 48 && first <= 57)) return false;
  const { elements, end } = parseGs1(text);
  return elements.length > 0 && end === text.length;
}

/**
 * Reads the codes of one label. `codes`: every code read off it, in any order, control characters as they came.
 * Returns what is certain; `ambiguous` asks about the rest, `warnings` says why.
 */
export function parseLabel(codes: readonly string[], options: LabelOptions = {}): LabelReading {
  const basket = emptyBasket();
  const loose: string[] = [];
  const seen = new Set<string>();
  for (const code of codes) {
    const tidied = tidy(code);
    if (tidied.text === '' || seen.has(tidied.text)) continue;
    seen.add(tidied.text);
    loose.push(...readCode(tidied, basket, options));
  }
  if (loose.length > 0) collectLoose(loose, basket, options.expected);
  return gather(basket);
}
