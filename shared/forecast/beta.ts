// How sure is a learnt probability? The Beta law's share below a value, and its points.
// Method: the incomplete beta function by its continued fraction (Abramowitz & Stegun 26.5.8), points by bisection.

import { logGamma } from './beta-binomial.ts';

function continuedFraction(x: number, a: number, b: number): number {
  // Lentz's method for the even and odd terms of A&S 26.5.8.
  const tiny = 1e-300;
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (Math.abs(d) < tiny ? tiny : d);
  let value = d;
  for (let m = 1; m <= 10_000; m++) {
    let factor = 1;
    for (const term of [
      (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)),
      (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)),
    ]) {
      d = 1 + term * d;
      d = 1 / (Math.abs(d) < tiny ? tiny : d);
      c = 1 + term / c;
      if (Math.abs(c) < tiny) c = tiny;
      factor = c * d;
      value *= factor;
    }
    if (Math.abs(factor - 1) < 1e-15) break;
  }
  return value;
}

/** Probability that a Beta(a, b) value is at most x; a, b above 0. Absolute error about 1e-13. */
export function betaBelow(x: number, law: { readonly a: number; readonly b: number }): number {
  const { a, b } = law;
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  if (x < (a + 1) / (a + b + 2)) return (front * continuedFraction(x, a, b)) / a;
  return 1 - (front * continuedFraction(1 - x, b, a)) / b;
}

/** The x below which a Beta(a, b) value lies with probability `share`, 0 < share < 1. */
export function betaPoint(share: number, law: { readonly a: number; readonly b: number }): number {
  let low = 0;
  let high = 1;
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = (low + high) / 2;
    if (betaBelow(middle, law) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
