// Another slot for one part, by tap or keyboard: a place is tried first, and what that would change or break stands there before it is done.

import { useState } from 'preact/hooks';
import type { LinePlaces } from '../../../../../shared/assign/places.ts';
import { compareSlots, placeKey } from '../../../../../shared/floor/address.ts';
import type { BoardPart } from '../../../../../shared/sheet/board-parts.ts';
import { tapeWidthsMm } from '../../../../../shared/sheet/tapes.ts';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { SelectField } from '../../../ui/Field.tsx';
import type { Words } from '../../../words/areas.ts';
import { boardWords } from '../../../words/board.ts';
import { formatCount, say } from '../../../words/words.ts';
import {
  type BoardContext,
  boardPlaces,
  inTheWay,
  leaveOut,
  moveTo,
  placesOf,
  type SlotPlan,
  type SlotRow,
  slotRows,
} from './board-model.ts';
import { partKey } from './part-width.ts';
import type { SheetSession } from './session.ts';
import { sayFault } from './slot-fault.ts';

interface PickerProps {
  readonly session: SheetSession;
  readonly context: BoardContext;
  readonly parts: readonly BoardPart[];
  readonly row: SlotRow;
  readonly rows: readonly SlotRow[];
  readonly onClose: () => void;
}

/** The plan in hand, or an empty one where a person begins by hand. */
export function planNow({ plan, line, side }: BoardContext): SlotPlan {
  return plan ?? { line, side, slots: new Map(), said: new Set(), left: new Set(), reasons: new Map() };
}

/** What choosing a slot changes and breaks, a sentence each. */
export function effects(
  words: Words<'board'>,
  { context, parts, row, rows }: Pick<PickerProps, 'context' | 'parts' | 'row' | 'rows'>,
  slot: string,
): readonly string[] {
  const isHere = (at: string | null) => at !== null && placeKey(at) === placeKey(slot);
  if (isHere(row.slot)) return [words.here(slot), ...row.faults.map((fault) => sayFault(words, fault))];
  const other = rows.find((each) => each.part !== row.part && isHere(each.slot));
  const next = slotRows(parts, { ...context, plan: moveTo(planNow(context), row.part, slot) });
  const after = (part: string) => next.find((each) => each.part === part);
  const told: string[] = [];
  if (other !== undefined)
    told.push(row.slot === null ? words.pushes(slot, other.part) : words.swaps(slot, other.part, row.slot));
  const mine = next.filter(({ part }) => part === row.part);
  const needed = new Set(rows.map(({ part }) => partKey(part)));
  for (const stands of inTheWay(mine, context))
    if (!needed.has(partKey(stands.part))) told.push(words.takesOut(stands.slot, stands.part));
  for (const each of [row.part, other?.part])
    for (const fault of each === undefined ? [] : (after(each)?.faults ?? []))
      told.push(sayFault(words, fault));
  return told.length === 0 ? [words.free(slot)] : told;
}

/** The banks of a line, each with how its positions are written; the last one holds lanes and places of their own. */
function banksOf(places: LinePlaces, words: Words<'board'>) {
  const banks = places.line.machines.flatMap((machine, m) =>
    machine.banks.map((bank, b) => ({
      key: `${m}/${b}`,
      name:
        bank.holds === 'trays'
          ? words.bankOfTrays(`${machine.name}, ${bank.name}`)
          : `${machine.name}, ${bank.name}`,
      slots: Array.from({ length: bank.positions }, (_, at) => ({
        slot: places.write(m, b, at + 1),
        short: String(at + 1),
      })),
    })),
  );
  const others = places.others.map((slot) => ({ slot, short: slot }));
  const known = banks.filter(({ slots }) => slots.length > 0);
  return others.length === 0 ? known : [...known, { key: 'own', name: words.ownPlaces, slots: others }];
}

export function SlotPicker(props: PickerProps) {
  const { session, context, row, onClose } = props;
  const words = say(boardWords);
  const places = boardPlaces(context);
  const banks = places === null ? [] : banksOf(places, words);
  const at = row.slot === null ? null : (places?.find(row.slot) ?? null);
  const first = at === null ? banks[0]?.key : `${at.machine}/${at.bank}`;
  const [bank, setBank] = useState(first ?? '');
  const [tried, setTried] = useState<string | null>(null);
  const { slots } = session;
  const set = (plan: SlotPlan) => {
    slots.plan.value = plan;
    onClose();
  };
  return (
    <Dialog title={words.change(row.part)} wide onClose={onClose}>
      <div class="stack">
        <p class="soft" data-raw>
          {words.perPanel(formatCount(row.perPanel))} ·{' '}
          <span class="code" translate={false}>
            {[row.board.designators.slice(0, 12).join(' '), row.board.package]
              .filter((text) => text !== '')
              .join(' · ')}
          </span>
        </p>
        {banks.length > 1 && (
          <SelectField label={words.bank} testId="pick-bank" value={bank} onChoose={setBank}>
            {banks.map(({ key, name }) => (
              <option key={key} value={key}>
                {name}
              </option>
            ))}
          </SelectField>
        )}
        <Positions
          {...props}
          slots={banks.find(({ key }) => key === bank)?.slots ?? []}
          tried={tried}
          onTry={setTried}
        />
        <div class="stack" data-testid="pick-effects" aria-live="polite">
          {tried !== null && effects(words, props, tried).map((text) => <p key={text}>{text}</p>)}
        </div>
        <div class="row">
          <Button
            tone="act"
            large
            testId="pick-use"
            disabledReason={tried === null ? words.chooseSlot : null}
            onPress={() => {
              if (tried !== null) set(moveTo(planNow(context), row.part, tried));
            }}
          >
            {words.moveHere(tried ?? '…')}
          </Button>
          <Button testId="pick-leave" onPress={() => set(leaveOut(planNow(context), row.part, !row.isLeft))}>
            {row.isLeft ? words.takeBack : words.leaveOut}
          </Button>
          <Button onPress={onClose}>{words.close}</Button>
        </div>
        <Width row={row} onSay={(width) => slots.sayWidth(row.part, width)} />
      </div>
    </Dialog>
  );
}

interface WidthProps {
  readonly row: SlotRow;
  readonly onSay: (width: number | 'tray' | null) => void;
}

/** How wide the part's tape is or that it comes on trays, and who says so. */
function Width({ row, onSay }: WidthProps) {
  const words = say(boardWords);
  return (
    <SelectField
      label={words.tapeWidth}
      testId="pick-width"
      value={row.isOnTray ? 'tray' : row.widthMm === null ? '' : String(row.widthMm)}
      help={words.widthFrom[row.widthFrom ?? 'none']}
      onChoose={(told) => onSay(told === '' ? null : told === 'tray' ? told : Number(told))}
    >
      <option value="">{words.widthUnknown}</option>
      <option value="tray">{words.width.tray}</option>
      {tapeWidthsMm.map((mm) => (
        <option key={mm} value={String(mm)}>
          {mm} mm
        </option>
      ))}
    </SelectField>
  );
}

interface PositionsProps extends PickerProps {
  readonly slots: readonly { readonly slot: string; readonly short: string }[];
  readonly tried: string | null;
  readonly onTry: (slot: string) => void;
}

/** The places of one bank: what the setup takes and what stands there now, by mark. */
function Positions({ slots, tried, onTry, rows, context }: PositionsProps) {
  const words = say(boardWords);
  const taken = new Map(
    rows.flatMap(({ slot, part }) => (slot === null ? [] : [[placeKey(slot), part] as const])),
  );
  const standing = new Map(placesOf(context).standing.map(({ slot, part }) => [placeKey(slot), part]));
  const ordered = [...slots].sort((a, b) => compareSlots(a.slot, b.slot));
  return (
    <>
      <div class="pick-places">
        {ordered.map(({ slot, short }) => {
          const inPlan = taken.get(placeKey(slot));
          const onLine = standing.get(placeKey(slot));
          const name = [slot, inPlan ?? onLine].filter((text) => text !== undefined).join(': ');
          return (
            <button
              type="button"
              key={slot}
              class={inPlan === undefined ? 'pick-place' : 'pick-place taken'}
              aria-pressed={tried === slot}
              data-testid={`pick-${slot}`}
              onClick={() => onTry(slot)}
            >
              <span translate={false}>{short}</span>
              <span class="hidden">{name}</span>
              <span aria-hidden="true">{inPlan !== undefined ? '■' : onLine === undefined ? '' : '□'}</span>
            </button>
          );
        })}
      </div>
      <p class="soft">{words.legend}</p>
    </>
  );
}
