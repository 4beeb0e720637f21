// The id that a plant gives a package which came without one: made without a network, read aloud, typed back.
// Method: seven letters drawn from the name of the log's chain that gave it, the number of the entry in that chain, a check character. A chain is one life of a
// tablet's database and its name is 100 bits of chance, so tablets that have never met give no id twice: among 100 chains two have the same seven letters
// in 4 of 10 million plants, and only then can an id of both be one. The number comes from the chain too, so that nothing is counted anywhere else.
// Refused: a tablet number given by the server, since a tablet works before it meets one; twelve letters of chance, which nobody reads aloud.

import { checkCharacter, isChecked } from './check-character.ts';

/**
 * Letters that nobody takes for another one of them, printed small or written by hand: no 0 O, no I L, no Z, S, B, U. 28 of them, and 29 is prime, as the check
 * character wants.
 */
export const PACKAGE_ALPHABET = '123456789ACDEFGHJKMNPQRTVWXY';

/** What a person may type for a letter that is not in the alphabet. */
const MEANT: Readonly<Record<string, string>> = { I: '1', L: '1', Z: '2', S: '5', B: '8', U: 'V' };

const MARK = 7;
const NUMBER_LEAST = 3;
const SIZE = BigInt(PACKAGE_ALPHABET.length);

/** A number by the alphabet, `length` letters at least. */
function lettersOf(number: bigint, length: number): string {
  let rest = number;
  let letters = '';
  while (rest > 0n || letters.length < length) {
    letters = (PACKAGE_ALPHABET[Number(rest % SIZE)] ?? '') + letters;
    rest /= SIZE;
  }
  return letters;
}

/**
 * The id of a package. `chainHash`: at least 16 hex digits of a hash over the name of the log's chain; `number`: of the entry in it that the
 * package was first named by, from 1. Throws RangeError for anything else. Example: `K7PM2Q3-4F9C`.
 */
export function packageId(chainHash: string, number: number): string {
  if (!/^[0-9a-f]{16,}$/.test(chainHash) || !Number.isSafeInteger(number) || number < 1) {
    throw new RangeError(
      `Cannot name a package as a hash of hex digits and a whole number from 1 must be given: current value is ${chainHash} ${number}`,
    );
  }
  const mark = lettersOf(BigInt(`0x${chainHash.slice(0, 16)}`) % SIZE ** BigInt(MARK), MARK);
  const letters = mark + lettersOf(BigInt(number), NUMBER_LEAST);
  return written(letters + (checkCharacter(letters, PACKAGE_ALPHABET) ?? ''));
}

function written(letters: string): string {
  return `${letters.slice(0, MARK)}-${letters.slice(MARK)}`;
}

/** What a text is as a package's id: the id as it is written, `wrong` where it has the look of one and a letter is misread, null for any other text. */
export function readPackageId(text: string): { readonly id: string } | 'wrong' | null {
  const typed = text.trim().toUpperCase();
  if (!/^[0-9A-Z]{7}[- ]?[0-9A-Z]{4,9}$/.test(typed)) return null;
  const letters = [...typed.replace(/[- ]/, '')].map((letter) => MEANT[letter] ?? letter).join('');
  if (isChecked(letters, PACKAGE_ALPHABET)) return { id: written(letters) };
  // Only one that is written as an id is said to be a wrong one: part numbers have letters and digits too.
  return /^[^- ]{7}-[^- ]{4,6}$/.test(typed) && /\d/.test(typed) ? 'wrong' : null;
}
