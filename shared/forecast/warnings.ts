// Should a slot's coming splice be spoken of now, and how loudly?
// Method: a fold with memory. A level rises as soon as its moment has come and falls only when that moment has moved away by a
// margin, so that a forecast that trembles does not make the lamp flicker; the memory is a plain value that outlives a reload.

import { compareLevels, type WarningLevel } from '../floor/vocabulary.ts';
import { OUTLAST_RISK } from './run-out.ts';

/** Why a level stands. */
export const warningReasons = [
  'run-ends-first',
  'far-off',
  'within-lead',
  'window-open',
  'past-closing',
  'held-level',
] as const;
export type WarningReason = (typeof warningReasons)[number];

/** What is remembered of one need between two looks. */
export interface WarningState {
  /** The need: slot and reel, such as `M1-F-014/R00017`; a new reel is a new need. */
  readonly need: string;
  readonly level: WarningLevel;
  readonly reason: WarningReason;
  /** Since when the level stands, ms since 1970. */
  readonly sinceMs: number;
  /** The loudest level that was already announced for this need. */
  readonly announced: WarningLevel;
}

/** What a look needs to know. */
export interface WarningLook {
  readonly nowMs: number;
  readonly need: string;
  /** When the window opens; without feeder lengths, the early run-out. Ms since 1970. */
  readonly opensMs: number;
  /** When the window closes; without feeder lengths, the expected run-out. Ms since 1970. */
  readonly closesMs: number;
  /** Probability that the reel runs out before the run ends (`forecastSlot().risk`). */
  readonly risk: number;
  /** How long before opening to speak: fetch, walk, prepare. The line's own setting, s. */
  readonly leadSeconds: number;
  /** How much before `opensMs` the window may open already (5 % point), s; default 0. The lead is computed from there. */
  readonly earlySeconds?: number;
  readonly previous: WarningState | null;
  /** How far a moment must move away before the level falls, s; default a quarter of the lead. */
  readonly marginSeconds?: number;
}

/** The level by the moments alone, all moments taken `laterMs` earlier. */
function levelAt(look: WarningLook, earlierMs: number, quietRisk: number): [WarningLevel, WarningReason] {
  if (look.risk < quietRisk) return ['quiet', 'run-ends-first'];
  const now = look.nowMs + earlierMs;
  if (now > look.closesMs) return ['late', 'past-closing'];
  if (now >= look.opensMs) return ['due', 'window-open'];
  if (now >= look.opensMs - (look.leadSeconds + (look.earlySeconds ?? 0)) * 1000)
    return ['soon', 'within-lead'];
  return ['quiet', 'far-off'];
}

/**
 * The warning for one need after one look. `announce` is true once for each level that a need reaches, never again after a fall
 * or a reload. A new need starts afresh. Levels fall only past the margin; a need that the run's end has made idle falls quiet
 * when its risk has dropped to half of what raises it.
 */
export function needWarning(look: WarningLook): WarningState & { readonly announce: boolean } {
  const previous = look.previous?.need === look.need ? look.previous : null;
  const [raw, rawReason] = levelAt(look, 0, OUTLAST_RISK);
  const before = previous?.level ?? 'quiet';
  let level = raw;
  let reason = rawReason;
  if (compareLevels(raw, before) < 0) {
    const marginMs = 1000 * (look.marginSeconds ?? look.leadSeconds / 4);
    const [held, heldReason] = levelAt(look, marginMs, OUTLAST_RISK / 2);
    if (compareLevels(held, before) >= 0) {
      level = before;
      reason = 'held-level';
    } else if (compareLevels(held, raw) > 0) {
      level = held;
      reason = heldReason;
    }
  }
  const announced = previous?.announced ?? 'quiet';
  const announce = compareLevels(level, announced) > 0;
  return {
    need: look.need,
    level,
    reason,
    sinceMs: previous !== null && previous.level === level ? previous.sinceMs : look.nowMs,
    announced: announce ? level : announced,
    announce,
  };
}
