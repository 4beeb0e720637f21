import type { BillField } from '../../../shared/sheet/bill-fields.ts';
import type { PlacementField, SheetField } from '../../../shared/sheet/fields.ts';
import { area } from './words.ts';

export type FieldNames = Readonly<Record<SheetField | PlacementField | BillField, string>>;

/** Bringing a setup sheet in. */
export const sheetWords = area('sheet');
