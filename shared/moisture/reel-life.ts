// The floor life of a reel that the log knows: its part's level, body and package from the setups and the parts list, its label's level,
// its exposure so far, the plant's own values. What nobody stated counts as the worse; what setups state differently counts as not stated.

import { type BakeApproval, type Exposure, type ExposurePeriod, isLimited } from '../floor/exposure.ts';
import { isLongGone } from '../floor/gone-reels.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { MOISTURE_RULES, type MoistureRuling, type PartFacts } from '../floor/moisture-rules.ts';
import type { FloorState } from '../floor/state.ts';
import type { BakeTooShort } from './clock.ts';
import { type FloorLife, floorLife } from './floor-life.ts';
import { type MoistureLevel, moistureLevels } from './levels.ts';
import { lineClimate } from './line-climate.ts';
import { type PackageFacts, unknownPackage } from './package.ts';
import type { AirSpan } from './timeline.ts';

/** What a part's floor life hangs on. */
export interface PartMoistureKnown {
  /** Null where no setup and no list states one: a label may. */
  readonly level: MoistureLevel | null;
  /** Body thickness in mm, null where nobody stated it or setups differ. */
  readonly bodyMm: number | null;
  /** Absent: nothing is known of it. */
  readonly package?: PackageFacts;
}

/** A reel's floor life, with what it rests on. */
export interface ReelLife extends FloorLife {
  readonly level: MoistureLevel;
  /** False where nobody told that its bag was opened: all of the life is left. */
  readonly isOpened: boolean;
  /** What is known of its part's package. */
  readonly package: PackageFacts;
  /** True for level 6 while nobody entered the time on its label. */
  readonly wantsLabelTime: boolean;
  /** When it ends, or when it was over at the latest where nobody knows when it was; null while the clock stands still or has no limit. */
  readonly endsByMs: number | null;
}

/** The plant's own values of the moisture standard; null where it entered none. */
export function moistureRuling(state: Pick<FloorState, 'moisture'>): MoistureRuling | null {
  return state.moisture.get(MOISTURE_RULES) ?? null;
}

/** The worst of some stated levels; null where none is stated, or none that limits the time. */
function worstLevel(stated: readonly (string | null | undefined)[]): MoistureLevel | null {
  const ranks = stated.map((text) => (moistureLevels as readonly string[]).indexOf(text ?? ''));
  const worst = Math.max(...ranks, 0);
  return worst > 0 ? (moistureLevels[worst] ?? null) : null;
}

/** A part's package as it was described; all unknown where nobody did. */
export function packageOf(facts: PartFacts | undefined): PackageFacts {
  if (!facts) return unknownPackage;
  const { family, pins, bodyXMm, bodyYMm, isStacked } = facts;
  return {
    family,
    pins,
    isStacked,
    bodyMm: bodyXMm === null || bodyYMm === null ? null : [bodyXMm, bodyYMm],
  };
}

/** What a part is known by: what a setup's slot states of it, and what the parts list says, whose thickness comes first. */
function knownOf(
  state: Pick<FloorState, 'parts'>,
  part: string,
  slot: Pick<SetupSlot, 'msl' | 'bodyMm'>,
): PartMoistureKnown {
  const facts = state.parts.get(part);
  return {
    level: worstLevel([slot.msl, facts?.msl]),
    bodyMm: facts?.bodyMm ?? slot.bodyMm ?? null,
    package: packageOf(facts),
  };
}

/**
 * What a slot of a setup and the parts list say of the part on it, null where there is no slot. `taken`: the site part of the reel, since an
 * alternate has a package of its own; null or empty where nobody knows: the slot's part. Its level may be stated on labels alone.
 */
export function moistureOfSlot(
  state: Pick<FloorState, 'parts'>,
  slot: Pick<SetupSlot, 'part' | 'msl' | 'bodyMm'> | null,
  taken: string | null,
): PartMoistureKnown | null {
  return slot === null ? null : knownOf(state, taken || slot.part, slot);
}

/**
 * What the parts list and all setups say of their parts: the worst level; a body that setups state differently counts as not known. Alternates
 * count as the part, but for their package. Cost: one walk.
 */
export function moistureOfParts(state: FloorState): ReadonlyMap<string, PartMoistureKnown> {
  const found = new Map<string, PartMoistureKnown>();
  const differing = new Set<string>();
  for (const part of state.parts.keys()) found.set(part, knownOf(state, part, {}));
  for (const setup of state.setups.values()) {
    for (const slot of setup.slots) {
      if (!isLimited(slot.msl)) continue;
      for (const part of [slot.part, ...slot.alternates]) {
        const known = knownOf(state, part, slot);
        const before = found.get(part);
        if (before && isOther(before.bodyMm, known.bodyMm)) differing.add(part);
        const bodyMm = differing.has(part) ? null : (before?.bodyMm ?? known.bodyMm);
        found.set(part, { ...known, level: worstLevel([before?.level, known.level]), bodyMm });
      }
    }
  }
  return found;
}

function isOther(a: number | null, b: number | null): boolean {
  return a !== null && b !== null && a !== b;
}

const HOUR_MS = 3_600_000;
/** Half a minute: what rounding in an entry takes off a bake is not a shorter bake. */
const ROUNDED_MS = 30_000;

/** A period as the computation takes it. `toMs`: its end, null while it lasts. */
function stretchOf(
  { air, fromMs, celsius, humidity, approved }: ExposurePeriod,
  toMs: number | null,
): AirSpan {
  const stretch = { where: air, fromMs, toMs, celsius, humidity };
  if (approved === undefined || toMs === null) return stretch;
  return { ...stretch, isApproved: toMs - fromMs >= approved.hours * HOUR_MS - ROUNDED_MS };
}

/** A bake that gave no floor life back, as a lead is asked about it. */
export interface OpenBake extends BakeTooShort {
  /** The entry that put the reel into the oven. */
  readonly of: string;
}

/** The reel's newest bake where it was too short and no lead let it count; null else. `life`: what `reelLife` answers for `nowMs`. */
export function openBake(
  exposure: Exposure | undefined,
  life: ReelLife | null,
  nowMs: number,
): OpenBake | null {
  const bake = lastBake(exposure, nowMs);
  return bake === null || !life?.shortBake ? null : { ...life.shortBake, of: bake.entry };
}

/** The lead's word by which the reel's newest bake counts; null where there is none, or none that holds. Arguments as for `openBake`. */
export function bakeLet(
  exposure: Exposure | undefined,
  life: ReelLife | null,
  nowMs: number,
): BakeApproval | null {
  return life === null || life.shortBake !== null ? null : (lastBake(exposure, nowMs)?.approved ?? null);
}

/** The newest bake that has ended; one that lasts still, or is told for later, was not found short yet. */
function lastBake(exposure: Exposure | undefined, nowMs: number): ExposurePeriod | null {
  const periods = exposure?.periods ?? [];
  const endOf = (at: number) => periods[at + 1]?.fromMs ?? Number.POSITIVE_INFINITY;
  return periods.filter(({ air }, at) => air === 'bake' && endOf(at) <= nowMs).at(-1) ?? null;
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
 * `label`: the level on the label in hand, where the log does not know it yet. A reel without any exposure was opened at `openedMs` at the
 * latest (it stands on a slot since then); without that too it has its whole life. How long one was out that was used up long ago nobody knows: it
 * counts as over, since nobody knows when, until it is baked.
 */
export function reelLife(state: FloorState, reel: string | null, more: LifeAsked): ReelLife | null {
  const { part, nowMs } = more;
  const exposure = reel === null ? undefined : state.exposures.get(reel);
  const level = worstLevel([part?.level, exposure?.msl, more.label]);
  if (level === null) return null;
  const periods = (exposure?.periods ?? []).filter((period) => period.fromMs <= nowMs);
  const ruling = moistureRuling(state);
  const labelHours = reel === null ? undefined : state.labelTimes.get(reel)?.hours;
  const facts = part?.package ?? unknownPackage;
  const isLost = reel !== null && isLongGone(state, reel);
  const firstMs = periods[0]?.fromMs ?? more.openedMs ?? nowMs;
  const lost = { where: 'floor', fromMs: 0, toMs: firstMs, celsius: null, humidity: null } as const;
  const answer = floorLife({
    level,
    nowMs,
    thicknessMm: part?.bodyMm ?? null,
    package: facts,
    climate: lineClimate(state, more.line).computed,
    own: ruling,
    cabinetPauses: ruling?.ruled.cabinetPauses ?? false,
    ...(labelHours === undefined ? {} : { timeOnLabelSeconds: labelHours * 3600 }),
    openedMs: isLost ? 0 : Math.min(firstMs, nowMs),
    history: [
      ...(isLost ? [lost] : []),
      ...periods.map((period, at) => stretchOf(period, periods[at + 1]?.fromMs ?? null)),
    ],
  });
  if (!answer.ok) return null;
  const { leftSeconds, expiresMs: endMs } = answer.value;
  // Where it was until then nobody knows; what has ended since a bake is known as of any other.
  const isEndLost = isLost && endMs !== null && endMs <= firstMs;
  return {
    ...answer.value,
    expiresMs: isEndLost ? null : endMs,
    endsByMs: isEndLost ? Math.min(firstMs, nowMs) : (endMs ?? (leftSeconds === 0 ? nowMs : null)),
    level,
    isOpened: isLost || periods.length > 0 || more.openedMs !== undefined,
    package: facts,
    wantsLabelTime: level === '6' && labelHours === undefined,
  };
}

/**
 * The first moment (ms since 1970) at which a reel's floor life was over, up to `nowMs`; null where it never was, as far as the log tells.
 * Asked at the end of each stay, since a bake after it hides that it had been over. Arguments as for `reelLife`.
 */
export function lifeEndedMs(state: FloorState, reel: string, more: LifeAsked): number | null {
  const periods = state.exposures.get(reel)?.periods ?? [];
  const ends = periods.slice(1).map((period) => period.fromMs);
  for (const nowMs of [...ends.filter((ms) => ms < more.nowMs), more.nowMs]) {
    const life = reelLife(state, reel, { ...more, nowMs });
    if (life !== null && life.leftSeconds === 0 && life.expiresMs !== null) return life.expiresMs;
  }
  return null;
}
