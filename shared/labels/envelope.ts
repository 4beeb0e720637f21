// Opens the envelope of ISO/IEC 15434, whole or damaged, and writes one.
// Method: the header is matched piece by piece (mark, record separator or its stand-in, two digits of format, element
// separator or its stand-in); the stand-in found right after the format is that label's separator. Refused: replacing
// every known stand-in everywhere first, which cuts part numbers that hold `]`, `@` or `|`.

import { isAlphanumeric, isDigit } from './characters.ts';
import type { LabelWarning } from './warnings.ts';

const GS = '\x1d';
const RS = '\x1e';
const EOT = '\x04';

/** One format envelope inside a message. */
export interface FormatEnvelope {
  /** Two digits: 05 GS1, 06 MH10.8.2, 12 text elements. */
  readonly format: string;
  /** The pieces between separators; empty ones are left out. */
  readonly elements: readonly string[];
}

/** An opened message. */
export interface Envelope {
  readonly formats: readonly FormatEnvelope[];
  /** Two digits of the first format. */
  readonly format: string;
  /** No separator was found: what follows the format's digits; else null. */
  readonly unseparatedBody: string | null;
  /** Separators are the control characters, or whole stand-ins of more than one character. */
  readonly intact: boolean;
  readonly separator: string;
  readonly warnings: readonly LabelWarning[];
}

const GS_WORDS = [
  '{GS}',
  '<GS>',
  '[GS]',
  '(GS)',
  '\\x1d',
  '\\u001d',
  '\\035',
  '%1d',
  '<0x1d>',
  '&#29;',
  '^]',
];
const RS_WORDS = [
  '{RS}',
  '<RS>',
  '[RS]',
  '(RS)',
  '\\x1e',
  '\\u001e',
  '\\036',
  '%1e',
  '<0x1e>',
  '&#30;',
  '^^',
];
const EOT_WORDS = [
  '{EOT}',
  '<EOT>',
  '[EOT]',
  '(EOT)',
  '\\x04',
  '\\u0004',
  '\\004',
  '%04',
  '<0x04>',
  '&#4;',
  '^d',
];
// Pictures of the control characters (Unicode 2400 block) and the glyphs of code page 437 for 0x1D, 0x1E, 0x04.
const GS_SIGNS = [GS, '\u241d', '\u2194'];
const RS_SIGNS = [RS, '\u241e', '\u25b2'];
const EOT_SIGNS = [EOT, '\u2404', '\u2666'];

/** Every word begins with a mark, which has no other case; most texts are told apart there. */
function startsWithAnyCase(text: string, at: number, word: string): boolean {
  if (text.charCodeAt(at) !== word.charCodeAt(0)) return false;
  for (let index = 1; index < word.length; index += 1) {
    const found = text[at + index];
    const wanted = word[index];
    if (found !== wanted && found?.toLowerCase() !== wanted?.toLowerCase()) return false;
  }
  return true;
}

function signAt(text: string, at: number, signs: readonly string[], words: readonly string[]): string {
  const char = text[at];
  if (char === undefined || isAlphanumeric(text.charCodeAt(at))) return '';
  if (signs.includes(char)) return char;
  for (const word of words) {
    if (startsWithAnyCase(text, at, word)) return text.slice(at, at + word.length);
  }
  return '';
}

interface Header {
  readonly format: string;
  readonly record: string;
  readonly separator: string;
  readonly bodyAt: number;
  readonly damaged: boolean;
}

/** Length of the mark `[)>` in front, whole, with a part missing or with a `>` before it; 0 = none. */
function markLength(text: string): number {
  let at = 0;
  while (at < 4 && (text[at] === '>' || text[at] === '[' || text[at] === ')')) at += 1;
  return at;
}

// Data Matrix macro codewords 236 and 237, which stand for the whole header of 05 and 06, sent as characters.
const MACROS: Readonly<Record<string, string>> = { '\u00ec': '05', '\u00ed': '06' };

function readMacro(text: string): Header | null {
  const format = MACROS[text[0] ?? ''];
  if (format === undefined || !text.includes(GS)) return null;
  return { format, record: RS, separator: GS, bodyAt: 1, damaged: false };
}

/** Reads the header in front of `text`; null where two digits of a format do not follow the mark. */
function readHeader(text: string): Header | null {
  const mark = markLength(text);
  const marked = text.slice(0, mark).includes('[)');
  let at = mark;
  let record = signAt(text, at, RS_SIGNS, RS_WORDS);
  const sign = record;
  at += record.length;
  while (at - mark < 2 && at < text.length && !isAlphanumeric(text.charCodeAt(at))) {
    record += text[at];
    at += 1;
  }
  if (!isDigit(text.charCodeAt(at)) || !isDigit(text.charCodeAt(at + 1))) return null;
  const format = text.slice(at, at + 2);
  at += 2;
  let separator = signAt(text, at, GS_SIGNS, GS_WORDS);
  // Without `[)` in front only a separator that nothing else uses shows that this is an envelope.
  if (!marked && (separator === '' || (format !== '05' && format !== '06' && format !== '12'))) return null;
  const point = text.codePointAt(at);
  if (separator === '' && point !== undefined && !isAlphanumeric(point)) {
    separator = String.fromCodePoint(point);
  }
  const standIn = record !== '' && record === separator;
  const damaged = !text.startsWith('[)>') || ((sign === '' || sign !== record) && !standIn);
  return { format, record, separator, bodyAt: at + separator.length, damaged };
}

const SOUND_SEPARATORS = [...GS_SIGNS, '{GS}', '<GS>', '^]', '\\x1d'];

const SOUND_MARKS = new Set(SOUND_SEPARATORS.map((sign) => sign.charCodeAt(0)));

/** Whether a character stands in the text that begins an intact separator: most texts hold none, told in one pass. */
function holdsIntactMark(text: string): boolean {
  for (let at = 0; at < text.length; at += 1) {
    const char = text.charCodeAt(at);
    // Letters and digits, most of a label, begin none.
    if (!isAlphanumeric(char) && SOUND_MARKS.has(char)) return true;
  }
  return false;
}

/** The separator in the text that no value of a label holds: GS or one of its whole stand-ins; empty = none. */
export function findIntactSeparator(text: string): string {
  if (!holdsIntactMark(text)) return '';
  for (const sign of SOUND_SEPARATORS) if (text.includes(sign)) return sign;
  return '';
}

/** Takes the end marks off: EOT or a stand-in, then RS or this label's stand-in for it. */
function withoutTrailer(body: string, record: string, separator: string): string {
  let end = endWithout(body, body.length, EOT_SIGNS, EOT_WORDS);
  if (record !== '' && record !== separator && end === body.length) {
    // A scanner that sends EOT as a letter leaves it behind the stand-in for RS.
    const letter = body[end - 1];
    if (letter !== undefined && 'VvDd'.includes(letter) && body.endsWith(record, end - 1)) end -= 1;
  }
  if (record !== '' && record !== separator && body.endsWith(record, end)) end -= record.length;
  else end = endWithout(body, end, RS_SIGNS, RS_WORDS);
  return end === body.length ? body : body.slice(0, end);
}

function endWithout(text: string, end: number, signs: readonly string[], words: readonly string[]): number {
  const last = text[end - 1];
  if (last !== undefined && signs.includes(last)) return end - 1;
  for (const word of words) {
    if (end >= word.length && startsWithAnyCase(text, end - word.length, word)) return end - word.length;
  }
  return end;
}

function splitElements(text: string, separator: string): string[] {
  const elements: string[] = [];
  let from = 0;
  while (from <= text.length) {
    let to = text.indexOf(separator, from);
    if (to === -1) to = text.length;
    if (to > from) elements.push(text.slice(from, to));
    from = to + separator.length;
  }
  return elements;
}

/** Splits a body into its format envelopes; a record separator that opens no format only separates. */
function splitFormats(body: string, header: Header, separator: string): FormatEnvelope[] {
  const { record } = header;
  const between = body.includes(RS) ? RS : record.length > 1 || RS_SIGNS.includes(record) ? record : '';
  if (between === '' || between === separator || !body.includes(between)) {
    return [{ format: header.format, elements: splitElements(body, separator) }];
  }
  const formats: { format: string; elements: string[] }[] = [];
  for (const [index, part] of body.split(between).entries()) {
    const last = formats[formats.length - 1];
    if (index === 0 || last === undefined) {
      formats.push({ format: header.format, elements: splitElements(part, separator) });
    } else if (isDigit(part.charCodeAt(0)) && isDigit(part.charCodeAt(1)) && part.startsWith(separator, 2)) {
      formats.push({
        format: part.slice(0, 2),
        elements: splitElements(part.slice(2 + separator.length), separator),
      });
    } else {
      for (const element of splitElements(part, separator)) last.elements.push(element);
    }
  }
  return formats;
}

/** Opens a message of ISO/IEC 15434; null where the text does not begin like one. Never throws; linear in the text. */
export function openEnvelope(text: string): Envelope | null {
  const header = readMacro(text) ?? readHeader(text);
  if (header === null) return null;
  const warnings: LabelWarning[] = [];
  if (header.damaged) warnings.push({ code: 'header-damaged', found: text.slice(0, header.bodyAt) });
  let separator = header.separator;
  const body = withoutTrailer(text.slice(header.bodyAt), header.record, separator);
  if (separator === '') separator = findIntactSeparator(body);
  if (separator === '') {
    return { formats: [], unseparatedBody: body, format: header.format, intact: false, separator, warnings };
  }
  if (separator !== GS) warnings.push({ code: 'separators-replaced', found: separator });
  const intact = GS_SIGNS.includes(separator) || separator.length > 1;
  const formats = splitFormats(body, header, separator);
  return { formats, unseparatedBody: null, format: header.format, intact, separator, warnings };
}

/** One envelope to write. */
export interface EnvelopeInput {
  /** 05 GS1 application identifiers, 06 MH10.8.2 data identifiers, 12 text element identifiers. */
  readonly format: '05' | '06' | '12';
  readonly fields: readonly { readonly id: string; readonly value: string }[];
}

/** Writes a message with one envelope: `[)>` RS format GS elements RS EOT. Values must not hold GS, RS or EOT. */
export function formatEnvelope(input: EnvelopeInput): string {
  const between = input.format === '12' ? ' ' : '';
  const elements = input.fields.map(({ id, value }) => {
    if (/[\x04\x1d\x1e]/.test(value)) {
      throw new RangeError(
        `Cannot write an envelope as a value must hold no GS, RS or EOT: current value is ${JSON.stringify(value)}`,
      );
    }
    return `${id}${between}${value}`;
  });
  return `[)>${RS}${input.format}${GS}${elements.join(GS)}${RS}${EOT}`;
}
