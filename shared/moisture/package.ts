// Which package class of table 7-1 does a part belong to, and may it need the long bake of large packages?
// Method: the rows of J-STD-033 table 7-1 name packages beside the body thickness; a part takes every class that it may belong to by what is
// known of it, and of those the shortest life of a climate counts. "All BGA of 1 mm and more" was read in a published copy; the other names
// are from memory. Refused: the thickness alone, which gives thin ball grid arrays a life many times too long in a mild climate.

import type { PackageFamily } from '../floor/vocabulary.ts';
import { classOfThickness, type PackageClass, packageClasses } from './levels.ts';

/** What is known of a package; null = nobody stated it, which counts as the worse. */
export interface PackageFacts {
  readonly family: PackageFamily | null;
  /** Leads or balls. */
  readonly pins: number | null;
  /** Body length and width in mm, in either order, each > 0. */
  readonly bodyMm: readonly [number, number] | null;
  /** Whether dies are stacked in it; null = not stated. */
  readonly isStacked: boolean | null;
}

/** A package of which nothing is known. */
export const unknownPackage: PackageFacts = { family: null, pins: null, bodyMm: null, isStacked: null };

/** A square body: its sides differ by no more than this, mm (a choice of this tool). */
const SQUARE_MM = 0.5;
/** A small-outline body at least this wide is a wide one, mm: bodies are 3.9 or 7.5 wide (common practice). */
const WIDE_MM = 5.3;
/** Ball grid arrays above this body length and width have a bake row of their own, mm. */
const LARGE_MM = 17;

/** The classes that the table's words put a package in whatever its thickness; null where they name it nowhere. */
function namedClasses(facts: PackageFacts, thicknessMm: number | null): readonly PackageClass[] | null {
  const { family, pins, bodyMm } = facts;
  switch (family) {
    case 'mqfp':
      return ['A'];
    case 'bga':
      return thicknessMm === null ? ['A', 'C'] : thicknessMm >= 1 ? ['A'] : ['C'];
    case 'lga':
      // The table is silent about land grids, which are built like ball grids: both readings are kept.
      if (thicknessMm === null) return packageClasses;
      return thicknessMm >= 1 ? ['A', classOfThickness(thicknessMm)] : ['C'];
    case 'pqfp':
      if (pins === null || (pins > 80 && pins <= 84)) return ['A', 'B'];
      return pins > 84 ? ['A'] : ['B'];
    case 'qfp':
      return thicknessMm === null ? packageClasses : ['A', classOfThickness(thicknessMm)];
    case 'plcc':
      if (bodyMm === null) return ['A', 'B'];
      if (Math.abs(bodyMm[0] - bodyMm[1]) <= SQUARE_MM) return ['A'];
      return pins !== null && pins >= 18 && pins <= 32 ? ['B'] : ['A', 'B'];
    case 'tqfp':
    case 'tsop':
      return ['C'];
    case 'soic':
      return soicClasses(facts, thicknessMm);
    default:
      return null;
  }
}

function soicClasses({ pins, bodyMm }: PackageFacts, thicknessMm: number | null): readonly PackageClass[] {
  const isWide = bodyMm === null ? null : Math.min(...bodyMm) >= WIDE_MM;
  if (isWide || (pins !== null && pins >= 20)) return ['B'];
  const isSmall = pins !== null && pins < 18;
  // A wide body is thicker than 2.1 mm; a thin one needs no length to be told from it.
  const isNarrow = isWide === false || (thicknessMm !== null && thicknessMm < 2.1);
  return isSmall && isNarrow ? ['C'] : ['B', 'C'];
}

/**
 * The classes that a part may belong to, never empty: the shortest life of them counts. `facts` absent: only the thickness is asked, as
 * the table's own headings go. A body of 3.1 mm and more is class A under any name. Where name and thickness disagree, the class nearer to A.
 * `thicknessMm` in mm, > 0, null = not known.
 */
export function packageClassesOf(thicknessMm: number | null, facts?: PackageFacts): readonly PackageClass[] {
  const byThickness = thicknessMm === null ? null : classOfThickness(thicknessMm);
  if (byThickness === 'A') return ['A'];
  if (facts === undefined) return byThickness === null ? packageClasses : [byThickness];
  if (facts.family === null) {
    // The class by thickness stands first: where lives are equal, it is the one to show.
    return byThickness === null
      ? packageClasses
      : [byThickness, ...packageClasses.filter((each) => each !== byThickness)];
  }
  const named = namedClasses(facts, thicknessMm);
  if (named === null) return byThickness === null ? packageClasses : [byThickness];
  if (byThickness === null) return named;
  const rank = (each: PackageClass) => packageClasses.indexOf(each);
  const strict = named.map((each) => packageClasses[Math.min(rank(each), rank(byThickness))]);
  return packageClasses.filter((each) => strict.includes(each));
}

/**
 * Whether the bake row of ball grid arrays above 17 × 17 mm and of stacked dies holds; what is not known counts as yes. Land grid arrays
 * count as ball grid arrays (a rule of this tool). From memory.
 */
export function isLargeOrStacked(facts: PackageFacts): boolean {
  if (facts.isStacked === true) return true;
  if (facts.family === null) return facts.bodyMm === null || isLarge(facts.bodyMm);
  if (facts.family !== 'bga' && facts.family !== 'lga') return false;
  return facts.bodyMm === null || isLarge(facts.bodyMm);
}

function isLarge(bodyMm: readonly [number, number]): boolean {
  return Math.max(...bodyMm) > LARGE_MM;
}
