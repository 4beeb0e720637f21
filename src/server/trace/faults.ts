// How a fault of the trace process reaches the server: as a message, out of which the same error is made again where the server has to know it.

import { MonthAway, PlaceChanged } from '../stores/month-store.ts';

/** A fault as it travels. */
export interface FaultTold {
  readonly message: string;
  /** Whose texts cannot be read; null where it is no such fault. */
  readonly away: { readonly month: string; readonly why: string } | null;
  /** The store was changed where it says where a text lies. */
  readonly isPlaceChanged: boolean;
}

/** The fault as a message. */
export function tellFault(error: Error): FaultTold {
  return {
    message: error.message,
    away: error instanceof MonthAway ? { month: error.month, why: error.why } : null,
    isPlaceChanged: error instanceof PlaceChanged,
  };
}

/** The error again. */
export function hearFault({ message, away, isPlaceChanged }: FaultTold): Error {
  if (away) return new MonthAway(away, away.why);
  return isPlaceChanged ? new PlaceChanged(message) : new Error(`trace: ${message}`);
}
