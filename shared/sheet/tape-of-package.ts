// How wide is the tape that a part of this package usually comes on?
// Method: names of packages and the tape that they are usually reeled on, common practice and from memory; a guess that tells how much room a
// feeder takes until somebody who has the reel in hand says better. Refused: to let a guess decide whether a feeder is right.

import { parsePackageText } from './package-text.ts';

// The first that fits counts. Widths in mm: common practice, from memory.
const usual: readonly (readonly [name: RegExp, widthMm: number])[] = [
  [/(?:^|[^\d])(?:1812|2010|2220|2512|4516|5025|6332)(?:[^\d]|$)/, 12],
  [/(?:^|[^\d])(?:01005|0201|0402|0603|0805|1206|1210|1005|1608|2012|3216|3225)(?:[^\d]|$)/, 8],
  [/SOD-?(?:123|323|523|923)|SOT-?(?:23|323|343|353|363|523|563|723)|SC-?(?:59|70|75|88|89)/, 8],
  [/SOT-?(?:89|223)|DO-?214AC|DO-?214AA|(?:^|[^A-Z])SM[AB](?:[^A-Z]|$)/, 12],
  [/DO-?214AB|(?:^|[^A-Z])SMC(?:[^A-Z]|$)|TO-?252|(?:^|[^\d])D-?PAK/, 16],
  [/TO-?263|D2-?PAK/, 24],
];

/** Small-outline packages by their leads: mm of tape. Common practice, from memory. */
function byLeads(pins: number, isNarrowLeaded: boolean): number {
  if (pins <= 8) return 12;
  if (pins <= (isNarrowLeaded ? 20 : 16)) return 16;
  return 24;
}

/** By the longer side of a body without leads beside it, mm. Common practice, from memory. */
function byBody(sideMm: number): number | null {
  if (sideMm <= 3.2) return 8;
  if (sideMm <= 6) return 12;
  if (sideMm <= 8) return 16;
  return sideMm <= 14 ? 24 : null;
}

/** The usual tape width in mm for a package's name; null where the name tells nothing, or where such parts mostly come on trays. */
export function usualTapeWidth(text: string): number | null {
  const upper = text.toUpperCase();
  for (const [name, widthMm] of usual) if (name.test(upper)) return widthMm;
  const { family, pins, bodyMm } = parsePackageText(text);
  if (family === 'chip') return 8;
  if (family === 'soic') return pins === null ? null : byLeads(pins, false);
  if (family === 'sop' || family === 'tsop') return pins === null ? null : byLeads(pins, true);
  return family === 'qfn' && bodyMm !== null ? byBody(Math.max(...bodyMm)) : null;
}

// Large and leaded packages that mostly come on trays. Common practice, from memory.
const onTrays = ['bga', 'lga', 'pqfp', 'mqfp', 'tqfp', 'lqfp', 'qfp', 'plcc'] as const;

/** Whether parts of this package mostly come on trays; false where the name tells nothing. */
export function isUsuallyOnTray(text: string): boolean {
  const { family } = parsePackageText(text);
  return usualTapeWidth(text) === null && onTrays.some((each) => each === family);
}
