// A quick look at a page of entries that came out of JSON: yes for what the wire's schema accepts. Whatever is not plainly
// right is left to the schema, which also words the refusal; a property test holds the two together.

import { type Entry, firstPrev, isBounded, signatureForm } from '../../shared/log/entry.ts';

const NAME = /^[\x21-\x7e]{1,64}$/;
const HASH = /^[0-9a-f]{64}$/;
const MOMENT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,3})?(Z|[+-]\d{2}:\d{2})$/;
const KEYS = 12;

/** True only for entries that `entrySchema` accepts, but for what stands in the payload: `draftText` refuses that. `before`: a hash in its right form, which `prev` may be without a look. */
export function isPlainEntry(value: unknown, before = firstPrev): boolean {
  if (!isPlainObject(value)) return false;
  const { v, tablet, epoch, seq, at, hlc, who, kind, payload, prev, hash, sig } = value;
  return (
    Object.keys(value).length === KEYS &&
    v === 1 &&
    isName(tablet) &&
    isName(epoch) &&
    isName(kind) &&
    isCount(seq) &&
    seq >= 1 &&
    typeof at === 'string' &&
    isMoment(at) &&
    isPlainObject(hlc) &&
    Object.keys(hlc).length === 2 &&
    isCount(hlc['ms']) &&
    isCount(hlc['n']) &&
    isBounded({ ms: hlc['ms'], n: hlc['n'] }) &&
    (who === null || (typeof who === 'string' && who.length >= 1 && who.length <= 64)) &&
    isPlainObject(payload) &&
    (prev === before || isHash(prev)) &&
    isHash(hash) &&
    (sig === null || (typeof sig === 'string' && signatureForm.test(sig)))
  );
}

/** True for a list of such entries. */
export function arePlainEntries(values: readonly unknown[]): boolean {
  // Each mostly names the hash of the one before it.
  let before = firstPrev;
  for (const value of values) {
    if (!isPlainEntry(value, before)) return false;
    before = (value as Entry).hash; // just looked at
  }
  return true;
}

/** True for a wall clock reading of a date that exists. */
function isMoment(text: string): boolean {
  return MOMENT.test(text) && !Number.isNaN(Date.parse(text));
}

function isPlainObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isName(value: unknown): boolean {
  return typeof value === 'string' && NAME.test(value);
}

function isHash(value: unknown): boolean {
  return typeof value === 'string' && HASH.test(value);
}

function isCount(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0; // a safe integer is a number
}
