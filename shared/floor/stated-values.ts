// What value should a part have? The setup's note comes before the plant's list, since it is about this very slot.

import { type ExpectedValue, expectedValues } from './part-value.ts';
import type { FloorState } from './state.ts';

/** Values that the setup's note or the plant's list states for a part; the note comes first, empty where neither does. */
export function statedValues(
  state: FloorState,
  { part, note = '' }: { readonly part: string; readonly note?: string | undefined },
): readonly ExpectedValue[] {
  const noted = expectedValues(note, { isNote: true });
  const { value = null, tolerance = null } = state.listed.get(part) ?? {};
  if (noted.length > 0 || value === null) return noted;
  // The two stand in columns of their own: `103` is a code still, whatever its tolerance.
  const percent = tolerance === null ? null : percentOf(tolerance);
  const values = expectedValues(value);
  return percent === null
    ? values
    : values.map((each) => ({ ...each, plusPercent: percent, minusPercent: percent }));
}

/** A tolerance of one figure, with or without its sign; null where it says something else, as `+80 / -20 %` does. */
function percentOf(tolerance: string): number | null {
  const figure = /^\s*±?\s*(\d+(?:[.,]\d+)?)\s*%\s*$/.exec(tolerance)?.[1];
  return figure === undefined ? null : Number(figure.replace(',', '.'));
}
