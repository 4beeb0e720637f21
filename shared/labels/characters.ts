// What kind of character stands at a place of a text, by its code: the readers' inner loops ask this for every character.

/** 0-9. */
export function isDigit(char: number): boolean {
  return char >= 48 && char <= 57;
}

/** A-Z, a-z. */
export function isLetter(char: number): boolean {
  return (char >= 65 && char <= 90) || (char >= 97 && char <= 122);
}

/** 0-9, A-Z, a-z. */
export function isAlphanumeric(char: number): boolean {
  return isDigit(char) || isLetter(char);
}
