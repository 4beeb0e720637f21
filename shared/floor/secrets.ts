// What of an entry is nobody's business outside the plant: the key that marks badges, and what older versions wrote into the log of a badge's
// text and of what checks a PIN. An export leaves them out and says so in their place. The entry's hash covers them, so that of such a line its hash, its place and
// its signature can be checked, and its text no more. Refused: a second hash of the rest beside it, which whoever writes the file could make.

import type { Entry, JsonObject } from '../log/entry.ts';
import { type ExportItem, isOmitted, leftOutName } from '../log/export.ts';

/** Fields that an export leaves out, by kind. */
const secretFields: ReadonlyMap<string, readonly string[]> = new Map([
  ['person.added', ['badge', 'pin']],
  ['badges.keyed', ['secret']],
]);

/** The record as an export shows it. A PIN that is not set is no secret. */
export function withoutSecrets(item: ExportItem): ExportItem {
  if (isOmitted(item)) return item;
  const fields = secretsOf(item);
  if (fields.length === 0) return item;
  const shown = Object.entries(item.payload).filter(([name]) => !fields.includes(name));
  const payload: JsonObject = { ...Object.fromEntries(shown), [leftOutName]: [...fields] };
  return { ...item, payload };
}

/** The fields of an entry that an export leaves out. */
export function secretsOf({ kind, payload }: Pick<Entry, 'kind' | 'payload'>): readonly string[] {
  return secretFields.get(kind)?.filter((name) => (payload[name] ?? null) !== null) ?? [];
}

/** True for an entry of an export that says of itself that fields were left out which an export leaves out. Whoever changed the file may have written that. */
export function lacksSecrets({ kind, payload }: Pick<Entry, 'kind' | 'payload'>): boolean {
  const said = payload[leftOutName];
  const fields = secretFields.get(kind) ?? [];
  return (
    Array.isArray(said) &&
    said.length > 0 &&
    said.every((name) => typeof name === 'string' && fields.includes(name) && !Object.hasOwn(payload, name))
  );
}
