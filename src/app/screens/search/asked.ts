// What a scan asks the search: the text that is sought, and what else its label says. A badge asks for its person by name, so that it stands
// on no screen.

import { personByBadge } from '../../../../shared/floor/badge.ts';
import { siteRules } from '../../../../shared/floor/fold-labels.ts';
import { recognise } from '../../../../shared/floor/recognise.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { parseLabel } from '../../../../shared/labels/label.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';

/** What a scan asks. */
export interface Asked {
  readonly text: string;
  /** Other codes of the same label, each to be sought by a tap. */
  readonly others: readonly string[];
}

/** Reads a scan; null where it holds nothing. Never fails: what no rule reads is sought as it came. */
export function askedByScan(floor: FloorState, line: string | null, scan: Pick<Scan, 'codes'>): Asked | null {
  const codes = scan.codes.map(({ text }) => text);
  const first = codes[0]?.trim() ?? '';
  if (first === '') return null;
  for (const code of codes) {
    const person = personByBadge(floor.people, code.trim());
    if (person) return { text: person.name, others: [] };
  }
  if (codes.length === 1 && recognise(floor, line, first).length > 0) return { text: first, others: [] };
  const { reel, lot, part, supplierPart } = parseLabel(codes, { rules: siteRules(floor) });
  const told = [reel, lot, part, supplierPart].filter((text): text is string => text !== null);
  const [text = first, ...others] = [...new Set(told)];
  return { text, others };
}
