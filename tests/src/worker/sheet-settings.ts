// The settings of a sheet's reading where a test asks for nothing of its own.

import type { SheetSettings } from '../../../src/worker/sheet-protocol.ts';

export const plainSettings: SheetSettings = {
  columns: null,
  placementColumns: null,
  billColumns: null,
  variant: null,
  remembered: {},
  page: null,
  scope: null,
  boardsPerPanel: 1,
  machine: '',
  bank: '',
  approved: [],
};
