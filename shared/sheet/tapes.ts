// Which tape widths and pocket pitches exist, and how many feeder positions does a width take?
// Widths and pitches: ANSI/EIA-481-D tables 2 and 3 (8 to 200 mm); 4 mm tape: IEC 60286-3, its pitches from memory.
// Positions are machine-dependent: common practice, from memory above 12 mm, kept as data that a site overrides.

/** Tape widths in mm: EIA-481-D tables 2 and 3, and 4 mm (IEC 60286-3). */
export const tapeWidthsMm = [
  4, 8, 12, 16, 24, 32, 44, 56, 72, 88, 104, 120, 136, 152, 168, 184, 200,
] as const;

/** Whether a width in mm is one of `tapeWidthsMm`. */
export function isTapeWidth(widthMm: number): boolean {
  return (tapeWidthsMm as readonly number[]).includes(widthMm); // widened for the look-up only
}

/**
 * Pocket pitches in mm that EIA-481-D lists for a width (4 mm tape: from memory); empty for an unknown width. Unusual but
 * legal pairs exist: a pitch that is not listed is worth a warning, not a refusal.
 */
export function listedPitchesMm(widthMm: number): readonly number[] {
  if (!isTapeWidth(widthMm)) return [];
  if (widthMm === 4) return [1, 2];
  if (widthMm === 8) return [2, 4];
  if (widthMm === 12) return [2, 4, 8];
  const most = widthMm === 16 ? 12 : widthMm === 24 ? 20 : Math.min(widthMm, 72);
  const pitches: number[] = [];
  for (let pitch = 4; pitch <= most; pitch += 4) pitches.push(pitch);
  return pitches;
}

/** Feeder positions (8 mm steps) by tape width in mm. */
export type PositionsByWidth = Readonly<Record<number, number>>;

/** Positions that a feeder usually takes: 8 mm 1, 12 mm 2 (common practice); wider ones from memory, machine-dependent. */
export const commonPositionsByWidth: PositionsByWidth = {
  4: 1,
  8: 1,
  12: 2,
  16: 2,
  24: 3,
  32: 4,
  44: 5,
  56: 7,
};

/**
 * Positions that a feeder for this tape takes: the site's table, else the common one, else the width in whole 8 mm steps.
 * Null for an unknown width.
 */
export function positionsForWidth(widthMm: number, overrides: PositionsByWidth = {}): number | null {
  if (!isTapeWidth(widthMm)) return null;
  return overrides[widthMm] ?? commonPositionsByWidth[widthMm] ?? Math.ceil(widthMm / 8);
}
