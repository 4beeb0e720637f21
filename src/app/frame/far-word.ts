// How wide is the longest word of a verdict? Method: letters counted, those of scripts that write a syllable or a word in one as wide as
// one and a half. Refused: measuring what was drawn, which comes a frame late and moves what a finger goes for.

/** Scripts whose lines may break between any two letters: a few letters stay together. */
const breaksAnywhere = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}]/u;
const isWide = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/u;
const WIDE_LETTERS = 1.5;
const TOGETHER_LETTERS = 6;

/** Width of the longest piece of a text that a line cannot break, in letters of the Latin script; at least 1. */
export function longestWord(text: string): number {
  const widths = text.split(/\s+/).map((word) => {
    if (breaksAnywhere.test(word)) return TOGETHER_LETTERS;
    return [...word].reduce((sum, letter) => sum + (isWide.test(letter) ? WIDE_LETTERS : 1), 0);
  });
  return Math.max(1, ...widths);
}
