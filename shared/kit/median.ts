// The middle of a list of numbers.

/** The median: the middle of the sorted values, the mean of the middle two where their number is even; null for none. */
export function median(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  return upper === undefined || lower === undefined ? null : (lower + upper) / 2;
}
