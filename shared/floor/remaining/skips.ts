// How many panels' worth of parts has a run taken, where boards of a panel were skipped? Private to the door `remaining.ts`.
// Method: boards entered as skipped take no parts; panels whose skips nobody entered are taken to skip the share that entered ones of the
// setup show (a Beta law; boards skipped independently of each other, our assumption, so that n boards vary by the binomial law).
// Refused: a share assumed where nobody ever entered one; then every board counts as built, and it is said that skips are not known.

import type { FloorState, Run, SkipsSeen } from '../state.ts';

/** Nothing entered yet. */
export const noSkips: SkipsSeen = { boards: 0, panels: 0 };

/** Boards on one panel of a setup; 1 where the setup does not say. */
export function boardsOf(state: FloorState, setup: string): number {
  return state.setups.get(setup)?.boardsPerPanel ?? 1;
}

/** The share of boards that a setup's panels skip, 0..1, with its own variance, and what it rests on. */
export interface SkipShare {
  readonly mean: number;
  readonly variance: number;
  /** Panels whose skipped boards somebody entered. */
  readonly panels: number;
}

/** The share that a setup's entered panels show (Beta law from 1/2, 1/2); null where a panel is one board or nobody entered any. */
export function skipShare(state: FloorState, setup: string): SkipShare | null {
  const boards = boardsOf(state, setup);
  const seen = state.skips.get(setup);
  if (boards <= 1 || seen === undefined || seen.panels <= 0) return null;
  const all = seen.panels * boards + 1;
  const mean = (seen.boards + 0.5) / all;
  return { mean, variance: (mean * (1 - mean)) / (all + 1), panels: seen.panels };
}

/**
 * What is not known of placements, because skips are not: `variance` adds up from stretch to stretch, `sd` is the share's own doubt and
 * adds up plainly; `unknown`: panels of several boards of which nobody ever entered a skip are in it.
 */
export interface PlacedDoubt {
  readonly variance: number;
  readonly sd: number;
  readonly unknown: boolean;
}

/** No doubt at all. */
export const noDoubt: PlacedDoubt = { variance: 0, sd: 0, unknown: false };

/** Two stretches' doubt together. */
export function addDoubt(one: PlacedDoubt, other: PlacedDoubt): PlacedDoubt {
  return {
    variance: one.variance + other.variance,
    sd: one.sd + other.sd,
    unknown: one.unknown || other.unknown,
  };
}

/** The doubt of the later of two moments that the earlier did not have. */
export function doubtSince(now: PlacedDoubt, then: PlacedDoubt): PlacedDoubt {
  return {
    variance: Math.max(0, now.variance - then.variance),
    sd: Math.max(0, now.sd - then.sd),
    unknown: now.unknown,
  };
}

/** Variance of placements that a doubt means. */
export function doubtVariance({ variance, sd }: PlacedDoubt): number {
  return variance + sd * sd;
}

/** Where a run's count stood, or a slot's figures were set. */
export interface CountMark {
  readonly done: number;
  readonly skips: SkipsSeen;
}

/** Whole panels' worth of boards built since a mark, with what is not known of it, both in panels; fractions where boards were skipped. */
export function panelsBuilt(
  state: FloorState,
  run: Pick<Run, 'setup' | 'done' | 'skips'>,
  since: CountMark,
): { readonly panels: number; readonly doubt: PlacedDoubt } {
  const panels = Math.max(0, run.done - since.done);
  const boards = boardsOf(state, run.setup);
  if (boards <= 1 || panels === 0) return { panels, doubt: noDoubt };
  const entered = Math.min(panels, Math.max(0, run.skips.panels - since.skips.panels));
  const skipped = Math.min(entered * boards, Math.max(0, run.skips.boards - since.skips.boards));
  const open = panels - entered;
  const share = skipShare(state, run.setup);
  const mean = share?.mean ?? 0;
  return {
    panels: panels - skipped / boards - open * mean,
    doubt: {
      variance: (open * mean * (1 - mean)) / boards,
      sd: open * Math.sqrt(share?.variance ?? 0),
      unknown: open > 0 && share === null,
    },
  };
}

/** What a slot gives on the panels to come. Placements. */
export interface Usage {
  /** Placements per panel, less the share of boards that are skipped. */
  readonly perPanel: number;
  /** One deviation of what so many panels take. */
  readonly sdOf: (panels: number) => number;
}

/** What panels to come take where each would take `perPanel` with all of its boards built. */
export function usageOf(state: FloorState, setup: string, perPanel: number): Usage {
  const share = skipShare(state, setup);
  if (share === null) return { perPanel, sdOf: () => 0 };
  const { mean, variance } = share;
  const ofOne = (mean * (1 - mean)) / boardsOf(state, setup);
  return {
    perPanel: perPanel * (1 - mean),
    sdOf: (panels) => perPanel * Math.sqrt(panels * ofOne + panels * panels * variance),
  };
}

/** Boards that a count says were skipped; null where it says nothing, or more than its panels have. `skipped`: how many, or which of one panel (from 1). */
export function boardsSkipped(
  said: { readonly add: number; readonly skipped?: number | readonly number[] | undefined },
  boards: number,
): number | null {
  const { add, skipped } = said;
  if (skipped === undefined || boards <= 1 || add <= 0) return null;
  if (typeof skipped === 'number') return skipped <= boards * add ? skipped : null;
  return add === 1 && skipped.every((board) => board <= boards) ? new Set(skipped).size : null;
}
