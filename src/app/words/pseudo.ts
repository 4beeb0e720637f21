// Words that nobody speaks, made from the English ones, to see what other languages will do to a layout: longer words with
// marks above and below the letters, and words that run from right to left. Loaded only where they are asked for.

/** `long`: a third longer, accented, in brackets. `mirrored`: from right to left. */
export type Pseudo = 'long' | 'mirrored';

const plainLetters = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ';
const accented = 'áƀçďéƒǧĥíĵķľɱñôƥɋŕšťúṽŵẋýžÅƁÇĎÉƑǦĤÎĴĶĽṀÑÔƤǪŔŠŤÛṼŴẊÝŽ';
const letters = new Map([...plainLetters].map((letter, at) => [letter, [...accented][at] ?? letter]));

/** How much longer than English the words of other languages may be. */
const LONGER = 0.35;
const vowels = /[áéíôúÅÉÎÔÛ]/;

/** One stretch of English as longer, accented text: vowels are said twice until it is long enough. */
function lengthen(text: string): string {
  let missing = Math.ceil(text.trim().length * LONGER);
  return [...text]
    .map((char) => {
      const made = letters.get(char) ?? char;
      if (missing <= 0 || !vowels.test(made)) return made;
      missing -= 1;
      return made + made.toLowerCase();
    })
    .join('');
}

/** Marks of Unicode that make a run of letters go from right to left, and end it. */
const RLM = '\u200f';
const RLO = '\u202e';
const PDF = '\u202c';

function mirror(text: string): string {
  return text.replace(/\p{L}[\p{L}\p{M}’'-]*/gu, (word) => `${RLM}${RLO}${word}${PDF}${RLM}`);
}

/** Changes what stands between the facts of a sentence; facts (codes, numbers, names) stay as they are. */
function between(text: string, facts: readonly string[], change: (part: string) => string): string {
  const known = [...new Set(facts)].filter((fact) => fact !== '').sort((a, b) => b.length - a.length);
  if (known.length === 0) return change(text);
  const fact = new RegExp(`(${known.map((each) => each.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|')})`);
  return text
    .split(fact)
    .map((part, at) => (at % 2 === 1 ? part : change(part)))
    .join('');
}

const change: Readonly<Record<Pseudo, (text: string, facts: readonly string[]) => string>> = {
  long: (text, facts) => (/\p{L}/u.test(text) ? `[${between(text, facts, lengthen)}]` : text),
  mirrored: (text, facts) => between(text, facts, mirror),
};

/** Makes what turns English sentences into others; the same sentences give the same object each time. */
export function makePseudo(kind: Pseudo): <W>(english: W) => W {
  const made = new Map<unknown, unknown>();
  const turn = (value: unknown): unknown => {
    if (typeof value === 'string') return change[kind](value, []);
    if (value === null || (typeof value !== 'object' && typeof value !== 'function')) return value;
    const known = made.get(value);
    if (known !== undefined) return known;
    const turned = typeof value === 'function' ? sentence(value as Sentence) : copy(value);
    made.set(value, turned);
    return turned;
  };
  const sentence =
    (english: Sentence) =>
    (...facts: readonly unknown[]) => {
      const text = english(...facts);
      const told = facts.filter((fact) => typeof fact === 'string' || typeof fact === 'number').map(String);
      return typeof text === 'string' ? change[kind](text, told) : turn(text);
    };
  const copy = (value: object) =>
    Array.isArray(value)
      ? value.map(turn)
      : Object.fromEntries(Object.entries(value).map(([key, each]) => [key, turn(each)]));
  return <W>(english: W) => turn(english) as W; // sentence for sentence
}

type Sentence = (...facts: readonly unknown[]) => unknown;
