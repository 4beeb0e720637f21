// The row for what came and is no part of the log: kept once each, however often it comes. Apart from the store, since a row is named by
// a hash and most starts keep none.

import { hashText } from '../../../shared/log/seal.ts';
import type { QuarantineRow } from './database.ts';

/** The row for what is quarantined. */
export function quarantineRow(value: unknown, fault: string, atMs: number): QuarantineRow {
  return { key: hashText(`${fault} ${JSON.stringify(value) ?? ''}`), fault, atMs, value };
}
