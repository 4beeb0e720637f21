// Lengths of tape as texts in a form, and back; what is no length is refused, nothing is taken for measured. Pure.

import { type TapeLengthName, tapeLengthNames } from '../../../../../shared/floor/feeder-types.ts';
import type { PayloadOf } from '../../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import type { PackageKind } from '../../../../../shared/floor/vocabulary.ts';
import { readLength } from '../rules-form.ts';

/** The four lengths as typed. */
export type LengthTexts = { readonly [name in TapeLengthName]: string };
type Lengths = { readonly [name in TapeLengthName]: number | null };

/** Lengths as a form shows them; all empty where nothing is known. */
export function lengthTexts(known: Lengths | null): LengthTexts {
  const text = (name: TapeLengthName) => (known === null || known[name] === null ? '' : String(known[name]));
  return {
    hubToPickMm: text('hubToPickMm'),
    intakeToPickMm: text('intakeToPickMm'),
    trailerMm: text('trailerMm'),
    leaderMm: text('leaderMm'),
  };
}

/** Lengths as typed, or why they cannot be taken. */
export function readLengths(texts: LengthTexts): Lengths | 'numberWrong' | 'intakeFar' {
  const read = (name: TapeLengthName) =>
    name === 'trailerMm' || name === 'leaderMm' ? readLength(texts[name], 0) : readLength(texts[name]);
  const [hubToPickMm, intakeToPickMm, trailerMm, leaderMm] = tapeLengthNames.map(read);
  if (hubToPickMm === undefined || intakeToPickMm === undefined) return 'numberWrong';
  if (trailerMm === undefined || leaderMm === undefined) return 'numberWrong';
  if (hubToPickMm !== null && intakeToPickMm !== null && hubToPickMm < intakeToPickMm) return 'intakeFar';
  return { hubToPickMm, intakeToPickMm, trailerMm, leaderMm };
}

/** A feeder type while it is typed. */
export interface TypeDraft {
  /** The type that is changed; null for a new one. */
  readonly changes: string | null;
  readonly type: string;
  readonly lanes: number;
  readonly drive: string;
  readonly pocket: string;
  /** What it feeds from. */
  readonly comesIn: PackageKind;
  readonly lengths: LengthTexts;
}

/** A type as the log is told of it, or why it cannot be saved. */
export function readType(
  floor: FloorState,
  draft: TypeDraft,
): PayloadOf<'feeder-type.known'> | 'nameMissing' | 'isThere' | 'numberWrong' | 'intakeFar' {
  const type = draft.type.trim();
  if (type === '') return 'nameMissing';
  if (draft.changes === null && floor.feederTypes.has(type)) return 'isThere';
  const pocketMm = readLength(draft.pocket);
  const lengths = readLengths(draft.lengths);
  if (pocketMm === undefined) return 'numberWrong';
  if (typeof lengths === 'string') return lengths;
  const { lanes, drive, comesIn } = draft;
  const known = { type, lanes, drive: drive.trim() || null, pocketMm, ...lengths };
  return comesIn === 'tape' ? known : { ...known, comesIn };
}
