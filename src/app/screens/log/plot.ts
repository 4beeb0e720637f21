// A question of the shift's report with its answer and the bars that show it: the shape alone.

/** One bar: its name, its length in the plot's unit, and what stands beside it. */
export interface Bar {
  readonly name: string;
  readonly value: number;
  readonly text: string;
  /** Names are codes where they are, so that nobody translates or breaks them. */
  readonly isCode?: boolean;
}

/** A question with its answer. `unit`: of the values, for a spreadsheet's heading. */
export interface Plot {
  readonly id: 'dry' | 'splices' | 'stops' | 'changes' | 'feeders' | 'parts' | 'money' | 'reasons';
  readonly question: string;
  readonly answer: string;
  readonly unit: 'minutes' | 'splices' | 'parts' | 'money' | 'times';
  readonly bars: readonly Bar[];
  /** The bars are hours in a row: drawn upright, side by side. */
  readonly isByHour?: boolean;
  /** What the words of the bars mean, under them. */
  readonly note?: string;
  /** What a spreadsheet gets in place of the bars, where that is more. */
  readonly table?: {
    readonly heads: readonly string[];
    readonly rows: readonly (readonly (string | number | null)[])[];
  };
}

/** Bars of a plot; the largest come first where there are more. */
export const MOST_BARS = 12;
