// What binary arithmetic leaves behind the figures that count.

/** A number to twelve figures, so that 9.95 - 0.05 is 9.9 and a full reel 4000, not 3999.9999999996. */
export function twelveFigures(value: number): number {
  return Number(value.toPrecision(12));
}
