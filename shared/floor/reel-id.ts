// By what does the log name a reel that has no id of its own? By the entry that first named it, behind a sign that says so.

const NO_ID = '~';

/** The name of a reel without an id, which the entry of this id named first. */
export function nameByEntry(entry: string): string {
  return `${NO_ID}${entry}`;
}

/** The id of the entry that a reel without an id is named by; null where it has its own. */
export function entryInName(reel: string): string | null {
  return hasOwnId(reel) ? null : reel.slice(NO_ID.length);
}

/** True where the name is the reel's own id, which people can scan; false where only the log knows it by that name. */
export function hasOwnId(reel: string): boolean {
  return !reel.startsWith(NO_ID);
}

/** The reel's own id; null where it has none, or there is no reel. */
export function ownIdOf(reel: string | undefined): string | null {
  return reel === undefined || !hasOwnId(reel) ? null : reel;
}
