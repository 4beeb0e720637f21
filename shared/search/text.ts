// When does one text contain another, as people type and scanners send them? Letter case, blanks, dashes and leading zeros do not count.
// Method: two forms of each text, and either may contain the other text's. `plain` keeps all zeros, so that `0140` is found in `M1-0140`;
// `bare` marks where a number begins and drops its leading zeros, so that `f14` is found in `M1-F-014` and `05` is not in `15`.
// Refused: likeness by letters swapped or left out. Two parts of one letter's difference are two parts.

/** A text in the two forms in which texts are compared. */
export interface Folded {
  readonly plain: string;
  readonly bare: string;
}

/** What people leave out or write otherwise: blanks, signs that cannot be seen, dashes and the other signs between pieces of a code. */
const separators = /[^\S\n]|[\p{Z}\p{Cf}\p{Pd}_./:]|(?!\n)\p{Cc}/gu;
const zerosBefore = /(^|[^\d])0+(?=\d)/g;
const numberBegins = /(^|[^\d])(?=\d)/g;
/** Stands before each number of a bare text; no text has it, as signs that cannot be seen are left out. */
const NUMBER = '\u0001';
/** Stands in for it meanwhile: of no script, and no separator. */
const PLACE = '\uffff';
/** Parts texts that are folded together; no folded text has it. */
export const JOINT = '\n';

/** The forms of a text. Never fails; both are empty where nothing but separators is in it. */
export function foldText(text: string): Folded {
  const { plain, bare } = foldTexts([text]);
  return { plain, bare };
}

/** The forms of many texts, one behind the other with a joint between: in one go, since a call for each would take ten times as long. */
export function foldTexts(texts: readonly string[]): Folded {
  const joined = texts.map((text) => text.replaceAll(JOINT, ' ')).join(JOINT);
  const upper = joined.normalize('NFKC').toUpperCase();
  const bare = upper.replace(zerosBefore, '$1').replace(numberBegins, `$1${PLACE}`);
  return {
    plain: upper.replace(separators, ''),
    bare: bare.replace(separators, '').replaceAll(PLACE, NUMBER),
  };
}

/** How one text lies in another: it is the same as written, the same but for what does not count, its beginning, or somewhere in it. */
export const textFits = ['exact', 'same', 'start', 'within'] as const;
export type TextFit = (typeof textFits)[number];
