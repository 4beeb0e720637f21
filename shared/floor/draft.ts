// What is to be written in one append, where a later entry names an earlier one of it, or an entry itself. Method: that one is told as what it is once the
// ids before it are known, since only the writer knows the next number. Refused: two appends; a tablet that dies between them keeps a
// verdict without what follows from it.

import type { DraftEntry } from './kinds.ts';

/** One thing to write down, or what it is once the ids of the entries before it in the same append, and its own, are known. */
export type Draft = DraftEntry | ((before: readonly string[], own: string) => DraftEntry);
