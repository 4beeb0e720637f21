// One value of the plant's own copy: days of a floor life, or hours of a bake.

import { useState } from 'preact/hooks';
import { AskFeet } from '../../../ui/Ask.tsx';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { Field } from '../../../ui/Field.tsx';
import { packagesWords } from '../../../words/packages.ts';
import { say } from '../../../words/words.ts';
import type { BakeCell, LifeCell } from './moisture-model.ts';

/** The cell in hand, with its value as it is; `where`: its place in words. */
export type Editing = { readonly where: string; readonly isOwn: boolean } & (
  | { readonly of: 'life'; readonly cell: LifeCell }
  | { readonly of: 'bake'; readonly cell: BakeCell }
);

export function ValueDialog(props: {
  readonly editing: Editing;
  /** True where the days do not fit the cells around. */
  readonly isOdd: (days: number | null) => boolean;
  /** The value; null = no limit, undefined = as shipped. */
  readonly onTake: (value: number | null | undefined) => void;
  readonly onClose: () => void;
}) {
  const words = say(packagesWords).tables;
  const { editing, onTake } = props;
  const before = editing.of === 'life' ? editing.cell.days : editing.cell.hours;
  const [typed, setTyped] = useState(before === null || before === 0 ? '' : String(before));
  const value = Number(typed.trim().replace(',', '.'));
  const isGood = typed.trim() !== '' && Number.isFinite(value) && value > 0;
  return (
    <Dialog title={words.edit(editing.where)} onClose={props.onClose}>
      <div class="stack">
        <Field
          label={editing.of === 'life' ? words.days : words.hours}
          testId="moisture-value"
          inputMode="decimal"
          value={typed}
          onInput={setTyped}
        />
        {isGood && props.isOdd(value) && <p class="caution">{words.order}</p>}
        {editing.of === 'life' && (
          <Button large testId="moisture-endless" onPress={() => onTake(null)}>
            {words.endless}
          </Button>
        )}
        {editing.isOwn && (
          <Button large testId="moisture-shipped" onPress={() => onTake(undefined)}>
            {words.asShipped}
          </Button>
        )}
        <AskFeet
          testId="moisture-take"
          disabledReason={isGood ? null : words.badValue}
          onYes={() => onTake(value)}
          onNo={props.onClose}
        >
          {words.take}
        </AskFeet>
      </div>
    </Dialog>
  );
}
