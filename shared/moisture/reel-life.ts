// The floor life of a reel that the log knows: its part's level and body from the setups, its label's level, its stays so far.

import { type Airing, type BakeApproval, isLimited, type Stay } from '../floor/airing.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import type { FloorState } from '../floor/state.ts';
import { type FloorLife, floorLife, type ShortBake } from './floor-life.ts';
import { type MoistureLevel, moistureLevels } from './levels.ts';
import { lineClimate } from './line-climate.ts';
import type { Stretch } from './timeline.ts';

/** What a part's floor life hangs on. */
export interface PartMoistureKnown {
  readonly level: MoistureLevel;
  /** Body thickness in mm, null where nobody stated it. */
  readonly bodyMm: number | null;
}

/** A reel's floor life, with what it rests on. */
export interface ReelLife extends FloorLife {
  readonly level: MoistureLevel;
  /** False where nobody told that its bag was opened: all of the life is left. */
  readonly isOpened: boolean;
}

/** The worst of some stated levels; null where none is stated, or none that limits the time. */
function worstLevel(stated: readonly (string | null | undefined)[]): MoistureLevel | null {
  const ranks = stated.map((text) => (moistureLevels as readonly string[]).indexOf(text ?? ''));
  const worst = Math.max(...ranks, 0);
  return worst > 0 ? (moistureLevels[worst] ?? null) : null;
}

/** What a slot of a setup says of its part, null where it states no limit. */
export function moistureOfSlot(slot: Pick<SetupSlot, 'msl' | 'bodyMm'> | null): PartMoistureKnown | null {
  const level = worstLevel([slot?.msl]);
  return level === null ? null : { level, bodyMm: slot?.bodyMm ?? null };
}

/** What all setups say of their parts: the worst level and, of that, the thinnest body stated. Alternates count as the part. Cost: one walk. */
export function moistureOfParts(state: FloorState): ReadonlyMap<string, PartMoistureKnown> {
  const found = new Map<string, PartMoistureKnown>();
  for (const setup of state.setups.values()) {
    for (const slot of setup.slots) {
      const known = isLimited(slot.msl) ? moistureOfSlot(slot) : null;
      if (known === null) continue;
      for (const part of [slot.part, ...slot.alternates]) found.set(part, worse(found.get(part), known));
    }
  }
  return found;
}

function worse(a: PartMoistureKnown | undefined, b: PartMoistureKnown): PartMoistureKnown {
  if (!a) return b;
  const bodies = [a.bodyMm, b.bodyMm].filter((mm) => mm !== null);
  return {
    level: worstLevel([a.level, b.level]) ?? b.level,
    bodyMm: bodies.length === 0 ? null : Math.min(...bodies),
  };
}

const HOUR_MS = 3_600_000;
/** Half a minute: what rounding in an entry takes off a bake is not a shorter bake. */
const ROUNDED_MS = 30_000;

/** A stay as the reckoning takes it. `toMs`: its end, null while it lasts. */
function stretchOf({ air, fromMs, celsius, humidity, approved }: Stay, toMs: number | null): Stretch {
  const stretch = { where: air, fromMs, toMs, celsius, humidity };
  if (approved === undefined || toMs === null) return stretch;
  return { ...stretch, isApproved: toMs - fromMs >= approved.hours * HOUR_MS - ROUNDED_MS };
}

/** A bake that gave no floor life back, as a lead is asked about it. */
export interface OpenBake extends ShortBake {
  /** The entry that put the reel into the oven. */
  readonly of: string;
}

/** The reel's newest bake where it was too short and no lead let it count; null else. `life`: what `reelLife` answers for `nowMs`. */
export function openBake(airing: Airing | undefined, life: ReelLife | null, nowMs: number): OpenBake | null {
  const bake = lastBake(airing, nowMs);
  return bake === null || !life?.shortBake ? null : { ...life.shortBake, of: bake.entry };
}

/** The lead's word by which the reel's newest bake counts; null where there is none, or none that holds. Arguments as for `openBake`. */
export function bakeLet(
  airing: Airing | undefined,
  life: ReelLife | null,
  nowMs: number,
): BakeApproval | null {
  return life === null || life.shortBake !== null ? null : (lastBake(airing, nowMs)?.approved ?? null);
}

/** The newest bake that has ended; one that lasts still, or is told for later, was not found short yet. */
function lastBake(airing: Airing | undefined, nowMs: number): Stay | null {
  const stays = airing?.stays ?? [];
  const endOf = (at: number) => stays[at + 1]?.fromMs ?? Number.POSITIVE_INFINITY;
  return stays.filter(({ air }, at) => air === 'bake' && endOf(at) <= nowMs).at(-1) ?? null;
}

/** What a reel's floor life is asked with. */
export interface LifeAsked {
  /** The line whose floor's climate counts, null where there is none. */
  readonly line: string | null;
  readonly part: PartMoistureKnown | null;
  readonly label?: string | null;
  readonly openedMs?: number;
  readonly nowMs: number;
}

/**
 * The floor life of a reel at a moment (ms since 1970); null where neither its label nor `part` states a level that limits it.
 * `label`: the level on the label in hand, where the log does not know it yet. A reel without stays was opened at `openedMs` at the
 * latest (it stands on a slot since then); without that too it has its whole life.
 */
export function reelLife(state: FloorState, reel: string | null, more: LifeAsked): ReelLife | null {
  const { part, nowMs } = more;
  const airing = reel === null ? undefined : state.airings.get(reel);
  const level = worstLevel([part?.level, airing?.msl, more.label]);
  if (level === null) return null;
  const stays = (airing?.stays ?? []).filter((stay) => stay.fromMs <= nowMs);
  const answer = floorLife({
    ...{ level, nowMs, thicknessMm: part?.bodyMm ?? null, climate: lineClimate(state, more.line).reckoned },
    openedMs: Math.min(stays[0]?.fromMs ?? more.openedMs ?? nowMs, nowMs),
    history: stays.map((stay, at) => stretchOf(stay, stays[at + 1]?.fromMs ?? null)),
  });
  return answer.ok
    ? { ...answer.value, level, isOpened: stays.length > 0 || more.openedMs !== undefined }
    : null;
}
