// The normal curve and a correction for lopsided laws.
// Method: the curve's tail from a rational form near the middle and a continued fraction outside (Abramowitz & Stegun 26.2.14); a
// series was refused: a law that is smeared asks for thousands of tails. The point from a rational start (P. J. Acklam's coefficients, relative error 1.2e-9) sharpened by one Newton step.

const ROOT_TWO_PI = 2.5066282746310002;

/** Height of the standard normal curve at z. */
export function normalHeight(z: number): number {
  return Math.exp(-0.5 * z * z) / ROOT_TWO_PI;
}

/** Hart's rational form of the tail over the curve's height (Computer Approximations 1968, algorithm 5666, as G. West printed it in 2005). */
const TAIL_OVER_TOP = [
  0.0352624965998911, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871,
  221.213596169931, 220.206867912376,
] as const;
const TAIL_OVER_BOTTOM = [
  0.0883883476483184, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674, 637.333633378831,
  793.826512519948, 440.413735824752,
] as const;
/** Where Hart's form hands over to the continued fraction. */
const FRACTION_FROM = 7.07106781186547;

/** The tail beyond `size` over the curve's height there, size >= 0: with the height at hand, the cheapest way to the tail. */
export function tailOverHeight(size: number): number {
  if (size < FRACTION_FROM)
    return (ROOT_TWO_PI * polynomial(TAIL_OVER_TOP, size)) / polynomial(TAIL_OVER_BOTTOM, size);
  let fraction = size + 0.65;
  for (let i = 4; i >= 1; i--) fraction = size + i / fraction;
  return 1 / fraction;
}

/** Probability that a standard normal value is at most z; absolute error below 1e-14. */
export function normalBelow(z: number): number {
  const size = Math.abs(z);
  const tail = normalHeight(size) * tailOverHeight(size);
  return z < 0 ? tail : 1 - tail;
}

const CENTRE_TOP = [
  -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716,
  2.506628277459239,
] as const;
const CENTRE_BOTTOM = [
  -54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572, 1,
] as const;
const TAIL_TOP = [
  -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
] as const;
const TAIL_BOTTOM = [
  0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416, 1,
] as const;

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = 0; i < coefficients.length; i++) sum = sum * x + coefficients[i]!;
  return sum;
}

/** The z below which a standard normal value lies with probability `share`, 0 < share < 1. Example: 0.95 gives 1.6449. */
export function normalPoint(share: number): number {
  if (!(share > 0 && share < 1)) {
    throw new RangeError(`Cannot find point as share must lie between 0 and 1: current value is ${share}`);
  }
  if (share > 0.5) return -normalPoint(1 - share);
  let z: number;
  if (share < 0.02425) {
    const r = Math.sqrt(-2 * Math.log(share));
    z = polynomial(TAIL_TOP, r) / polynomial(TAIL_BOTTOM, r);
  } else {
    const q = share - 0.5;
    z = (q * polynomial(CENTRE_TOP, q * q)) / polynomial(CENTRE_BOTTOM, q * q);
  }
  return z - (normalBelow(z) - share) / normalHeight(z);
}

/** Mean, variance and third central moment of a quantity. */
export interface Moments {
  readonly mean: number;
  readonly variance: number;
  readonly third: number;
}

/** Skewness: third central moment over the cube of the deviation; 0 where there is no spread. */
export function skewness(moments: Moments): number {
  return moments.variance > 0 ? moments.third / moments.variance ** 1.5 : 0;
}

/**
 * The point below which the quantity lies with probability `share`, by the Cornish-Fisher expansion to the third moment
 * (Cornish & Fisher 1937; Abramowitz & Stegun 26.2.49). Good for a skewness up to about 0.5.
 */
export function momentsPoint(moments: Moments, share: number): number {
  if (moments.variance === 0) return moments.mean;
  const z = normalPoint(share);
  return moments.mean + Math.sqrt(moments.variance) * (z + ((z * z - 1) * skewness(moments)) / 6);
}

/** Probability that the quantity is at most x, by the Edgeworth expansion to the third moment (Abramowitz & Stegun 26.2.47). */
export function momentsBelow(moments: Moments, x: number): number {
  if (moments.variance === 0) return x >= moments.mean ? 1 : 0;
  const z = (x - moments.mean) / Math.sqrt(moments.variance);
  const share = normalBelow(z) - (normalHeight(z) * (z * z - 1) * skewness(moments)) / 6;
  return Math.min(1, Math.max(0, share));
}
