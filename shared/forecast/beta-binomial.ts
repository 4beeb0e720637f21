// How many of n picks are lost? The binomial law where the loss is known, the beta-binomial where it is learnt.
// Method: the probability of one value from log-gamma, its neighbours by the ratio of neighbouring terms, summed upwards from
// eight deviations below the mean: exact to rounding. A normal curve was refused where n·p is small: it is lopsided there.

/** Stirling's series for log Γ, terms of Abramowitz & Stegun 6.1.41; small x is lifted by Γ(x+1) = x Γ(x) (6.1.15). */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188] as const;

/** Natural logarithm of the gamma function for x > 0; relative error below 1e-13. */
export function logGamma(x: number): number {
  let shift = 0;
  let y = x;
  let product = 1;
  while (y < 10) {
    product *= y;
    y += 1;
  }
  if (product !== 1) shift = Math.log(product);
  const inverse = 1 / y;
  const square = inverse * inverse;
  let series = 0;
  for (let i = STIRLING.length - 1; i >= 0; i--) series = series * square + STIRLING[i]!;
  return (y - 0.5) * Math.log(y) - y + 0.9189385332046727 + series * inverse - shift; // 0.5 ln 2π
}

/**
 * Losses among `picks` picks. `loss`: mean probability, 0..1. `strength`: the α+β of a Beta law with that mean
 * (α = loss · strength), or Infinity where the loss is known.
 */
export interface LossLaw {
  readonly picks: number;
  readonly loss: number;
  readonly strength: number;
}

/** Mean, variance and third central moment of the number lost (Johnson, Kemp & Kotz, Univariate Discrete Distributions, §3.2, §6.2.2). */
export function lossMoments(law: LossLaw): {
  readonly mean: number;
  readonly variance: number;
  readonly third: number;
} {
  const { picks: n, loss: p, strength: s } = law;
  const q = 1 - p;
  const binomial = n * p * q;
  if (s === Infinity) return { mean: n * p, variance: binomial, third: binomial * (q - p) };
  const spread = (s + n) / (s + 1);
  const third = (binomial * (q - p) * spread * (s + 2 * n)) / (s + 2);
  return { mean: n * p, variance: binomial * spread, third };
}

function logProbability(law: LossLaw, lost: number): number {
  const { picks: n, loss: p, strength: s } = law;
  const ways = logGamma(n + 1) - logGamma(lost + 1) - logGamma(n - lost + 1);
  if (s === Infinity) return ways + lost * Math.log(p) + (n - lost) * Math.log1p(-p);
  const a = p * s;
  const b = s - a;
  return (
    ways +
    logGamma(lost + a) +
    logGamma(n - lost + b) -
    logGamma(n + s) +
    logGamma(s) -
    logGamma(a) -
    logGamma(b)
  );
}

/** Where summing starts: nothing that matters lies more than eight deviations below the mean. */
function firstWorthSumming(law: LossLaw): number {
  const { mean, variance } = lossMoments(law);
  return Math.max(0, Math.floor(mean - 8 * Math.sqrt(variance) - 8));
}

/** True where the number lost is certain: no pick, no loss, or all lost. */
export function isCertain(law: LossLaw): boolean {
  return law.picks === 0 || law.loss === 0 || law.loss === 1;
}

/** A loss learnt from more picks than this is taken as known: the law's spread differs by less than a millionth part, and log Γ would cancel. */
const AS_KNOWN = 1e8;
/** Beyond the mean, terms smaller than this change no answer. */
const NEGLIGIBLE = 1e-18;

/**
 * Calls `visit(lost, probability)` for every number lost that matters, rising, until `visit` returns false.
 * `picks` must be whole. Cost: about sixteen deviations of the law.
 */
export function visitLosses(asked: LossLaw, visit: (lost: number, probability: number) => boolean): void {
  visitLossSteps(asked, 1, visit);
}

/**
 * The same by steps of `step` numbers lost: calls `visit(mean, probability, last)` with the mean number lost within a step, how likely
 * the step is, and its largest number. The last step may be shorter.
 */
export function visitLossSteps(
  asked: LossLaw,
  step: number,
  visit: (mean: number, probability: number, last: number) => boolean,
): void {
  const law = asked.strength > AS_KNOWN ? { ...asked, strength: Infinity } : asked;
  const { picks, loss, strength } = law;
  if (isCertain(law)) {
    const lost = loss === 1 ? picks : 0;
    visit(lost, 1, lost);
    return;
  }
  const isKnown = strength === Infinity;
  const odds = loss / (1 - loss);
  const a = loss * strength;
  const b = (1 - loss) * strength;
  const mean = picks * loss;
  let lost = firstWorthSumming(law);
  let probability = Math.exp(logProbability(law, lost));
  while (lost <= picks && (probability > NEGLIGIBLE || lost <= mean)) {
    const first = lost;
    const end = Math.min(picks + 1, lost + step);
    let share = 0;
    let weighted = 0;
    for (; lost < end; lost++) {
      share += probability;
      weighted += probability * (lost - first);
      const left = picks - lost;
      // The next term over this one: (n-k) p / ((k+1) q), or (n-k)(k+a) / ((k+1)(n-k-1+b)) where the loss is learnt.
      probability *= isKnown
        ? (left * odds) / (lost + 1)
        : (left * (lost + a)) / ((lost + 1) * (left - 1 + b));
    }
    if (!visit(share > 0 ? first + weighted / share : first, share, lost - 1)) return;
  }
}

/** Probability that at most `lost` of the picks are lost. */
export function probabilityLostAtMost(law: LossLaw, lost: number): number {
  if (lost < 0) return 0;
  if (lost >= law.picks) return 1;
  let sum = 0;
  visitLosses(law, (at, probability) => {
    if (at > lost) return false;
    sum += probability;
    return true;
  });
  return Math.min(1, sum);
}

/**
 * The `share` point of placements (picks less losses): the smallest number k with P(placements <= k) >= share.
 * `shares` rising, each in 0..1; the answers come in the same order. One pass for all.
 */
export function placementPoints(law: LossLaw, shares: readonly number[]): number[] {
  // P(placements <= k) >= share  <=>  P(lost <= picks - k - 1) <= 1 - share: the largest such loss, one pass upwards.
  const points = new Array<number>(shares.length).fill(0);
  let open = shares.length - 1;
  let below = 0;
  visitLosses(law, (lost, probability) => {
    const upTo = below + probability;
    while (open >= 0 && upTo > 1 - shares[open]! + 1e-12) {
      points[open] = law.picks - lost;
      open -= 1;
    }
    below = upTo;
    return open >= 0;
  });
  return points;
}
