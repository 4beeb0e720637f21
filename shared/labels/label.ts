// Reads every code of one label into what the label says.
// Method: each code is told by its look (GS1 mark, envelope, list of keys, list of pieces, separate code) and handed to that
// look's parser; all put what they find into one basket. A standard goes first; site rules read what follows none.
// Linear in the length of the codes; never throws.

import { settleCatalogue } from './catalogue.ts';
import { isAlphanumeric, isDigit } from './characters.ts';
import { type Basket, emptyBasket } from './elements.ts';
import { openEnvelope } from './envelope.ts';
import { inFullAscii } from './full-ascii.ts';
import { gather } from './gather.ts';
import { collectGs1, type Gs1Parse, parseGs1, parseGs1Brackets } from './gs1.ts';
import { collectKeyValues } from './key-values.ts';
import { findKeyboardLayout } from './keyboard.ts';
import { collectEnvelope, collectHeaderless } from './opened.ts';
import { collectPieces } from './pieces.ts';
import type { LabelExpectation, LabelReading } from './reading.ts';
import { fitRule, readsEnvelopes, ruleElement } from './rule-fit.ts';
import type { LabelRule } from './rules.ts';
import { collectSeparateCodes } from './separate-codes.ts';

/** What a reader may know beside the codes. */
export interface LabelOptions {
  readonly expected?: LabelExpectation | undefined;
  /** The site's approved rules; they read labels that follow no standard. */
  readonly rules?: readonly LabelRule[] | undefined;
}

const GS1_MARKS = new Set([']C1', ']d2', ']Q3', ']e0', ']J1']);
const SYMBOLOGY_LETTERS = 'ACcdEeFGgHIJLMOopPQRSTUXz';

interface Tidied {
  readonly text: string;
  readonly gs1: boolean;
}

/** An extended channel interpretation as scanners send it by AIM's protocol: `\\000026` says that UTF-8 follows. */
const CHANNEL = /\\0{4}\d\d/g;

/** What a scanner in that protocol sent, without its escapes: a backslash of the text itself came doubled. */
function withoutChannels(text: string): string {
  return /^\\0{4}\d\d/.test(text) ? text.replace(CHANNEL, '').replaceAll('\\\\', '\\') : text;
}

/** Takes off what a scanner adds: blanks, line ends, the symbology identifier of ISO/IEC 15424, channels, the stars of Code 39. */
function tidy(code: string): Tidied {
  let text = code.trim();
  let gs1 = false;
  if (text[0] === ']' && text.length >= 3) {
    const mark = text.slice(0, 3);
    // Modifiers are digits; only Aztec Code goes on to C.
    const modifier = mark[1] === 'z' ? /[0-9A-C]/ : /[0-9]/;
    if (SYMBOLOGY_LETTERS.includes(mark[1] ?? ' ') && modifier.test(mark[2] ?? ' ')) {
      gs1 = GS1_MARKS.has(mark);
      text = text.slice(3).trim();
    }
  }
  if (text[0] === '\\') text = withoutChannels(text).trim();
  if (text[0] === '*' && text.length > 2 && text.endsWith('*')) text = text.slice(1, -1).trim();
  return { text, gs1 };
}

/** Letters, digits and the marks of part numbers only: no look but that of a separate code. */
function looksSeparate(text: string): boolean {
  for (let at = 0; at < text.length; at += 1) {
    const char = text.charCodeAt(at);
    // `-`, `.`, `/` and `_`.
    if (!isAlphanumeric(char) && !(char >= 45 && char <= 47) && char !== 95) return false;
  }
  return true;
}

/** Reads one code by its look; false = it has none, and is to be read in company with the others. */
function readCode({ text, gs1 }: Tidied, basket: Basket, options: LabelOptions): boolean {
  if (!gs1 && looksSeparate(text)) return false;
  const envelope = openEnvelope(text);
  if (envelope !== null) {
    collectEnvelope(envelope, basket, options.expected);
    return true;
  }
  const unmarked = text[0] === '\x1d' ? text.slice(1) : text;
  const parsed = gs1 ? parseGs1(unmarked) : parseUnmarkedGs1(unmarked, unmarked !== text);
  if (parsed !== null) {
    collectGs1(unmarked, parsed, basket);
    return true;
  }
  if (collectHeaderless(text, basket, options.expected)) return true;
  if (text.startsWith('[)')) {
    basket.warnings.push({ code: 'header-damaged', found: text.slice(0, 12) });
    basket.unidentified.push(text);
    return true;
  }
  const brackets = text[0] === '(' ? parseGs1Brackets(text) : null;
  if (brackets !== null) {
    for (const element of brackets) basket.elements.push(element);
    return true;
  }
  return collectKeyValues(text, basket, options.expected) || collectPieces(text, basket);
}

/** A code without a GS1 mark that is an element string all the same: FNC1 in front or inside, and read to its end. */
function parseUnmarkedGs1(text: string, fnc1InFront: boolean): Gs1Parse | null {
  if (!isDigit(text.charCodeAt(0)) || !(fnc1InFront || text.includes('\x1d'))) return null;
  const parsed = parseGs1(text);
  return parsed.elements.length > 0 && parsed.end === text.length ? parsed : null;
}

/**
 * Reads the codes of one label. `codes`: every code read off it, in any order, control characters as they came.
 * Returns what is certain; `ambiguous` asks about the rest, `warnings` says why.
 */
export function parseLabel(codes: readonly string[], options: LabelOptions = {}): LabelReading {
  const basket = emptyBasket();
  const tidied = tidyAll(codes);
  if (refuseLayout(tidied, basket)) return gather(basket);
  for (const { text } of tidied) {
    const meant = inFullAscii(text);
    if (meant !== null) basket.warnings.push({ code: 'full-ascii', text, meant });
  }
  const ruled = applyRules(tidied, basket, options.rules);
  const separate: string[] = [];
  let index = 0;
  for (const code of tidied) {
    if (!ruled.has(index) && !readCode(code, basket, options)) separate.push(code.text);
    index += 1;
  }
  if (separate.length > 0) collectSeparateCodes(separate, basket, options.expected);
  settleCatalogue(basket, options.expected);
  return gather(basket);
}

/** Every code once, without what scanners add. */
function tidyAll(codes: readonly string[]): readonly Tidied[] {
  const [only] = codes;
  if (codes.length === 1 && only !== undefined) {
    const one = tidy(only);
    return one.text === '' ? [] : [one];
  }
  const tidied = new Map<string, Tidied>();
  for (const code of codes) {
    const one = tidy(code);
    if (one.text !== '' && !tidied.has(one.text)) tidied.set(one.text, one);
  }
  return [...tidied.values()];
}

/** A wrong keyboard layout shows in one code and spoils all that the same scanner typed: none is read. */
function refuseLayout(codes: readonly Tidied[], basket: Basket): boolean {
  let found = false;
  for (const { text } of codes) {
    if (text[0] === '[' && text.startsWith('[)>\x1e')) continue;
    const layout = findKeyboardLayout(text);
    if (layout === null) continue;
    found = true;
    basket.warnings.push({ code: 'keyboard-layout', text, layout: layout.layout, meant: layout.meant });
  }
  if (found) for (const { text } of codes) basket.unidentified.push(text);
  return found;
}

const NONE: ReadonlySet<number> = new Set();

/** Lets every rule that fits read its codes; those codes are then read by nothing else. Rules that disagree show as a conflict. */
function applyRules(
  codes: readonly Tidied[],
  basket: Basket,
  rules: readonly LabelRule[] | undefined,
): ReadonlySet<number> {
  if (rules === undefined || rules.length === 0) return NONE;
  const texts = codes.map((code) => code.text);
  const standard = codes.some(({ text, gs1 }) => gs1 || openEnvelope(text) !== null);
  const ruled = new Set<number>();
  for (const rule of rules) {
    if (standard && !readsEnvelopes(rule)) continue;
    const fit = fitRule(rule, texts);
    if (fit === null) continue;
    if (fit.unclear) {
      basket.warnings.push({ code: 'rule-unclear', rule: rule.rule });
      continue;
    }
    for (const index of fit.used) ruled.add(index);
    for (const piece of fit.named) basket.elements.push(ruleElement(rule, piece));
    basket.rules.push(rule.rule);
  }
  return ruled;
}
