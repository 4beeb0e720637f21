// The RFC 8785 text of an entry's draft, several times faster than the general writer: keys are looked at whether they are in order, and the
// engine's own JSON writer, whose numbers and strings are RFC 8785's, does the rest. Anything out of the ordinary is left to
// the general writer, and a property test holds the two equal.

import { type Entry, isWithinLevels, payloadLevelsMost } from '../../../shared/log/entry.ts';
import { canonicalText, draftOf } from '../../../shared/log/seal.ts';
import { joinPieces, type Pieces } from './packed.ts';

/** An entry's text. */
export interface DraftText {
  readonly body: string;
  /** What it was joined of; null where the general writer wrote it. */
  readonly pieces: Pieces | null;
}

/** Its `body` is the same as `canonicalText(draftOf(entry))` for an entry that the wire's schema accepts. Throws where that throws. */
export function draftText(entry: Entry): DraftText {
  const pieces = piecesOf(entry);
  if (pieces) return { body: joinPieces(entry, pieces), pieces };
  if (!isWithinLevels(entry.payload, payloadLevelsMost)) throw tooDeep();
  return { body: canonicalText(draftOf(entry)), pieces: null };
}

function piecesOf({ at, prev, who, payload }: Entry): Pieces | null {
  if (!isInOrder(payload, payloadLevelsMost)) return null;
  const pieces = { at, prev, who: JSON.stringify(who), payload: JSON.stringify(payload) };
  // Half a character is written as an escape here, and is an error there.
  return pieces.payload.includes('\\ud') || pieces.who.includes('\\ud') ? null : pieces;
}

function tooDeep(): RangeError {
  return new RangeError(`its payload has more than ${payloadLevelsMost} levels`);
}

/**
 * Is this what the engine's own writer writes as RFC 8785 does? Keys in order, as tablets seal them, and nothing that JSON cannot say.
 * `levels`: how many it may have.
 */
function isInOrder(value: unknown, levels: number): boolean {
  // A number beyond any, as 1e400 is, would be written as null.
  if (typeof value === 'number') return Number.isFinite(value);
  if (value === null || typeof value !== 'object') return true;
  if (levels === 0) throw tooDeep();
  if (Array.isArray(value)) return value.every((item) => isInOrder(item, levels - 1));
  let before = '';
  for (const key of Object.keys(value)) {
    // By UTF-16 code units, as RFC 8785 wants. `__proto__` is no key at all.
    if (key < before || key === '__proto__') return false;
    before = key;
    if (!isInOrder((value as Record<string, unknown>)[key], levels - 1)) return false; // an object out of JSON
  }
  return true;
}
