// What is known of a feeder beyond its width: its type, and how long the tape in it is. A length is what somebody measured on this very
// feeder, else on its type, else on the line, each length for itself; a length that nobody measured is not known.
// Refused: a usual length where none was entered; a splice window of a tape that nobody measured looks as sure as one that somebody did.

import type { EntryOf, PayloadOf } from './kinds.ts';
import { linesFeeding } from './lanes.ts';
import { unsigned } from './passkey.ts';
import type { FloorState } from './state.ts';

/** What feeders of one type have in common. */
export type FeederType = Readonly<PayloadOf<'feeder-type.known'>>;
/** A feeder's type, and lengths measured on it alone. */
export type TypedFeeder = Readonly<PayloadOf<'feeder.typed'>>;
/** The trailer and leader of a line's tapes. */
export type LineTape = Readonly<PayloadOf<'line.tape-ruled'>>;

/** The lengths of tape that count for a feeder, mm. */
export const tapeLengthNames = ['hubToPickMm', 'intakeToPickMm', 'trailerMm', 'leaderMm'] as const;
export type TapeLengthName = (typeof tapeLengthNames)[number];

/** Whose figure it is. */
export type LengthOf = 'feeder' | 'type' | 'line';

/** Each length with whose figure it is; null where nobody measured it. */
export type TapeLengths = {
  readonly [name in TapeLengthName]: { readonly mm: number; readonly of: LengthOf } | null;
};

/** Applies one entry to what is known of feeders' types. */
export function foldFeeders(
  state: FloorState,
  entry: EntryOf<'feeder-type.known' | 'feeder-type.withdrawn' | 'feeder.typed' | 'line.tape-ruled'>,
): void {
  switch (entry.kind) {
    case 'feeder-type.known':
      state.feederTypes.set(entry.payload.type, entry.payload);
      return;
    case 'feeder-type.withdrawn':
      state.feederTypes.delete(entry.payload.type);
      return;
    case 'feeder.typed':
      state.typed.set(entry.payload.feeder, entry.payload);
      return;
    case 'line.tape-ruled':
      for (const line of linesFeeding(state, entry.payload.line))
        state.tapeRules.set(line, { ...unsigned(entry.payload), line });
      return;
    default:
      entry satisfies never;
  }
}

/** The type of a feeder; null where nobody said, or the type was withdrawn. */
export function typeOf(state: FloorState, feeder: string | null): FeederType | null {
  const type = feeder === null ? null : (state.typed.get(feeder)?.type ?? null);
  return type === null ? null : (state.feederTypes.get(type) ?? null);
}

/** The lengths that count for a feeder on a line: its own before its type's before the line's. `feeder` null: the line's alone. */
export function tapeLengthsOf(state: FloorState, line: string, feeder: string | null): TapeLengths {
  const own = feeder === null ? null : (state.typed.get(feeder) ?? null);
  const type = typeOf(state, feeder);
  const rules = state.rules.get(line);
  const tape = state.tapeRules.get(line);
  const ofLine = {
    hubToPickMm: rules?.hubToPickMm ?? null,
    intakeToPickMm: rules?.intakeToPickMm ?? null,
    trailerMm: tape?.trailerMm ?? null,
    leaderMm: tape?.leaderMm ?? null,
  };
  const pick = (name: TapeLengthName) => {
    if (own !== null && own[name] !== null) return { mm: own[name], of: 'feeder' as const };
    if (type !== null && type[name] !== null) return { mm: type[name], of: 'type' as const };
    return ofLine[name] === null ? null : { mm: ofLine[name], of: 'line' as const };
  };
  return {
    hubToPickMm: pick('hubToPickMm'),
    intakeToPickMm: pick('intakeToPickMm'),
    trailerMm: pick('trailerMm'),
    leaderMm: pick('leaderMm'),
  };
}

/** The three lengths that a splice window needs, mm. */
export interface WindowLengths {
  readonly hubToPickMm: number;
  readonly intakeToPickMm: number;
  readonly trailerMm: number;
}

/** What a splice window needs; null where one of the three is not known, or the intake would lie behind the hub. */
export function windowLengthsOf(
  state: FloorState,
  line: string,
  feeder: string | null,
): WindowLengths | null {
  const { hubToPickMm: hub, intakeToPickMm: intake, trailerMm: trailer } = tapeLengthsOf(state, line, feeder);
  if (hub === null || intake === null || trailer === null || hub.mm < intake.mm) return null;
  return { hubToPickMm: hub.mm, intakeToPickMm: intake.mm, trailerMm: trailer.mm };
}
