// Mutations of texts whose parts are parted by signs: labels, tables, XML, notes, headers.

import { type Plan, pick, placeIn, type Step, timesOf } from './plan.ts';

/** Samples, what parts their pieces (one group around it), and pieces that no sample holds. */
export interface TextForm {
  readonly samples: readonly string[];
  readonly parts: RegExp;
  readonly odd: readonly string[];
}

/** A case longer than this says nothing more. */
const MOST = 65_536;
/** Repeats of a short piece: 16,384 at most, enough for work that grows with the square to show. */
const REPEAT_BITS = 14;

/** Texts that upset readers of any form. */
export const oddTexts: readonly string[] = [
  '',
  ' ',
  '\0',
  '\n',
  '\r\n',
  '\ufeff',
  '\ud800',
  '\udc00',
  '\u2028',
  '\u0085',
  '\u202e',
  'İ',
  'ß',
  '😀',
  '-0',
  '0x10',
  '1e400',
  '-1e-400',
  '9007199254740993',
  '18446744073709551616',
  'NaN',
  'Infinity',
  '١٢٣',
  '1_000',
  '1,5',
  '__proto__',
  'constructor',
  'toString',
  '"',
  "'",
  '\\',

  '=1+1',
  '../..',
  '%00',
  '<!--',
  '&#0;',
  ']]>',
];

/** A sample after the plan's steps. */
export function mutateText(form: TextForm, plan: Plan): string {
  let text = pick(form.samples, plan.sample);
  for (const step of plan.steps) text = stepText(text, form, step).slice(0, MOST);
  return text;
}

function stepText(text: string, form: TextForm, step: Step): string {
  const [act, a, b, c] = step;
  const at = placeIn(text.length, a);
  const to = Math.min(text.length, at + (b % 48));
  if (act < 6) return text.slice(0, at) + String.fromCharCode(b) + text.slice(at + 1);
  if (act < 12) return text.slice(0, at) + text.slice(to);
  if (act < 18) return text.slice(0, to) + text.slice(at);
  if (act < 24) {
    const other = pick(form.samples, c);
    return text.slice(0, at) + other.slice(placeIn(other.length, b));
  }
  if (act < 30) return text.slice(0, at) + oddOf(form, b) + text.slice(at);
  if (act < 32) return text.slice(0, at) + text.slice(at, at + 1 + (b % 6)).repeat(timesOf(c, REPEAT_BITS));
  if (act < 33) return text.slice(0, at) + oddOf(form, b).repeat(timesOf(c, REPEAT_BITS)) + text.slice(at);
  if (act < 34) return text.slice(0, at);
  return stepPieces(text, form, step);
}

/** On whole pieces: dropped, doubled, swapped, replaced by something odd or by another sample's. */
function stepPieces(text: string, form: TextForm, [act, a, b, c]: Step): string {
  const pieces = text.split(form.parts);
  const [one, two] = [placeIn(pieces.length - 1, a), placeIn(pieces.length - 1, b)];
  const piece = pieces[one] ?? '';
  if (act < 40) pieces[one] = oddOf(form, c);
  else if (act < 46) {
    pieces[one] = pieces[two] ?? '';
    pieces[two] = piece;
  } else if (act < 50) pieces.splice(one, 1);
  else if (act < 56) pieces[one] = piece.repeat(timesOf(c, 3));
  else {
    const other = pick(form.samples, c).split(form.parts);
    pieces[one] = other[placeIn(other.length - 1, b)] ?? '';
  }
  return pieces.join('');
}

function oddOf(form: TextForm, at: number): string {
  const own = form.odd.length;
  const index = at % (own + oddTexts.length);
  return (index < own ? form.odd[index] : oddTexts[index - own]) ?? '';
}
