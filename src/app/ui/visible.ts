// Scanned text as it can be shown.

/** Names of the control characters 0 to 31 (ISO/IEC 646). */
const names = (
  'NUL SOH STX ETX EOT ENQ ACK BEL BS HT LF VT FF CR SO SI ' +
  'DLE DC1 DC2 DC3 DC4 NAK SYN ETB CAN EM SUB ESC FS GS RS US'
).split(' ');

/** Control characters by their names, e.g. ‹GS›: many tablets have no letters for Unicode's pictures of them. */
export function visible(text: string): string {
  return text.replace(/[\u0000-\u001f]/g, (char) => `‹${names[char.charCodeAt(0)]}›`);
}
