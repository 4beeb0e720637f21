// Which of the preferred number series of IEC 60063 a component value belongs to.
// Method: E3 to E24 are the published list (they are rounded by hand: 10^(i/24) gives 26, not 27); E48, E96 and E192 are
// 10^(i/n) rounded to three digits, with the one published exception 920 in E192.

/** The series of IEC 60063, coarse to fine. */
export const eSeries = ['E3', 'E6', 'E12', 'E24', 'E48', 'E96', 'E192'] as const;

/** One series of IEC 60063. */
export type ESeries = (typeof eSeries)[number];

const E24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

function everyNth(numbers: readonly number[], step: number): readonly number[] {
  return numbers.filter((_, index) => index % step === 0);
}

function rounded(steps: number): readonly number[] {
  return Array.from({ length: steps }, (_, index) => {
    const value = Math.round(100 * 10 ** (index / steps));
    return steps === 192 && value === 919 ? 920 : value;
  });
}

const tens = (numbers: readonly number[]) => numbers.map((number) => number * 10);

/** The numbers of each series as three digits, 100 to 999. */
export const E_SERIES_NUMBERS: Readonly<Record<ESeries, readonly number[]>> = {
  E3: tens(everyNth(E24, 8)),
  E6: tens(everyNth(E24, 4)),
  E12: tens(everyNth(E24, 2)),
  E24: tens(E24),
  E48: rounded(48),
  E96: rounded(96),
  E192: rounded(192),
};

/** The series that a value, given by its significant digits and power of ten, belongs to; coarse to fine. Zero is in none. */
export function seriesOf(digits: number): readonly ESeries[] {
  if (!(digits > 0) || !Number.isInteger(digits)) return [];
  let number = digits;
  while (number < 100) number *= 10;
  while (number > 999 && number % 10 === 0) number /= 10;
  if (number > 999) return [];
  return eSeries.filter((series) => E_SERIES_NUMBERS[series].includes(number));
}
