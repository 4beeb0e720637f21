// The ways in which labels print a date: a list of its own, since the shape of a rule needs it and the reading of dates does not come with it.

/** How a date is printed. A two-digit year 70 to 99 is 19xx, any other 20xx. */
export const dateFormats = [
  'YYWW',
  'YYYYWW',
  'YYMMDD',
  'YYYYMMDD',
  'DDMMYY',
  'DDMMYYYY',
  'MMDDYY',
  'YYDDD',
] as const;

/** One of the ways in which labels print a date. */
export type DateFormat = (typeof dateFormats)[number];
