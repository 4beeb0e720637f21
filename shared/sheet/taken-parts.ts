// What a sheet says of its parts' packages, as the parts list takes it in: beside the setup and not in it, since a package belongs to the part,
// and tablets of an older version must still read the setup.

import { isLimited } from '../floor/exposure.ts';
import type { PartFacts } from '../floor/moisture-rules.ts';
import { mostShort } from '../floor/payload-fields.ts';
import { parsePackageText } from './package-text.ts';
import type { SheetSlot } from './slot.ts';

const nothingKnown = {
  family: null,
  pins: null,
  bodyMm: null,
  bodyXMm: null,
  bodyYMm: null,
  isStacked: null,
  msl: null,
} as const;

/** What one row says of its part's package, over what was known. */
function described(slot: SheetSlot, known: PartFacts | undefined, source: string): PartFacts {
  const before = known ?? { part: slot.part, source, ...nothingKnown };
  const named = parsePackageText(slot.package ?? '');
  const size = slot.bodySizeMm ?? named.bodyMm;
  return {
    ...before,
    family: named.family ?? before.family,
    pins: slot.pins ?? named.pins ?? before.pins,
    bodyXMm: size?.[0] ?? before.bodyXMm,
    bodyYMm: size?.[1] ?? before.bodyYMm,
  };
}

function isSame(a: PartFacts | undefined, b: PartFacts): boolean {
  return (
    a !== undefined && (['family', 'pins', 'bodyXMm', 'bodyYMm'] as const).every((key) => a[key] === b[key])
  );
}

/**
 * Moisture-sensitive parts whose package the sheet states otherwise than the parts list, or first: what the sheet leaves out stays as it was. Where
 * rows of one part differ, the first counts. `source`: what the sheet is called.
 */
export function describedParts(
  slots: readonly SheetSlot[],
  known: ReadonlyMap<string, PartFacts>,
  source = '',
): readonly PartFacts[] {
  const found = new Map<string, PartFacts>();
  for (const slot of slots) {
    if (!isLimited(slot.msl) || found.has(slot.part)) continue;
    const before = known.get(slot.part);
    const next = described(slot, before, source);
    const saysMore = next.family !== null || next.pins !== null || next.bodyXMm !== null;
    if (saysMore && !isSame(before, next))
      found.set(slot.part, { ...next, source: source.slice(0, mostShort) });
  }
  return [...found.values()];
}
