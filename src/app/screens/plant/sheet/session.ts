// The sheet in hand: which file, how its columns are read, what it said, what the person filled in. It lives as long as the page,
// so that a look at another screen loses nothing. A new file takes the place of the old one only once it could be read.

import { type Signal, signal } from '@preact/signals';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import { type BillField, billFields, manyBillFields } from '../../../../../shared/sheet/bill-fields.ts';
import { chooseColumn, columnsToMap, mapToKept } from '../../../../../shared/sheet/choice.ts';
import {
  type PlacementField,
  placementFields,
  type SheetField,
  sheetFields,
} from '../../../../../shared/sheet/fields.ts';
import type { ColumnMap } from '../../../../../shared/sheet/headers.ts';
import type {
  SheetFault,
  SheetRole,
  SheetSettings,
  SheetSource,
  SheetStep,
} from '../../../../worker/sheet-protocol.ts';
import type { Preferences } from '../../../store/preferences.ts';
import { asChosen } from './as-chosen.ts';
import {
  type Asked,
  askedBy,
  bare,
  type Choices,
  choosingOf,
  firstChoices,
  type Pending,
  type SheetInHand,
  sameChoices,
  withoutFile,
} from './asked.ts';
import type { SlotPlan } from './board-model.ts';
import { approvedByPart, firstForm, onlySide, type TakeForm } from './model.ts';
import type { SaidWidths } from './part-width.ts';
import type { SheetReader } from './reader.ts';
import { createSlotDesk, type SlotDesk } from './slot-desk.ts';

/** A file that was asked for and cannot be read. */
export interface SessionFault {
  readonly role: SheetRole;
  readonly fault: SheetFault;
  readonly name: string;
}

/** A board that waits while another one is in hand: both are then proposed together. */
export interface HeldBoard {
  readonly inHand: SheetInHand;
  readonly form: TakeForm;
  readonly plan: SlotPlan | null;
  readonly widths: SaidWidths;
}

/** A setup that was taken in just now. */
export interface Taken {
  readonly setup: string;
  readonly line: string;
  readonly product: string;
  readonly revision: string;
}

/** What the session looks at besides the file. */
export interface SessionWorld {
  readonly floor: () => FloorState;
  readonly line: () => string | null;
  readonly remembered: () => Preferences['sheetColumns'];
}

export interface SheetSession {
  readonly inHand: Signal<SheetInHand | null>;
  readonly form: Signal<TakeForm | null>;
  readonly busy: Signal<{ readonly role: SheetRole; readonly step: SheetStep } | null>;
  /** What the files in hand are read by anew, until they are; null where nothing was chosen since. */
  readonly choosing: Signal<Choices | null>;
  readonly fault: Signal<SessionFault | null>;
  readonly taken: Signal<Taken | null>;
  /** The slots of a board whose files name none. */
  readonly slots: SlotDesk;
  /** Boards that wait, in the order in which they were put aside. */
  readonly held: Signal<readonly HeldBoard[]>;
  /** Puts the board in hand aside, so that another one can be chosen. */
  readonly hold: () => void;
  /** Goes on with a board that waits; nothing else is in hand then. */
  readonly takeUp: (board: HeldBoard) => void;
  readonly open: (role: SheetRole, name: string, content: Blob | string) => Promise<void>;
  /** Reads the board's file in hand as a setup sheet after all. */
  readonly readAsSheet: () => Promise<void>;
  /** Takes the placement file out, or the bill beside it. */
  readonly drop: (role: 'placements' | 'bill') => Promise<void>;
  readonly choose: (choices: Partial<Choices>) => Promise<void>;
  /** Takes a column for another field; answers what to remember of it. */
  readonly chooseSheetColumn: (index: number, field: SheetField | null) => Remember | null;
  readonly choosePlacementColumn: (index: number, field: PlacementField | null) => Remember | null;
  readonly chooseBillColumn: (index: number, field: BillField | null) => Remember | null;
  readonly giveUp: () => void;
  readonly clear: () => void;
}

/** A choice of columns to be kept for the next sheet with this header. */
export interface Remember {
  readonly key: string;
  readonly kept: Readonly<Record<string, string>>;
}

/** What a session works on. */
interface SessionState
  extends Pick<SheetSession, 'inHand' | 'form' | 'busy' | 'choosing' | 'fault' | 'taken' | 'slots'> {
  readonly reader: SheetReader;
  readonly world: SessionWorld;
  /** Files opened so far. */
  sources: number;
  /** A person had a board's file read as a sheet: the next one chosen beside it is meant as one too. */
  isSaidSheet: boolean;
  /** Questions asked so far: an answer to any but the last is nobody's. */
  asks: number;
  /** The last question, until it is answered or given up: whatever is chosen meanwhile builds on it. */
  pending: Pending | null;
}

/** Makes a session. */
export function createSheetSession(
  reader: SheetReader,
  world: SessionWorld,
  slots: SlotDesk = createSlotDesk(),
): SheetSession {
  const state: SessionState = {
    reader,
    world,
    slots,
    inHand: signal<SheetInHand | null>(null),
    form: signal<TakeForm | null>(null),
    busy: signal(null),
    choosing: signal<Choices | null>(null),
    fault: signal<SessionFault | null>(null),
    taken: signal<Taken | null>(null),
    sources: 0,
    isSaidSheet: false,
    asks: 0,
    pending: null,
  };
  const { inHand, form, busy, choosing, fault, taken } = state;
  const held = signal<readonly HeldBoard[]>([]);
  const choose = (choices: Partial<Choices>) => readAs(state, choices);
  return {
    inHand,
    form,
    busy,
    choosing,
    fault,
    taken,
    slots,
    held,
    hold: () => {
      if (inHand.value === null || form.value === null) return;
      giveUp(state);
      const { plan, widths } = slots;
      const board = { inHand: inHand.value, form: form.value, plan: plan.value, widths: widths.value };
      held.value = [...held.value, board];
      for (const each of [inHand, form, fault, taken]) each.value = null;
      slots.clear();
    },
    takeUp: (board) => {
      giveUp(state);
      held.value = held.value.filter((each) => each !== board);
      [fault.value, taken.value] = [null, null];
      [inHand.value, form.value] = [board.inHand, board.form];
      slots.clear();
      [slots.plan.value, slots.widths.value] = [board.plan, board.widths];
    },
    open: (role, name, content) => openFile(state, role, { name, content }),
    readAsSheet: async () => {
      const now = inHand.value;
      const sheet = now?.placements ?? now?.bill ?? null;
      state.isSaidSheet = true;
      if (sheet) await ask(state, { asked: { ...bare, sheet }, isNew: true, mayBeOther: false });
    },
    choose,
    drop: async (role) => {
      const { isNew = false, mayBeOther = false, asked = inHand.value } = state.pending ?? {};
      const rest = asked && { ...asked, [role]: null, choices: withoutFile(asked.choices, role) };
      if (rest?.sheet || rest?.placements || rest?.bill) await ask(state, { asked: rest, isNew, mayBeOther });
    },
    ...columnChoices(state, choose),
    giveUp: () => giveUp(state),
    clear: () => {
      giveUp(state);
      state.isSaidSheet = false;
      for (const each of [inHand, form, fault, taken]) each.value = null;
      slots.clear();
    },
  };
}

function giveUp(state: SessionState): void {
  state.asks += 1;
  state.pending = null;
  [state.busy.value, state.choosing.value] = [null, null];
  state.reader.giveUp();
}

async function ask(state: SessionState, question: Pending): Promise<void> {
  const { asked, isNew, mayBeOther } = question;
  const { reader, world, inHand, form, busy, choosing, fault, taken } = state;
  state.asks += 1;
  const mine = state.asks;
  const { sheet, placements, bill } = asked;
  busy.value = { role: 'sheet', step: 'opening' };
  state.pending = question;
  choosing.value = choosingOf(inHand.value, asked);
  const settings: SheetSettings = {
    ...asked.choices,
    remembered: world.remembered(),
    approved: approvedByPart(world.floor()),
  };
  const answer = await reader.ask({ sheet, placements, bill, mayBeOther, settings }, (role, step) => {
    if (mine === state.asks) busy.value = { role, step };
  });
  if (mine !== state.asks) return;
  state.pending = null;
  [busy.value, choosing.value] = [null, null];
  if (answer.is === 'other') {
    await ask(state, { asked: { ...bare, [answer.as]: sheet }, isNew: true, mayBeOther: false });
    return;
  }
  if (answer.is === 'refused') {
    const name = { sheet, placements, bill }[answer.role]?.name ?? '';
    fault.value = { role: answer.role, fault: answer.fault, name };
  }
  if (answer.is !== 'read') return;
  fault.value = null;
  taken.value = null;
  inHand.value = { sheet, placements, bill, choices: asked.choices, summary: answer.summary };
  if (isNew) state.slots.clear();
  if (isNew || form.value === null) {
    const source = (sheet ?? placements ?? bill)?.name ?? '';
    form.value = firstForm(answer.summary, source, { floor: world.floor(), line: world.line() });
    return;
  }
  // The bill that came now may be the first to say what is placed.
  const { board } = answer.summary;
  if (board !== null && form.value.side === null) form.value = { ...form.value, side: onlySide(board) };
}

function openFile(
  state: SessionState,
  role: SheetRole,
  { name, content }: Pick<SheetSource, 'name' | 'content'>,
): Promise<void> {
  state.sources += 1;
  const source: SheetSource = { number: state.sources, name, content };
  const now = state.inHand.value;
  const before: Asked | null = state.pending?.asked ?? now;
  if (role === 'sheet') {
    const there = before?.sheet ?? null;
    if (before === null || there === null)
      return ask(state, { asked: { ...bare, sheet: source }, isNew: true, mayBeOther: true });
    // A corrected sheet of the same name is the same work: what was filled in stays.
    const isNew = now?.sheet?.name !== name;
    const choices = there.name === name ? sameChoices(before) : firstChoices;
    const asked = { sheet: source, placements: before.placements, bill: before.bill, choices };
    // What turns out to be a board's own file goes that file's way, as a first file does.
    return ask(state, { asked, isNew, mayBeOther: !state.isSaidSheet });
  }
  // The first file of a board, or one more.
  const { isNew = now === null, mayBeOther = false } = state.pending ?? {};
  const asked = before ?? bare;
  const choices = withoutFile(asked.choices, role);
  return ask(state, { asked: { ...asked, [role]: source, choices }, isNew, mayBeOther });
}

/** Reads the sheet in hand anew, or what is asked for in its place, with other choices. */
function readAs(state: SessionState, choices: Partial<Choices>): Promise<void> {
  const now = state.inHand.value;
  if (!now) return Promise.resolve();
  const { pending } = state;
  return ask(state, { ...askedBy(now, pending, choices), mayBeOther: pending?.mayBeOther ?? false });
}

/** Choosing columns: how the sheet in hand is read from now on, and what is to be remembered of its header. */
function columnChoices(
  { inHand, choosing }: Pick<SheetSession, 'inHand' | 'choosing'>,
  choose: SheetSession['choose'],
): Pick<SheetSession, 'chooseSheetColumn' | 'choosePlacementColumn' | 'chooseBillColumn'> {
  const shown = () => inHand.value && asChosen(inHand.value.summary, choosing.value);
  return {
    chooseSheetColumn: (index, field) => {
      const now = shown();
      if (!now) return null;
      const map = columnsToMap(chooseColumn(now.columns, index, field), sheetFields);
      void choose({ columns: map });
      return { key: now.key, kept: mapToKept(map) };
    },
    choosePlacementColumn: (index, field) => {
      const there = shown()?.placements;
      if (!there) return null;
      const map: ColumnMap<PlacementField> = columnsToMap(
        chooseColumn(there.columns, index, field),
        placementFields,
      );
      void choose({ placementColumns: map });
      return { key: there.key, kept: mapToKept(map) };
    },
    chooseBillColumn: (index, field) => {
      const there = shown()?.bill;
      if (!there) return null;
      const chosen = chooseColumn(there.columns, index, field, manyBillFields);
      const map: ColumnMap<BillField> = columnsToMap(chosen, billFields);
      void choose({ billColumns: map });
      return { key: there.key, kept: mapToKept(map) };
    },
  };
}
