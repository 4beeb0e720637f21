// One message over several symbols: joined where all of them are there, else said to be missing. Structured append tells place and number
// (ISO/IEC 18004, ISO/IEC 16022); an ISO/IEC 15434 envelope that ends in another symbol shows by its header and its trailer.
// Refused: reading what is there, since half an envelope may lack the lot, or hold half a part number.

import type { ScannedCode } from './scan.ts';

/** The codes with each message whole, and how many symbols of one are there where some are missing. */
export interface Joined {
  readonly codes: readonly ScannedCode[];
  readonly missing: { readonly have: number; readonly of: number } | null;
}

const HEAD = /^\[\)>\u001e\d\d/;
const TAIL = /\u001e\u0004$/;

/** Joins the symbols of one look. Codes that are messages of their own stay as they are, in their order. */
export function joinPortions(codes: readonly ScannedCode[]): Joined {
  const groups = new Map<string, ScannedCode[]>();
  for (const code of codes) {
    if (code.portion === undefined) continue;
    const key = JSON.stringify([code.format, code.portion.of, code.portion.id]);
    groups.set(key, [...(groups.get(key) ?? []), code]);
  }
  const joined = codes.filter(({ portion }) => portion === undefined);
  for (const group of groups.values()) {
    const parts = new Map(group.map((code) => [code.portion?.index ?? 0, code]));
    const of = group[0]?.portion?.of ?? 0;
    if (parts.size < of) return { codes: [], missing: { have: parts.size, of } };
    joined.push(inOne([...parts].sort(([one], [other]) => one - other).map(([, code]) => code)));
  }
  return joinEnvelope(joined);
}

/**
 * An envelope that begins in one symbol and ends in another. One alone is left as it is: a header may have lost its trailer to the scanner, and
 * a trailer its header.
 */
function joinEnvelope(codes: readonly ScannedCode[]): Joined {
  const heads = codes.filter(({ text }) => HEAD.test(text) && !TAIL.test(text));
  const tails = codes.filter(({ text }) => TAIL.test(text) && !text.includes('[)>'));
  const [head, tail] = [heads[0], tails[0]];
  if (head === undefined || tail === undefined || heads.length > 1 || tails.length > 1)
    return { codes, missing: null };
  const whole = inOne([head, tail]);
  const rest = codes.filter((code) => code !== tail);
  return { codes: rest.map((code) => (code === head ? whole : code)), missing: null };
}

function inOne(codes: readonly ScannedCode[]): ScannedCode {
  const text = codes.map((code) => code.text).join('');
  return { text, format: codes[0]?.format ?? null, symbologyId: codes[0]?.symbologyId ?? null };
}
