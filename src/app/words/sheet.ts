import type { PlacementField, SheetField } from '../../../shared/sheet/fields.ts';
import { area } from './words.ts';

export type FieldNames = Readonly<Record<SheetField | PlacementField, string>>;

/** Bringing a setup sheet in. */
export const sheetWords = area('sheet');
