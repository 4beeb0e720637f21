// What value should a part have? The setup's note comes before the plant's list, since it is about this very slot.

import { type ExpectedValue, expectedValues } from './part-value.ts';
import type { FloorState } from './state.ts';

/**
 * Values that the setup's note or the plant's list states for a part, empty where neither does. A note's value with its tolerance comes first;
 * one without takes the list's tolerance, where both speak of the same quantity; a note that only rates the part (`16V`) leaves the list's value.
 */
export function statedValues(
  state: FloorState,
  { part, note = '' }: { readonly part: string; readonly note?: string | undefined },
): readonly ExpectedValue[] {
  const noted = withoutRating(expectedValues(note, { isNote: true }));
  const { value = null, tolerance = null } = state.listed.get(part) ?? {};
  // The two stand in columns of their own: `103` is a code still, whatever its tolerance.
  const percent = tolerance === null ? null : percentOf(tolerance);
  const listed = withoutRating(expectedValues(value ?? '')).map((each) => withPercent(each, percent));
  const isRatingOnly = noted.every(isVolts) && listed.some((each) => !isVolts(each));
  if (noted.some(isWhole) && !isRatingOnly) return noted;
  if (listed.length === 0) return noted.map((each) => withPercent(each, percent));
  const alike = noted.filter((each) => listed.some((other) => isSameQuantity(each, other)));
  return alike.length === 0 ? listed : alike.map((each) => withToleranceOf(each, listed));
}

function isVolts({ unit }: ExpectedValue): boolean {
  return unit.endsWith('V');
}

/** A voltage beside a value is what the part stands, not what it measures. */
function withoutRating(values: readonly ExpectedValue[]): readonly ExpectedValue[] {
  return values.every(isVolts) ? values : values.filter((each) => !isVolts(each));
}

function isWhole({ plusPercent, minusPercent }: ExpectedValue): boolean {
  return plusPercent !== null && minusPercent !== null;
}

function isSameQuantity(one: ExpectedValue, other: ExpectedValue): boolean {
  return one.unit.at(-1) === other.unit.at(-1);
}

function withPercent(value: ExpectedValue, percent: number | null): ExpectedValue {
  return percent === null ? value : { ...value, plusPercent: percent, minusPercent: percent };
}

function withToleranceOf(value: ExpectedValue, listed: readonly ExpectedValue[]): ExpectedValue {
  const from = listed.find((each) => isSameQuantity(each, value) && isWhole(each));
  if (isWhole(value) || from === undefined) return value;
  return { ...value, plusPercent: from.plusPercent, minusPercent: from.minusPercent };
}

/** A tolerance of one figure, with or without its sign; null where it says something else, as `+80 / -20 %` does. */
function percentOf(tolerance: string): number | null {
  const figure = /^\s*±?\s*(\d+(?:[.,]\d+)?)\s*%\s*$/.exec(tolerance)?.[1];
  return figure === undefined ? null : Number(figure.replace(',', '.'));
}
