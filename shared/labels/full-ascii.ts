// Code 39 whose pairs stand for small letters and marks, read as if they did not (ISO/IEC 16388, full ASCII). A part number with a plus is rare,
// two letters in a row with a plus before each are none: then it is told what was meant. Refused: to read it so, since the same characters may
// have been meant as they are.

const SIGNS: Readonly<Record<string, string>> = {
  '/A': '!', '/B': '"', '/C': '#', '/D': '$', '/E': '%', '/F': '&', '/G': "'", '/H': '(', '/I': ')', '/J': '*', '/K': '+', '/L': ',',
  '/O': '/', '/Z': ':', '%F': ';', '%G': '<', '%H': '=', '%I': '>', '%J': '?', '%K': '[', '%L': '\\', '%M': ']', '%N': '^', '%O': '_',
  '%P': '{', '%Q': '|', '%R': '}', '%S': '~', '%V': '@', '%W': '`',
}; // biome-ignore format: a table

/** What a text of Code 39 would be in full ASCII, null where it does not look like that. */
export function inFullAscii(text: string): string | null {
  if (!/^[0-9A-Z .$/+%-]+$/.test(text) || !/\+[A-Z]\+[A-Z]/.test(text)) return null;
  return text.replace(/[+/%][A-Z]/g, (pair) =>
    pair[0] === '+' ? (pair[1] ?? '').toLowerCase() : (SIGNS[pair] ?? pair),
  );
}
