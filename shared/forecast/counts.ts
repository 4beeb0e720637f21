// How many parts are on a reel, how far may that be off, and how is it known?
// Method: each way of counting gives parts, a standard deviation by the first-order law of error propagation (the GUM,
// JCGM 100:2008, eq. 10) and its basis; independent counts are joined by inverse variance. A bare number was refused: without
// its spread nobody can tell a difference from a contradiction.

import type { CountBasis } from '../floor/vocabulary.ts';

/** Parts on a reel with one standard deviation, both in parts, not rounded. */
export interface Count {
  readonly parts: number;
  readonly sd: number;
  readonly basis: CountBasis;
}

/** A count from wound tape also tells the thickness of one layer. */
export interface TapeCount extends Count {
  readonly thicknessMm: number;
}

function rootOfSquares(terms: readonly number[]): number {
  return Math.hypot(...terms);
}

/**
 * The quantity that a label states. `sdShare`: one deviation as a share of the quantity; 0 takes the label at its word.
 * A site sets it from its own checks: no standard gives a figure.
 */
export function countFromLabel(quantity: number, sdShare: number): Count {
  return { parts: quantity, sd: quantity * sdShare, basis: 'label' };
}

/** What a counter or a machine counted, with the deviation that its maker or a check gives, in parts. */
export function countFromMachine(parts: number, sd: number): Count {
  return { parts, sd, basis: 'machine' };
}

/** Length of wound tape, mm: π (D² − d²) / (4 t), the area of the winding over the thickness of one layer. */
export function woundLengthMm(winding: {
  readonly outerMm: number;
  readonly hubMm: number;
  readonly thicknessMm: number;
}): number {
  return (Math.PI * (winding.outerMm ** 2 - winding.hubMm ** 2)) / (4 * winding.thicknessMm);
}

/** Outer diameter of a winding of `lengthMm`, mm: the length's formula turned round. 12 m at 1.71 mm on 60 mm give 172.4 mm. */
export function woundOuterMm(winding: {
  readonly lengthMm: number;
  readonly hubMm: number;
  readonly thicknessMm: number;
}): number {
  return Math.sqrt(winding.hubMm ** 2 + (4 * winding.thicknessMm * winding.lengthMm) / Math.PI);
}

/** Wound tape measured. Diameters in mm, `outerMm` of the wound tape (not the flange), at least `hubMm`; deviations default 0. */
export interface TapeMeasure {
  readonly outerMm: number;
  readonly hubMm: number;
  readonly thicknessMm: number;
  readonly pitchMm: number;
  readonly sdOuterMm?: number;
  readonly sdHubMm?: number;
  readonly sdThicknessMm?: number;
  readonly sdPitchMm?: number;
}

/**
 * Parts by wound tape: length over pitch. Example: 120 mm on 60 mm, 0.95 mm thick, pitch 4 mm give 2232; 1 mm more outside
 * is about 50 parts. Use the wound diameter: the flange's would overstate (178 for 137 mm: by 84 %).
 */
export function countFromTape(measure: TapeMeasure): TapeCount {
  const { outerMm, hubMm, thicknessMm, pitchMm } = measure;
  const parts = woundLengthMm(measure) / pitchMm;
  const perMm = Math.PI / (2 * thicknessMm * pitchMm);
  const sd = rootOfSquares([
    perMm * outerMm * (measure.sdOuterMm ?? 0),
    perMm * hubMm * (measure.sdHubMm ?? 0),
    (parts / thicknessMm) * (measure.sdThicknessMm ?? 0),
    (parts / pitchMm) * (measure.sdPitchMm ?? 0),
  ]);
  return { parts, sd, basis: 'measured', thicknessMm };
}

/** Wound tape measured against a full reel of known count with the same hub. Lengths in mm; deviations default 0. */
export interface CalibratedTapeMeasure {
  readonly outerMm: number;
  readonly hubMm: number;
  readonly pitchMm: number;
  readonly full: {
    readonly outerMm: number;
    readonly parts: number;
    readonly sdOuterMm?: number;
    readonly sdParts?: number;
  };
  readonly sdOuterMm?: number;
  readonly sdHubMm?: number;
}

/**
 * Parts by wound tape with the thickness learnt from one full reel: N = N_full (D² − d²) / (D_full² − d²),
 * t = π (D_full² − d²) / (4 N_full · pitch). `full.outerMm` must exceed `hubMm`.
 */
export function countFromCalibratedTape(measure: CalibratedTapeMeasure): TapeCount {
  const { outerMm, hubMm, pitchMm, full } = measure;
  const fullArea = full.outerMm ** 2 - hubMm ** 2;
  const parts = full.parts * ((outerMm ** 2 - hubMm ** 2) / fullArea);
  const sd = rootOfSquares([
    ((2 * full.parts * outerMm) / fullArea) * (measure.sdOuterMm ?? 0),
    ((2 * parts * full.outerMm) / fullArea) * (full.sdOuterMm ?? 0),
    ((2 * hubMm * (full.parts - parts)) / fullArea) * (measure.sdHubMm ?? 0),
    (parts / full.parts) * (full.sdParts ?? 0),
  ]);
  const thicknessMm = (Math.PI * fullArea) / (4 * full.parts * pitchMm);
  return { parts, sd, basis: 'measured', thicknessMm };
}

/** A reel weighed against a full one and an empty one. Masses in g; deviations default 0. */
export interface WeightMeasure {
  readonly massG: number;
  readonly emptyG: number;
  readonly full: {
    readonly massG: number;
    readonly parts: number;
    readonly sdMassG?: number;
    readonly sdParts?: number;
  };
  readonly sdMassG?: number;
  readonly sdEmptyG?: number;
}

/** Parts by weight: N = N_full (m − m_empty) / (m_full − m_empty). `full.massG` must exceed `emptyG`. */
export function countFromWeight(measure: WeightMeasure): Count {
  const { massG, emptyG, full } = measure;
  const net = full.massG - emptyG;
  const parts = full.parts * ((massG - emptyG) / net);
  const sd = rootOfSquares([
    (full.parts / net) * (measure.sdMassG ?? 0),
    ((full.parts - parts) / net) * (measure.sdEmptyG ?? 0),
    (parts / net) * (full.sdMassG ?? 0),
    (parts / full.parts) * (full.sdParts ?? 0),
  ]);
  return { parts, sd, basis: 'weighed' };
}

/** A count carried on by what has been placed since. `shortBy`: parts that were placed beyond the count, 0 where it held. */
export interface RunningCount extends Count {
  readonly shortBy: number;
}

/**
 * Takes `placements` made since `count` off it. Each placement costs 1/(1-p) picks on average, with the spread of the negative
 * binomial law (losses before the K-th success: variance K p/(1-p)²) and, for a learnt loss, of the loss itself.
 * `lossStrength`: α+β of the Beta law, absent where the loss is known. Loss must be below 1.
 */
export function countDown(
  count: Count,
  used: { readonly placements: number; readonly loss: number; readonly lossStrength?: number },
): RunningCount {
  const { placements, loss } = used;
  if (placements === 0) return { ...count, shortBy: 0 };
  const kept = 1 - loss;
  const left = count.parts - placements / kept;
  const lossVariance = used.lossStrength === undefined ? 0 : (loss * kept) / (used.lossStrength + 1);
  const variance =
    count.sd ** 2 + (placements * loss) / kept ** 2 + (placements / kept ** 2) ** 2 * lossVariance;
  return {
    parts: Math.max(0, left),
    sd: Math.sqrt(variance),
    basis: 'counted-down',
    shortBy: Math.max(0, -left),
  };
}

/** Two counts contradict where they differ by more than this many deviations of their difference (1 in 370 by chance). */
export const CONTRADICTION_DEVIATIONS = 3;

/** True where two independent counts differ by more than chance explains; two certain counts, where they differ at all. */
export function contradicts(a: Count, b: Count): boolean {
  return Math.abs(a.parts - b.parts) > CONTRADICTION_DEVIATIONS * Math.hypot(a.sd, b.sd) + 1e-9;
}

/** Several counts made one. `contradictions`: pairs of places in `from` that do not agree. */
export interface CombinedCount extends Count {
  readonly from: readonly Count[];
  readonly contradictions: readonly (readonly [number, number])[];
}

/**
 * Joins independent counts of one reel by inverse variance: the mean weighted by 1/sd², its variance 1/Σ(1/sd²).
 * Certain counts (sd 0) outweigh all others. Counts that stem from one another (a label and what was counted down from it) are not
 * independent: give the newer only. Contradictions are named, not settled: a person decides. Null for no count.
 */
export function combineCounts(counts: readonly Count[]): CombinedCount | null {
  if (counts.length === 0) return null;
  const contradictions: (readonly [number, number])[] = [];
  counts.forEach((a, i) => {
    for (let k = i + 1; k < counts.length; k++) if (contradicts(a, counts[k]!)) contradictions.push([i, k]);
  });
  const certain = counts.filter((count) => count.sd === 0);
  const used = certain.length > 0 ? certain : counts;
  const weights = used.map((count) => (certain.length > 0 ? 1 : 1 / count.sd ** 2));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const parts = used.reduce((sum, count, i) => sum + count.parts * weights[i]!, 0) / total;
  return {
    parts,
    sd: certain.length > 0 ? 0 : Math.sqrt(1 / total),
    basis: counts.length === 1 ? counts[0]!.basis : 'combined',
    from: counts,
    contradictions,
  };
}
