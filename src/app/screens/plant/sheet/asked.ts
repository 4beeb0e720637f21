// What the sheet worker is asked for: which files, by which choices; and what of it holds while other files or another page are still read.

import type { SheetSettings, SheetSource, SheetSummary } from '../../../../worker/sheet-protocol.ts';

/** The person's part of the settings; the rest comes from the floor and the preferences. */
export type Choices = Omit<SheetSettings, 'remembered' | 'approved'>;

/** Before anything was chosen. */
export const firstChoices: Choices = {
  columns: null,
  placementColumns: null,
  billColumns: null,
  variant: null,
  page: null,
  scope: null,
  boardsPerPanel: 1,
  machine: '',
  bank: '',
};

/** Files, and the choices by which they are read. */
export interface Asked {
  /** Null where a board's own files are meant, and its slots are still to be found. */
  readonly sheet: SheetSource | null;
  readonly placements: SheetSource | null;
  readonly bill: SheetSource | null;
  readonly choices: Choices;
}

/** The sheet as it was read, with what it was read from. */
export interface SheetInHand extends Asked {
  readonly summary: SheetSummary;
}

/** No file, nothing chosen. */
export const bare: Asked = { sheet: null, placements: null, bill: null, choices: firstChoices };

/** A question that is not answered yet. */
export interface Pending {
  readonly asked: Asked;
  /** Other work than what is in hand, whatever its page. */
  readonly isNew: boolean;
  /** What is asked for as a sheet may turn out to be a board's own file. */
  readonly mayBeOther: boolean;
}

/** What is chosen for a file beside the sheet, as nothing chosen. */
const ofFile = {
  placements: { placementColumns: null, scope: null },
  bill: { billColumns: null, variant: null },
} as const satisfies Record<string, Partial<Choices>>;

/** The choices without those that were made for a file that goes. */
export function withoutFile(choices: Choices, role: keyof typeof ofFile): Choices {
  return { ...choices, ...ofFile[role] };
}

/** Choices for a corrected sheet. Columns are read anew, by what is remembered of their headers; machine and bank said by hand stay. */
export function sameChoices({ choices }: Asked): Choices {
  return { ...choices, columns: null };
}

/** The columns by which files in hand are read anew, of those files alone that stay; null where nothing was chosen for them since. */
export function choosingOf(now: SheetInHand | null, asked: Asked): Choices | null {
  if (now === null) return null;
  const kept = { ...asked.choices, ...goneOf(now, asked) };
  const { columns, placementColumns, billColumns } = kept;
  return columns === null && placementColumns === null && billColumns === null ? null : kept;
}

/** The question that a person's choices make of the one before, and whether it is other work than what is in hand. */
export function askedBy(
  now: SheetInHand,
  pending: Pending | null,
  choices: Partial<Choices>,
): Pick<Pending, 'asked' | 'isNew'> {
  const before = pending?.asked ?? now;
  const nowPage = now.summary.page;
  const lastPage = before.choices.page ?? nowPage;
  const isSameSheet = before.sheet === now.sheet;
  const page = isSameSheet ? (choices.page ?? lastPage) : lastPage;
  // Chosen for a file or a page on the screen that something else is to take the place of: it says nothing of that.
  const gone = Object.keys(goneOf(now, before)) as (keyof Choices)[]; // names of choices alone
  const meant = Object.entries(choices).filter(([name]) => !gone.some((each) => each === name));
  const turned = page === lastPage ? {} : { columns: page === nowPage ? now.choices.columns : null };
  return {
    asked: { ...before, choices: { ...before.choices, ...Object.fromEntries(meant), ...turned } },
    // The very sheet in hand is other work only by its page, which may have been turned back.
    isNew: isSameSheet && now.sheet !== null ? page !== nowPage : (pending?.isNew ?? false),
  };
}

/** Choices that were made for files or a page in hand which another question leaves behind, as nothing chosen. */
function goneOf(now: SheetInHand, { sheet, placements, bill, choices }: Asked): Partial<Choices> {
  const isOtherSheet = sheet !== now.sheet;
  const isOtherPage = isOtherSheet || (choices.page ?? now.summary.page) !== now.summary.page;
  return {
    ...(isOtherPage ? { columns: null } : {}),
    ...(isOtherSheet ? { page: null } : {}),
    ...(placements === now.placements ? {} : ofFile.placements),
    ...(bill === now.bill ? {} : ofFile.bill),
  };
}
