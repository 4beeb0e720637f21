// The floor life of a reel that the log knows: its part's level and body from the setups, its label's level, its stays so far.

import { isLimited } from '../floor/airing.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import type { FloorState } from '../floor/state.ts';
import { type FloorLife, floorLife } from './floor-life.ts';
import { type MoistureLevel, moistureLevels } from './levels.ts';
import { lineClimate } from './line-climate.ts';

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

/**
 * The floor life of a reel at a moment (ms since 1970); null where neither its label nor `part` states a level that limits it.
 * `label`: the level on the label in hand, where the log does not know it yet. A reel without stays was opened at `openedMs` at the
 * latest (it stands on a slot since then); without that too it has its whole life.
 */
export function reelLife(
  state: FloorState,
  reel: string | null,
  more: {
    /** The line whose floor's climate counts, null where there is none. */
    readonly line: string | null;
    readonly part: PartMoistureKnown | null;
    readonly label?: string | null;
    readonly openedMs?: number;
    readonly nowMs: number;
  },
): ReelLife | null {
  const { part, nowMs } = more;
  const airing = reel === null ? undefined : state.airings.get(reel);
  const level = worstLevel([part?.level, airing?.msl, more.label]);
  if (level === null) return null;
  const stays = (airing?.stays ?? []).filter((stay) => stay.fromMs <= nowMs);
  const answer = floorLife({
    ...{ level, nowMs, thicknessMm: part?.bodyMm ?? null, climate: lineClimate(state, more.line).reckoned },
    openedMs: Math.min(stays[0]?.fromMs ?? more.openedMs ?? nowMs, nowMs),
    history: stays.map(({ air, fromMs, celsius, humidity }, at) => ({
      ...{ where: air, fromMs, celsius, humidity, toMs: stays[at + 1]?.fromMs ?? null },
    })),
  });
  return answer.ok
    ? { ...answer.value, level, isOpened: stays.length > 0 || more.openedMs !== undefined }
    : null;
}
