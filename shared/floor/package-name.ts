// What is a reel called that came without an id? Method: it has a name already, `~` and the entry that first named it; the id on its printed label is
// that entry's, made short. So two tablets that both print a label for it print the same id, and a reprint is the same again.

import { packageId, readPackageId } from '../labels/package-id.ts';

/**
 * 64 bits mixed from a text, as 16 hex digits. The name of a chain is chance already: all that is asked is that no part of it is lost. Refused: the hash of the
 * seal, which the first screen need not wait for.
 */
function mixed(text: string): string {
  let one = 0xdeadbeef;
  let other = 0x41c6ce57;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    one = Math.imul(one ^ code, 2654435761);
    other = Math.imul(other ^ code, 1597334677);
  }
  one = Math.imul(one ^ (one >>> 16), 2246822507) ^ Math.imul(other ^ (other >>> 13), 3266489909);
  other = Math.imul(other ^ (other >>> 16), 2246822507) ^ Math.imul(one ^ (one >>> 13), 3266489909);
  return [one, other].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}

/** True for an id as the plant gives them to packages that came without one. Never throws. */
export function isPackageId(text: string): boolean {
  const read = readPackageId(text);
  return read !== null && read !== 'wrong';
}

/** The id for the package that an entry (`tablet/epoch/seq`) first named. Throws RangeError where that is no name of an entry. */
export function packageIdOf(entry: string): string {
  const at = entry.lastIndexOf('/');
  return packageId(mixed(entry.slice(0, Math.max(0, at))), Number(entry.slice(at + 1)));
}
