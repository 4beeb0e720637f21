// How far has this tablet read? A position in the server's commit order, with the first digits of the running hash there.
// A bare position was refused: after a backup is put back, the same position may name another entry, and a reader that
// goes on from it would miss what lies before. With the hash, the server sees that and says so.

/** A place in the server's commit order. Position 0 is before the first entry. */
export interface Cursor {
  readonly pos: number;
  /** First 16 hex digits of the running hash after entry `pos`; 16 zeros for position 0. */
  readonly root: string;
}

/** The place before the first entry. */
export const startCursor: Cursor = { pos: 0, root: '0'.repeat(16) };

/** Writes a cursor as it travels. */
export function formatCursor(cursor: Cursor): string {
  return `${cursor.pos}.${cursor.root.slice(0, 16)}`;
}

/** Reads a cursor; null where the text is none. */
export function parseCursor(text: string): Cursor | null {
  const match = /^(0|[1-9]\d{0,15})\.([0-9a-f]{16})$/.exec(text);
  if (!match) return null;
  const pos = Number(match[1]);
  if (!Number.isSafeInteger(pos)) return null;
  return { pos, root: match[2] ?? '' };
}
