// The part of the state that says what packages are and how feeders stand while a job runs. Shapes and their empty state.

import type { PayloadOf } from './kinds.ts';
import type { Tape } from './state.ts';

/** What a package is, as it was last told. */
export type Pack = Readonly<Pick<PayloadOf<'reel.packed'>, 'comesIn' | 'tray' | 'tube'>>;
/** What stands ready on a feeder, and when it was put there. */
export type ReadyFeeder = Readonly<PayloadOf<'feeder.readied'>> & { readonly atMs: number };

/** What a feeder placed on slots that it left. `ended`: the last ledgers counted in, for taking one back. */
export interface FeederWork {
  readonly placed: number;
  readonly ended: readonly (readonly [chain: string, placed: number])[];
  /** When it was last seen to; null where nobody said. */
  readonly caredMs: number | null;
  /** What ledgers that still run had placed when it was seen to. */
  readonly before: readonly (readonly [chain: string, placed: number])[];
}

/** Packages and feeders as the log says. */
export interface FeederState {
  /** Package -> what it is; tape that nobody told of is absent. */
  readonly packs: Map<string, Pack>;
  /** `bulkKey` -> what may still lie loose in a feeder that is off its slot: it was not emptied out. */
  readonly loose: Map<string, readonly Tape[]>;
  /** Feeder -> what stands ready on it, away from the line. */
  readonly ready: Map<string, ReadyFeeder>;
  /** Feeder -> why it must not be used, and since when. */
  readonly setAside: Map<string, { readonly reason: string; readonly atMs: number }>;
  /** Entry -> the move that it told, while one of its slots is as that left it: for taking it back. */
  readonly moves: Map<string, { readonly line: string; readonly from: string; readonly to: string }>;
  /** Feeder -> what it placed before what stands on it now. */
  readonly work: Map<string, FeederWork>;
  /** Type of feeder (empty: every other) -> placements after which it is due for care. */
  readonly careRules: Map<string, number>;
}

/** Before any entry. */
export function emptyFeeders(): FeederState {
  return {
    packs: new Map(),
    loose: new Map(),
    ready: new Map(),
    setAside: new Map(),
    moves: new Map(),
    work: new Map(),
    careRules: new Map(),
  };
}
