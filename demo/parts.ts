// The invented plant's parts: site numbers, the tape that each comes on, and how many each product takes per panel.
// Tape widths, pitches and reel quantities follow EIA-481-D and quantities that makers print for these packages; numbers,
// products and usage are invented.

import type { PackageFamily } from '../shared/floor/vocabulary.ts';

/** What all parts of one package have in common. Lengths in mm; `full` = parts on a full reel. */
export interface Family {
  readonly tapeWidthMm: number;
  readonly pitchMm: number;
  /** Feeder positions, 8 mm each. */
  readonly positions: number;
  readonly full: number;
  readonly bodyMm: number;
  /** Which machine of the line places it. */
  readonly machine: 'M1' | 'M2' | 'M3';
  /** Letters with which the two approved suppliers begin their numbers. */
  readonly series: readonly [string, string];
  readonly msl?: string;
  /** Package, pins, and body length and width, where the plant knows them. */
  readonly package?: {
    readonly family: PackageFamily;
    readonly pins?: number;
    readonly sizeMm?: readonly [number, number];
  };
  readonly polarity?: string;
  readonly critical?: boolean;
}

const chip = { tapeWidthMm: 8, pitchMm: 4, positions: 1, bodyMm: 0.5 } as const;
const wide = { tapeWidthMm: 12, pitchMm: 8, positions: 2 } as const;
const band = 'Band towards the sprocket holes';
const dot = 'Pin 1 towards the sprocket holes';

/** Packages. */
export const families = {
  r0402: { ...chip, pitchMm: 2, full: 10_000, bodyMm: 0.35, machine: 'M1', series: ['ZR4', 'OKR04'] },
  c0402: { ...chip, pitchMm: 2, full: 10_000, machine: 'M1', series: ['ZC4', 'OKC04'] },
  r0603: { ...chip, full: 5000, bodyMm: 0.45, machine: 'M2', series: ['ZR6', 'OKR06'] },
  r0805: { ...chip, full: 5000, machine: 'M2', series: ['ZR8', 'OKR08'] },
  c0603: { ...chip, full: 4000, bodyMm: 0.8, machine: 'M2', series: ['ZC6', 'OKC06'] },
  c0805: { ...chip, full: 3000, bodyMm: 1.25, machine: 'M2', series: ['ZC8', 'OKC08'] },
  c1206: { ...chip, full: 2000, bodyMm: 1.6, machine: 'M2', series: ['ZC12', 'OKC12'] },
  fb0603: { ...chip, full: 4000, bodyMm: 0.8, machine: 'M2', series: ['ZB6', 'OKB06'] },
  led0603: {
    ...chip,
    full: 4000,
    bodyMm: 0.6,
    machine: 'M2',
    series: ['LUMA6', 'VEG6'],
    msl: '2a',
    package: { family: 'chip' },
    polarity: 'Green mark towards the sprocket holes',
  },
  dsod: { ...chip, full: 3000, bodyMm: 1.1, machine: 'M2', series: ['ND', 'TVD'], polarity: band },
  q23: { ...chip, full: 3000, bodyMm: 1, machine: 'M2', series: ['NQ', 'TVQ'] },
  u235: { ...chip, full: 3000, bodyMm: 1.3, machine: 'M2', series: ['HUX5', 'MIR5'] },
  r2512: { ...wide, pitchMm: 4, full: 4000, bodyMm: 0.6, machine: 'M3', series: ['ZR25', 'OKR25'] },
  ctan: {
    ...wide,
    full: 2500,
    bodyMm: 2.8,
    machine: 'M3',
    series: ['ZT7', 'TNT7'],
    msl: '3',
    polarity: band,
  },
  l4040: { ...wide, full: 1000, bodyMm: 2, machine: 'M3', series: ['ZL4', 'COI4'] },
  l7070: {
    ...wide,
    tapeWidthMm: 16,
    pitchMm: 12,
    full: 500,
    bodyMm: 4.2,
    machine: 'M3',
    series: ['ZL7', 'COI7'],
  },
  dsmb: { ...wide, full: 3000, bodyMm: 2.4, machine: 'M3', series: ['NDS', 'TVS'], polarity: band },
  q223: { ...wide, full: 4000, bodyMm: 1.6, machine: 'M3', series: ['NQP', 'TVP'] },
  u8: { ...wide, full: 2500, bodyMm: 1.6, machine: 'M3', series: ['HUX8', 'MIR8'], polarity: dot },
  u14: { ...wide, full: 2000, bodyMm: 1.1, machine: 'M3', series: ['HUX14', 'MIR14'], polarity: dot },
  u20: {
    ...wide,
    tapeWidthMm: 16,
    full: 3000,
    bodyMm: 1.1,
    machine: 'M3',
    series: ['HUX20', 'MIR20'],
    polarity: dot,
  },
  qfn24: {
    ...wide,
    full: 3000,
    bodyMm: 0.9,
    machine: 'M3',
    series: ['HUQ24', 'MIQ24'],
    msl: '3',
    package: { family: 'qfn', pins: 24, sizeMm: [4, 4] },
    polarity: dot,
  },
  lqfp64: {
    tapeWidthMm: 24,
    pitchMm: 16,
    positions: 3,
    full: 1000,
    bodyMm: 1.4,
    machine: 'M3',
    series: ['HUL64', 'MIL64'],
    msl: '3',
    polarity: dot,
    critical: true,
    package: { family: 'lqfp', pins: 64, sizeMm: [10, 10] },
  },
  to263: {
    tapeWidthMm: 24,
    pitchMm: 16,
    positions: 3,
    full: 500,
    bodyMm: 4.5,
    machine: 'M3',
    series: ['NP2', 'TVK2'],
  },
  x3225: { ...wide, full: 1000, bodyMm: 0.9, machine: 'M3', series: ['KW32', 'TIK32'] },
  x8038: { ...wide, tapeWidthMm: 16, full: 3000, bodyMm: 2.5, machine: 'M3', series: ['KW80', 'TIK80'] },
  j24: {
    tapeWidthMm: 24,
    pitchMm: 12,
    positions: 3,
    full: 700,
    bodyMm: 5.5,
    machine: 'M3',
    series: ['STK24', 'PLG24'],
  },
  j16: { ...wide, tapeWidthMm: 16, full: 700, bodyMm: 3.8, machine: 'M3', series: ['STK16', 'PLG16'] },
  sw12: { ...wide, full: 1000, bodyMm: 3.1, machine: 'M3', series: ['TAP12', 'KNO12'] },
} as const satisfies Readonly<Record<string, Family>>;

export type FamilyName = keyof typeof families;

/** A part, its family, and its placements per panel on each product in the order of `products`; 0 = not used. */
export type PartRow = readonly [
  part: string,
  family: FamilyName,
  first: number,
  second: number,
  third: number,
];

/** Every part of the plant. */
export const partRows: readonly PartRow[] = [
  ['10-0402-100', 'r0402', 2, 2, 2],
  ['10-0402-220', 'r0402', 2, 0, 2],
  ['10-0402-330', 'r0402', 2, 8, 2],
  ['10-0402-470', 'r0402', 8, 4, 2],
  ['10-0402-101', 'r0402', 2, 4, 0],
  ['10-0402-151', 'r0402', 2, 0, 0],
  ['10-0402-221', 'r0402', 2, 0, 0],
  ['10-0402-331', 'r0402', 8, 0, 12],
  ['10-0402-471', 'r0402', 4, 0, 0],
  ['10-0402-102', 'r0402', 4, 6, 0],
  ['10-0402-152', 'r0402', 2, 8, 6],
  ['10-0402-222', 'r0402', 12, 2, 0],
  ['10-0402-272', 'r0402', 6, 6, 0],
  ['10-0402-332', 'r0402', 12, 2, 0],
  ['10-0402-472', 'r0402', 2, 4, 0],
  ['10-0402-562', 'r0402', 2, 0, 8],
  ['10-0402-682', 'r0402', 2, 12, 2],
  ['10-0402-822', 'r0402', 4, 0, 4],
  ['10-0402-103', 'r0402', 12, 12, 4],
  ['10-0402-123', 'r0402', 8, 0, 0],
  ['10-0402-153', 'r0402', 4, 2, 4],
  ['10-0402-223', 'r0402', 2, 2, 6],
  ['10-0402-333', 'r0402', 6, 0, 0],
  ['10-0402-473', 'r0402', 2, 8, 8],
  ['10-0402-104', 'r0402', 8, 2, 0],
  ['10-0402-154', 'r0402', 2, 2, 2],
  ['10-0402-224', 'r0402', 6, 0, 4],
  ['10-0402-474', 'r0402', 2, 0, 0],
  ['10-0402-105', 'r0402', 12, 12, 0],
  ['10-0402-225', 'r0402', 12, 2, 6],
  ['10-0402-391', 'r0402', 12, 0, 2],
  ['10-0402-183', 'r0402', 6, 2, 0],
  ['10-0402-273', 'r0402', 2, 0, 6],
  ['10-0402-393', 'r0402', 2, 4, 0],
  ['10-0402-563', 'r0402', 6, 0, 0],
  ['10-0402-683', 'r0402', 4, 0, 0],
  ['10-0402-000', 'r0402', 4, 12, 2],
  ['10-0402-4992', 'r0402', 2, 0, 4],
  ['10-0402-1002', 'r0402', 6, 6, 0],
  ['10-0402-2001', 'r0402', 4, 12, 4],
  ['10-0402-6042', 'r0402', 2, 6, 0],
  ['10-0402-1501', 'r0402', 2, 0, 0],
  ['10-0603-000', 'r0603', 2, 0, 4],
  ['10-0603-100', 'r0603', 4, 2, 2],
  ['10-0603-101', 'r0603', 2, 0, 4],
  ['10-0603-102', 'r0603', 2, 0, 4],
  ['10-0603-472', 'r0603', 2, 0, 4],
  ['10-0603-103', 'r0603', 2, 4, 4],
  ['10-0603-104', 'r0603', 2, 2, 0],
  ['10-0603-224', 'r0603', 2, 4, 4],
  ['10-0603-R10', 'r0603', 4, 2, 4],
  ['10-0603-3R3', 'r0603', 2, 0, 0],
  ['10-0603-1002', 'r0603', 0, 0, 0],
  ['10-0805-1R0', 'r0805', 4, 2, 2],
  ['10-0805-4R7', 'r0805', 0, 0, 2],
  ['10-0805-102', 'r0805', 2, 0, 2],
  ['10-0805-103', 'r0805', 4, 0, 2],
  ['10-2512-R01', 'r2512', 0, 2, 2],
  ['10-2512-R05', 'r2512', 0, 0, 2],
  ['12-0402-1R5', 'c0402', 6, 0, 0],
  ['12-0402-3R3', 'c0402', 4, 6, 0],
  ['12-0402-5R6', 'c0402', 2, 0, 0],
  ['12-0402-8R2', 'c0402', 2, 6, 0],
  ['12-0402-100', 'c0402', 4, 2, 4],
  ['12-0402-120', 'c0402', 2, 2, 0],
  ['12-0402-150', 'c0402', 2, 0, 0],
  ['12-0402-180', 'c0402', 4, 0, 0],
  ['12-0402-220', 'c0402', 2, 4, 2],
  ['12-0402-330', 'c0402', 4, 0, 4],
  ['12-0402-470', 'c0402', 4, 4, 6],
  ['12-0402-101', 'c0402', 2, 6, 0],
  ['12-0402-221', 'c0402', 2, 2, 0],
  ['12-0402-471', 'c0402', 4, 2, 2],
  ['12-0402-102', 'c0402', 4, 6, 0],
  ['12-0402-222', 'c0402', 4, 2, 0],
  ['12-0402-472', 'c0402', 2, 2, 0],
  ['12-0402-103', 'c0402', 2, 0, 4],
  ['12-0402-223', 'c0402', 2, 4, 0],
  ['12-0402-473', 'c0402', 4, 0, 2],
  ['12-0402-104', 'c0402', 2, 0, 2],
  ['12-0402-224', 'c0402', 4, 0, 0],
  ['12-0603-102', 'c0603', 2, 2, 2],
  ['12-0603-103', 'c0603', 0, 2, 0],
  ['12-0603-104', 'c0603', 2, 2, 0],
  ['12-0603-224', 'c0603', 4, 2, 2],
  ['12-0603-474', 'c0603', 0, 2, 0],
  ['12-0603-105', 'c0603', 4, 2, 2],
  ['12-0603-225', 'c0603', 0, 0, 4],
  ['12-0603-475', 'c0603', 2, 2, 2],
  ['12-0603-104H', 'c0603', 0, 0, 0],
  ['12-0603-105H', 'c0603', 0, 0, 0],
  ['12-0805-104', 'c0805', 2, 0, 2],
  ['12-0805-105', 'c0805', 2, 2, 2],
  ['12-0805-475', 'c0805', 0, 0, 2],
  ['12-0805-106', 'c0805', 2, 2, 2],
  ['12-0805-226', 'c0805', 2, 2, 2],
  ['12-1206-106', 'c1206', 2, 0, 2],
  ['12-1206-226', 'c1206', 2, 0, 2],
  ['12-1206-107', 'c1206', 2, 2, 2],
  ['12-1206-475', 'c1206', 2, 0, 2],
  ['13-7343-107', 'ctan', 2, 2, 2],
  ['13-7343-227', 'ctan', 0, 0, 2],
  ['13-7343-337', 'ctan', 2, 0, 2],
  ['15-0603-121', 'fb0603', 4, 0, 4],
  ['15-0603-601', 'fb0603', 4, 2, 0],
  ['15-0603-102', 'fb0603', 2, 4, 0],
  ['15-0603-222', 'fb0603', 2, 4, 2],
  ['16-4040-2R2', 'l4040', 2, 2, 2],
  ['16-4040-4R7', 'l4040', 2, 2, 2],
  ['16-4040-100', 'l4040', 2, 2, 2],
  ['16-4040-220', 'l4040', 2, 2, 0],
  ['16-7070-100', 'l7070', 2, 0, 2],
  ['16-7070-330', 'l7070', 0, 0, 2],
  ['20-0323-11', 'dsod', 0, 4, 2],
  ['20-0323-12', 'dsod', 2, 2, 2],
  ['20-0323-24', 'dsod', 2, 0, 4],
  ['20-0323-33', 'dsod', 2, 2, 0],
  ['20-0323-51', 'dsod', 2, 0, 2],
  ['20-0323-54', 'dsod', 4, 2, 2],
  ['20-0214-058', 'dsmb', 0, 0, 2],
  ['20-0214-330', 'dsmb', 2, 0, 2],
  ['20-0214-600', 'dsmb', 2, 0, 2],
  ['22-0603-G', 'led0603', 2, 0, 2],
  ['22-0603-Y', 'led0603', 4, 4, 0],
  ['22-0603-R', 'led0603', 2, 0, 4],
  ['22-0603-B', 'led0603', 4, 0, 4],
  ['25-0023-041', 'q23', 2, 2, 2],
  ['25-0023-042', 'q23', 2, 2, 2],
  ['25-0023-061', 'q23', 2, 0, 2],
  ['25-0023-070', 'q23', 0, 2, 2],
  ['25-0023-084', 'q23', 2, 0, 2],
  ['25-0023-113', 'q23', 2, 0, 0],
  ['25-0023-151', 'q23', 2, 0, 2],
  ['25-0023-168', 'q23', 2, 2, 2],
  ['25-0223-033', 'q223', 2, 0, 2],
  ['25-0223-050', 'q223', 2, 0, 0],
  ['30-0235-014', 'u235', 2, 2, 0],
  ['30-0235-022', 'u235', 0, 0, 2],
  ['30-0235-037', 'u235', 2, 2, 0],
  ['30-0235-045', 'u235', 2, 2, 2],
  ['30-0235-103', 'u235', 2, 0, 2],
  ['30-0008-004', 'u8', 2, 0, 2],
  ['30-0008-012', 'u8', 2, 0, 2],
  ['30-0008-085', 'u8', 2, 0, 2],
  ['30-0008-124', 'u8', 2, 0, 2],
  ['30-0008-233', 'u8', 2, 0, 2],
  ['30-0008-393', 'u8', 2, 2, 2],
  ['30-0008-485', 'u8', 2, 0, 0],
  ['30-0014-008', 'u14', 2, 2, 0],
  ['30-0014-074', 'u14', 2, 0, 2],
  ['30-0014-125', 'u14', 2, 2, 2],
  ['30-0014-324', 'u14', 2, 0, 0],
  ['30-0020-244', 'u20', 2, 0, 2],
  ['30-0020-573', 'u20', 0, 0, 2],
  ['32-0024-018', 'qfn24', 2, 0, 0],
  ['32-0024-031', 'qfn24', 2, 0, 2],
  ['32-0024-206', 'qfn24', 2, 2, 0],
  ['32-0024-417', 'qfn24', 0, 2, 2],
  ['32-0064-103', 'lqfp64', 2, 0, 2],
  ['32-0064-407', 'lqfp64', 2, 0, 2],
  ['26-0263-055', 'to263', 0, 0, 2],
  ['26-0263-100', 'to263', 2, 0, 2],
  ['40-0100-080', 'x3225', 2, 2, 0],
  ['40-0100-160', 'x3225', 0, 2, 0],
  ['40-0100-260', 'x3225', 0, 2, 0],
  ['40-0032-768', 'x8038', 2, 2, 0],
  ['50-0204-104', 'j24', 2, 2, 2],
  ['50-0204-106', 'j24', 0, 0, 2],
  ['50-0204-110', 'j24', 0, 2, 2],
  ['50-0204-208', 'j24', 0, 0, 2],
  ['50-0100-102', 'j16', 0, 2, 2],
  ['50-0100-103', 'j16', 2, 2, 2],
  ['50-0100-105', 'j16', 2, 0, 0],
  ['52-0306-043', 'sw12', 2, 2, 0],
  ['52-0306-070', 'sw12', 2, 2, 0],
];

const familyByPart = new Map(partRows.map((row) => [row[0], row[1]]));

/** The family of a site part; throws for a part that the plant does not have. */
export function familyOf(part: string): Family {
  const name = familyByPart.get(part);
  if (name === undefined)
    throw new RangeError(`Cannot find family as part must be known: current value is ${part}`);
  return families[name];
}

/** The two suppliers' numbers approved for a site part, the first choice first. */
export function supplierPartsOf(part: string): readonly [string, string] {
  const code = part.split('-').at(-1) ?? part;
  const [first, second] = familyOf(part).series;
  return [`${first}-${code}-A`, `${second}${code}T`];
}
