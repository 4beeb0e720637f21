// The RFC 8785 text of an entry's draft, several times faster than the general writer: keys are put in order once, and the
// engine's own JSON writer, whose numbers and strings are RFC 8785's, does the rest. Anything out of the ordinary is left to
// the general writer, and a property test holds the two equal.

import { type Entry, isWithinLevels, payloadLevelsMost } from '../../shared/log/entry.ts';
import { canonicalText, draftOf } from '../../shared/log/seal.ts';

/** Same as `canonicalText(draftOf(entry))` for an entry that came out of JSON. Throws where that throws. */
export function draftText(entry: Entry): string {
  const payload = inOrder(entry.payload, payloadLevelsMost);
  if (payload === undefined) {
    if (!isWithinLevels(entry.payload, payloadLevelsMost)) throw tooDeep();
    return canonicalText(draftOf(entry));
  }
  const { at, epoch, hlc, kind, prev, seq, tablet, v, who } = entry;
  const text = JSON.stringify({
    at,
    epoch,
    hlc: { ms: hlc.ms, n: hlc.n },
    kind,
    payload,
    prev,
    seq,
    tablet,
    v,
    who,
  });
  // Half a character is written as an escape here, and is an error there.
  return text.includes('\\ud') ? canonicalText(draftOf(entry)) : text;
}

function tooDeep(): RangeError {
  return new RangeError(`its payload has more than ${payloadLevelsMost} levels`);
}

/** The value with the keys of its objects in order; undefined where the engine would not keep that order. `levels`: how many it may have. */
function inOrder(value: unknown, levels: number): unknown {
  // A number beyond any, as 1e400 is, would be written as null.
  if (typeof value === 'number') return Number.isFinite(value) ? value : undefined;
  if (value === null || typeof value !== 'object') return value;
  if (levels === 0) throw tooDeep();
  if (Array.isArray(value)) {
    const items: unknown[] = [];
    for (const item of value) {
      const ordered = inOrder(item, levels - 1);
      if (ordered === undefined) return undefined;
      items.push(ordered);
    }
    return items;
  }
  const result: Record<string, unknown> = {};
  // Sorts by UTF-16 code units, as RFC 8785 wants.
  for (const key of Object.keys(value).sort()) {
    const code = key.charCodeAt(0);
    // Keys that look like numbers come first in an object whatever the order; `__proto__` is no key at all.
    if ((code >= 48 && code <= 57) || key === '__proto__') return undefined;
    const ordered = inOrder((value as Record<string, unknown>)[key], levels - 1); // an object out of JSON
    if (ordered === undefined) return undefined;
    result[key] = ordered;
  }
  return result;
}
