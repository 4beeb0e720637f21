// Which pocket of a tray is next, and how many are left? Method: pockets are numbered in the order in which they are emptied, tray by tray from the
// top of the stack; the place of a pocket follows from the first pocket's corner and the direction. So a tap on the picture is a count.
// Refused: to enter a count for a tray that is open; people count pockets wrongly, and see at once which is the next.

import type { PayloadOf } from './kinds.ts';

/** How a stack of trays is laid out and emptied. */
export type TrayForm = NonNullable<PayloadOf<'reel.packed'>['tray']>;

/** A pocket: which tray of the stack (from 1, the one in use first), row from the top and column from the left, from 1. */
export interface Pocket {
  readonly tray: number;
  readonly row: number;
  readonly column: number;
}

/** Pockets of one tray. */
export function pocketsPerTray({ rows, columns }: Pick<TrayForm, 'rows' | 'columns'>): number {
  return rows * columns;
}

/** Pockets of the whole stack, full. */
export function pocketsOf(form: Pick<TrayForm, 'rows' | 'columns' | 'trays'>): number {
  return pocketsPerTray(form) * form.trays;
}

/** The place of a pocket; `taken`: how many are emptied before it, whole, 0 <= taken < `pocketsOf()`. Throws RangeError beyond. */
export function pocketAt(form: TrayForm, taken: number): Pocket {
  if (!Number.isInteger(taken) || taken < 0 || taken >= pocketsOf(form))
    throw new RangeError(
      `Cannot tell the pocket as taken must lie within the trays: current value is ${taken}`,
    );
  const within = taken % pocketsPerTray(form);
  const [long, short] =
    form.along === 'rows'
      ? [within % form.columns, Math.floor(within / form.columns)]
      : [Math.floor(within / form.rows), within % form.rows];
  const column = form.first.endsWith('right') ? form.columns - long : long + 1;
  const row = form.first.startsWith('bottom') ? form.rows - short : short + 1;
  return { tray: Math.floor(taken / pocketsPerTray(form)) + 1, row, column };
}

/** Pockets that are emptied before this one is: the opposite of `pocketAt()`. Throws RangeError for a pocket that the trays do not have. */
export function takenBefore(form: TrayForm, { tray, row, column }: Pocket): number {
  const isThere = (at: number, most: number) => Number.isInteger(at) && at >= 1 && at <= most;
  if (!isThere(tray, form.trays) || !isThere(row, form.rows) || !isThere(column, form.columns))
    throw new RangeError(
      `Cannot count as the pocket must be in the trays: current value is ${tray}/${row}/${column}`,
    );
  const long = form.first.endsWith('right') ? form.columns - column : column - 1;
  const short = form.first.startsWith('bottom') ? form.rows - row : row - 1;
  const within = form.along === 'rows' ? short * form.columns + long : long * form.rows + short;
  return (tray - 1) * pocketsPerTray(form) + within;
}

/** Parts left where this pocket is the next to be emptied, every pocket from it on being filled. */
export function leftFrom(form: TrayForm, pocket: Pocket): number {
  return pocketsOf(form) - takenBefore(form, pocket);
}
