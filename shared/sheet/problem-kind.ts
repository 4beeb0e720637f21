// How bad is a problem of a file, and how is it said? The makers of the tables in problems.ts and problems-bill.ts.

/** How bad a problem is: an error keeps the sheet out, a warning does not. */
export const sheetSeverities = ['error', 'warning'] as const;

/** One of the two severities. */
export type SheetSeverity = (typeof sheetSeverities)[number];

/** The values that a message is made from. */
export type Facts = Readonly<Record<string, string | number>>;

/** One kind of problem: its severity and its sentence. */
export interface Kind {
  readonly severity: SheetSeverity;
  readonly say: (facts: Facts) => string;
}

/** A kind that keeps the file out. */
export function error(say: (facts: Facts) => string): Kind {
  return { severity: 'error', say };
}

/** A kind that a person should know of. */
export function warning(say: (facts: Facts) => string): Kind {
  return { severity: 'warning', say };
}
