// What the store knows of months whose texts left it for a file (`serve month-out`): which file, and where in it each text lies.

import type { LogStretch } from './months.ts';

/** A month whose texts lie in a file. */
export interface LeftMonth extends LogStretch {
  /** As `2026-03`. */
  readonly month: string;
  /** The file's name in the folder of months, its size in bytes and its SHA-256 (hex). */
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
  /** Where its packed pieces begin in it, bytes; each ends where the next begins, the last at the file's end. */
  readonly pieces: readonly number[];
  /** Texts that left. */
  readonly texts: number;
  readonly leftMs: number;
}

/** Where the text of one entry lies. */
export interface TextPlace {
  readonly pos: number;
  readonly hash: string;
  /** Which piece of the file, and which line of it, both from 0. */
  readonly piece: number;
  readonly line: number;
}

/** What a piece unpacks to at most, bytes. */
export const pieceMost = 8_388_608;

/** The texts of a month cannot be read now: its file is away, or is another than they left for. */
export class MonthAway extends Error {
  readonly code = 'REELWARD_MONTH_AWAY';
  readonly month: string;
  /** Where the server looked and what kept it from reading: for whoever runs it, and nobody else. */
  readonly why: string;

  constructor({ month }: Pick<LeftMonth, 'month'>, why: string) {
    super(`the texts of ${month} left the store, and ${why}`);
    this.month = month;
    this.why = why;
  }

  /** What anybody may hear. */
  told(): string {
    return `the texts of ${this.month} left the store, and cannot be read now: the server’s log says which file is wanted`;
  }
}

/** Where a text lies by the store is not where it was put: the store was changed, whatever the files hold. */
export class PlaceChanged extends Error {
  readonly code = 'REELWARD_PLACE_CHANGED';
}

/** Why a text that left cannot be read. */
export type TextFault = MonthAway | PlaceChanged;

/** True for such a reason. */
export function isTextFault(error: unknown): error is TextFault {
  return error instanceof MonthAway || error instanceof PlaceChanged;
}

/** The part of a store that keeps count of them. */
export interface MonthStore {
  /** The months whose texts lie in files, oldest first. */
  readonly monthsLeft: () => Promise<readonly LeftMonth[]>;
  /**
   * What is wrong with their files as they lie: none named, away, of another size; `whole`: or of another SHA-256, for which each is read.
   * `only`: months (as `2026-03`) that are looked at; all where it is not given.
   */
  readonly monthFaults: (how?: 'whole', only?: ReadonlySet<string>) => Promise<readonly TextFault[]>;
  /**
   * Puts in place of each text where it lies in the month's file: all or none. Throws `StoreRefused` where a server runs on the store, where the
   * month's texts have left already, or where an entry is not the one that was named.
   */
  readonly letTextsLeave: (month: LeftMonth, places: readonly TextPlace[]) => Promise<void>;
  /** Puts the texts back out of the file: all or none. Throws `MonthAway` where one cannot be read, `StoreRefused` where none left or a server runs. Answers how many. */
  readonly bringTextsBack: (month: string) => Promise<number>;
  /** Gives room that is no longer used back to the disk. Needs room for a copy meanwhile. */
  readonly shrink: () => Promise<void>;
  /** Folds of which a state is kept, and up to which place of the log each goes. */
  readonly snapshotsKept: () => Promise<readonly { readonly fold: string; readonly pos: number }[]>;
}
