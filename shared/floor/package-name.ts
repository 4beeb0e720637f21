// What is a reel called that came without an id? Method: it has a name already, `~` and the entry that first named it; the id on its printed label is
// that entry's, made short. So two tablets that both print a label for it print the same id, and a reprint is the same again.

import { packageId } from '../labels/package-id.ts';
import { hashText } from '../log/seal.ts';

/** The id for the package that an entry (`tablet/epoch/seq`) first named. Throws RangeError where that is no name of an entry. */
export function packageIdOf(entry: string): string {
  const at = entry.lastIndexOf('/');
  return packageId(hashText(entry.slice(0, Math.max(0, at))), Number(entry.slice(at + 1)));
}
