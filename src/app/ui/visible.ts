// Scanned text as it can be shown.

/** Control characters as Unicode's Control Pictures, so that they can be seen and counted. */
export function visible(text: string): string {
  return text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
}
