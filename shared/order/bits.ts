// Sets of jobs and parts as bits of whole numbers: how many are in one?
// Source: Warren, Hacker's Delight, 2nd ed. 2012, section 5-1.

/** Bits set in a word of 32. */
export function bitCount(word: number): number {
  let x = word - ((word >>> 1) & 0x55555555);
  x = (x & 0x33333333) + ((x >>> 2) & 0x33333333);
  return Math.imul((x + (x >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

/** Bits set in two words together; cheaper than one after the other. */
export function bitCountOfTwo(low: number, high: number): number {
  let x = low - ((low >>> 1) & 0x55555555);
  let y = high - ((high >>> 1) & 0x55555555);
  x = (x & 0x33333333) + ((x >>> 2) & 0x33333333);
  y = (y & 0x33333333) + ((y >>> 2) & 0x33333333);
  x += y;
  x = (x & 0x0f0f0f0f) + ((x >>> 4) & 0x0f0f0f0f);
  return Math.imul(x, 0x01010101) >>> 24;
}
