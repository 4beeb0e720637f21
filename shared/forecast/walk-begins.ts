// When may a walk begin so that nothing is lost by trying no other moment?
// Method: every splice in turn stands exactly where it first may, behind as many others as can be served before it. Trying every such place
// was refused: with long windows most of them lie behind more splices than are ready, or fewer than must come first.

/** Times closer than this are equal, ms. */
export const SAME_MS = 1e-6;

/** True where the bit of `job` is set. */
export function isHandled(handled: Uint32Array, job: number): boolean {
  return ((handled[job >>> 5]! >>> (job & 31)) & 1) === 1;
}

/** What a half-plan leaves to do, in order of `due`. */
export interface OpenJobs {
  readonly jobs: Int32Array;
  readonly ready: Float64Array;
  readonly due: Float64Array;
  /** Smallest `ready` from here on. */
  readonly readyFrom: Float64Array;
}

/** Takes from the axis what `plan` leaves to do. */
export function openJobs(
  axis: { readonly ready: Float64Array; readonly due: Float64Array },
  plan: { readonly handled: Uint32Array; readonly first: number },
): OpenJobs {
  const jobs: number[] = [];
  for (let job = plan.first; job < axis.due.length; job++) {
    if (!isHandled(plan.handled, job)) jobs.push(job);
  }
  const ready = Float64Array.from(jobs, (job) => axis.ready[job]!);
  const readyFrom = ready.slice();
  for (let i = jobs.length - 2; i >= 0; i--) readyFrom[i] = Math.min(readyFrom[i]!, readyFrom[i + 1]!);
  return {
    jobs: Int32Array.from(jobs),
    ready,
    due: Float64Array.from(jobs, (job) => axis.due[job]!),
    readyFrom,
  };
}

/** A begin to try. `places`: the last place at which the splice that it was made for would stand. */
export interface Try {
  readonly begin: number;
  places: number;
}

/**
 * How many splices may stand before splice `i` where it stands as soon as it may: at least those that would be served first if they
 * still waited, at most those that may stand earlier.
 */
function placesBefore(open: OpenJobs, i: number, eachMs: number): { least: number; most: number } {
  const at = open.ready[i]!;
  let least = 0;
  let most = 0;
  for (let k = 0; k < open.ready.length; k++) {
    if (k < i && open.ready[k]! <= at && open.due[k]! >= at) least += 1;
    if (k !== i && open.ready[k]! <= at - eachMs + 2 * SAME_MS) most += 1;
  }
  return { least, most };
}

/**
 * Begins worth trying: at once, or so that some splice stands exactly where it may first stand, with 0, 1, 2, … others before it
 * (any other begin can be moved until one of these holds, and nothing is lost). Rising; those closer than SAME_MS are one. All in ms on the search's axis.
 */
export function begins(open: OpenJobs, limits: { free: number; eachMs: number; last: number }): Try[] {
  const { free, eachMs, last } = limits;
  const tries: Try[] = [{ begin: free, places: 0 }];
  for (let i = 0; i < open.ready.length; i++) {
    const ready = open.ready[i]!;
    if (ready <= free) continue;
    if (eachMs === 0) {
      if (ready <= last + SAME_MS) tries.push({ begin: ready, places: Infinity });
      continue;
    }
    const { least, most } = placesBefore(open, i, eachMs);
    const skipped = Math.max(least, Math.ceil((ready - last - SAME_MS) / eachMs));
    for (let before = skipped; before <= most; before++) {
      const begin = ready - before * eachMs;
      if (begin <= free + SAME_MS) break;
      if (begin <= last + SAME_MS) tries.push({ begin, places: before });
    }
  }
  tries.sort((a, b) => a.begin - b.begin);
  const kept: Try[] = [];
  let before = Number.NEGATIVE_INFINITY;
  for (const one of tries) {
    if (one.begin - before > SAME_MS) kept.push(one);
    else kept.at(-1)!.places = Math.max(kept.at(-1)!.places, one.places);
    before = one.begin;
  }
  return kept;
}
