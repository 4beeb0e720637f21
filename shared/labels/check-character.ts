// Which letter at the end of an id shows that one of it was misread? Method: the hybrid systems of ISO/IEC 7064, of which MOD 11,10 and
// MOD 37,36 are two: they work for every alphabet whose length is one less than a prime. Every single wrong letter is seen, and nearly every
// swap of two neighbours. Refused: a plain sum, which sees no swap.

/** Of an alphabet whose length + 1 is prime: value of each letter. */
function valuesOf(alphabet: string): ReadonlyMap<string, number> {
  return new Map([...alphabet].map((letter, value) => [letter, value]));
}

/** What the letters so far come to, 1 to the alphabet's length; null where a letter is none of the alphabet. */
function carried(text: string, alphabet: string): number | null {
  const size = alphabet.length;
  const values = valuesOf(alphabet);
  let carry = size;
  for (const letter of text) {
    const value = values.get(letter);
    if (value === undefined) return null;
    const sum = (carry + value) % size;
    carry = ((sum === 0 ? size : sum) * 2) % (size + 1);
  }
  return carry;
}

/**
 * The check character of a text by the hybrid system of ISO/IEC 7064 over an alphabet; null where a letter of the text is none of it. `alphabet`: different
 * letters, whose number + 1 must be prime, else a swap or a wrong letter may go unseen. From memory of the standard; the tests hold it
 * against its published examples.
 */
export function checkCharacter(text: string, alphabet: string): string | null {
  const carry = carried(text, alphabet);
  if (carry === null) return null;
  return alphabet[(alphabet.length + 1 - carry) % alphabet.length] ?? null;
}

/** True where the last letter of a text is the check character of the rest. */
export function isChecked(text: string, alphabet: string): boolean {
  return text.length > 1 && checkCharacter(text.slice(0, -1), alphabet) === text.at(-1);
}
