// One invented plant, Brae Works: a line of three machines, its rules, people, feeders and three setups, as the entries that
// an engineer would have written. Shifts and breaks are laid around the hour of the start, so that the line is always found
// in the middle of a shift.

import { checkPayload, type EntryKind, type PayloadOf } from '../shared/floor/kinds.ts';
import { feeders } from './feeders.ts';
import { familyOf, partRows } from './parts.ts';
import { people } from './people.ts';
import { blockedLot } from './practice-label.ts';
import { bankPositions, banks, lineId, machines, products, takenSetup } from './setups.ts';
import { beaconSetup, stickFeeder, trayLift, traysPacked, traysPut } from './trays.ts';

/** An entry that somebody wants written. */
export type DraftEntry = {
  [K in EntryKind]: { readonly kind: K; readonly payload: PayloadOf<K> };
}[EntryKind];

/** Makes a draft entry, its payload checked. */
export function draft<K extends EntryKind>(kind: K, payload: PayloadOf<K>): DraftEntry {
  checkPayload(kind, payload);
  return { kind, payload } as unknown as DraftEntry; // the pair is one of the union by construction
}

/** The plant's name, for the top of the label sheet. */
export const plantName = 'Brae Works (invented)';

/** When the line works: minutes after the start of its shift, on the plant's wall clock. */
export const shiftMinutes = 480;
export const breakSpans = [
  { from: 105, minutes: 15 },
  { from: 300, minutes: 30 },
] as const;

/** Rules that the simulated hands keep to as well. */
export const lineFigures = {
  leadSeconds: 600,
  walkSeconds: 60,
  spliceSeconds: 45,
  hubToPickMm: 840,
  intakeToPickMm: 300,
  trailerMm: 40,
  loss: 0.003,
} as const;

const liftBank = {
  bank: trayLift.bank,
  name: trayLift.name,
  positions: trayLift.positions,
  holds: 'trays' as const,
};

const everyDay = [1, 2, 3, 4, 5, 6, 7];

function wallText(minutes: number): string {
  const day = ((minutes % 1440) + 1440) % 1440;
  return `${String(Math.floor(day / 60)).padStart(2, '0')}:${String(day % 60).padStart(2, '0')}`;
}

/** The line's rules. `shiftStart`: minute of the day, on the plant's wall clock, at which one of the three shifts begins. */
export function lineRules(shiftStart: number): PayloadOf<'line.ruled'> {
  const starts = [0, shiftMinutes, 2 * shiftMinutes].map((after) => shiftStart + after);
  const { leadSeconds, walkSeconds, spliceSeconds, hubToPickMm, intakeToPickMm, loss } = lineFigures;
  return {
    line: lineId,
    leadSeconds,
    walkSeconds,
    spliceSeconds,
    hubToPickMm,
    intakeToPickMm,
    loss,
    shifts: starts.map((from) => ({
      days: [...everyDay],
      from: wallText(from),
      to: wallText(from + shiftMinutes),
    })),
    breaks: starts.flatMap((start) =>
      breakSpans.map(({ from, minutes }) => ({
        days: [...everyDay],
        from: wallText(start + from),
        to: wallText(start + from + minutes),
      })),
    ),
    stops: [],
    comparison: {
      ignoreCase: true,
      ignoreSpaces: true,
      ignoreDashes: false,
      packingSuffixes: ['-TR', '/R13'],
    },
    feedersKnown: true,
  };
}

/** Everything that the plant knows before anybody loads a reel. */
export function plantDrafts(settings: {
  readonly zone: string;
  readonly shiftStart: number;
}): readonly DraftEntry[] {
  return [
    ...people.map((person) => draft('person.added', person)),
    draft('line.defined', {
      line: lineId,
      name: 'Line 2',
      zone: settings.zone,
      machines: machines.map((machine) => ({
        machine,
        name: `Placer ${machine.slice(1)}`,
        banks: [
          ...banks.map((bank) => ({
            bank,
            name: bank === 'F' ? 'Front' : 'Rear',
            positions: bankPositions,
          })),
          ...(machine === trayLift.machine ? [liftBank] : []),
        ],
      })),
    }),
    draft('line.ruled', lineRules(settings.shiftStart)),
    draft('line.tape-ruled', { line: lineId, trailerMm: lineFigures.trailerMm, leaderMm: null }),
    // Panels are counted as they leave the last machine.
    draft('line.panels-ruled', {
      line: lineId,
      machines: machines.map((machine, at) => ({ machine, least: 0, most: machines.length - 1 - at })),
      missed: 0,
    }),
    ...[...feeders, stickFeeder].map((feeder) => draft('feeder.known', feeder)),
    ...describedParts(),
    ...products.map((product) => draft('setup.taken', takenSetup(product))),
    draft('setup.taken', beaconSetup),
    draft('material.blocked', {
      block: 'block-1',
      reel: null,
      lot: blockedLot,
      part: null,
      reason: 'Supplier recall: parts rotated in their pockets',
    }),
  ];
}

/** What the store had before the shift. */
export function storeDrafts(): readonly DraftEntry[] {
  return [
    ...traysPut.map((put) => draft('reel.put', put)),
    ...traysPacked.map((packed) => draft('reel.packed', packed)),
  ];
}

/** The packages that an engineer entered; one moisture-sensitive part is left out, as happens, and counts as the worst. */
function describedParts(): DraftEntry[] {
  return partRows.flatMap(([part]) => {
    const { package: known, bodyMm } = familyOf(part);
    if (known === undefined) return [];
    const { family, pins = null, sizeMm } = known;
    const [bodyXMm, bodyYMm] = sizeMm ?? [null, null];
    return [
      draft('part.described', {
        part,
        family,
        pins,
        bodyMm,
        bodyXMm,
        bodyYMm,
        isStacked: false,
        msl: null,
        source: 'Data sheet',
      }),
    ];
  });
}
