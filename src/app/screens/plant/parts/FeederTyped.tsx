// Which type a feeder is of, what was measured on this very one, and which lengths count for it by that.

import {
  type TapeLengths,
  tapeLengthNames,
  tapeLengthsOf,
} from '../../../../../shared/floor/feeder-types.ts';
import type { DraftEntry } from '../../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../../app.ts';
import { SelectField } from '../../../ui/Field.tsx';
import { feederTypeWords } from '../../../words/feeder-types.ts';
import { formatNumber, say } from '../../../words/words.ts';
import { LengthFields } from './LengthFields.tsx';
import { type LengthTexts, lengthTexts, readLengths } from './lengths.ts';

/** A feeder's type and own lengths while they are typed. */
export interface TypedDraft {
  /** Empty: not said. */
  readonly type: string;
  readonly lengths: LengthTexts;
}

/** As the log has it. */
export function typedDraftOf(floor: FloorState, feeder: string): TypedDraft {
  const typed = floor.typed.get(feeder) ?? null;
  return { type: typed?.type ?? '', lengths: lengthTexts(typed) };
}

/** The entry of what was typed, none where nothing changed; why it cannot be saved where it does not fit. */
export function typedEntries(
  floor: FloorState,
  feeder: string,
  draft: TypedDraft,
): readonly DraftEntry[] | 'numberWrong' | 'intakeFar' {
  const lengths = readLengths(draft.lengths);
  if (typeof lengths === 'string') return lengths;
  const before = typedDraftOf(floor, feeder);
  if (JSON.stringify(before) === JSON.stringify(draft)) return [];
  return [{ kind: 'feeder.typed', payload: { feeder, type: draft.type || null, ...lengths } }];
}

export function FeederTyped(props: {
  readonly feeder: string;
  readonly draft: TypedDraft;
  readonly onChange: (draft: TypedDraft) => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(feederTypeWords);
  const { feeder, draft, onChange } = props;
  const line = app.line.value;
  const types = [...floor.feederTypes.keys()].sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  return (
    <>
      <SelectField
        label={words.type}
        testId="feeder-type"
        value={draft.type}
        onChoose={(type) => onChange({ ...draft, type })}
      >
        <option value="">{words.noType}</option>
        {types.map((type) => (
          <option key={type} value={type}>
            {type}
          </option>
        ))}
      </SelectField>
      <div class="whole stack">
        <h2>{words.own}</h2>
        <small class="soft">{words.ownHelp}</small>
      </div>
      <LengthFields
        id="feeder"
        texts={draft.lengths}
        onChange={(lengths) => onChange({ ...draft, lengths })}
      />
      {line !== null && <Counting lengths={tapeLengthsOf(withDraft(floor, feeder, draft), line, feeder)} />}
    </>
  );
}

/** The floor as it would be with what is typed; what is no length counts as not entered. */
function withDraft(floor: FloorState, feeder: string, draft: TypedDraft): FloorState {
  const read = readLengths(draft.lengths);
  const lengths = typeof read === 'string' ? null : read;
  if (lengths === null) return floor;
  return {
    ...floor,
    typed: new Map(floor.typed).set(feeder, { feeder, type: draft.type || null, ...lengths }),
  };
}

/** Which length counts, and whose it is. */
function Counting({ lengths }: { readonly lengths: TapeLengths }) {
  const words = say(feederTypeWords);
  return (
    <ul class="whole soft" data-testid="feeder-counts">
      {tapeLengthNames.map((name) => {
        const known = lengths[name];
        const what = words.lengths[name];
        return (
          <li key={name}>
            {known === null
              ? words.countsNot(what)
              : words.counts(what, formatNumber(known.mm), words.whose[known.of])}
          </li>
        );
      })}
    </ul>
  );
}
