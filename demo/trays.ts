// A product of the invented plant with parts that come on no tape: large circuits in the trays of a lift, the first three of them used in turn, and
// connectors in tubes on a feeder with three lanes. It waits for its turn; the shift that plays does not build it. Rows and columns of the trays are those
// of the JEDEC outlines of the CO-029 family for such bodies, from memory; all else is invented.

import { formatSlot } from '../shared/floor/address.ts';
import type { PayloadOf, SetupSlot } from '../shared/floor/kinds.ts';
import { familyOf, supplierPartsOf } from './parts.ts';
import { lineId } from './setups.ts';

/** The lift behind the third machine, and how many trays it holds. */
export const trayLift = { machine: 'M3', bank: 'T', name: 'Tray lift', positions: 12 } as const;

const onTray = (position: number, part: string, turn?: number): SetupSlot => ({
  slot: formatSlot({ machine: trayLift.machine, bank: trayLift.bank, position }),
  part,
  perPanel: 2,
  tapeWidthMm: null,
  pitchMm: null,
  positions: 1,
  alternates: [],
  supplierParts: [],
  msl: '3',
  comesIn: 'tray',
  ...(turn === undefined ? {} : { turn }),
});

const inTube = (lane: string, part: string): SetupSlot => ({
  slot: formatSlot({ machine: 'M3', bank: 'R', position: 50, lane }),
  part,
  perPanel: 1,
  tapeWidthMm: null,
  pitchMm: null,
  positions: 4,
  alternates: [],
  supplierParts: [],
  comesIn: 'tube',
});

const onTape = (slot: string, part: string, perPanel: number): SetupSlot => {
  const { tapeWidthMm, pitchMm, positions } = familyOf(part);
  const supplierParts = [...supplierPartsOf(part)];
  return { slot, part, perPanel, tapeWidthMm, pitchMm, positions, alternates: [], supplierParts };
};

/** The feeder for tubes: four positions wide. */
export const stickFeeder = {
  feeder: 'F-0901',
  tapeWidthMm: 32,
  pitchesMm: [],
  positions: 4,
} satisfies PayloadOf<'feeder.known'>;

const trayForm = { first: 'top-left', along: 'rows', pin1: 'top-left', trays: 1 } as const;

/** What each tray in the store is: its reel, part and layout. */
const traysInStore = [
  { reel: 'R-390007', part: '33-0144-208', parts: 60, rows: 6, columns: 10 },
  { reel: 'R-390014', part: '33-0144-208', parts: 60, rows: 6, columns: 10 },
  { reel: 'R-390021', part: '33-0144-208', parts: 60, rows: 6, columns: 10 },
  { reel: 'R-390028', part: '34-0256-017', parts: 90, rows: 6, columns: 15 },
  { reel: 'R-390035', part: '34-0484-003', parts: 40, rows: 5, columns: 8 },
] as const;

/** The setup: a short one. */
export const beaconSetup: PayloadOf<'setup.taken'> = {
  setup: 'flood-beacon-top-A',
  product: 'Flood beacon',
  side: 'top',
  revision: 'A',
  line: lineId,
  source: 'flood-beacon-top-A.csv',
  slots: [
    onTape('M1-F-001', '10-0402-100', 6),
    onTape('M1-R-001', '10-0402-220', 4),
    onTape('M2-F-001', '10-0603-000', 2),
    inTube('1', '51-0612-002'),
    inTube('2', '51-0612-003'),
    inTube('3', '51-0612-004'),
    onTray(1, '33-0144-208', 1),
    onTray(2, '33-0144-208', 2),
    onTray(3, '33-0144-208', 3),
    onTray(4, '34-0256-017'),
    onTray(7, '34-0484-003'),
  ],
};

/** The trays in the store: that they lie there, and how they are laid out. */
export const traysPut = traysInStore.map(
  ({ reel, part, parts }, at): PayloadOf<'reel.put'> => ({
    reel,
    part,
    supplierPart: null,
    quantity: parts,
    lot: `LT-39${at}-T`,
    dateCode: null,
    place: `DRY-${at + 1}`,
    via: 'wedge',
  }),
);
export const traysPacked = traysInStore.map(
  ({ reel, part, rows, columns }): PayloadOf<'reel.packed'> => ({
    reel,
    part,
    comesIn: 'tray',
    tray: { ...trayForm, rows, columns },
    via: 'wedge',
  }),
);
