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

/** Whether a text holds digits only, at least one. */
export function isDigits(text: string): boolean {
  for (let at = 0; at < text.length; at += 1) if (!isDigit(text.charCodeAt(at))) return false;
  return text.length > 0;
}

/** Whether a text holds ASCII only, control characters among it. */
export function isAscii(text: string): boolean {
  for (let at = 0; at < text.length; at += 1) if (text.charCodeAt(at) > 127) return false;
  return true;
}

/** Whether a text holds ASCII without control characters only. */
export function isPrintableAscii(text: string): boolean {
  for (let at = 0; at < text.length; at += 1) {
    const char = text.charCodeAt(at);
    if (char < 32 || char > 126) return false;
  }
  return true;
}
