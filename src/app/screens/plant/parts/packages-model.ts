// What the list of packages shows, and its form as texts and back; what does not fit is refused whole.

import type { PartFacts } from '../../../../../shared/floor/moisture-rules.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import type { PackageFamily } from '../../../../../shared/floor/vocabulary.ts';
import { compareText } from '../../../../../shared/log/order.ts';
import type { MoistureLevel, PackageClass } from '../../../../../shared/moisture/levels.ts';
import {
  type PackageFacts,
  packageClassesOf,
  unknownPackage,
} from '../../../../../shared/moisture/package.ts';
import { moistureOfParts } from '../../../../../shared/moisture/reel-life.ts';

/** A moisture-sensitive part as its floor life sees it. */
export interface ListedPackage {
  readonly part: string;
  readonly level: MoistureLevel | null;
  readonly bodyMm: number | null;
  readonly package: PackageFacts;
  /** More than one: the shortest life of them counts. */
  readonly classes: readonly PackageClass[];
}

/** All moisture-sensitive parts and those described by hand: open ones first, then by number. */
export function listedPackages(floor: FloorState): readonly ListedPackage[] {
  return [...moistureOfParts(floor)]
    .map(([part, { level, bodyMm, package: facts = unknownPackage }]) => ({
      part,
      level,
      bodyMm,
      package: facts,
      classes: [...packageClassesOf(bodyMm, facts)].sort(),
    }))
    .sort(
      (a, b) => Number(b.classes.length > 1) - Number(a.classes.length > 1) || compareText(a.part, b.part),
    );
}

/** The form: numbers as typed. */
export interface PackageForm {
  readonly part: string;
  readonly family: PackageFamily | null;
  readonly pins: string;
  readonly thickness: string;
  readonly length: string;
  readonly width: string;
  readonly isStacked: boolean | null;
  readonly msl: MoistureLevel | null;
  readonly source: string;
}

/** The form of a part as it is known; `part` empty for a new one. */
export function packageForm(
  part: string,
  facts: PartFacts | undefined,
  bodyMm: number | null = null,
): PackageForm {
  const text = (value: number | null | undefined) =>
    value === null || value === undefined ? '' : String(value);
  return {
    part,
    family: facts?.family ?? null,
    pins: text(facts?.pins),
    thickness: text(facts?.bodyMm ?? bodyMm),
    length: text(facts?.bodyXMm),
    width: text(facts?.bodyYMm),
    isStacked: facts?.isStacked ?? null,
    msl: (facts?.msl ?? null) as MoistureLevel | null, // written by this form
    source: facts?.source ?? '',
  };
}

/** What keeps a package from being saved. */
export type PackageObstacle = 'partMissing' | 'badNumber' | 'sizeHalf';

/** A number above zero, null where nothing is typed, undefined where it is none. */
function read(text: string): number | null | undefined {
  if (text.trim() === '') return null;
  const value = Number(text.trim().replace(',', '.'));
  return Number.isFinite(value) && value > 0 ? value : undefined;
}

/** The package as typed, or what is wrong with it. */
export function formToPackage(form: PackageForm): PartFacts | PackageObstacle {
  const part = form.part.trim();
  if (part === '') return 'partMissing';
  const [pins, bodyMm, bodyXMm, bodyYMm] = [form.pins, form.thickness, form.length, form.width].map(read);
  if (pins === undefined || bodyMm === undefined || bodyXMm === undefined || bodyYMm === undefined)
    return 'badNumber';
  if (pins !== null && !(Number.isInteger(pins) && pins <= 10_000)) return 'badNumber';
  if ((bodyXMm === null) !== (bodyYMm === null)) return 'sizeHalf';
  const { family, isStacked, msl } = form;
  return { part, family, pins, bodyMm, bodyXMm, bodyYMm, isStacked, msl, source: form.source.trim() };
}
